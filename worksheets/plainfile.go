package worksheets

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Reading all of TOML takes most of the time that a sheet costs, and a folder
// has many sheets. So the shape that nearly every worksheet has, a known key and
// a value on a line, is read here in one pass.
//
// This reader never says that something is wrong: whatever it does not know,
// faulty or not, it leaves to the reader of all TOML, so that there is one judge
// of what is TOML and one that words the errors. What it does read, it must read
// as that one does; the tests compare the two.

// plainReader walks through the lines of one file.
type plainReader struct {
	sheet   Sheet
	table   string         // that the line stands in; "" above the first
	keys    map[string]Key // of that table
	opened  [len(answerTables)]bool
	version bool
	done    bool
	read    [keyCount]bool
	sized   []string // paths that the latest size has
	dated   bool     // the latest fitting has its date
	noted   bool
	ours    bool
}

// readPlain is the sheet of a plain file; ok is false for every other.
func readPlain(source []byte) (s Sheet, ours, ok bool) {
	text := string(source)
	if !plainCharacters(text) {
		return Sheet{}, false, false
	}
	var p plainReader
	for text != "" {
		line, rest, ended := strings.Cut(text, "\n")
		if ended {
			line = strings.TrimSuffix(line, "\r")
		}
		if !p.line(line) {
			return Sheet{}, false, false
		}
		text = rest
	}
	return p.sheet, p.ours, true
}

// plainCharacters tells that a text has no control characters but tabs and line
// breaks, and is UTF-8.
func plainCharacters(text string) bool {
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case c == '\n' || c == '\t' || c >= ' ' && c != 0x7f:
		case c == '\r' && i+1 < len(text) && text[i+1] == '\n':
		default:
			return false
		}
	}
	return utf8.ValidString(text)
}

// line reads a header, or a key with its value.
func (p *plainReader) line(line string) bool {
	line = past(line)
	if blank(line) {
		return true
	}
	if line[0] == '[' {
		return p.header(line)
	}
	end := 0
	for end < len(line) && (line[end] == '_' || 'a' <= line[end] && line[end] <= 'z') {
		end++
	}
	name, rest := line[:end], past(line[end:])
	if name == "" || rest == "" || rest[0] != '=' {
		return false
	}
	value := past(rest[1:])
	switch p.table {
	case "":
		rest, ok := strings.CutPrefix(value, "1")
		again := p.version
		p.version, p.ours = true, true
		return ok && name == "version" && !again && blank(rest)
	case "size", "size.sleeve", "size.bodice":
		return p.size(strings.TrimPrefix(strings.TrimPrefix(p.table+".", "size.")+name, "."), value)
	case "fitting":
		return p.fitting(name, value)
	case "progress":
		again := p.done
		p.done = true
		return name == "done" && !again && p.list(value)
	}
	return p.answer(name, value)
}

// past is a text without the spaces and tabs that it begins with.
func past(text string) string {
	n := 0
	for n < len(text) && (text[n] == ' ' || text[n] == '\t') {
		n++
	}
	return text[n:]
}

// blank tells that a line, or what is left of it, says nothing.
func blank(rest string) bool {
	rest = past(rest)
	return rest == "" || rest[0] == '#'
}

// header opens a table. Only sizes and fittings may be opened more than once.
func (p *plainReader) header(line string) bool {
	p.ours = true
	if rest, ok := strings.CutPrefix(line, "[[fitting]]"); ok {
		p.table, p.dated, p.noted = "fitting", false, false
		p.sheet.Fittings = append(p.sheet.Fittings, Fitting{})
		return blank(rest)
	}
	if rest, ok := strings.CutPrefix(line, "[[size]]"); ok {
		p.table, p.sized = "size", nil
		p.sheet.Sizes = append(p.sheet.Sizes, Size{})
		return blank(rest)
	}
	name, rest, ok := strings.Cut(line[1:], "]")
	if !ok || !blank(rest) {
		return false
	}
	if name == "size.sleeve" || name == "size.bodice" {
		again := slices.Contains(p.sized, name)
		p.sized, p.table = append(p.sized, name), name
		return !again && len(p.sheet.Sizes) > 0
	}
	i := slices.Index(answerTables[:], name)
	if i < 0 || p.opened[i] {
		return false
	}
	p.opened[i], p.table, p.keys = true, name, keysOf[name]
	return true
}

// answerTables are those that have a header in single brackets.
var answerTables = [...]string{"about", "body", "ease", "pattern", "sleeve", "bodice", "method", "progress"}

// keysOf are the keys of a table by their names in it.
var keysOf = func() map[string]map[string]Key {
	tables := map[string]map[string]Key{}
	for _, k := range Keys() {
		if tables[k.table()] == nil {
			tables[k.table()] = map[string]Key{}
		}
		tables[k.table()][k.name()] = k
	}
	return tables
}()

// answer reads the value of a key of the worksheet: text, or a bare day or
// digit where the key is one.
func (p *plainReader) answer(name, value string) bool {
	k, known := p.keys[name]
	if !known || p.read[k] {
		return false
	}
	p.read[k] = true
	text, rest, ok := plainText(value)
	switch {
	case ok:
	case k.Kind() == Date:
		text, rest, ok = plainDay(value)
	case k.Kind() == Count && value != "" && '0' <= value[0] && value[0] <= '9':
		text, rest, ok = value[:1], value[1:], true
	}
	p.sheet.answers[k] = strings.TrimSpace(text)
	return ok && blank(rest)
}

// size reads a line of the latest size.
func (p *plainReader) size(path, value string) bool {
	k, known := keyInSize(path)
	if !known || slices.Contains(p.sized, path) {
		return false
	}
	p.sized = append(p.sized, path)
	text, rest, ok := plainText(value)
	p.sheet.Sizes[len(p.sheet.Sizes)-1].answers[k] = strings.TrimSpace(text)
	return ok && blank(rest)
}

// fitting reads a line of the latest fitting.
func (p *plainReader) fitting(name, value string) bool {
	f := &p.sheet.Fittings[len(p.sheet.Fittings)-1]
	text, rest, ok := plainText(value)
	switch {
	case name == "note" && ok && !p.noted:
		f.Note, p.noted = text, true
	case name == "date" && !p.dated:
		if !ok {
			text, rest, ok = plainDay(value)
		}
		f.Date, p.dated = text, true
		ok = ok && (text == "" || isDay(text))
	default:
		return false
	}
	return ok && blank(rest)
}

// list reads the finished steps, on one line.
func (p *plainReader) list(value string) bool {
	rest, ok := strings.CutPrefix(value, "[")
	for ok {
		rest = past(rest)
		if after, end := strings.CutPrefix(rest, "]"); end {
			return blank(after)
		}
		var id string
		if id, rest, ok = plainText(rest); !ok {
			break
		}
		p.sheet.Done = append(p.sheet.Done, id)
		rest = past(rest)
		if after, comma := strings.CutPrefix(rest, ","); comma {
			rest = after
		} else if !strings.HasPrefix(rest, "]") {
			break
		}
	}
	return false
}

// plainDay reads ten characters that are a day of the calendar.
func plainDay(value string) (text, rest string, ok bool) {
	const long = len("2026-10-03")
	if len(value) < long || !isDay(value[:long]) || value[:4] == "0000" {
		return "", "", false
	}
	return value[:long], value[long:], true
}

// plainText reads a text in double quotes on one line, with the escapes that
// people and this program write. Of three quotes the third is left, which nobody
// takes.
func plainText(value string) (text, rest string, ok bool) {
	if value == "" || value[0] != '"' {
		return "", "", false
	}
	value = value[1:]
	end := strings.IndexByte(value, '"')
	if end < 0 {
		return "", "", false
	}
	if strings.IndexByte(value[:end], '\\') < 0 {
		return value[:end], value[end+1:], true
	}
	var b strings.Builder
	for i := 0; i < len(value); i++ {
		switch c := value[i]; c {
		case '"':
			return b.String(), value[i+1:], true
		case '\\':
			if i++; i == len(value) {
				return "", "", false
			}
			at := strings.IndexByte(`"\nt`, value[i])
			if at < 0 {
				return "", "", false
			}
			b.WriteByte("\"\\\n\t"[at])
		default:
			b.WriteByte(c)
		}
	}
	return "", "", false
}

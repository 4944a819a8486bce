package worksheets

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/BurntSushi/toml"
)

// Decode reads a worksheet. The name is for messages. The error is a
// *[FileError]; values that cannot be read are no error but
// [Document.Problems].
func Decode(name string, source []byte) (*Document, error) {
	if withinBounds(source) {
		if sheet, ours, ok := readPlain(source); ok {
			return &Document{Sheet: sheet, name: name, source: source, read: sheet, ours: ours}, nil
		}
	}
	if err := checkBounds(name, source); err != nil {
		return nil, err
	}
	d, _, err := decodeAny(name, source)
	return d, err
}

// decodeAny reads whatever TOML the file is, and gives the tree along, which the
// document keeps nothing of.
func decodeAny(name string, source []byte) (d *Document, tree map[string]any, err error) {
	if tree, _, err = parse(source); err != nil {
		return nil, nil, syntaxError(name, source, err)
	}
	d = &Document{name: name, source: source}
	for _, table := range slices.Sorted(maps.Keys(tree)) {
		d.readTable(table, tree[table])
	}
	d.read = d.Sheet
	return d, tree, nil
}

// parse reads TOML, with or without a byte order mark. A number that is larger than the
// reader's is read as infinite: it is TOML, and most likely no answer of ours. held is
// how many there are.
func parse(source []byte) (tree map[string]any, held int, err error) {
	text := string(bytes.TrimPrefix(source, []byte("\ufeff")))
	for ; ; held++ {
		tree = nil
		if _, err = toml.Decode(text, &tree); err == nil || held == mostUnknown {
			return tree, held, err
		}
		var bad toml.ParseError
		if !errors.As(err, &bad) || !strings.Contains(bad.Message, "is out of range for") {
			return tree, held, err
		}
		at, long := bad.Position.Start, bad.Position.Len
		if at < 0 || long < len("inf") || at+long > len(text) || strings.Trim(text[at:at+long], numberSigns) != "" {
			return tree, held, err
		}
		text = text[:at] + "inf" + strings.Repeat(" ", long-len("inf")) + text[at+long:]
	}
}

// numberSigns are what a number is written with.
const numberSigns = "0123456789abcdefxoABCDEF_+-."

// readTable takes one key of the top level: a table of answers, or one of the
// few keys that are none.
func (d *Document) readTable(name string, value any) {
	known := slices.Contains(tables(), name)
	d.ours = d.ours || known || name == "version"
	switch name {
	case "version":
		d.readVersion(value)
		return
	case "size":
		d.readSizes(value)
		return
	case "fitting":
		d.readFittings(value)
		return
	}
	table, ok := value.(map[string]any)
	switch {
	case !known:
		d.note(name, name, append(tables(), "version"))
		return
	case !ok:
		d.refuse(name, d.asWritten(name, value), "is not a table", fmt.Sprintf("Write [%s] on a line of its own", name))
		return
	}
	for _, key := range slices.Sorted(maps.Keys(table)) {
		path := name + "." + key
		if path == "progress.done" {
			d.readDone(table[key])
		} else if k, ok := KeyNamed(path); ok {
			d.readAnswer(k, table[key])
		} else {
			d.note(path, key, namesIn(name))
		}
	}
}

// refuse notes a value of the wrong type.
func (d *Document) refuse(path, text, reason, want string) {
	d.mistyped = append(d.mistyped, Problem{d.name, d.line(path), path, &ValueError{text, reason, want}})
}

// mostUnknown bounds the messages about keys that nothing here uses.
const mostUnknown = 20

// note remembers a key that nothing here uses; it is kept in the file.
func (d *Document) note(path, name string, known []string) { d.noteAt(path, path, name, known) }

// noteAt is note of a key that stands in the file at a path of its own.
func (d *Document) noteAt(place, path, name string, known []string) {
	if len(d.unknown) == mostUnknown {
		d.unknown = append(d.unknown, Problem{d.name, 0, "...", errors.New("there are more such keys; all stay in the file")})
	}
	if len(d.unknown) > mostUnknown {
		return
	}
	reason := "no such key here; it stays in the file and is not used"
	for _, k := range known {
		if name != "" && strings.EqualFold(k, name) {
			reason += fmt.Sprintf("; did you mean %q?", k)
		}
	}
	d.unknown = append(d.unknown, Problem{d.name, d.line(place), path, errors.New(reason)})
}

// tables are all that a worksheet has.
func tables() []string { return slices.Concat(answerTables[:], []string{"size", "fitting"}) }

func namesIn(table string) []string {
	var names []string
	if table == "progress" {
		names = append(names, "done")
	}
	for _, k := range Keys() {
		if k.table() == table {
			names = append(names, k.name())
		}
	}
	return names
}

func (d *Document) readVersion(value any) {
	v, ok := value.(int64)
	switch {
	case !ok || v < 1:
		d.refuse("version", d.asWritten("version", value), "is not a whole number from 1", fmt.Sprintf("Write version = %d", Version))
		d.ReadOnly = "its version cannot be read"
	case v > Version:
		d.ReadOnly = fmt.Sprintf("it has version %d, and this program writes version %d", v, Version)
	}
}

// readAnswer takes one value; dates and counts have TOML types of their own.
func (d *Document) readAnswer(k Key, value any) {
	text, ok := value.(string)
	switch v := value.(type) {
	case time.Time:
		if k.Kind() == Date && v.Year() > 0 { // a time of day has no year
			text, ok = v.Format(time.DateOnly), true
		}
	case int64:
		if k.Kind() == Count {
			text, ok = strconv.FormatInt(v, 10), true
		}
	}
	if !ok {
		raw := d.asWritten(k.Path(), value)
		d.refuse(k.Path(), raw, notQuoted, writeLike(k, k.name(), raw))
		return
	}
	d.Sheet.answers[k] = strings.TrimSpace(text)
}

// What a message calls a value that has parts.
const aTable, aList = "a table", "a list"

// notQuoted is what is wrong with a value that is no text; it needs no other words.
const notQuoted = "put quotes around"

func (d *Document) readDone(value any) {
	list, ok := value.([]any)
	if !ok {
		d.refuse("progress.done", d.asWritten("progress.done", value), "is not a list", `Write it like ["sleeve-mark"]`)
		return
	}
	for _, v := range list {
		id, ok := v.(string)
		if !ok {
			d.refuse("progress.done", plainly(v), notQuoted, `Write it like ["sleeve-mark"]`)
			continue
		}
		d.Sheet.Done = append(d.Sheet.Done, id)
	}
}

// readFittings takes [[fitting]] tables, or the same as a list on one line.
func (d *Document) readFittings(value any) {
	list, ok := tablesOf(value)
	if !ok {
		d.refuse("fitting", d.asWritten("fitting", value), "is not a list of tables", "Write [[fitting]] on a line of its own")
		return
	}
	for i, table := range list {
		d.Sheet.Fittings = append(d.Sheet.Fittings, d.readFitting(i, table))
	}
}

// tablesOf is a list of tables, however it was written.
func tablesOf(value any) (list []map[string]any, ok bool) {
	switch v := value.(type) {
	case []map[string]any:
		return v, true
	case []any:
		for _, e := range v {
			table, ok := e.(map[string]any)
			if !ok {
				return nil, false
			}
			list = append(list, table)
		}
		return list, true
	}
	return nil, false
}

func (d *Document) readFitting(i int, table map[string]any) (f Fitting) {
	refuse := func(name, reason, want string) {
		place := nth("fitting", i) + "." + name
		d.mistyped = append(d.mistyped, Problem{d.name, d.line(place), "fitting." + name,
			&ValueError{d.asWritten(place, table[name]), reason, want}})
	}
	for _, key := range slices.Sorted(maps.Keys(table)) {
		switch v := table[key].(type) {
		case time.Time:
			if key == "date" && v.Year() > 0 {
				f.Date = v.Format(time.DateOnly)
				continue
			}
		case string:
			if key == "note" {
				f.Note = v
				continue
			}
			if key == "date" {
				if f.Date = v; v != "" && !isDay(v) {
					refuse(key, "is no day of the calendar", "Write it like 2026-11-20")
				}
				continue
			}
		}
		switch key {
		case "date":
			refuse(key, "is not a day", "Write it like 2026-11-20")
		case "note":
			refuse(key, notQuoted, `Write it like note = "tight at the back"`)
		default:
			d.note("fitting."+key, key, []string{"date", "note"})
		}
	}
	return f
}

func isDay(text string) bool {
	_, err := time.Parse(time.DateOnly, text)
	return err == nil
}

// asWritten is a value as it stands in the file, or what it is where that is
// long.
func (d *Document) asWritten(path string, value any) string {
	if text, ok := value.(string); ok {
		return text
	}
	if place, ok := d.layout().values[path]; ok {
		if raw := string(d.source[place.start:place.end]); !strings.ContainsAny(raw, "\n{[") {
			return raw
		}
	}
	return plainly(value)
}

// plainly says what a value is.
func plainly(value any) string {
	switch v := value.(type) {
	case string:
		return v
	case map[string]any:
		return aTable
	case []map[string]any:
		return "a list of tables"
	case []any:
		return aList
	}
	return fmt.Sprint(value)
}

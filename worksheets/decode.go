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
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// FileError says why a file could not be read as a worksheet at all.
type FileError struct {
	File   string
	Line   int    // 0 where no line is to blame
	Text   string // the line, where there is one
	Reason string
	Want   string
}

// Error is one line: file, line, text, reason, what is read.
func (e *FileError) Error() string {
	msg := quoteName(e.File)
	if e.Line > 0 {
		msg += fmt.Sprintf(", line %d", e.Line)
	}
	if e.Text != "" {
		msg += fmt.Sprintf(", %q", shorten(e.Text))
	}
	msg += ": " + e.Reason
	if e.Want != "" {
		msg += "; read would be " + e.Want
	}
	return msg
}

// Problem is one value that could not be read. The rest of the file still can.
type Problem struct {
	File string
	Line int // 0 for an answer that never was in a file
	Path string
	Err  error
}

// Error is one line: file, line, key, text, reason, what is read.
func (p *Problem) Error() string {
	msg := quoteName(p.File)
	if p.Line > 0 {
		msg += fmt.Sprintf(", line %d", p.Line)
	}
	if msg != "" {
		msg += ": "
	}
	return msg + p.Path + ": " + p.Err.Error()
}

// Unwrap is the reason.
func (p *Problem) Unwrap() error { return p.Err }

// quoteName shows a file name as it is, unless it would do something to a
// terminal.
func quoteName(name string) string {
	if q := strconv.Quote(name); q[1:len(q)-1] != name {
		return q
	}
	return name
}

func shorten(s string) string {
	const most = 60
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most]) + "..."
}

// Document is a worksheet with the file it was read from.
type Document struct {
	Sheet Sheet // to be changed freely
	// ReadOnly says why the file must not be overwritten; "" where it may.
	ReadOnly string

	name     string
	source   []byte    // the file as it was last read or written; nil for none
	read     Sheet     // the sheet that source says
	places   *layout   // found when first asked for; see layout
	mistyped []Problem // values that are not even text, and so not in the sheet
	unknown  []Problem
	ours     bool // it has a table or the version of a worksheet
}

// Decode reads a worksheet. The name is for messages. The error is a
// *[FileError]; values that cannot be read are no error but
// [Document.Problems].
func Decode(name string, source []byte) (*Document, error) {
	if err := guard(name, source); err != nil {
		return nil, err
	}
	text := bytes.TrimPrefix(source, []byte("\ufeff"))
	var tree map[string]any
	if _, err := toml.Decode(string(text), &tree); err != nil {
		return nil, syntaxError(name, source, err)
	}
	d := &Document{name: name, source: source}
	for _, table := range slices.Sorted(maps.Keys(tree)) {
		d.readTable(table, tree[table])
	}
	d.read = d.Sheet
	return d, nil
}

// layout tells where things stand in the source. Most readings never ask.
func (d *Document) layout() *layout {
	if d.places == nil {
		d.places = locate(d.source)
	}
	return d.places
}

func (d *Document) line(path string) int { return d.layout().line(path) }

// syntaxError turns the reader's error into ours.
func syntaxError(name string, source []byte, err error) error {
	var bad toml.ParseError
	if !errors.As(err, &bad) {
		return &FileError{File: name, Reason: err.Error(), Want: "TOML 1.0"}
	}
	fault := &FileError{File: name, Line: bad.Position.Line, Reason: bad.Message, Want: `TOML 1.0, such as bicep = "13 3/4"`}
	if lines := strings.Split(string(source), "\n"); fault.Line >= 1 && fault.Line <= len(lines) {
		fault.Text = strings.TrimSpace(lines[fault.Line-1])
	}
	return fault
}

// readTable takes one key of the top level: a table of answers, or one of the
// few keys that are none.
func (d *Document) readTable(name string, value any) {
	known := slices.Contains(tables(), name)
	d.ours = d.ours || known || name == "version"
	switch name {
	case "version":
		d.readVersion(value)
		return
	case "fitting":
		d.readFittings(value)
		return
	}
	table, ok := value.(map[string]any)
	switch {
	case !known:
		d.note(name, "", tables())
		return
	case !ok:
		d.refuse(name, written(value), "it must be a table", fmt.Sprintf("[%s] on a line of its own", name))
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
func (d *Document) note(path, name string, known []string) {
	if len(d.unknown) == mostUnknown {
		d.unknown = append(d.unknown, Problem{d.name, 0, "...", errors.New("there are more such keys; all are kept")})
	}
	if len(d.unknown) > mostUnknown {
		return
	}
	reason := "no answer of the worksheet is called so; it is kept and not used"
	for _, k := range known {
		if name != "" && strings.EqualFold(k, name) {
			reason += fmt.Sprintf("; did you mean %q?", k)
		}
	}
	d.unknown = append(d.unknown, Problem{d.name, d.line(path), path, errors.New(reason)})
}

func tables() []string {
	return []string{"about", "body", "ease", "sleeve", "bodice", "method", "progress", "fitting"}
}

func namesIn(table string) []string {
	var names []string
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
		d.refuse("version", written(value), "it must be a whole number from 1", fmt.Sprintf("version = %d", Version))
		d.ReadOnly = "its version cannot be read"
	case v > Version:
		d.ReadOnly = fmt.Sprintf("it has version %d, and this program writes version %d", v, Version)
	}
}

// readAnswer takes one value; dates and counts have TOML types of their own.
func (d *Document) readAnswer(k Key, value any) {
	text, ok := value.(string)
	want := fmt.Sprintf("text in quotes, such as %s = %q", k.name(), "13 3/4")
	switch value.(type) {
	case int64, float64:
		want = fmt.Sprintf("text in quotes, such as %s = %q", k.name(), written(value))
	}
	if k.Kind() == Choice {
		want = quotedList(k.Options())
	}
	switch v := value.(type) {
	case time.Time:
		if k.Kind() == Date {
			text, ok = v.Format(time.DateOnly), true
		}
	case int64:
		if k.Kind() == Count {
			text, ok = strconv.FormatInt(v, 10), true
		}
	}
	if !ok {
		d.refuse(k.Path(), written(value), "it is not text in quotes", want)
		return
	}
	d.Sheet.answers[k] = strings.TrimSpace(text)
}

func (d *Document) readDone(value any) {
	list, ok := value.([]any)
	if !ok {
		d.refuse("progress.done", written(value), "it must be a list", `a list such as ["sleeve-mark"]`)
		return
	}
	for _, v := range list {
		id, ok := v.(string)
		if !ok {
			d.refuse("progress.done", written(v), "every step must be text in quotes", `a list such as ["sleeve-mark"]`)
			continue
		}
		d.Sheet.Done = append(d.Sheet.Done, id)
	}
}

func (d *Document) readFittings(value any) {
	list, ok := value.([]map[string]any)
	if !ok {
		d.refuse("fitting", written(value), "it must be a list of tables", "[[fitting]] on a line of its own")
		return
	}
	for _, table := range list {
		var f Fitting
		switch v := table["date"].(type) {
		case time.Time:
			f.Date = v.Format(time.DateOnly)
		case string:
			f.Date = v
		case nil:
		default:
			d.refuse("fitting.date", written(v), "it is not a day", "a date such as 2026-11-20")
		}
		switch v := table["note"].(type) {
		case string:
			f.Note = v
		case nil:
		default:
			d.refuse("fitting.note", written(v), "it is not text in quotes", "text in quotes")
		}
		d.Sheet.Fittings = append(d.Sheet.Fittings, f)
	}
}

// written is a value as a message shows it.
func written(value any) string {
	switch v := value.(type) {
	case string:
		return v
	case map[string]any, []map[string]any:
		return "a table"
	case []any:
		return "a list"
	case time.Time:
		return v.Format(time.DateOnly)
	}
	return fmt.Sprint(value)
}

// Problems lists every value that cannot be read now, in the order of the file.
func (d *Document) Problems() []Problem {
	var problems []Problem
	for _, p := range d.mistyped {
		if k, ok := KeyNamed(p.Path); !ok || d.Sheet.answers[k] == d.read.answers[k] {
			problems = append(problems, p)
		}
	}
	for _, k := range Keys() {
		if err := d.Sheet.Check(k); err != nil {
			problems = append(problems, Problem{d.name, d.line(k.Path()), k.Path(), err})
		}
	}
	slices.SortStableFunc(problems, func(a, b Problem) int { return a.Line - b.Line })
	return problems
}

// Unknown lists the keys of the file that nothing here uses. They are kept.
func (d *Document) Unknown() []Problem { return d.unknown }

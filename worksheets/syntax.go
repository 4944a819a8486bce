package worksheets

import (
	"errors"
	"fmt"
	"strings"
	"time"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// What is said where the file is no TOML: in everyday words what is wrong with the line, and
// the line as it should be. For that the key is looked up, by the header above: a title is
// not written like a length, and what reads in quotes need only be put into them.

// syntaxError turns the reader's error into ours.
func syntaxError(name string, source []byte, err error) error {
	var bad toml.ParseError
	if !errors.As(err, &bad) {
		return &FileError{File: name, Reason: err.Error()}
	}
	if strings.Contains(bad.Message, "NULL bytes") { // of which no line can be shown
		return &FileError{File: name, Reason: "it is not in UTF-8", Want: saveAsUTF8}
	}
	fault := &FileError{File: name, Line: bad.Position.Line}
	lines := strings.Split(strings.TrimPrefix(string(source), "\ufeff"), "\n")
	if strings.Contains(bad.Message, "to end table name, but got '\\n'") && fault.Line > 1 {
		fault.Line-- // the line break belongs to the header that it ends too early
	}
	table := ""
	if fault.Line >= 1 && fault.Line <= len(lines) {
		fault.Text = strings.TrimSpace(lines[fault.Line-1])
		table = tableAbove(lines[:fault.Line-1])
	}
	fault.Reason, fault.Want = plainSyntax(bad.Message, table, fault.Text)
	return fault
}

const saveAsUTF8 = "Save the file as UTF-8"

// tableAbove is the table that lines leave open, "" for the top of the file.
func tableAbove(lines []string) string {
	for i := len(lines) - 1; i >= 0; i-- {
		if line := strings.TrimSpace(lines[i]); strings.HasPrefix(line, "[") {
			name, _, _ := strings.Cut(strings.TrimLeft(line, "[ "), "]")
			return strings.TrimSpace(name)
		}
	}
	return ""
}

// keyAndValue are the two parts of a line, whatever stands between them and with no quotes.
// What a comment behind a bare value says is no part of it.
func keyAndValue(line string) (key, value string) {
	line = strings.TrimLeft(line, "\"'")
	key, value = line, ""
	if at := strings.IndexAny(line, " \t=:"); at >= 0 {
		key, value = line[:at], strings.TrimLeft(line[at:], " \t=:")
	}
	if !strings.HasPrefix(value, `"`) && !strings.HasPrefix(value, "'") {
		value, _, _ = strings.Cut(value, " #")
	}
	return strings.TrimRight(key, "\"'"), strings.TrimSpace(strings.Trim(strings.TrimSpace(value), "\"'"))
}

// quotedPart is the value of a line that is in quotes and has something behind it, "" for none.
func quotedPart(line string) string {
	_, value, _ := strings.Cut(line, "=")
	value = strings.TrimSpace(value)
	if !strings.HasPrefix(value, `"`) && !strings.HasPrefix(value, "'") {
		return ""
	}
	inside, behind, ended := strings.Cut(value[1:], value[:1])
	if !ended || strings.TrimSpace(behind) == "" {
		return ""
	}
	return inside
}

// plainSyntax says in everyday words what the reader of TOML found in a line, and what to
// write; what it has no words for it passes on.
func plainSyntax(message, table, line string) (reason, want string) {
	has := func(part string) bool { return strings.Contains(message, part) }
	key, value := keyAndValue(line)
	k, path, known := keyAt(table, key)
	want = lineLike(k, known, path, key, value)
	ours := known || path == "version" || path == "progress.done" || strings.HasPrefix(path, "fitting.")
	quotes := "put quotes around the value"
	if path == "progress.done" {
		quotes = "put quotes around each step"
	}
	switch {
	case has("to end table name"):
		return "it needs a closing bracket", "Write it like [body]"
	case has("has already been defined"):
		return "it is here a second time", "Keep one of the two"
	case has("invalid UTF-8"):
		return "it is not in UTF-8", saveAsUTF8
	case has("control characters"):
		return "it has a character that does not show", lineLike(k, known, path, key, "")
	case has("invalid escape"):
		return `a \ in double quotes is written twice`, `Write \\ instead of \`
	case has("array terminator"):
		return "the list needs a comma or a closing bracket", `Write it like done = ["sleeve-mark"]`
	case has("inline table terminator"):
		return "put quotes around every value between { and }", ""
	case strings.HasPrefix(line, "["):
		return "its brackets do not match", "Write it like [body]"
	case strings.HasPrefix(line, "="):
		return "it needs a key before =", `Write it like bicep = "13 3/4"`
	case has("expected a top-level item to end with a newline") && quotedPart(line) != "":
		return "something stands behind the value", lineLike(k, known, path, key, quotedPart(line))
	case has("expected '.' or '='") && !ours: // it may be anything, a letter say: a line is shown how it looks
		return "it needs = and a value", `Write it like bicep = "13 3/4"`
	case has("expected '.' or '='") && value != "":
		return "it needs = before the value", want
	case has("expected '.' or '='"):
		return "it needs = and a value", want
	case has("expected value") && value == "":
		return "it needs a value", want
	case has("strings cannot contain newlines"), has("unexpected EOF") && strings.Count(line, `"`)%2 == 1:
		return "it needs a closing quote", want
	case known && k.Kind() == Date, path == "fitting.date":
		return noDay(value), want
	case has("expected value"), has("expected a top-level item to end with a newline"), has("expected a digit"),
		has("Invalid integer"), has("Invalid float"), has("invalid datetime"):
		return quotes, want
	}
	return message, ""
}

// noDay says what is wrong with a day that TOML does not take.
func noDay(value string) string {
	var year, month, day int
	if n, _ := fmt.Sscanf(value, "%d-%d-%d", &year, &month, &day); n == 3 {
		if _, err := time.Parse("2006-1-2", value); err != nil {
			return "there is no such day"
		}
	}
	return "write year, month and day"
}

// keyAt is the answer that a key of a table is, and its path; known is false where it is none.
func keyAt(table, key string) (k Key, path string, known bool) {
	path = strings.TrimPrefix(table+"."+key, ".")
	if inSize, ok := strings.CutPrefix(path, "size."); ok {
		k, known = keyInSize(inSize)
		return k, path, known
	}
	k, known = KeyNamed(path)
	return k, path, known
}

// lineLike is how a line should have been written, "" for a key of which nothing is known but
// that it has no value.
func lineLike(k Key, known bool, path, key, value string) string {
	switch {
	case known:
		return writeLike(k, key, value)
	case path == "version":
		return fmt.Sprintf("Write version = %d", Version)
	case path == "progress.done":
		return `Write it like done = ["sleeve-mark"]`
	case path == "fitting.date":
		return "Write it like date = 2026-11-20"
	case path == "fitting.note" && value == "":
		return `Write it like note = "tight at the back"`
	case value == "" || path != "fitting.note" && !isBareKey(key):
		return ""
	}
	return fmt.Sprintf("Write it like %s = %q", key, shorten(value))
}

// isBareKey tells what TOML takes for a key without quotes, if it is no longer than one here.
func isBareKey(text string) bool {
	const most = 30
	return text != "" && len(text) <= most && strings.Trim(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") == ""
}

// writeLike says how an answer should have been written that was no text, or no TOML: as it
// stands but in quotes where that can be read, else by example.
func writeLike(k Key, name, raw string) string {
	text := raw
	var s Sheet
	day, err := time.Parse("2006-1-2", raw)
	switch {
	case k.Kind() == Date && err == nil:
		text = day.Format(time.DateOnly)
	case raw == "" || raw == aTable || raw == aList || s.Set(k, raw) != nil || utf8.RuneCountInString(raw) > mostOffered:
		text = exampleOf(k)
	}
	return fmt.Sprintf("Write it like %s = %q", name, text)
}

// mostOffered is how long an answer is at most that is offered as it stands.
const mostOffered = 60

// exampleOf is an answer as it may be written.
func exampleOf(k Key) string {
	switch {
	case k.Kind() == Choice:
		return k.Options()[0]
	case k == PatternSize:
		return "16"
	}
	text := map[Kind]string{Text: "some words", Date: "2026-10-03", Scale: "1/8 in", Part: "1/2", Slid: "least", Count: "1"}[k.Kind()]
	if text == "" {
		return "13 3/4"
	}
	return text
}

package show

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"sync"
	"unicode/utf16"
	"unicode/utf8"

	"capscye/ui/typeset"
)

// Encode writes one value, indented, with every character escaped that a
// terminal could take for a command.
func Encode(v any) ([]byte, error) { return encoded("", v, "\n") }

// Element is a value as it stands in an array behind another one; the first has a bracket
// in the place of the comma.
func Element(v any) ([]byte, error) { return encoded(",\n", v, "") }

// First makes an element the first of its array.
func First(element []byte) []byte {
	element[0] = '['
	return element
}

// encoded is a value between two texts.
func encoded(lead string, v any, end string) ([]byte, error) {
	room := rooms.Get().(*[]byte)
	defer rooms.Put(room)
	out, ok := appendJSON(append((*room)[:0], lead...), reflect.ValueOf(v), 0)
	if !ok {
		compact, err := compacted(v)
		if err != nil {
			return nil, err
		}
		out = append(append(out[:0], lead...), bytes.TrimSuffix(indented(compact), []byte("\n"))...)
	}
	*room = append(out, end...)
	return bytes.Clone(*room), nil
}

// rooms are where JSON is made, so that what is handed out is as long as it has to be.
var rooms = sync.Pool{New: func() any { return new([]byte) }}

// compacted is a value as the library writes it.
func compacted(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return b.Bytes(), err
}

// appendEscaped appends a text that has something to escape.
func appendEscaped(out []byte, text string) (_ []byte, ok bool) {
	compact, err := compacted(text)
	return appendHarmless(out, bytes.TrimSuffix(compact, []byte("\n"))), err == nil
}

// indented sets JSON without any space out on lines. The library would check
// once more, letter by letter, what it wrote itself.
func indented(compact []byte) []byte {
	out := make([]byte, 0, 2*len(compact))
	depth := 0
	breakLine := func() {
		out = append(out, '\n')
		for range depth {
			out = append(out, indent...)
		}
	}
	for i := 0; i < len(compact); i++ {
		c := compact[i]
		switch c {
		case '"':
			end := stringEnd(compact, i)
			out = appendHarmless(out, compact[i:end])
			i = end - 1
		case '{', '[':
			out = append(out, c)
			if next := compact[i+1]; next == '}' || next == ']' {
				out = append(out, next)
				i++
				continue
			}
			depth++
			breakLine()
		case '}', ']':
			depth--
			breakLine()
			out = append(out, c)
		case ',':
			out = append(out, c)
			breakLine()
		case ':':
			out = append(out, ": "...)
		default:
			out = append(out, c)
		}
	}
	return out
}

// stringEnd is the offset behind the string that starts at i.
func stringEnd(b []byte, i int) int {
	for i++; b[i] != '"'; i++ {
		if b[i] == '\\' {
			i++
		}
	}
	return i + 1
}

// appendHarmless appends a string of JSON, escaping what steers a terminal.
func appendHarmless(out, text []byte) []byte {
	for len(text) > 0 {
		n := 0
		for n < len(text) && ' ' <= text[n] && text[n] < 0x7f {
			n++
		}
		out, text = append(out, text[:n]...), text[n:]
		if len(text) == 0 {
			break
		}
		r, size := utf8.DecodeRune(text)
		switch {
		case !typeset.Unprintable(r):
			out = append(out, text[:size]...)
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			out = fmt.Appendf(out, `\u%04x\u%04x`, high, low)
		default:
			out = fmt.Appendf(out, `\u%04x`, r)
		}
		text = text[size:]
	}
	return out
}

package show

import (
	"bytes"
	"encoding/json"
	"fmt"
	"unicode/utf16"
	"unicode/utf8"

	"capscye/ui/typeset"
)

// Encode writes one value, indented, with every character escaped that a
// terminal could take for a command.
func Encode(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return indented(b.Bytes()), nil
}

// indented sets JSON without any space out on lines. The library would check
// once more, letter by letter, what it wrote itself.
func indented(compact []byte) []byte {
	out := make([]byte, 0, 2*len(compact))
	depth := 0
	breakLine := func() {
		out = append(out, '\n')
		for range depth {
			out = append(out, "  "...)
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

package show

import (
	"bytes"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"capscye/units"
)

// Writing JSON in one pass. The library makes it without a space, and it has to be set out
// on lines and looked at once more; over a folder that is a good part of the time. What is
// written for nearly every sheet, structs of numbers, texts and lists, is written here at
// once. Whatever else there may be is left to the library, whose bytes these are: the tests
// compare the two.

// member is a field of an object.
type member struct {
	index     int
	key       string // in quotes, with what stands between it and the value
	omitEmpty bool
}

// shapes are the members of the structs that were met; nil for one that is the library's.
var shapes sync.Map // of reflect.Type to []member

func membersOf(t reflect.Type) []member {
	if known, ok := shapes.Load(t); ok {
		return known.([]member)
	}
	var list []member
	for i := range t.NumField() {
		f := t.Field(i)
		name, rest, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous || !f.IsExported() || name == "" || name == "-" || rest != "" && rest != "omitempty" {
			list = nil
			break
		}
		list = append(list, member{i, strconv.Quote(name) + ": ", rest != ""})
	}
	shapes.Store(t, list)
	return list
}

// appendJSON appends a value, its lines indented by so many steps; ok is false where the
// library has to write it.
func appendJSON(out []byte, v reflect.Value, depth int) (_ []byte, ok bool) {
	switch v.Kind() {
	case reflect.Struct:
		return appendObject(out, v, depth)
	case reflect.Pointer:
		if v.IsNil() {
			return append(out, "null"...), true
		}
		return appendJSON(out, v.Elem(), depth)
	case reflect.Slice:
		if v.IsNil() {
			return append(out, "null"...), true
		}
		return appendArray(out, v, depth)
	case reflect.Array:
		return appendArray(out, v, depth)
	case reflect.Float64:
		return appendNumber(out, v.Float())
	case reflect.Int, reflect.Int64:
		return strconv.AppendInt(out, v.Int(), 10), true
	case reflect.Bool:
		return strconv.AppendBool(out, v.Bool()), true
	case reflect.String:
		return appendText(out, v.String())
	}
	return out, false
}

func appendObject(out []byte, v reflect.Value, depth int) (_ []byte, ok bool) {
	members := membersOf(v.Type())
	if len(members) == 0 {
		return out, false
	}
	out = append(out, '{')
	first := true
	for _, m := range members {
		field := v.Field(m.index)
		if m.omitEmpty {
			switch field.Kind() {
			case reflect.Slice, reflect.String, reflect.Pointer:
			default:
				return out, false
			}
			if field.IsZero() || field.Kind() == reflect.Slice && field.Len() == 0 {
				continue
			}
		}
		if !first {
			out = append(out, ',')
		}
		first = false
		out = append(appendLine(out, depth+1), m.key...)
		if out, ok = appendJSON(out, field, depth+1); !ok {
			return out, false
		}
	}
	if first {
		return out, false
	}
	return append(appendLine(out, depth), '}'), true
}

func appendArray(out []byte, v reflect.Value, depth int) (_ []byte, ok bool) {
	if v.Len() == 0 {
		return append(out, "[]"...), true
	}
	out = append(out, '[')
	for i := range v.Len() {
		if i > 0 {
			out = append(out, ',')
		}
		if out, ok = appendJSON(appendLine(out, depth+1), v.Index(i), depth+1); !ok {
			return out, false
		}
	}
	return append(appendLine(out, depth), ']'), true
}

// appendLine breaks the line, and indents the next by so many steps.
func appendLine(out []byte, depth int) []byte {
	const line = "\n                    "
	if end := 1 + len(indent)*depth; end <= len(line) {
		return append(out, line[:end]...)
	}
	out = append(out, '\n')
	for range depth {
		out = append(out, indent...)
	}
	return out
}

// appendNumber appends the shortest decimal that reads back as the same number.
func appendNumber(out []byte, f float64) (_ []byte, ok bool) {
	if n := math.Round(f * counts); n != 0 && math.Abs(n) < mostCounts && n/counts == f {
		return appendLength(out, int64(n)), true
	}
	switch size := math.Abs(f); {
	case math.IsNaN(f) || math.IsInf(f, 0):
		return out, false // the library says so
	case size == 0 || 1e-6 <= size && size < 1e21:
		return strconv.AppendFloat(out, f, 'f', -1, 64), true
	}
	out = strconv.AppendFloat(out, f, 'e', -1, 64)
	if n := len(out); out[n-3] == '-' && out[n-2] == '0' { // e-09 is written e-9
		out[n-2] = out[n-1]
		out = out[:n-1]
	}
	return out, true
}

// Most numbers are lengths, so many counts of 1/1280 mm, which is 0.00078125 mm: a decimal of
// eight places. Below mostCounts it has at most fifteen digits, of which no two are the same
// number, and so it is the shortest without its last zeros.
const (
	counts     = float64(units.Millimetre)
	mostCounts = 1e10
)

// appendLength appends the millimetres of a length.
func appendLength(out []byte, n int64) []byte {
	if n < 0 {
		out, n = append(out, '-'), -n
	}
	out = strconv.AppendInt(out, n/int64(units.Millimetre), 10)
	part := n % int64(units.Millimetre) * (1e8 / int64(units.Millimetre))
	if part == 0 {
		return out
	}
	out = append(out, ".00000000"...)
	for i := len(out) - 1; part > 0; i-- {
		out[i] = byte('0' + part%10)
		part /= 10
	}
	return bytes.TrimRight(out, "0")
}

// indent is one step.
const indent = "  "

// appendText appends a text of plain letters, in which nothing needs an escape.
func appendText(out []byte, text string) (_ []byte, ok bool) {
	for i := range len(text) {
		if c := text[i]; c < ' ' || c > '~' || c == '"' || c == '\\' {
			return appendEscaped(out, text)
		}
	}
	return append(append(append(out, '"'), text...), '"'), true
}

package worksheets

import (
	"bytes"
	"fmt"
)

// What a worksheet may be at most. The readers of TOML at the versions in use
// have no bounds of their own: a dotted key of 40 KB costs one of them seconds
// and gigabytes, and a deep nest of arrays overflows its stack, which nothing
// can recover from. So a file is measured before it is decoded.
//
// Brackets and the points of a key are bounded each, so that together they
// make at most MaxDepth x MaxDepth levels and a few; and there are not so many of
// either that their tables would fill the memory. Ten thousand fittings have
// twenty thousand brackets and no point in a key.
const (
	MaxBytes    = 768 << 10
	MaxDepth    = 5
	mostOpened  = 40_000
	mostPoints  = 2_000
	tooMuchText = "more keys, arrays or tables than a worksheet has"
)

// withinBounds tells at a glance that a file of the plain shape, in which nothing is nested,
// is within all bounds. It counts what stands in texts and comments too: where it says no,
// [checkBounds] decides.
func withinBounds(source []byte) bool {
	return len(source) <= MaxBytes && bytes.Count(source, []byte{'['})+bytes.Count(source, []byte{'{'}) <= mostOpened && bytes.Count(source, []byte{'.'}) <= mostPoints
}

// checkBounds refuses a file that is too large or nested too deeply, in one pass that
// knows just enough TOML to step over strings and comments.
func checkBounds(name string, source []byte) error {
	if len(source) > MaxBytes {
		return &FileError{File: name, Reason: "the file is too large",
			Want: fmt.Sprintf("A worksheet has at most %d bytes", MaxBytes)}
	}
	depth, dots, line := 0, 0, 1
	opened, points := 0, 0
	for i := 0; i < len(source); i++ {
		switch c := source[i]; c {
		case '\n':
			line, dots = line+1, 0
		case '#':
			for i+1 < len(source) && source[i+1] != '\n' {
				i++
			}
		case '"', '\'':
			end := skipString(source, i)
			for _, b := range source[i:end] {
				if b == '\n' {
					line++
				}
			}
			i = end - 1
		case '[', '{':
			depth, dots = depth+1, 0
			opened++
		case ']', '}':
			depth, dots = max(depth-1, 0), 0
		case '=', ',':
			dots = 0
		case '.':
			dots++
			points++
		}
		if opened > mostOpened || points > mostPoints {
			return &FileError{File: name, Line: line, Reason: tooMuchText}
		}
		if depth > MaxDepth || dots >= MaxDepth {
			return &FileError{File: name, Line: line, Reason: "keys, arrays or tables are nested too deeply",
				Want: fmt.Sprintf("At most %d levels of brackets, or parts of a key, are read", MaxDepth)}
		}
	}
	return nil
}

// skipString is the offset behind the string that starts at i; one that never
// ends stops at its line's end, or at the end of the file when it may span lines.
func skipString(source []byte, i int) int {
	quote := source[i]
	long := i+2 < len(source) && source[i+1] == quote && source[i+2] == quote
	if long {
		i += 3
	} else {
		i++
	}
	for ; i < len(source); i++ {
		switch c := source[i]; {
		case c == '\\' && quote == '"':
			i++
		case c == '\n' && !long:
			return i
		case c != quote:
		case !long:
			return i + 1
		case i+2 < len(source) && source[i+1] == quote && source[i+2] == quote:
			for i += 3; i < len(source) && source[i] == quote; i++ { // up to two quotes belong to the text
			}
			return i
		}
	}
	return len(source)
}

package worksheets

import "fmt"

// FileError says why a file could not be read as a worksheet at all.
type FileError struct {
	File   string
	Line   int    // 0 where no line is to blame
	Text   string // the line, where there is one
	Reason string
	Want   string // what to do, as a sentence
}

// Error is one line: file, line, text, reason, what to do.
func (e *FileError) Error() string {
	msg := placeIn(e.File, e.Line)
	if e.Text != "" {
		msg += fmt.Sprintf(", %q", shorten(e.Text))
	}
	msg += ": " + shortenMiddle(200, Printable(e.Reason))
	if e.Want != "" {
		msg += ". " + e.Want
	}
	return msg
}

// placeIn is a place in a file as messages begin; line 0 is none.
func placeIn(file string, line int) string {
	if line == 0 {
		return Printable(file)
	}
	return fmt.Sprintf("%s, line %d", Printable(file), line)
}

// Problem is one value that could not be read. The rest of the file still can.
type Problem struct {
	File string
	Line int // 0 for an answer that never was in a file
	Path string
	Err  error
}

// Error is one line: file, line, key, what is wrong, an example of what is right.
func (p *Problem) Error() string {
	msg := placeIn(p.File, p.Line)
	if msg != "" {
		msg += ": "
	}
	return msg + shorten(Printable(p.Path)) + ": " + p.Err.Error()
}

// Unwrap is the reason.
func (p *Problem) Unwrap() error { return p.Err }

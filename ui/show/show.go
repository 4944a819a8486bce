// Package show prints a worksheet as text, as the steps at the table, and as JSON.
package show

import (
	"errors"
	"os"
	"runtime"
	"slices"
	"strings"

	"capscye/ui/console"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Printing sheets: reading, computing and putting into words is done on every
// processor; the sheets and what is to be said about them still come out in the
// order of the files, one by one.

// Options say how sheets are printed; none is as text.
type Options struct{ json, sentences, working, trace bool }

// printed is one sheet ready to be written.
type printed struct {
	text    []byte // nil where there is nothing to write
	remarks []error
	status  int
	err     error // why there is no text, though the file was read
}

// Print prints the sheets one by one, so that memory stays flat however many
// there are. Without names it is the built-in example.
func Print(s *console.Session, names []string, o Options) error {
	several := o.json && len(names) > 1
	workers := runtime.GOMAXPROCS(0)
	if slices.Contains(names, "-") { // what comes first must read it first
		workers = 1
	}
	work := func(name string) printed { return printedOf(s, name, len(names) == 0, several, o) }
	err := console.InOrder(append(names, exampleIfNone(names)...), workers, work, func(i int, p printed) error {
		s.Worse(p.status)
		for _, r := range p.remarks {
			s.Complain(r)
		}
		switch {
		case p.err != nil:
			return p.err
		case p.text == nil:
			return nil
		case several && i == 0:
			p.text = First(p.text)
		case several:
		case i > 0 && o.sentences:
			p.text = append([]byte("The next worksheet.\n"), p.text...)
		case i > 0:
			p.text = append([]byte(strings.Repeat("-", typeset.PrintWidth)+"\n"), p.text...)
		}
		return s.Write(p.text)
	})
	if err == nil && several {
		err = s.Write([]byte("\n]\n"))
	}
	return err
}

// printedOf is one sheet in the form that was asked for. In an array, a file that
// cannot be read has its place too.
func printedOf(s *console.Session, name string, example, array bool, o Options) (p printed) {
	r, remarks, err := judged(s, name, example)
	switch {
	case err != nil:
		p = printed{remarks: []error{err}, status: console.ExitUnread}
		if array {
			p.text, p.err = Element(Failure{name, console.FileWords(err)})
		}
		return p
	case !r.Whole():
		p.status = console.ExitUnfinished
	}
	p.remarks = remarks
	switch {
	case o.trace && o.json:
		p.text, p.err = Encode(stepsOf(r))
	case o.json && array:
		p.text, p.err = Element(SheetOf(r, o.working))
	case o.json:
		p.text, p.err = Encode(SheetOf(r, o.working))
	case o.trace && o.sentences:
		said := tracing.Sentences(r)
		p.text = []byte(said.Text())
	case o.sentences:
		said := Sentences(r, o.working)
		p.text = []byte(said.Text())
	case o.trace:
		p.text = []byte(tracing.Text(r))
	default:
		p.text = []byte(Text(r, o.working))
	}
	return p
}

func exampleIfNone(names []string) []string {
	if len(names) == 0 {
		return worksheets.Examples()[:1]
	}
	return nil
}

// Reckoned reads a sheet and computes it. What is wrong in it goes to the error
// stream and into the exit status.
func Reckoned(s *console.Session, name string) (report.Report, error) {
	r, remarks, err := judged(s, name, false)
	if err != nil {
		return report.Report{}, err
	}
	for _, e := range remarks {
		s.Complain(e)
	}
	if !r.Whole() {
		s.Worse(console.ExitUnfinished)
	}
	return r, nil
}

// judged reads a sheet, or an example, and computes it; remarks is what is wrong in it. It says
// nothing itself, so that several sheets can be judged at once.
func judged(s *console.Session, name string, example bool) (r report.Report, remarks []error, err error) {
	var d *worksheets.Document
	if example {
		d, err = worksheets.Example(name)
	} else {
		d, err = Opened(s, name)
	}
	if err != nil {
		return report.Report{}, nil, err
	}
	r = report.Reckon(d, s.Today, 0)
	for _, p := range r.Problems {
		remarks = append(remarks, &p)
	}
	for _, p := range d.Unknown() {
		remarks = append(remarks, &p)
	}
	return r, remarks, nil
}

// Opened reads a worksheet by name, from standard input for "-".
func Opened(s *console.Session, name string) (*worksheets.Document, error) {
	if name == "-" {
		return worksheets.Read("standard input", s.In)
	}
	d, _, err := console.LoadNamed(name)
	var other *worksheets.FileError
	if errors.As(err, &other) && isPipe(name) { // few are, so it is asked of those alone that are no file
		return worksheets.ReadPipe(name)
	}
	return d, err
}

// isPipe tells what a shell hands over for <(command).
func isPipe(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.Mode()&(os.ModeNamedPipe|os.ModeCharDevice) != 0
}

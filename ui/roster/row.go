package roster

import (
	"errors"
	"fmt"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"capscye/ui/console"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// Row is what is seen of a sheet among others. It is small, and holds on
// to nothing of the file.
type Row struct {
	Path          string
	Failure       string // why it cannot be read; nothing else is known then
	title, wearer string
	Needs         [2]string // of sleeve and bust, in unit
	Unit          string    // of the ruler that is held, so that a row has one
	verdict       report.Verdict
	line          int            // of the file that cannot be read, 0 for none
	finding       report.Finding // the gravest, without its text
	found         bool           // there is one
	written       time.Time
}

// RowOf reads a file of a folder and computes it. ok is false for a file
// that is somebody else's.
func RowOf(path string, by report.Reckoner) (row Row, r report.Report, ok bool) {
	d, err := worksheets.Load(path)
	if err != nil {
		row = Row{Path: path, Failure: console.FileWords(err), verdict: report.Verdict{State: report.Unreadable}}
		var at *worksheets.FileError
		if errors.As(err, &at) {
			row.line = at.Line
		}
		return row, report.Report{}, true
	}
	if !d.Ours() {
		return Row{}, report.Report{}, false
	}
	r = by.Reckon(d, 0)
	worst, found := r.Gravest()
	held := units.Scale{System: r.Scale.Ruler.System(), Ruler: r.Scale.Ruler}
	row = Row{
		Path: path, written: d.Written(), Unit: held.System.String(), found: found, verdict: r.Verdict(),
		title: strings.Clone(r.Sheet.Text(worksheets.Title)), wearer: strings.Clone(r.Sheet.Text(worksheets.Wearer)),
		finding: report.Finding{Code: worst.Code, Level: worst.Level},
	}
	for i, p := range r.Pieces() {
		row.Needs[i] = wording.OrDash(p.Girth.Need, held)
	}
	return row, r, true
}

// Rows are the sheets of a folder in the order of their file names.
func Rows(folder string, today time.Time) ([]Row, error) {
	paths, err := worksheets.Files(folder)
	if err != nil {
		return nil, err
	}
	type maybe struct {
		row  Row
		ours bool
	}
	var rows []Row
	err = console.InOrder(paths, runtime.GOMAXPROCS(0), func(path string) maybe {
		row, _, ours := RowOf(path, report.Reckoner{Today: today, Brief: true})
		return maybe{row, ours}
	}, func(_ int, m maybe) error {
		if m.ours {
			rows = append(rows, m.row)
		}
		return nil
	})
	return rows, err
}

// File is the name by which a sheet is known in its folder.
func (r Row) File() string { return typeset.Plain(filepath.Base(r.Path)) }

// Day is when the file was last saved.
func (r Row) Day() string { return r.written.Format(time.DateOnly) }

// state is how far the sheet is, as other programs read it; of one that cannot be read it
// says where.
func (r Row) state() string {
	if r.Failure != "" && r.line > 0 {
		return fmt.Sprintf("%s: line %d", r.verdict.Short(), r.line)
	}
	return r.verdict.StateWords()
}

// level is the word for the gravest finding.
func (r Row) level() string {
	switch {
	case r.Failure != "":
		return ""
	case !r.found:
		return "-"
	}
	return r.finding.Level.String()
}

// reason says why a file cannot be read, without naming it once more.
func (r Row) reason() string {
	reason := typeset.Plain(r.Failure)
	if rest, ok := strings.CutPrefix(reason, typeset.Plain(r.Path)); ok {
		reason = strings.TrimLeft(rest, ":, ")
	}
	return reason
}

// Columns are the row on one line of a width, with what is given behind it.
func (r Row) Columns(width int, rest string) string {
	if r.Failure != "" {
		return typeset.Pad(r.File(), fileWidth(width)) + " " + typeset.Pad(r.verdict.Short(), report.ShortWidth) + " " + r.reason()
	}
	return columnsOf(width, r.File(), r.verdict.Short(), r.Needs, r.Unit, rest)
}

// Head names the columns.
func Head(width int, rest string) string {
	return columnsOf(width, "File", "state", [2]string{"sleeve", "bust"}, "", rest)
}

// columnsOf lets the name of the file give way; an amount is never cut.
func columnsOf(width int, file, state string, needs [2]string, unit, rest string) string {
	line := typeset.Pad(file, fileWidth(width)) + " " + typeset.Pad(state, report.ShortWidth)
	for _, n := range needs {
		line += strings.Repeat(" ", max(1, 9-len(n))) + n
	}
	return strings.TrimRight(line+" "+typeset.Pad(unit, 2)+"  "+rest, " ")
}

func fileWidth(width int) int { return max(8, min(width*3/10, 30)) }

// ForWhom is wearer and title, as far as they are given.
func (r Row) ForWhom() string {
	return strings.Trim(typeset.Plain(r.wearer)+", "+typeset.Plain(r.title), ", ")
}

package ui

import (
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// rosterRow is what is seen of a sheet among others. It is small, and holds on
// to nothing of the file.
type rosterRow struct {
	path          string
	failure       string // why it cannot be read; nothing else is known then
	title, wearer string
	needs         [2]string // of sleeve and bust, in unit
	unit          string
	finding       report.Finding // the gravest, without its text
	found         bool           // there is one
	written       time.Time
}

// rosterRowOf reads a file of a folder and computes it. ok is false for a file
// that is somebody else's.
func rosterRowOf(path string, today time.Time) (row rosterRow, r report.Report, ok bool) {
	d, err := worksheets.Load(path)
	if err != nil {
		return rosterRow{path: path, failure: fileWords(err)}, report.Report{}, true
	}
	if !d.Ours() {
		return rosterRow{}, report.Report{}, false
	}
	r = report.Reckon(d, today, 0)
	worst, found := r.Gravest()
	row = rosterRow{
		path: path, written: d.Written(), unit: r.Scale.System.String(), found: found,
		title: strings.Clone(r.Sheet.Text(worksheets.Title)), wearer: strings.Clone(r.Sheet.Text(worksheets.Wearer)),
		finding: report.Finding{Code: worst.Code, Level: worst.Level},
	}
	for i, p := range r.Pieces() {
		row.needs[i] = wording.OrDash(p.Girth.Need, r.Scale)
	}
	return row, r, true
}

// rosterRows are the sheets of a folder in the order of their file names.
func rosterRows(folder string, today time.Time) ([]rosterRow, error) {
	paths, err := worksheets.Files(folder)
	if err != nil {
		return nil, err
	}
	type maybe struct {
		row  rosterRow
		ours bool
	}
	var rows []rosterRow
	err = inOrder(paths, runtime.GOMAXPROCS(0), func(path string) maybe {
		row, _, ours := rosterRowOf(path, today)
		return maybe{row, ours}
	}, func(_ int, m maybe) error {
		if m.ours {
			rows = append(rows, m.row)
		}
		return nil
	})
	return rows, err
}

// file is the name by which a sheet is known in its folder.
func (r rosterRow) file() string { return typeset.Plain(filepath.Base(r.path)) }

// day is when the file was last saved.
func (r rosterRow) day() string { return r.written.Format(time.DateOnly) }

// level is the word for the gravest finding.
func (r rosterRow) level() string {
	switch {
	case r.failure != "":
		return ""
	case !r.found:
		return "-"
	}
	return r.finding.Level.String()
}

// reason says why a file cannot be read, without naming it once more.
func (r rosterRow) reason() string {
	reason := typeset.Plain(r.failure)
	if rest, ok := strings.CutPrefix(reason, typeset.Plain(r.path)); ok {
		reason = strings.TrimLeft(rest, ":, ")
	}
	return "cannot be read: " + reason
}

// columns are the row on one line of a width, with what is given behind it.
func (r rosterRow) columns(width int, rest string) string {
	if r.failure != "" {
		return typeset.Pad(r.file(), rosterFileWidth(width)) + " " + r.reason()
	}
	return rosterColumns(width, r.file(), r.level(), r.needs, r.unit, rest)
}

// rosterHead names the columns.
func rosterHead(width int, rest string) string {
	return rosterColumns(width, "File", "level", [2]string{"sleeve", "bust"}, "", rest)
}

// rosterColumns lets the name of the file give way; an amount is never cut.
func rosterColumns(width int, file, level string, needs [2]string, unit, rest string) string {
	line := typeset.Pad(file, rosterFileWidth(width)) + " " + typeset.Pad(level, 5)
	for _, n := range needs {
		line += strings.Repeat(" ", max(1, 9-len(n))) + n
	}
	return strings.TrimRight(line+" "+typeset.Pad(unit, 2)+"  "+rest, " ")
}

func rosterFileWidth(width int) int { return max(8, min(width*3/10, 30)) }

// forWhom is wearer and title, as far as they are given.
func (r rosterRow) forWhom() string {
	return strings.Trim(typeset.Plain(r.wearer)+", "+typeset.Plain(r.title), ", ")
}

package paper

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/ui/tracing"
	"capscye/ui/typeset"
	"capscye/worksheets/disk"
)

// maker makes cards.
var maker = Maker{"capscye card", "a card"}

// NameFor is the name of a card beside a sheet: the first that is free, or
// that of a card. What is no card of ours, a bought pattern say, is not written
// over.
func NameFor(sheet string) (string, error) {
	const longest = 200 // with what is added, a name that every file system takes
	base := strings.TrimSuffix(filepath.Base(sheet), filepath.Ext(sheet))
	stem := disk.Beside(sheet, strings.ToValidUTF8(base[:min(len(base), longest)], "")+"-card")
	for n := 1; n < 1000; n++ {
		name := stem + ".pdf"
		if n > 1 {
			name = fmt.Sprintf("%s-%d.pdf", stem, n)
		}
		if _, err := maker.MayReplace(name); err == nil {
			return name, nil
		}
	}
	return "", fmt.Errorf("every name for a card beside %s is in use", sheet)
}

// files are the card of a report in the form that the ending of its name
// asks for. An SVG is a file for each page. lost says what could not be printed.
func files(name, paperName string, r report.Report, today time.Time) (files []File, lost string, err error) {
	if paperName == "" {
		paperName = UsualSize(r.Scale.System)
	}
	p, ok := Sizes[strings.ToLower(paperName)]
	if !ok {
		return nil, "", fmt.Errorf("--paper takes a4 or letter, not %q", paperName)
	}
	switch ending := strings.ToLower(filepath.Ext(name)); ending {
	case ".txt":
		return []File{{Name: name, Content: maker.Signed([]byte(text(r, today) + "\n" + maker.Line()))}}, "", nil
	case ".svg":
		s, err := newSVG(p)
		if err != nil {
			return nil, "", err
		}
		printCard(s, p, r, today)
		for i, page := range s.bytes(name) {
			files = append(files, File{pageName(name, i+1), maker.Signed(page), overPage(name, i+1)})
		}
		return files, "", nil
	case ".pdf":
		s, err := NewPDF(p)
		if err != nil {
			return nil, "", err
		}
		s.About(r.Name(), maker.Name, maker, today)
		printCard(s, p, r, today)
		out, err := s.Bytes()
		return []File{{Name: name, Content: maker.Signed(out)}}, s.lost(), err
	default:
		return nil, "", fmt.Errorf("a card is a .pdf, .svg or .txt file, not %q", ending)
	}
}

// Written is what became of a card.
type Written struct {
	Saved []string
	Gone  []string // pages that it had before and has no longer
	Old   []error  // such pages that are still there, and why
	Lost  string   // what could not be printed
}

// Write makes the files of a card and writes them, all or none.
func Write(name, paperName string, r report.Report, today time.Time) (w Written, err error) {
	files, lost, err := files(name, paperName, r, today)
	if err != nil {
		return w, err
	}
	w.Lost = lost
	if w.Saved, err = maker.Write(files...); err == nil && files[0].Over != nil {
		w.Gone, w.Old, err = withoutOld(name, len(files))
	}
	return w, err
}

// text is the card in 80 columns.
func text(r report.Report, today time.Time) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Printed %s\n", today.Format(time.DateOnly))
	b.WriteString(show.Text(r, false))
	b.WriteString(strings.Repeat("-", typeset.PrintWidth) + "\n")
	b.WriteString(tracing.Text(r))
	return b.String()
}

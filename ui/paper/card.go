package paper

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
	"unicode/utf16"

	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/ui/tracing"
	"capscye/ui/typeset"
	"capscye/worksheets/disk"
)

// maker is written into every card, so that one is known again.
const maker = "capscye card"

// NameFor is the name of a card beside a sheet: the first that is free, or
// that of a card. What is no card of ours, a bought pattern say, is not written
// over.
func NameFor(sheet string) (string, error) {
	const longest = 200 // with what is added, a name that every file system takes
	base := strings.TrimSuffix(filepath.Base(sheet), filepath.Ext(sheet))
	stem := filepath.Join(filepath.Dir(sheet), strings.ToValidUTF8(base[:min(len(base), longest)], "")+"-card")
	for n := 1; n < 1000; n++ {
		name := stem + ".pdf"
		if n > 1 {
			name = fmt.Sprintf("%s-%d.pdf", stem, n)
		}
		if IsOursOrFree(name, maker) {
			return name, nil
		}
	}
	return "", fmt.Errorf("no name beside %s is free for a card", sheet)
}

// IsOursOrFree tells that what a maker of ours writes may be written under a name.
func IsOursOrFree(name, maker string) bool {
	content, err := os.ReadFile(name)
	if err != nil {
		return errors.Is(err, fs.ErrNotExist)
	}
	return bytes.Contains(content, utf16Bytes(maker)) || bytes.Contains(content, []byte(maker))
}

// utf16Bytes is how a PDF holds a text.
func utf16Bytes(s string) []byte {
	var b []byte
	for _, c := range utf16.Encode([]rune(s)) {
		b = append(b, byte(c>>8), byte(c))
	}
	return b
}

// file is one file of a card.
type file struct {
	name    string
	content []byte
}

// files are the card of a report in the form that the ending of its name
// asks for. An SVG is a file for each page. lost says what could not be printed.
func files(name, paperName string, r report.Report, today time.Time) (files []file, lost string, err error) {
	if paperName == "" {
		paperName = UsualSize(r.Scale.System)
	}
	p, ok := Sizes[strings.ToLower(paperName)]
	if !ok {
		return nil, "", fmt.Errorf("%q is no paper that is known here; a4 and letter are", paperName)
	}
	switch ending := strings.ToLower(filepath.Ext(name)); ending {
	case ".txt":
		return []file{{name, []byte(text(r, today))}}, "", nil
	case ".svg":
		s, err := newSVG(p)
		if err != nil {
			return nil, "", err
		}
		printCard(s, p, r, today)
		for i, page := range s.bytes() {
			pageName := name
			if i > 0 {
				pageName = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(name, filepath.Ext(name)), i+1, filepath.Ext(name))
			}
			files = append(files, file{pageName, page})
		}
		return files, "", nil
	case ".pdf":
		s, err := NewPDF(p)
		if err != nil {
			return nil, "", err
		}
		s.About(r.Name(), maker, today)
		printCard(s, p, r, today)
		out, err := s.Bytes()
		return []file{{name, out}}, s.lost(), err
	default:
		return nil, "", fmt.Errorf("a card is written as .txt, .svg or .pdf, and not as %q", ending)
	}
}

// Write makes the files of a card and writes them.
func Write(name, paperName string, r report.Report, today time.Time) (names []string, lost string, err error) {
	files, lost, err := files(name, paperName, r, today)
	for i, f := range files {
		if err == nil && i > 0 && !IsOursOrFree(f.name, maker) { // the first was named by the person; the others were not
			err = fmt.Errorf("%s is there already, and is no card; nothing was written over it", f.name)
		}
		if err == nil {
			err = disk.Replace(f.name, f.content, 0o666)
			names = append(names, f.name)
		}
	}
	return names, lost, err
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

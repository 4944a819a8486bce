package ui

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"
)

// cardBytes is the card of a report in the form that the ending of its name
// asks for. lost says what could not be printed.
func cardBytes(name, paperName string, r report, today time.Time) (out []byte, lost string, err error) {
	if paperName == "" {
		paperName = usualPaper(r.scale.System)
	}
	p, ok := papers[paperName]
	if !ok {
		return nil, "", fmt.Errorf("%q is no paper that is known here; a4 and letter are", paperName)
	}
	switch ending := strings.ToLower(filepath.Ext(name)); ending {
	case ".txt":
		return []byte(cardText(r, today)), "", nil
	case ".svg":
		s, err := newSVG(p)
		if err != nil {
			return nil, "", err
		}
		printCard(s, p, r, today)
		return s.bytes(), "", nil
	case ".pdf":
		s, err := newPDF(p)
		if err != nil {
			return nil, "", err
		}
		s.pdf.SetCreationDate(today)
		s.pdf.SetModificationDate(today)
		s.pdf.SetTitle(r.name(), true)
		printCard(s, p, r, today)
		out, err := s.bytes()
		return out, s.lost(), err
	default:
		return nil, "", fmt.Errorf("a card is written as .txt, .svg or .pdf, and not as %q", ending)
	}
}

// cardText is the card in 80 columns.
func cardText(r report, today time.Time) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Printed %s\n", today.Format(time.DateOnly))
	b.WriteString(sheetText(r, false))
	b.WriteString(strings.Repeat("-", printWidth) + "\n")
	b.WriteString(traceText(r))
	return b.String()
}

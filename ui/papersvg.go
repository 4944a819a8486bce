package ui

import (
	"encoding/xml"
	"fmt"
	"strings"
)

// svgPaper is SVG in millimetres, a picture for each page: a program that fits a
// tall picture with both to its paper would print the gauge too small. The
// measure of its type is the PDF's.
type svgPaper struct {
	*pdfPaper
	paper
	pages []*strings.Builder
}

func newSVG(p paper) (*svgPaper, error) {
	measure, err := newPDF(p)
	return &svgPaper{pdfPaper: measure, paper: p}, err
}

func (s *svgPaper) width(size float64, f face, text string) float64 {
	return s.pdfPaper.width(size, f, text)
}

func (s *svgPaper) newPage() { s.pages = append(s.pages, &strings.Builder{}) }

// body is the page at hand.
func (s *svgPaper) body() *strings.Builder { return s.pages[len(s.pages)-1] }

func (s *svgPaper) text(x, y, size float64, f face, text string) {
	style := map[face]string{roman: "sans-serif", bolder: "sans-serif\" font-weight=\"bold", mono: "monospace"}[f]
	fmt.Fprintf(s.body(), `<text x="%.3f" y="%.3f" font-size="%.3f" font-family="%s" xml:space="preserve">`,
		x, y, size*25.4/72, style)
	_ = xml.EscapeText(s.body(), []byte(text)) // a strings.Builder takes everything
	s.body().WriteString("</text>\n")
}

func (s *svgPaper) line(x1, y1, x2, y2, width float64, dashed bool) {
	dash := ""
	if dashed {
		dash = ` stroke-dasharray="0.5 0.7"`
	}
	fmt.Fprintf(s.body(), `<line x1="%.3f" y1="%.3f" x2="%.3f" y2="%.3f" stroke="black" stroke-width="%.2f"%s/>`+"\n",
		x1, y1, x2, y2, width, dash)
}

func (s *svgPaper) box(x, y, w, h float64, filled bool) {
	style := `fill="none" stroke="black" stroke-width="0.15"`
	if filled {
		style = `fill="black"`
	}
	fmt.Fprintf(s.body(), `<rect x="%.3f" y="%.3f" width="%.3f" height="%.3f" %s/>`+"\n", x, y, w, h, style)
}

// bytes are the finished pages.
func (s *svgPaper) bytes() [][]byte {
	var out [][]byte
	for _, body := range s.pages {
		out = append(out, []byte(fmt.Sprintf(`<?xml version="1.0" encoding="UTF-8"?>
<!-- `+cardMaker+` -->
<svg xmlns="http://www.w3.org/2000/svg" width="%.3fmm" height="%.3fmm" viewBox="0 0 %.3f %.3f">
<rect width="100%%" height="100%%" fill="white"/>
%s</svg>
`, s.paper.width, s.paper.height, s.paper.width, s.paper.height, body)))
	}
	return out
}

package ui

import (
	"encoding/xml"
	"fmt"
	"strings"
)

// svgPaper is an SVG in millimetres, its pages one below the other. The measure
// of its type is the PDF's.
type svgPaper struct {
	*pdfPaper
	paper
	pages int
	body  strings.Builder
}

func newSVG(p paper) (*svgPaper, error) {
	measure, err := newPDF(p)
	return &svgPaper{pdfPaper: measure, paper: p}, err
}

func (s *svgPaper) width(size float64, f face, text string) float64 {
	return s.pdfPaper.width(size, f, text)
}

func (s *svgPaper) newPage() {
	s.pages++
	s.box(0, 0, s.paper.width, s.paper.height, false)
}

// down is where the page at hand begins.
func (s *svgPaper) down() float64 { return float64(s.pages-1) * s.paper.height }

func (s *svgPaper) text(x, y, size float64, f face, text string) {
	style := map[face]string{roman: "sans-serif", bolder: "sans-serif\" font-weight=\"bold", mono: "monospace"}[f]
	fmt.Fprintf(&s.body, `<text x="%.3f" y="%.3f" font-size="%.3f" font-family="%s" xml:space="preserve">`,
		x, y+s.down(), size*25.4/72, style)
	_ = xml.EscapeText(&s.body, []byte(text)) // a strings.Builder takes everything
	s.body.WriteString("</text>\n")
}

func (s *svgPaper) line(x1, y1, x2, y2, width float64, dashed bool) {
	dash := ""
	if dashed {
		dash = ` stroke-dasharray="0.5 0.7"`
	}
	fmt.Fprintf(&s.body, `<line x1="%.3f" y1="%.3f" x2="%.3f" y2="%.3f" stroke="black" stroke-width="%.2f"%s/>`+"\n",
		x1, y1+s.down(), x2, y2+s.down(), width, dash)
}

func (s *svgPaper) box(x, y, w, h float64, filled bool) {
	style := `fill="none" stroke="black" stroke-width="0.15"`
	if filled {
		style = `fill="black"`
	}
	fmt.Fprintf(&s.body, `<rect x="%.3f" y="%.3f" width="%.3f" height="%.3f" %s/>`+"\n", x, y+s.down(), w, h, style)
}

// bytes are the finished SVG.
func (s *svgPaper) bytes() []byte {
	height := float64(s.pages) * s.paper.height
	return []byte(fmt.Sprintf(`<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="%.3fmm" height="%.3fmm" viewBox="0 0 %.3f %.3f">
<rect width="100%%" height="100%%" fill="white"/>
%s</svg>
`, s.paper.width, height, s.paper.width, height, s.body.String()))
}

package paper

import (
	"encoding/xml"
	"fmt"
	"strings"
)

// SVG is SVG in millimetres, a picture for each page: a program that fits a
// tall picture with both to its paper would print the gauge too small. The
// measure of its type is the PDF's.
type SVG struct {
	*PDF
	Size
	pages []*strings.Builder
}

func newSVG(p Size) (*SVG, error) {
	measure, err := NewPDF(p)
	return &SVG{PDF: measure, Size: p}, err
}

// Width is how wide a text is, in millimetres.
func (s *SVG) Width(size float64, f Face, text string) float64 {
	return s.PDF.Width(size, f, text)
}

// NewPage begins a page.
func (s *SVG) NewPage() { s.pages = append(s.pages, &strings.Builder{}) }

// body is the page at hand.
func (s *SVG) body() *strings.Builder { return s.pages[len(s.pages)-1] }

// Text writes, as [Surface] has it.
func (s *SVG) Text(x, y, size float64, f Face, text string) {
	style := map[Face]string{Roman: "sans-serif", Bolder: "sans-serif\" font-weight=\"bold", mono: "monospace"}[f]
	fmt.Fprintf(s.body(), `<text x="%.3f" y="%.3f" font-size="%.3f" font-family="%s" xml:space="preserve">`,
		x, y, size*25.4/72, style)
	_ = xml.EscapeText(s.body(), []byte(text)) // a strings.Builder takes everything
	s.body().WriteString("</text>\n")
}

// Line draws a line of a width in millimetres.
func (s *SVG) Line(x1, y1, x2, y2, width float64, dashed bool) {
	dash := ""
	if dashed {
		dash = ` stroke-dasharray="0.5 0.7"`
	}
	fmt.Fprintf(s.body(), `<line x1="%.3f" y1="%.3f" x2="%.3f" y2="%.3f" stroke="black" stroke-width="%.2f"%s/>`+"\n",
		x1, y1, x2, y2, width, dash)
}

// Box draws a rectangle.
func (s *SVG) Box(x, y, w, h float64, filled bool) {
	style := `fill="none" stroke="black" stroke-width="0.15"`
	if filled {
		style = `fill="black"`
	}
	fmt.Fprintf(s.body(), `<rect x="%.3f" y="%.3f" width="%.3f" height="%.3f" %s/>`+"\n", x, y, w, h, style)
}

// bytes are the finished pages of a card.
func (s *SVG) bytes(card string) [][]byte {
	var out [][]byte
	for i, body := range s.pages {
		out = append(out, []byte(fmt.Sprintf(`<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="%.3fmm" height="%.3fmm" viewBox="0 0 %.3f %.3f">
%s
<rect width="100%%" height="100%%" fill="white"/>
%s</svg>
<!-- `+maker.unsigned()+` -->
`, s.Size.Width, s.Size.Height, s.Size.Width, s.Size.Height, pageTitle(card, i+1), body)))
	}
	return out
}

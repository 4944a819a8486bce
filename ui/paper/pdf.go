package paper

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf16"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"codeberg.org/go-fonts/dejavu/dejavusansmono"
	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/norm"
)

// PDF is a PDF, and the measure of its type. The type is DejaVu (free, see
// its licence), of which what is used is embedded: it has Latin with every
// common accent, Greek, Cyrillic, the fractions and the tick.
type PDF struct {
	pdf     *fpdf.Fpdf
	glyphs  *sfnt.Font
	missing map[rune]bool // signs that the type does not have
}

var faceNames = map[Face]string{Roman: "roman", Bolder: "bold", mono: "mono"}

// NewPDF is an empty document of a size of paper.
func NewPDF(p Size) (*PDF, error) {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: p.Width, Ht: p.Height}})
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.AddUTF8FontFromBytes("roman", "", dejavusanscondensed.TTF)
	f.AddUTF8FontFromBytes("bold", "", dejavusanscondensedbold.TTF)
	f.AddUTF8FontFromBytes("mono", "", dejavusansmono.TTF)
	glyphs, err := sfnt.Parse(dejavusanscondensed.TTF)
	if err != nil {
		return nil, err
	}
	return &PDF{f, glyphs, map[rune]bool{}}, f.Error()
}

// About names what is printed, what made it, and the day; as a keyword it has the
// maker's mark.
func (p *PDF) About(title, creator string, maker Maker, today time.Time) {
	p.pdf.SetCreationDate(today)
	p.pdf.SetModificationDate(today)
	p.pdf.SetTitle(title, true)
	p.pdf.SetCreator(creator, true)
	p.pdf.SetKeywords(maker.unsigned(), false)
}

// InPDF is how a PDF holds what it says about itself.
func InPDF(s string) []byte {
	var b []byte
	for _, c := range utf16.Encode([]rune(s)) {
		b = append(b, byte(c>>8), byte(c))
	}
	return b
}

// printable replaces what the type does not have by a question mark, and notes it for
// who writes the file to be told; the library prints nothing for it, or stops.
func (p *PDF) printable(s string) string {
	var buf sfnt.Buffer
	s = norm.NFC.String(s)
	return strings.Map(func(r rune) rune {
		if i, err := p.glyphs.GlyphIndex(&buf, r); err != nil || i == 0 || r > 0xffff {
			p.missing[r] = true
			return '?'
		}
		return r
	}, s)
}

// NewPage begins a page.
func (p *PDF) NewPage() { p.pdf.AddPage() }

// Text writes, as [Surface] has it.
func (p *PDF) Text(x, y, size float64, f Face, s string) {
	p.pdf.SetFont(faceNames[f], "", size)
	p.pdf.Text(x, y, p.printable(s))
}

// Line draws a line of a width in millimetres.
func (p *PDF) Line(x1, y1, x2, y2, width float64, dashed bool) {
	p.pdf.SetLineWidth(width)
	p.pdf.SetDashPattern(nil, 0)
	if dashed {
		p.pdf.SetDashPattern([]float64{0.5, 0.7}, 0)
	}
	p.pdf.Line(x1, y1, x2, y2)
}

// Box draws a rectangle.
func (p *PDF) Box(x, y, w, h float64, filled bool) {
	p.pdf.SetLineWidth(0.15)
	p.pdf.SetDashPattern(nil, 0)
	style := "D"
	if filled {
		style = "F"
	}
	p.pdf.Rect(x, y, w, h, style)
}

// Width is how wide a text is, in millimetres.
func (p *PDF) Width(size float64, f Face, s string) float64 {
	p.pdf.SetFont(faceNames[f], "", size)
	return p.pdf.GetStringWidth(p.printable(s))
}

// Bytes are the finished PDF.
func (p *PDF) Bytes() ([]byte, error) {
	var b bytes.Buffer
	if err := p.pdf.Output(&b); err != nil {
		return nil, fmt.Errorf("the PDF cannot be made: %w", err)
	}
	return b.Bytes(), nil
}

// lost says which signs could not be printed, or "".
func (p *PDF) lost() string {
	if len(p.missing) == 0 {
		return ""
	}
	var signs []string
	for r := range p.missing {
		signs = append(signs, strconv.QuoteRuneToASCII(r))
	}
	slices.Sort(signs)
	if len(signs) > 5 {
		signs = append(signs[:5], "...")
	}
	return "Printed as ?: " + strings.Join(signs, " ") + "."
}

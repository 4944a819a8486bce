package paper

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

// What a person sees of a card from where they stand, by the boxes of everything that is
// set.

// setText is a text as it was set.
type setText struct {
	page int
	box
	size float64
	text string
}

// recorder is a surface that keeps what is set. The measure of its type is the PDF's.
type recorder struct {
	*PDF
	page  int
	texts []setText
	bold  [][5]float64 // page and ends of the lines that are drawn thick
}

func (r *recorder) NewPage() { r.page++ }

func (r *recorder) Text(x, y, size float64, f Face, s string) {
	const up, down = 0.73 * 25.4 / 72, 0.2 * 25.4 / 72 // capitals and tails of DejaVu, for a point of size
	r.texts = append(r.texts, setText{r.page, box{x, y - up*size, r.Width(size, f, s), (up + down) * size}, size, s})
}

func (r *recorder) Line(x1, y1, x2, y2, width float64, _ bool) {
	if width >= 0.3 {
		r.bold = append(r.bold, [5]float64{float64(r.page), x1, y1, x2, y2})
	}
}

func (r *recorder) Box(x, y, w, h float64, filled bool) {}

// measure is one for all cards: to read the faces takes longer than to set a card.
var measure = sync.OnceValues(func() (*PDF, error) { return NewPDF(Sizes["a4"]) })

func recorded(t *testing.T, r report.Report, p Size) *recorder {
	t.Helper()
	measure, err := measure()
	if err != nil {
		t.Fatal(err)
	}
	out := &recorder{PDF: measure}
	printCard(out, p, r, props.SomeDay)
	return out
}

// cards are the examples and what becomes of them with other answers: inward, uneven,
// large, kept, missing.
func cards(t *testing.T) map[string]report.Report {
	t.Helper()
	list := map[string]report.Report{}
	for _, name := range worksheets.Examples() {
		r := props.ReportOf(t, name)
		list[name] = r
		for what, set := range map[string][]string{
			"inward":  {"ease.bicep", "0", "ease.bust", "0", "method.follow", "hold"},
			"uneven":  {"method.front_share_sleeve", "0.4", "method.front_share_bust", "0.7", "about.ruler", "1/64 in"},
			"large":   {"ease.bicep", "4 in", "ease.bust", "9 in"},
			"kept":    {"method.armhole", "keep"},
			"far":     {"body.bicep", "200 cm"},
			"missing": {"sleeve.width", "", "bodice.front", ""},
			"turned":  {"about.unit", map[string]string{"in": "cm", "cm": "in"}[r.Scale.System.String()]},
		} {
			s := r.Sheet
			for i := 0; i < len(set); i += 2 {
				k, ok := worksheets.KeyNamed(set[i])
				if !ok {
					t.Fatal(set[i])
				}
				s.Set(k, set[i+1])
			}
			list[name+", "+what] = r.With(s)
		}
	}
	return list
}

// The headings of the steps are those of the steps on screen and in text: a bodice that is
// cut already is one, for front and back are left alone together.
func TestAKeptBodiceIsOneOnTheCard(t *testing.T) {
	r := cards(t)["choir-blouse, kept"]
	var heads []string
	for _, text := range recorded(t, r, Sizes["a4"]).texts {
		if text.size == headSize {
			heads = append(heads, text.text)
		}
	}
	for i, want := range []string{"Sleeve", "Bodice", "Garment"} {
		if at := slices.Index(heads, want); at < i {
			t.Errorf("%q is not a heading in its place: %q", want, heads)
		}
	}
	if slices.Contains(heads, "Bodice front") {
		t.Errorf("the front of a bodice that is cut has steps: %q", heads)
	}
}

func TestNothingOnACardOverlaps(t *testing.T) {
	for name, r := range cards(t) {
		for paperName, size := range Sizes {
			out := recorded(t, r, size)
			for i, a := range out.texts {
				if a.x < Margin-0.1 || a.y < Margin-3 || a.x+a.w > size.Width-Margin+0.5 || a.y+a.h > size.Height-Margin+1.5 {
					t.Errorf("%s on %s: %q stands in the margin of page %d: %+v", name, paperName, a.text, a.page, a.box)
				}
				for _, b := range out.texts[:i] {
					if a.page == b.page && a.meets(b.box) {
						t.Errorf("%s on %s, page %d: %q lies on %q", name, paperName, a.page, a.text, b.text)
					}
				}
				for _, l := range out.bold {
					if int(l[0]) == a.page && a.crossed([4]float64(l[1:])) {
						t.Errorf("%s on %s, page %d: a line %v runs through %q %v", name, paperName, a.page, l, a.text, a.box)
					}
				}
			}
		}
	}
}

// 9 points are the least that is read at arm's length; the amounts are the largest thing
// on the card, and stand on its first page.
func TestACardIsReadFromAWall(t *testing.T) {
	for name, r := range cards(t) {
		out := recorded(t, r, Sizes["letter"])
		largest, least := 0.0, 100.0
		for _, a := range out.texts {
			largest, least = max(largest, a.size), min(least, a.size)
		}
		if least < 9 {
			t.Errorf("%s: type of %v points", name, least)
		}
		if r.Plan.Open || r.Plan.TooFar() {
			continue
		}
		for _, a := range out.texts {
			amount := regexp.MustCompile(`^(Pivot|Slide|slide|As it is)`).MatchString(a.text)
			if a.size == largest && (!amount || a.page != 1) {
				t.Errorf("%s: %q on page %d is the largest thing, %v points", name, a.text, a.page, a.size)
			}
		}
		for _, s := range calc.Sides() {
			for _, words := range strings.Split(report.SideWords(r.Plan.Sides[s], r.Scale), ", ") {
				if words != "" && !strings.Contains(largeWords(out, largest), strings.ToLower(words)) {
					t.Errorf("%s: %q of %v is not large", name, words, s)
				}
			}
		}
		if largest < 28 {
			t.Errorf("%s: the largest type has %v points", name, largest)
		}
	}
}

func largeWords(out *recorder, size float64) string {
	var b strings.Builder
	for _, a := range out.texts {
		if a.size == size {
			b.WriteString(strings.ToLower(a.text) + "\n")
		}
	}
	return b.String()
}

// The pieces of a garment are drawn at one scale, which is said once; nobody at a wall has
// keys to press.
func TestACardHasOneScaleAndNoKeys(t *testing.T) {
	keys := regexp.MustCompile(`(?i)\^[a-z]\b|ctrl|\b(press|esc|enter|space bar|tab key)\b`)
	for name, r := range cards(t) {
		scales := 0
		for _, a := range recorded(t, r, Sizes["a4"]).texts {
			scales += strings.Count(a.text, "1 : ")
			if keys.MatchString(a.text) {
				t.Errorf("%s: %q speaks of a key", name, a.text)
			}
		}
		if scales != 1 {
			t.Errorf("%s: %s", name, fmt.Sprint(scales, " scales are said"))
		}
	}
}

// wearying is a surface that is measured on, and gives up after so many letters.
type wearying struct {
	*PDF
	t    *testing.T
	left int
}

func (w *wearying) Width(size float64, f Face, s string) float64 {
	if w.left -= len(s); w.left < 0 {
		w.t.Fatal("too much is measured")
	}
	return w.PDF.Width(size, f, s)
}

// A word of a file can be as long as the file: it is broken into full lines with nothing
// left out, and at a cost that grows with it and no faster.
func TestAWordAsLongAsAFileIsBroken(t *testing.T) {
	measure, err := measure()
	if err != nil {
		t.Fatal(err)
	}
	const width, size = 190.0, 12.0
	for _, letter := range []string{"t", "寸", "e\u0301", "\u0301"} {
		word := strings.Repeat(letter, 20_000)
		p := Page{Surface: &wearying{measure, t, 100 * 20 * len(word)}} // a hundred pieces of a line for each line would be too many
		lines := p.Broken("A "+word+" end", size, Roman, width)
		if got := strings.Join(lines, ""); got != "A"+word+"end" && got != "A"+word+" end" {
			t.Errorf("%q: something is left out", letter)
		}
		for _, line := range lines {
			if measure.Width(size, Roman, line) > width {
				t.Errorf("%q: a line is too wide: %q", letter, line)
			}
		}
	}
}

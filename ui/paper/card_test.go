package paper

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/ledongthuc/pdf"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// pdfOf is a card that nothing was lost of.
func pdfOf(t *testing.T, r report.Report, paperName string) []byte {
	t.Helper()
	files, lost, err := files("card.pdf", paperName, r, props.SomeDay)
	if err != nil || lost != "" {
		t.Fatal(lost, err)
	}
	return files[0].Content
}

// readBack opens a card with a reader that had no part in writing it.
func readBack(t *testing.T, r report.Report, paperName string) *pdf.Reader {
	t.Helper()
	return props.ReadPDF(t, pdfOf(t, r, paperName))
}

// exampleCard is the card of an example, which is printed once for all tests.
func exampleCard(t *testing.T, name, paperName string) *pdf.Reader {
	t.Helper()
	key := name + " on " + paperName
	if printedCards[key] == nil {
		printedCards[key] = pdfOf(t, props.ReportOf(t, name), paperName)
	}
	return props.ReadPDF(t, printedCards[key])
}

var printedCards = map[string][]byte{}

// The card is some pages, and the gauge one; behind it come the corner templates
// of what is altered and was measured. All on the paper that was asked for: A4 is 210 x
// 297 mm (ISO 216), Letter 8 1/2 x 11 in (ANSI/ASME Y14.1).
func TestPDFPages(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := props.ReportOf(t, name)
		for paperName, paper := range map[string][2]float64{"a4": {210, 297}, "letter": {215.9, 279.4}} {
			reader := exampleCard(t, name, paperName)
			titles, gauge := []string{}, 0
			for i := 1; i <= reader.NumPage(); i++ {
				text := props.PageText(t, reader.Page(i))
				for _, title := range []string{"Marking gauge", "Corner templates"} {
					if strings.Contains(text, title) {
						titles = append(titles, fmt.Sprintf("%d %s", i, title))
					}
				}
				if gauge == 0 && strings.Contains(text, "Marking gauge") {
					gauge = i
				}
			}
			want := []string{fmt.Sprintf("%d Marking gauge", gauge)}
			if r.Plan.Turns != [4]calc.Turn{} && len(titles) > 1 { // behind the gauge, or on the next page where that is full
				want = append(want, fmt.Sprintf("%d Corner templates", max(gauge, min(gauge+1, int(titles[1][0]-'0')))))
			} else if r.Plan.Turns != [4]calc.Turn{} {
				want = append(want, "corner templates")
			}
			if !slices.Equal(titles, want) || gauge > 7 {
				t.Errorf("%s on %s: pages %q", name, paperName, titles)
			}
			for i := 1; i <= reader.NumPage(); i++ {
				box := props.MediaBox(reader.Page(i))
				w, h := box.Index(2).Float64()*props.MillimetresPerPoint, box.Index(3).Float64()*props.MillimetresPerPoint
				if math.Abs(w-paper[0]) > 0.1 || math.Abs(h-paper[1]) > 0.1 {
					t.Errorf("%s on %s: page %d has %v x %v mm", name, paperName, i, w, h)
				}
			}
		}
	}
}

// allText is the text of every page.
func allText(t *testing.T, reader *pdf.Reader) (text string) {
	t.Helper()
	for i := 1; i <= reader.NumPage(); i++ {
		text += props.PageText(t, reader.Page(i))
	}
	return text
}

// gaugePage is the page of the marking gauge.
func gaugePage(t *testing.T, reader *pdf.Reader) (int, pdf.Page) {
	t.Helper()
	for i := 1; i <= reader.NumPage(); i++ {
		if strings.Contains(props.PageText(t, reader.Page(i)), "Marking gauge") {
			return i, reader.Page(i)
		}
	}
	t.Fatal("no gauge")
	return 0, pdf.Page{}
}

// What has to be on the wall is on the page: who, when, measurements, the four
// sides with their marks, and every finding, fitting and step to its last word.
func TestPDFSaysEverything(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := props.ReportOf(t, name)
		text := allText(t, exampleCard(t, name, "a4"))
		wanted := []string{r.Name(), "Printed 2026-11-25", "Sleeve", "Bodice", wording.Cautions[0]}
		for _, p := range r.Plan.Sides {
			wanted = append(wanted, strings.Split(report.SideWords(p, r.Scale), ", ")...) // none where it stays as it is
		}
		for i, s := range r.TraceSteps() {
			wanted = append(wanted, strconv.Itoa(i+1)+tracing.Sentence(s, r.Scale))
		}
		for _, f := range r.Findings {
			wanted = append(wanted, report.LevelWords[f.Level]+": "+f.Text)
		}
		for _, f := range r.Sheet.Fittings {
			wanted = append(wanted, f.Date, f.Note)
		}
		for _, k := range worksheets.BodySection.Keys() {
			if l := r.Sheet.Reading(k); l.Known && k.Kind() == worksheets.Girth {
				wanted = append(wanted, forms.Fields[k].Words+" "+r.Scale.Number(l.Length))
			}
		}
		for _, w := range wanted { // it may be broken into lines
			if !strings.Contains(strings.ToLower(props.Unspaced(text)), strings.ToLower(props.Unspaced(w))) {
				t.Errorf("%s: %q is not on the page", name, w)
			}
		}
	}
}

// The gauge is true to scale: its marks stand where the plan's marks are, and
// the squares are 2 in and 5 cm. Read back from the PDF.
func TestGaugeIsTrueToScale(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := props.ReportOf(t, name)
		bars := map[string]bool{} // distance of each mark from its strip's zero, in hundredths of a millimetre
		squares := map[string]bool{}
		_, gauge := gaugePage(t, exampleCard(t, name, "a4"))
		for _, rect := range gauge.Content().Rect {
			x := math.Min(rect.Min.X, rect.Max.X) * props.MillimetresPerPoint
			w := math.Abs(rect.Max.X-rect.Min.X) * props.MillimetresPerPoint
			h := math.Abs(rect.Max.Y-rect.Min.Y) * props.MillimetresPerPoint
			if w < 1 {
				bars[fmt.Sprintf("%.1f", x+w/2-Margin-3)] = true
			} else if math.Abs(w-h) < 0.05 {
				squares[fmt.Sprintf("%.1f", w)] = true
			}
		}
		if !squares["50.8"] || !squares["50.0"] || len(squares) != 2 {
			t.Errorf("%s: squares %v", name, squares)
		}
		for _, p := range r.Plan.Sides {
			low := min(p.PivotMark, p.Marked(), 0) // the strip begins at its lowest mark
			for _, l := range []units.Length{-low, p.PivotMark - low, p.Marked() - low} {
				if at := fmt.Sprintf("%.1f", l.Millimetres()); !bars[at] {
					t.Errorf("%s: no mark at %s mm among %v", name, at, bars)
				}
			}
		}
	}
}

// Names in Latin, Greek and Cyrillic and the usual fractions are printed; what
// the type does not have is a question mark, and that is said.
func TestPDFScripts(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Set(worksheets.Title, "Müşür Đặng Ελένη Зоя ½ ⅔")
	out := pdfOf(t, report.Reckon(d, props.SomeDay, 0), "")
	t.Run("read back by pdftotext", func(t *testing.T) {
		if _, err := exec.LookPath("pdftotext"); err != nil {
			t.Skip("pdftotext (poppler-utils) is not here; the Go reader knows no other scripts")
		}
		name := filepath.Join(t.TempDir(), "card.pdf")
		if err := os.WriteFile(name, out, 0o644); err != nil {
			t.Fatal(err)
		}
		text, err := exec.Command("pdftotext", name, "-").Output()
		if err != nil || !strings.Contains(string(text), "Müşür Đặng Ελένη Зоя ½ ⅔") {
			t.Errorf("%v: the title is not in\n%.200s", err, text)
		}
	})
	d.Sheet.Set(worksheets.Title, "裁縫 \U0001F9F5")
	if _, lost, err := files("card.pdf", "", report.Reckon(d, props.SomeDay, 0), props.SomeDay); err != nil || !strings.Contains(lost, "Printed as ?") {
		t.Errorf("%q, %v", lost, err)
	}
}

// The SVG is well-formed, harmless, in millimetres, and its gauge is true.
func TestSVG(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Set(worksheets.Title, "<script>alert('1')</script> & \x1b[2J")
	files, _, err := files("card.SVG", "A4", report.Reckon(d, props.SomeDay, 0), props.SomeDay)
	if err != nil || len(files) < 2 || files[1].Name != "card-2.SVG" {
		t.Fatal(files, err)
	}
	elements, widths := map[string]int{}, map[string]bool{}
	for _, f := range files {
		decoder := xml.NewDecoder(bytes.NewReader(f.Content))
		for {
			token, err := decoder.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			e, ok := token.(xml.StartElement)
			if !ok {
				continue
			}
			elements[e.Name.Local]++
			for _, a := range e.Attr {
				if n, err := strconv.ParseFloat(a.Value, 64); err == nil && (n < 0 || n > 297) {
					t.Errorf("%s %s=%v lies off the paper", e.Name.Local, a.Name.Local, n)
				}
				if e.Name.Local == "rect" && a.Name.Local == "width" {
					widths[a.Value] = true
				}
			}
		}
		if !regexp.MustCompile(`width="210.000mm" height="297.000mm"`).Match(f.Content) || bytes.Contains(f.Content, []byte("\x1b")) {
			t.Errorf("%.300s", f.Content)
		}
	}
	if elements["script"] != 0 || elements["svg"] != len(files) || !widths["50.800"] || !widths["50.000"] {
		t.Errorf("elements %v, widths %v", elements, widths)
	}
}

func TestTextCard(t *testing.T) {
	golden.RequireEqual(t, text(props.ReportOf(t, "choir-blouse"), props.SomeDay))
}

func TestCardCommand(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, name := range []string{"a.pdf", "a.svg", "a.txt"} {
		status, out, errs := run("", "card", props.Example("choir-blouse"), "-o", name)
		if status != 0 || !strings.HasPrefix(out, "Saved "+name+".\n") || errs != "" {
			t.Errorf("%s: status %d, %q, %q", name, status, out, errs)
		}
		if info, err := os.Stat(name); err != nil || info.Size() < 1000 {
			t.Errorf("%s: %v, %v", name, info, err)
		}
	}
	for _, c := range []struct {
		args []string
		errs string
	}{
		{[]string{"card", props.Example("choir-blouse")}, "card needs a name to write to"},
		{[]string{"card", props.Example("choir-blouse"), "-o", "a.doc"}, `a card is a .pdf, .svg or .txt file, not ".doc"`},
		{[]string{"card", props.Example("choir-blouse"), "-o", "a.pdf", "--paper", "a3"}, `--paper takes a4 or letter, not "a3"`},
		{[]string{"card", "absent.toml", "-o", "a.pdf"}, "absent.toml: there is no such file"},
		{[]string{"card", props.Example("choir-blouse"), "-o", "no/a.pdf"}, "no/a.pdf: there is no such folder"},
	} {
		if status, _, errs := run("", c.args...); status != 2 || !strings.Contains(errs, c.errs) {
			t.Errorf("%v: status %d, %q", c.args, status, errs)
		}
	}
}

// Whatever is in a sheet, nothing is drawn off the paper, and nothing is lost.
func TestCardOfAnOverfullSheet(t *testing.T) {
	d, err := worksheets.Example("archive-coat")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Set(worksheets.Title, strings.Repeat("Long title ", 20)+strings.Repeat("x", 400))
	d.Sheet.Set(worksheets.Notes, strings.Repeat("many words ", 800))
	for range 40 {
		d.Sheet.Fittings = append(d.Sheet.Fittings, worksheets.Fitting{Date: "2026-11-20", Note: strings.Repeat("it drags ", 30)})
	}
	reader := readBack(t, report.Reckon(d, props.SomeDay, 0), "letter")
	all := ""
	for i := 1; i <= reader.NumPage(); i++ {
		for _, text := range reader.Page(i).Content().Text {
			if y, x := text.Y*props.MillimetresPerPoint, text.X*props.MillimetresPerPoint; y < Margin-3 || y > 279.4 || x > 215.9-5 {
				t.Fatalf("page %d: %q at %v, %v mm lies off the paper", i, text.S, x, y)
			}
		}
		all += props.PageText(t, reader.Page(i))
	}
	for _, w := range []string{"more in the worksheet", "37", wording.Cautions[0], "Check: At the waist", "Marking gauge"} {
		if !strings.Contains(all, w) {
			t.Errorf("%q is lost", w)
		}
	}
}

// A card finds a name beside a sheet of any name, or says that there is none.
func TestACardBesideALongName(t *testing.T) {
	t.Chdir(t.TempDir())
	name, err := NameFor(strings.Repeat("n", 250) + ".toml")
	if err != nil || len(name) > 255 || !strings.HasSuffix(name, "-card.pdf") {
		t.Errorf("%q, %v", name, err)
	}
	if name, err := NameFor("gone/\x00.toml"); err == nil {
		t.Errorf("%q", name)
	}
}

// The card of a sheet that is not whole is written, and the exit status tells.
func TestCardTellsWhatIsUnfinished(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("begun.toml", []byte("[body]\nbicep = \"13\"\n"), 0o644)
	for file, want := range map[string]int{"begun.toml": 1, props.Example("choir-blouse"): 0} {
		if status, out, errs := run("", "card", file, "-o", "card.txt"); status != want || out != "Saved card.txt.\n" || errs != "" {
			t.Errorf("%s: status %d, want %d, %q, %q", file, status, want, out, errs)
		}
	}
}

// The card says which size of the pattern it is for, in every form.
func TestTheCardNamesTheSizeInHand(t *testing.T) {
	r := props.ReportOf(t, "market-smock")
	if !strings.Contains(allText(t, readBack(t, r, "a4")), "Size 20.") {
		t.Error("card.pdf does not say for which size it is")
	}
	for _, name := range []string{"card.txt", "card.svg"} {
		files, _, err := files(name, "a4", r, props.SomeDay)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(files[0].Content), "Size 20.") {
			t.Errorf("%s does not say for which size it is", name)
		}
	}
}

// The strip of an allowance says what its mark is: 5/8 in is never 3/4 in.
func TestAStripSaysItsAllowanceUnrounded(t *testing.T) {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	d.Sheet.Set(worksheets.Ruler, "1/4 in")
	d.Sheet.Set(worksheets.SleeveAllowance, "5/8")
	c := card{r: report.Reckon(d, props.SomeDay, 0)}
	strips := c.strips()
	if last := strips[len(strips)-1].marks[1]; last.words != "5/8 in" || last.at != 5*units.Inch/8 {
		t.Errorf("the mark %v is called %q", last.at, last.words)
	}
}

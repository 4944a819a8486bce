package ui

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
	"strconv"
	"strings"
	"testing"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/ledongthuc/pdf"

	"capscye/ui/report"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// pdfOf is a card that nothing was lost of.
func pdfOf(t *testing.T, r report.Report, paperName string) []byte {
	t.Helper()
	files, lost, err := cardFiles("card.pdf", paperName, r, someDay)
	if err != nil || lost != "" {
		t.Fatal(lost, err)
	}
	return files[0].content
}

// readBack opens a card with a reader that had no part in writing it.
func readBack(t *testing.T, r report.Report, paperName string) *pdf.Reader {
	t.Helper()
	return readPDF(t, pdfOf(t, r, paperName))
}

// readPDF opens a document.
func readPDF(t *testing.T, content []byte) *pdf.Reader {
	t.Helper()
	reader, err := pdf.NewReader(bytes.NewReader(content), int64(len(content)))
	if err != nil {
		t.Fatal(err)
	}
	return reader
}

// pageText is all text of a page, in the order in which it was written.
func pageText(t *testing.T, p pdf.Page) string {
	t.Helper()
	text, err := p.GetPlainText(nil)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// millimetresPerPoint makes millimetres of the unit of such documents.
const millimetresPerPoint = 25.4 / 72

// The card is one page, and the gauge one, on the paper that was asked for: A4 is
// 210 x 297 mm (ISO 216), Letter 8 1/2 x 11 in (ANSI/ASME Y14.1).
func TestPDFPages(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := reportOf(t, name)
		for paperName, want := range map[string][2]float64{"a4": {210, 297}, "letter": {215.9, 279.4}} {
			reader := readBack(t, r, paperName)
			if n := reader.NumPage(); n != 2 {
				t.Errorf("%s on %s: %d pages", name, paperName, n)
			}
			for i := 1; i <= reader.NumPage(); i++ {
				box := mediaBox(reader.Page(i))
				w, h := box.Index(2).Float64()*millimetresPerPoint, box.Index(3).Float64()*millimetresPerPoint
				if math.Abs(w-want[0]) > 0.1 || math.Abs(h-want[1]) > 0.1 {
					t.Errorf("%s on %s: page %d has %v x %v mm", name, paperName, i, w, h)
				}
			}
		}
	}
}

// What has to be on the wall is on the page: who, when, measurements, the four
// sides with their marks, findings and every step.
func TestPDFSaysEverything(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := reportOf(t, name)
		text := pageText(t, readBack(t, r, "a4").Page(1))
		wanted := []string{r.Name(), "Printed 2026-11-25", "Sleeve front", "Bodice back", wording.Cautions[0]}
		for _, p := range r.Plan.Sides {
			wanted = append(wanted, r.MarksShort(p))
		}
		for i := range r.TraceSteps() {
			wanted = append(wanted, fmt.Sprintf("%d ", i+1))
		}
		for _, f := range r.Findings {
			wanted = append(wanted, strings.ToUpper(f.Level.String())+": "+strings.Fields(f.Text)[0])
		}
		for _, w := range wanted {
			if !strings.Contains(text, w) {
				t.Errorf("%s: %q is not on the page", name, w)
			}
		}
	}
}

// The gauge is true to scale: its marks stand where the plan's marks are, and
// the squares are 2 in and 5 cm. Read back from the PDF.
func TestGaugeIsTrueToScale(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := reportOf(t, name)
		bars := map[string]bool{} // distance of each mark from its strip's zero, in hundredths of a millimetre
		squares := map[string]bool{}
		for _, rect := range readBack(t, r, "a4").Page(2).Content().Rect {
			x := math.Min(rect.Min.X, rect.Max.X) * millimetresPerPoint
			w := math.Abs(rect.Max.X-rect.Min.X) * millimetresPerPoint
			h := math.Abs(rect.Max.Y-rect.Min.Y) * millimetresPerPoint
			if w < 1 {
				bars[fmt.Sprintf("%.1f", x+w/2-margin-3)] = true
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
	out := pdfOf(t, report.Reckon(d, someDay, 0), "")
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
	if _, lost, err := cardFiles("card.pdf", "", report.Reckon(d, someDay, 0), someDay); err != nil || !strings.Contains(lost, "printed as ?") {
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
	files, _, err := cardFiles("card.SVG", "A4", report.Reckon(d, someDay, 0), someDay)
	if err != nil || len(files) != 2 || files[1].name != "card-2.SVG" {
		t.Fatal(files, err)
	}
	elements, widths := map[string]int{}, map[string]bool{}
	for _, f := range files {
		decoder := xml.NewDecoder(bytes.NewReader(f.content))
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
		if !regexp.MustCompile(`width="210.000mm" height="297.000mm"`).Match(f.content) || bytes.Contains(f.content, []byte("\x1b")) {
			t.Errorf("%.300s", f.content)
		}
	}
	if elements["script"] != 0 || elements["svg"] != 2 || !widths["50.800"] || !widths["50.000"] {
		t.Errorf("elements %v, widths %v", elements, widths)
	}
}

func TestTextCard(t *testing.T) {
	golden.RequireEqual(t, cardText(reportOf(t, "choir-blouse"), someDay))
}

func TestCardCommand(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, name := range []string{"a.pdf", "a.svg", "a.txt"} {
		status, out, errs := run("", "card", example("choir-blouse"), "-o", name)
		if status != 0 || !strings.HasPrefix(out, name+" is written.\n") || errs != "" {
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
		{[]string{"card", example("choir-blouse")}, "card needs a name to write to"},
		{[]string{"card", example("choir-blouse"), "-o", "a.doc"}, `a card is written as .txt, .svg or .pdf, and not as ".doc"`},
		{[]string{"card", example("choir-blouse"), "-o", "a.pdf", "--paper", "a3"}, `"a3" is no paper that is known here`},
		{[]string{"card", "absent.toml", "-o", "a.pdf"}, "absent.toml: there is no such file"},
		{[]string{"card", example("choir-blouse"), "-o", "no/a.pdf"}, "no/a.pdf: there is no such folder"},
	} {
		if status, _, errs := run("", c.args...); status != 2 || !strings.Contains(errs, c.errs) {
			t.Errorf("%v: status %d, %q", c.args, status, errs)
		}
	}
}

// One key writes the card beside the sheet, and says where.
func TestCardFromTheScreen(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f6", "c").sees("The card is in sheet-card.pdf.")
	if out := read(t, "sheet-card.pdf"); !strings.HasPrefix(out, "%PDF-") {
		t.Errorf("%.20q", out)
	}
	// Written again it is the same card; what is no card is left alone.
	r.press("c").sees("The card is in sheet-card.pdf.")
	os.WriteFile("sheet-card.pdf", []byte("a bought pattern"), 0o644)
	r.press("c").sees("The card is in sheet-card-2.pdf.")
	if read(t, "sheet-card.pdf") != "a bought pattern" {
		t.Error("a bought pattern was written over")
	}
	r.press("f1").sees("[saved]")
}

// What a test garment showed is kept with its day, and one more key makes a
// change of ease of it.
func TestFittingBecomesEase(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).press("f6", "n").sees("What did the test garment show?")
	r.types("upper arm 1/2 in too tight").press("enter")
	r.sees("The note is kept. Change the ease at the bicep by +1/2, from 1 3/4 in to", "\n2 1/4 in?").press("y")
	r.sees("The ease at the bicep is now 2 1/4 in, where it was 1 3/4 in.", "Sleeve needs 3 in")
	got := read(t, "sheet.toml")
	if !strings.Contains(got, "[[fitting]]\ndate = 2026-11-25\nnote = \"upper arm 1/2 in too tight\"") || !strings.Contains(got, `bicep = "2 1/4"`) {
		t.Errorf("the file is now\n%s", got)
	}
	r.press("n").types("drags at the back").press("enter").sees("The note is kept with the sheet").press("f5")
	for range 20 {
		r.press("down")
	}
	r.sees("2026-11-25  drags at the back")
	r.press("f6", "n").types("hip too wide by 1 in").press("enter").sees("from nothing to -1 in", "smaller than the body").press("esc").press("f2").sees("At the hip          -")
	r.press("f6", "n", "esc").sees("6 TRACE").press("n", "enter").sees("6 TRACE")
}

// A note is read only where it says one place, one amount and one way.
func TestReadFitting(t *testing.T) {
	d, err := worksheets.Example("archive-coat")
	if err != nil {
		t.Fatal(err)
	}
	for note, want := range map[string]string{
		"upper arm 1,5 cm too tight": "ease.bicep 7.5", "Bust: 2 too loose": "ease.bust 8", "waist (1/2 in) too narrow": "ease.waist 11.27",
		"the biceps are 1/2 in too tight": "ease.bicep 7.27", "fitting: hip too wide by 1 in": "ease.hip 6.46",
		"too tight": "", "bust too tight": "", "bust 2 cm": "", "waist tight 1 cm, hip loose": "", "": "",
		"bust 1 in too tight, arm 1/2 in too tight": "", "bust 1 in too tight, sleeve is fine": "", "size 12: bust tight": "",
		"on the 3 buttons the bust is too tight": "", "Fitting 2: upper arm 1/2 too tight": "", "bust 2 sizes too small": "",
		"I widened the sleeve by 1/2 in": "", "upper arm not too tight, 1/2 in to spare": "", "sleeve 2 in too long and too wide": "",
		"the chips on the table are too big 1 in": "", "bust 1 in too tight on each side": "",
	} {
		got := ""
		if c, ok := readFitting(note, &d.Sheet, units.Centimetres); ok {
			got = c.key.Path() + " " + units.Scale{System: units.Centimetres}.Exact(c.after)
		}
		if got != want {
			t.Errorf("%q: %q, want %q", note, got, want)
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
	reader := readBack(t, report.Reckon(d, someDay, 0), "letter")
	all := ""
	for i := 1; i <= reader.NumPage(); i++ {
		for _, text := range reader.Page(i).Content().Text {
			if y, x := text.Y*millimetresPerPoint, text.X*millimetresPerPoint; y < margin-3 || y > 279.4 || x > 215.9-5 {
				t.Fatalf("page %d: %q at %v, %v mm lies off the paper", i, text.S, x, y)
			}
		}
		all += pageText(t, reader.Page(i))
	}
	for _, w := range []string{"more in the sheet", "37 ", wording.Cautions[0], "WARN: At the waist", "Marking gauge"} {
		if !strings.Contains(all, w) {
			t.Errorf("%q is lost", w)
		}
	}
}

// mediaBox is the paper of a page, its own or its document's.
func mediaBox(p pdf.Page) pdf.Value {
	for v := p.V; !v.IsNull(); v = v.Key("Parent") {
		if box := v.Key("MediaBox"); !box.IsNull() {
			return box
		}
	}
	return pdf.Value{}
}

package roster

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"path/filepath"
	"strings"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// The three ways in which a roster is printed. head, next and tail are called in
// order, one at a time; entry by several sheets at once.
type face interface {
	head() []byte
	entry(row Row, r report.Report) ([]byte, error)
	next(e entry) []byte // an entry with what joins it to those before
	tail() []byte
}

func (o options) face(folder string) face {
	switch {
	case o.json:
		return &array{}
	case o.csv:
		return csvFace{}
	}
	return &textFace{folder: folder}
}

// array is an array of JSON, an object at a time.
type array struct{ some bool }

func (*array) head() []byte { return []byte("[") }

func (*array) entry(row Row, r report.Report) ([]byte, error) {
	return show.Encode(jsonOf(row, r))
}

func (f *array) next(e entry) []byte {
	join := "\n"
	if f.some {
		join = ",\n"
	}
	f.some = true
	return append([]byte(join), bytes.TrimSuffix(e.text, []byte("\n"))...)
}

func (f *array) tail() []byte {
	if f.some {
		return []byte("\n]\n")
	}
	return []byte("]\n")
}

// csvFace is a table for other programs. Every amount is exact and names its
// unit: 5/8 alone would be the fifth of August to some of them.
type csvFace struct{}

func (csvFace) head() []byte {
	cells := []string{"file", "wearer", "title", "sleeve_need", "bust_need"}
	for _, side := range calc.Sides() {
		name := show.Underscored(wording.SubjectWords[side.Subject()])
		cells = append(cells, name+"_pivot", name+"_slide")
	}
	return csvLine(append(cells, "finding", "code", "saved", "error"))
}

func (csvFace) entry(row Row, r report.Report) ([]byte, error) {
	cells := []string{row.Path, row.wearer, row.title}
	amount := func(known bool, l units.Length) {
		text := ""
		if known {
			text = wording.Exact(l, r.Scale)
		}
		cells = append(cells, text)
	}
	known := row.Failure == ""
	for _, p := range r.Pieces() {
		amount(known && p.Girth.Need.Known, p.Girth.Need.Length)
	}
	for _, s := range r.Plan.Sides {
		amount(known && !r.Plan.Open, s.Pivot)
		amount(known && !r.Plan.Open, s.Slide)
	}
	if known {
		cells = append(cells, row.level(), string(row.finding.Code), row.Day(), "")
	} else {
		cells = append(cells, "", "", "", row.Failure)
	}
	return csvLine(cells), nil
}

func (csvFace) next(e entry) []byte { return e.text }

func (csvFace) tail() []byte { return nil }

// csvLine is one line of harmless cells: an apostrophe keeps a spreadsheet from
// taking a text for a formula.
func csvLine(cells []string) []byte {
	for i, c := range cells {
		if c != "" && strings.ContainsRune("=+-@\t", rune(c[0])) {
			c = "'" + c
		}
		cells[i] = typeset.Plain(c)
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	_ = w.Write(cells) // a buffer takes everything
	w.Flush()
	return b.Bytes()
}

// textFace is a table of 80 columns: a line of columns for each sheet, and
// below it what it is and what to mark.
type textFace struct {
	folder string
	offRow bool
	counts map[string]int
}

func (f *textFace) head() []byte {
	where := "this folder"
	if f.folder != "." {
		where = typeset.Plain(filepath.Clean(f.folder))
	}
	var out typeset.Printout
	out.Hanging("", "Worksheets of "+where+": the needs around the body, and what to mark, pivot + slide, on each side.")
	out.Line("")
	out.Line("%s", Head(typeset.PrintWidth, "saved       wearer"))
	return []byte(out.String())
}

func (f *textFace) entry(row Row, r report.Report) ([]byte, error) {
	var out typeset.Printout
	if row.Failure != "" {
		out.Line("%s", row.File())
		out.Hanging("    ", row.reason())
		return []byte(out.String()), nil
	}
	out.Line("%s", typeset.Cut(row.Columns(typeset.PrintWidth, row.Day()+"  "+typeset.Plain(row.wearer)), typeset.PrintWidth))
	words := marksWords(r)
	if row.finding.Level > calc.Note {
		words += ". " + string(row.finding.Code)
	}
	if title := typeset.Plain(row.title); title != "" {
		words = typeset.Cut(title, 40) + ": " + words
	}
	out.Hanging("    ", words)
	return []byte(out.String()), nil
}

func (f *textFace) next(e entry) []byte {
	if f.counts == nil {
		f.counts = map[string]int{}
	}
	f.counts[e.level]++
	f.offRow = f.offRow || typeset.OffMark.Match(e.text)
	return e.text
}

func (f *textFace) tail() []byte {
	var out typeset.Printout
	out.Line("")
	out.Line("%s", f.tally())
	if f.offRow {
		out.Line("%s", typeset.OffMarkNote(units.OffMark+"0"))
	}
	wording.PrintCautions(&out)
	return []byte(out.String())
}

// tally counts the sheets that were shown, by their gravest finding.
func (f *textFace) tally() string {
	total := 0
	var parts []string
	for _, l := range []struct{ level, words string }{
		{"", "cannot be read"}, {"stop", "with a stop"}, {"warn", "with a warning"}, {"note", "with notes"}, {"-", "with nothing to say"},
	} {
		if n := f.counts[l.level]; n > 0 {
			total += n
			parts = append(parts, fmt.Sprintf("%d %s", n, l.words))
		}
	}
	switch total {
	case 0:
		return "No worksheets."
	case 1:
		return "1 worksheet: " + strings.Join(parts, ", ") + "."
	}
	return fmt.Sprintf("%d worksheets: %s.", total, strings.Join(parts, ", "))
}

// marksWords is what to mark, piece by piece; front and back apart only where
// they differ.
func marksWords(r report.Report) string {
	if r.Plan.Open {
		return "not known yet"
	}
	var parts []string
	for _, p := range r.Pieces() {
		front, back := r.MarksShort(p.Front), r.MarksShort(p.Back)
		words := strings.ToLower(p.Name) + " " + front
		if back != front {
			words = strings.ToLower(p.Name) + " front " + front + ", back " + back
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, "; ")
}

package roster

import (
	"bytes"
	"encoding/csv"
	"maps"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// The ways in which a roster is printed. head, next and tail are called in
// order, one at a time; entry by several sheets at once.
type face interface {
	head() []byte
	entry(row Row, r report.Report) ([]byte, error)
	next(e entry) []byte // an entry with what joins it to those before
	tail() []byte
}

func (o options) face(folder string, look func() survey) face {
	switch {
	case o.json:
		return &array{}
	case o.csv:
		return csvFace{look()}
	case o.sentences:
		return &speechFace{counting{survey: look()}, folder}
	}
	return &textFace{counting: counting{survey: look()}, folder: folder}
}

// array is an array of JSON, an object at a time.
type array struct{ some bool }

func (*array) head() []byte { return nil }

func (*array) entry(row Row, r report.Report) ([]byte, error) {
	return show.Element(jsonOf(row, r))
}

func (f *array) next(e entry) []byte {
	if !f.some {
		f.some = true
		return show.First(e.text)
	}
	return e.text
}

func (f *array) tail() []byte {
	if f.some {
		return []byte("\n]\n")
	}
	return []byte("[]\n")
}

// csvFace is a table for other programs. Every amount is exact and names its unit: 5/8
// alone would be the fifth of August to some of them. Beside it stand its millimetres.
type csvFace struct{ survey survey }

func (csvFace) head() []byte {
	cells := []string{"file", "wearer", "title", "state"}
	amount := func(name string) { cells = append(cells, name, name+"_mm") }
	amount("sleeve_need")
	amount("bust_need")
	for _, side := range calc.Sides() {
		name := show.Underscored(wording.SubjectWords[side.Subject()])
		amount(name + "_pivot")
		amount(name + "_slide")
	}
	return csvLine(append(cells, "finding", "code", "findings", "saved", "error"))
}

func (f csvFace) entry(row Row, r report.Report) ([]byte, error) {
	cells := []string{row.Path, row.wearer, row.title, row.state()}
	amount := func(known bool, l units.Length) {
		if !known {
			cells = append(cells, "", "")
			return
		}
		cells = append(cells, wording.Exact(l, r.Scale), strconv.FormatFloat(l.Millimetres(), 'f', -1, 64))
	}
	known := row.Failure == ""
	for _, p := range r.Pieces() {
		amount(known && p.Girth.Need.Known, p.Girth.Need.Length)
	}
	planned := known && !r.Plan.Open && row.verdict.State != report.NotBegun // nothing asked is not nothing to mark
	for _, s := range r.Plan.Sides {
		amount(planned, s.Pivot)
		amount(planned, s.Slide)
	}
	if known {
		cells = append(cells, row.level(), string(row.finding.Code), strings.Join(f.survey.ordered(r), "; "), row.Day(), "")
	} else {
		cells = append(cells, "", "", "", "", row.Failure)
	}
	return csvLine(cells), nil
}

func (csvFace) next(e entry) []byte { return e.text }

func (csvFace) tail() []byte { return nil }

// csvLine is one line of harmless cells: an apostrophe keeps a spreadsheet from
// taking a text for a formula. A number, with its sign, is none.
func csvLine(cells []string) []byte {
	for i, c := range cells {
		if c != "" && strings.IndexByte("=+-@\t", c[0]) >= 0 && !isNumber(c) {
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

// isNumber tells a plain number.
func isNumber(text string) bool {
	return strings.Trim(text, "-0123456789.") == "" && strings.LastIndexByte(text, '-') <= 0
}

// textFace is a table of 80 columns: a line of columns for each sheet, and
// below it whose it is, what to mark, and what was found.
type textFace struct {
	counting
	folder string
	offRow bool
}

func (f *textFace) head() []byte {
	var out typeset.Printout
	if f.survey.whole {
		out.Hanging("", tally(f.survey.states))
		out.Line("")
	}
	out.Hanging("", "Worksheets of "+folderWords(f.folder)+": the needs around the body, and what to mark, pivot + slide, on each side.")
	out.Line("")
	out.Line("%s", Head(typeset.PrintWidth, "saved"))
	return []byte(out.String())
}

func folderWords(folder string) string {
	if folder == "." {
		return "this folder"
	}
	return typeset.Plain(filepath.Clean(folder))
}

func (f *textFace) entry(row Row, r report.Report) ([]byte, error) {
	var out typeset.Printout
	if row.Failure != "" {
		out.Line("%s", columnsOf(typeset.PrintWidth, row.File(), row.verdict.Short(), row.Needs, "", ""))
		out.Hanging("    ", row.reason())
		return []byte(out.String()), nil
	}
	out.Line("%s", typeset.Cut(row.Columns(typeset.PrintWidth, row.Day()), typeset.PrintWidth))
	words := marksWords(r)
	switch row.verdict.State {
	case report.NotBegun, report.Unreadable:
		words = row.verdict.Why
	case report.AnswersMissing:
		words = "missing: " + row.verdict.Why
	}
	if whose := row.ForWhom(); whose != "" {
		words = typeset.Cut(whose, 60) + ": " + words
	}
	out.Hanging("    ", words)
	if found := strings.Join(f.survey.ordered(r), ", "); found != "" {
		out.Hanging("    ", found)
	}
	return []byte(out.String()), nil
}

func (f *textFace) next(e entry) []byte {
	f.count(e)
	f.offRow = f.offRow || typeset.OffMark.Match(e.text)
	return e.text
}

func (f *textFace) tail() []byte {
	var out typeset.Printout
	if !f.survey.whole {
		out.Line("")
		out.Line("%s", tally(f.counts))
	}
	if f.offRow {
		out.Line("%s", typeset.OffMarkNote(units.OffMark+"0"))
	}
	wording.PrintCautions(&out)
	return []byte(out.String())
}

// counting counts what is printed of a folder that was not looked at whole beforehand.
type counting struct {
	survey survey
	counts map[report.State]int
}

func (f *counting) count(e entry) {
	if f.counts == nil {
		f.counts = map[report.State]int{}
	}
	f.counts[e.state]++
}

// speechFace says the folder in sentences.
type speechFace struct {
	counting
	folder string
}

func (f *speechFace) head() []byte {
	var said typeset.Speech
	if f.survey.whole {
		said.Say("%s", tally(f.survey.states))
	}
	said.Say("These are the worksheets of %s", folderWords(f.folder))
	if shared := slices.Sorted(maps.Keys(f.survey.shared)); len(shared) > 0 {
		said.Say("Found in most of them: %s", strings.Join(shared, ", "))
	}
	return []byte(said.Text())
}

func (f *speechFace) entry(row Row, r report.Report) ([]byte, error) {
	var said typeset.Speech
	who := strings.TrimSuffix(row.ForWhom()+", in "+row.File(), worksheets.Ending)
	who = strings.TrimPrefix(who, ", in ")
	if row.Failure != "" {
		said.Say("%s: it cannot be read", who)
		said.SayEach(brackets.Replace(typeset.Capitalised(row.reason())))
		return []byte(said.Text()), nil
	}
	said.Say("%s", who)
	said.SayEach(row.verdict.Line())
	show.SayAmounts(&said, r)
	if found := f.survey.alone(r); len(found) > 0 {
		said.Say("Found: %s", strings.Join(found, ", "))
	}
	return []byte(said.Text()), nil
}

// brackets are what an error of a file may be about; else nobody reads them out.
var brackets = strings.NewReplacer("[", "open bracket ", "]", " closing bracket")

func (f *speechFace) next(e entry) []byte {
	f.count(e)
	return e.text
}

func (f *speechFace) tail() []byte {
	var said typeset.Speech
	if !f.survey.whole {
		said.Say("%s", tally(f.counts))
	}
	for _, c := range wording.Cautions {
		said.SayEach(c)
	}
	return []byte(said.Text())
}

// marksWords is what to mark, piece by piece; front and back apart only where
// they differ.
func marksWords(r report.Report) string {
	switch {
	case r.Plan.Open:
		return "not known yet"
	case r.Plan.TooFar():
		return "none: nobody alters a pattern so far"
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

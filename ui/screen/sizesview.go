package screen

import (
	"errors"
	"strings"

	"capscye/ui/forms"
	"capscye/ui/sizes"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// How the page of sizes is drawn: the size in hand stays in sight beside the labels, the
// others scroll; below the measurements is what each size costs.

// The columns of the page.
const (
	sizeLabel = 22
	sizeCell  = 17
)

func (p *sizesPage) render(width, height int) string {
	if width < smallestWidth || height < smallestHeight {
		return smallWindow(width, height)
	}
	st, d := p.desk.styles, p.desk
	shown := p.inSight(width)
	told := "in " + wording.UnitWords(d.rep.Scale.System) + "; marks are pivot + slide; ~ is rounded"
	if words := p.elsewhere(); words != "" {
		told = st.warn.Render("no costs yet: step 3 asks " + words)
	}
	title := st.heading.Render("Sizes of the pattern") + "   " + told
	head := []string{typeset.Cut(title, width), p.line(0, shown)}
	for _, row := range sizes.Heads(p.all)[1:] {
		head = append(head, cells(row, shown))
	}
	costs := p.costs(shown)
	keys := keyLine([]binding{{Show: "enter", Does: p.enterDoes()}, {Show: "left/right", Does: "size"}, {Show: "up/down", Does: "row"},
		{Show: "^x", Does: "remove"}, {Show: "^z", Does: "undo"}, {Show: "esc", Does: "back"}}, st, width)
	var rows []string
	for row := 1; row < len(p.keys); row++ {
		rows = append(rows, p.line(row, shown))
	}
	const fewest = 4 // rows of measurements
	room := max(fewest, height-len(head)-len(costs)-2)
	seen, below := typeset.Window(rows, max(0, p.row-1), min(room, len(rows)))
	if below > 0 && len(seen) > 1 && p.row-1 < len(rows)-below-1 {
		seen[len(seen)-1] = "  ..."
	}
	body := append(append(head, seen...), p.messageLine(width))
	body = append(body, costs...)
	return typeset.Block(body, width, height-1) + "\n" + keys
}

// elsewhere is what the costs of all sizes wait for, and what no row here can answer; "" for
// nothing.
func (p *sizesPage) elsewhere() string {
	for _, k := range []worksheets.Key{worksheets.SleeveMeasured, worksheets.SleeveAllowance, worksheets.BodiceMeasured, worksheets.BodiceAllowance} {
		if forms.Awaited(p.desk.sheet(), k) {
			return forms.Fields[k].Words
		}
	}
	return ""
}

// inSight are the columns that have room: the one in hand, and those around the hands.
func (p *sizesPage) inSight(width int) []int {
	others := min(max(1, (width-sizeLabel)/sizeCell-1), p.columns()-1)
	shown, from := []int{0}, max(1, p.col-others+1)
	for col := from; col < from+others; col++ {
		shown = append(shown, col)
	}
	return shown
}

// line is a row of what differs by size.
func (p *sizesPage) line(row int, shown []int) string {
	st, k := p.desk.styles, p.keys[row]
	lead := "  "
	if row == p.row {
		lead = st.here.Render(">") + " "
	}
	line := lead + typeset.Pad(forms.Fields[k].Label, sizeLabel-2)
	for _, col := range shown {
		line += p.cell(row, col, k)
	}
	return line
}

// cell is an answer of a size, or the line of input where the hands are.
func (p *sizesPage) cell(row, col int, k worksheets.Key) string {
	st := p.desk.styles
	if row == p.row && col == p.col {
		return " [" + p.typing.render(sizeCell-3, st) + "]"
	}
	if draft := p.draft(col, k); draft != "" {
		return typeset.PadLeft(st.stop.Render(typeset.Cut(typeset.Plain(draft), sizeCell-3)+"?"), sizeCell)
	}
	r, ok := p.reportOf(col)
	switch {
	case !ok && row == 0:
		return typeset.PadLeft("another size", sizeCell)
	case !ok:
		return strings.Repeat(" ", sizeCell)
	case row == 0:
		return typeset.PadLeft(st.answer.Render(typeset.Cut(p.all[col].Title(), sizeCell-1)), sizeCell)
	case r.Sheet.Check(k) != nil:
		return typeset.PadLeft(st.stop.Render(typeset.Cut(typeset.Plain(r.Sheet.Text(k)), sizeCell-3)+"?"), sizeCell)
	}
	return typeset.PadLeft(typeset.Cut(r.ValueOrDash(k), sizeCell-1), sizeCell)
}

// notTaken says of a draft that reads that it is no answer yet.
func (p *sizesPage) notTaken() string {
	if p.waits() {
		return ", no answer yet: enter takes it"
	}
	return ""
}

// cells is a row that nobody types in.
func cells(row sizes.Row, shown []int) string {
	line := typeset.Pad("  "+row.Label, sizeLabel)
	for _, col := range shown {
		if col < len(row.Cells) {
			line += typeset.PadLeft(typeset.Cut(row.Cells[col], sizeCell-1), sizeCell)
		}
	}
	return strings.TrimRight(line, " ")
}

// costs are what each size comes to.
func (p *sizesPage) costs(shown []int) (lines []string) {
	var some []sizes.Size
	for _, col := range shown {
		if col < len(p.all) {
			some = append(some, p.all[col])
		}
	}
	inOrder := make([]int, len(some))
	for i := range inOrder {
		inOrder[i] = i
	}
	for _, row := range append(sizes.Rows(some), sizes.States(some)) {
		lines = append(lines, cells(row, inOrder))
	}
	return lines
}

// enterDoes says what enter does now.
func (p *sizesPage) enterDoes() string {
	if p.row == 0 && !p.typing.changed() && !p.waits() && p.col > 0 && !p.onNew() {
		return "take in hand"
	}
	return "keep, next"
}

// messageLine says what just happened, how the typed text reads, or what the row is.
func (p *sizesPage) messageLine(width int) string {
	d := p.desk
	if d.message != "" {
		return d.styles.warn.Render(inLine("> "+d.message, width))
	}
	text := inLine(p.hint(), width)
	return typeset.Cut(text+" "+strings.Repeat("-", max(0, width-len(text)-1)), width)
}

// meanwhile is what becomes of a text that cannot be taken.
func (p *sizesPage) meanwhile() string {
	if _, kept := p.draftName(p.col); kept {
		return "the answer stays"
	}
	return "esc drops it"
}

// inLine is as many sentences of a text as a line takes.
func inLine(text string, width int) string {
	for typeset.Width(text) > width {
		end := max(strings.LastIndex(text, ". "), strings.LastIndex(text, "? "))
		if end < 0 {
			break
		}
		text = text[:end+1]
	}
	return typeset.Cut(text, width)
}

func (p *sizesPage) hint() string {
	k := p.at()
	if p.typing.changed() || p.draft(p.col, k) != "" {
		sheet, err := p.typed()
		var guess doubt
		switch {
		case errors.As(err, &guess) && len(guess.meant) == 1:
			return "-- " + guess.meant[0] + "? enter takes it"
		case err != nil:
			return "-- " + whyNot(err, p.meanwhile())
		case k.IsLength() && p.col > 0:
			sheet = sheet.SizeAlone(p.col - 1)
			fallthrough
		case k.IsLength():
			if l := sheet.Reading(k); l.Known {
				return "-- = " + p.desk.rep.Scale.Both(l.Length) + p.notTaken()
			}
		}
	}
	switch {
	case p.row == 0 && p.onNew():
		return "-- type the name of another size that you measured"
	case p.row == 0:
		return "-- " + sizes.ByTheBody(p.all)
	}
	return "-- " + forms.Fields[k].Hint
}

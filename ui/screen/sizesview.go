package screen

import (
	"fmt"
	"slices"
	"strings"

	"capscye/ui/forms"
	"capscye/ui/parts"
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
	sizeCell  = 17 // at least
	sizeMost  = 19 // so that two have room in the smallest window
)

func (p *sizesPage) Render(width, height int) string {
	if parts.TooSmall(width, height) {
		return parts.SmallWindow(width, height)
	}
	shown := p.inSight(width)
	head, costs, compared := p.head(shown, width), p.costs(shown), p.compared(width)
	var rows []string
	for row := 1; row < len(p.keys); row++ {
		rows = append(rows, p.line(row, shown))
	}
	room := height - len(head) - len(costs) - 2
	tall := room-len(compared) >= min(len(rows), rowsEnough)
	if !tall {
		compared = nil
	}
	message := p.messageLines(width, tall)
	room = max(rowsFewest, room+1-len(message)-len(compared))
	seen, below := typeset.Window(rows, max(0, p.row-1), min(room, len(rows)))
	if below > 0 && len(seen) > 1 && p.row-1 < len(rows)-below-1 {
		seen[len(seen)-1] = "  ..."
	}
	body := slices.Concat(head, seen, message, costs, compared)
	return typeset.Block(body, width, height-1) + "\n" + parts.KeyLine(p.working(), p.styles, width)
}

// The rows of measurements that are in sight in any window, and those that are there before
// the comparison takes room.
const (
	rowsFewest = 4
	rowsEnough = 12
)

// head are the names of the sizes, which of them is in hand and, where it is in sight,
// which one the body says.
func (p *sizesPage) head(shown []int, width int) []string {
	st, d := p.styles, p.desk
	told := "in " + wording.UnitWords(d.Rep.Scale.System) + "; marks are pivot + slide; ~ is rounded"
	if words := p.elsewhere(); words != "" {
		told = st.Warn.Render("no costs yet: step 3 asks " + words)
	}
	title := "Sizes of the pattern"
	if d.Hand > 0 {
		title += fmt.Sprintf(", copy %d", d.Hand)
	}
	head := []string{typeset.Cut(st.Heading.Render(title)+"   "+told, width), p.line(0, shown)}
	for _, row := range sizes.Heads(p.all)[1:] {
		if line := p.cells(row, shown); line != "" {
			head = append(head, line)
		}
	}
	return head
}

// compared are the sentences under the costs.
func (p *sizesPage) compared(width int) []string {
	lines := []string{""}
	for _, words := range sizes.Comparison(p.all) {
		lines = append(lines, typeset.Wrap(words, width)...)
	}
	return lines
}

// working are the keys that work now.
func (p *sizesPage) working() []parts.Key {
	keys := []parts.Key{{Show: "enter", Does: p.enterDoes()}}
	if p.guess() != nil {
		keys = append(keys, parts.Key{Show: "^a", Does: "take guess"})
	}
	return append(keys, []parts.Key{{Show: "left/right", Does: "size"}, {Show: "up/down", Does: "row"}, {Show: "^x", Does: "remove"},
		{Show: "^z", Does: "undo"}, {Show: "^k", Does: "keys"}, {Show: "esc", Does: "back"}}...)
}

// elsewhere is what the costs of all sizes wait for, and what no row here can answer; "" for
// nothing.
func (p *sizesPage) elsewhere() string {
	for _, k := range []worksheets.Key{worksheets.SleeveMeasured, worksheets.SleeveAllowance, worksheets.BodiceMeasured, worksheets.BodiceAllowance} {
		if forms.Awaited(p.desk.Sheet(), k) {
			return forms.Fields[k].Words
		}
	}
	return ""
}

// inSight are the columns that have room: the one in hand, and those around the hands.
func (p *sizesPage) inSight(width int) []int {
	others := min(max(1, (width-sizeLabel)/p.wide-1), p.columns()-1)
	shown, from := []int{0}, max(1, p.col-others+1)
	for col := from; col < from+others; col++ {
		shown = append(shown, col)
	}
	return shown
}

// line is a row of what differs by size.
func (p *sizesPage) line(row int, shown []int) string {
	st, k := p.styles, p.keys[row]
	lead := "  "
	if row == p.row {
		lead = st.Here.Render(">") + " "
	}
	line := lead + typeset.Pad(forms.Fields[k].Label, sizeLabel-2)
	for _, col := range shown {
		line += p.cell(row, col, k)
	}
	return line
}

// cell is an answer of a size, or the line of input where the hands are.
func (p *sizesPage) cell(row, col int, k worksheets.Key) string {
	st := p.styles
	if row == p.row && col == p.col {
		return " [" + p.typing.Render(p.wide-3, st) + "]"
	}
	if draft := p.draft(col, k); draft != "" {
		return typeset.PadLeft(st.Stop.Render(typeset.Cut(typeset.Plain(draft), p.wide-3)+"?"), p.wide)
	}
	r, ok := p.reportOf(col)
	switch {
	case !ok && row == 0:
		return typeset.PadLeft("another size", p.wide)
	case !ok:
		return strings.Repeat(" ", p.wide)
	case row == 0:
		return typeset.PadLeft(st.Answer.Render(typeset.Cut(p.all[col].Title(), p.wide-1)), p.wide)
	case r.Sheet.Check(k) != nil:
		return typeset.PadLeft(st.Stop.Render(typeset.Cut(typeset.Plain(r.Sheet.Text(k)), p.wide-3)+"?"), p.wide)
	}
	if r.DoubtOf(k) != "" {
		return typeset.PadLeft(st.Warn.Render(typeset.Cut(r.ValueOrDash(k), p.wide-2)+"?"), p.wide)
	}
	return typeset.PadLeft(typeset.Cut(r.ValueOrDash(k), p.wide-1), p.wide)
}

// cells is a row that nobody types in.
func (p *sizesPage) cells(row sizes.Row, shown []int) string {
	line := typeset.Pad("  "+row.Label, sizeLabel)
	for _, col := range shown {
		if col < len(row.Cells) {
			line += typeset.PadLeft(typeset.Cut(row.Cells[col], p.wide-1), p.wide)
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
	for _, row := range append([]sizes.Row{sizes.States(some)}, sizes.Rows(some)...) { // the verdict is never out of sight
		lines = append(lines, p.cells(row, inOrder))
	}
	return lines
}

// enterDoes says what enter does now.
func (p *sizesPage) enterDoes() string {
	if p.row == 0 && !p.typing.Changed() && !p.waits() && p.col > 0 && !p.onNew() {
		return "take in hand"
	}
	return "keep, next"
}

package desk

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/calc/trace"
	"capscye/ui/parts"
	"capscye/ui/picture"
	"capscye/ui/report"
	"capscye/ui/tracing"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// Step 6: the steps at the table, one at a time, and as large as the screen.

// tick marks the step at hand as done and goes on to the next that is not.
func (d *Desk) tick() parts.Wish {
	s, ok := d.atHand()
	if !ok {
		return nil
	}
	var w parts.Wish
	if !d.Rep.Done(s) {
		w = d.setDone(append(d.withoutName(s.Name), s.ID()), "step "+wording.Verbs[s.Action])
	}
	for steps := d.Rep.TraceSteps(); d.trace < len(steps)-1; {
		d.trace++
		if !d.Rep.Done(steps[d.trace]) {
			break
		}
	}
	return w
}

// untick marks the step at hand as not done.
func (d *Desk) untick() parts.Wish {
	s, ok := d.atHand()
	if !ok || !d.Rep.Done(s) {
		return nil
	}
	return d.setDone(d.withoutName(s.Name), "step "+wording.Verbs[s.Action]+" not done")
}

// atHand is the step at hand, where it may be ticked off.
func (d *Desk) atHand() (trace.Step, bool) {
	steps := d.Rep.TraceSteps()
	switch {
	case len(steps) == 0:
		d.Message = d.Rep.NothingToTrace()
		return trace.Step{}, false
	case d.Shut():
		d.Message = d.ReadOnly()
		return trace.Step{}, false
	case d.OnCopy():
		return trace.Step{}, false
	}
	d.trace = d.traceAt(d.trace)
	return steps[d.trace], true
}

// withoutName is what is done, but for a step, whatever its amounts were.
func (d *Desk) withoutName(name string) []string {
	return slices.DeleteFunc(slices.Clone(d.Sheet().Done), func(id string) bool {
		return trace.StepName(id) == name && !worksheets.OfOtherSize(id)
	})
}

func (d *Desk) setDone(done []string, what string) parts.Wish {
	before, sheet := d.laid(), *d.Sheet()
	sheet.Done = done
	d.put(sheet) // in an example it is practice
	d.remember(before, what)
	d.reckon()
	return d.save()
}

// jump goes to the first step of the piece before or after, or to either end.
func (d *Desk) jump(name string) parts.Wish {
	steps := d.Rep.TraceSteps()
	if len(steps) == 0 {
		return nil
	}
	at := d.traceAt(d.trace)
	switch name {
	case "home":
		at = 0
	case "end":
		at = len(steps) - 1
	case "right":
		for piece := steps[at].Piece; at < len(steps)-1 && steps[at].Piece == piece; {
			at++
		}
	case "left":
		if at > 0 { // from the first step of a piece to the piece before
			at--
		}
		for at > 0 && steps[at-1].Piece == steps[at].Piece {
			at--
		}
	}
	d.trace = at
	return nil
}

// moveTrace goes to the next step at the table, or the one before.
func (d *Desk) moveTrace(by int) parts.Wish {
	d.trace = d.traceAt(d.trace + by)
	return nil
}

// traceLines is the page: what stands against cutting, the step at hand with
// its words, and the piece as it lies then.
func (d *Desk) traceLines(width, height int) []string {
	r, steps := d.Rep, d.Rep.TraceSteps()
	var out []string
	for _, f := range r.AgainstCutting() {
		out = append(out, findingLines(f, d.styles, width, false)...)
	}
	if len(out) > 0 {
		out = append([]string{d.styles.Stop.Render("Do not cut yet:")}, out...)
	}
	if len(steps) == 0 {
		return append(out, typeset.Wrap(r.NothingToTrace(), width)...)
	}
	at := d.traceAt(d.trace)
	s := steps[at]
	state := "to do"
	switch {
	case r.Done(s):
		state = "done"
	case r.DoneOtherwise(s):
		state = "it has changed: do it again"
	}
	out = append(out,
		d.styles.Heading.Render(typeset.Cut(fmt.Sprintf("%s: %s  (%d of %d, %s)", wording.Verbs[s.Action], tracing.About(s), at+1, len(steps), state), width)),
		typeset.Cut(progress(r, steps, at), width))
	out = append(out, typeset.Wrap(tracing.Sentence(s, r.Scale), width)...)
	out = append(out, "")
	return append(out, picture.OfStep(s, r.AsMarked(), width, height-len(out))...)
}

// progress shows every step as one cell: done, at hand, to do.
func progress(r report.Report, steps []trace.Step, at int) string {
	var b strings.Builder
	for i, s := range steps {
		switch {
		case i == at && r.Done(s):
			b.WriteString("[x]")
		case i == at:
			b.WriteString("[ ]")
		case r.Done(s):
			b.WriteByte('x')
		default:
			b.WriteByte('.')
		}
	}
	return b.String()
}

// goesIn tells that the amount of a step goes inward.
func goesIn(s trace.Step) bool {
	switch s.Action {
	case trace.Mark, trace.SameAgain:
		return s.Pivot <= 0 && s.Slide <= 0
	case trace.TurnTo:
		return s.Pivot < 0
	case trace.SlideOut:
		return s.Slide < 0
	}
	return false
}

// TableView fills the screen with the step at hand, to be read from across a
// cutting table: the verb, the piece, the amount in tall digits, the whole instruction,
// the picture, and how to leave.
type TableView struct{ Desk *Desk }

// Key ticks off, goes from step to step, or goes back.
func (v TableView) Key(msg tea.KeyMsg) parts.Wish { return parts.Named(msg, v.press) }

func (v TableView) press(name string) parts.Wish {
	d := v.Desk
	d.Message = ""
	switch name {
	case " ":
		return d.tick()
	case "x":
		return d.untick()
	case "up", "pgup":
		return d.moveTrace(-1)
	case "down", "pgdown", "enter":
		return d.moveTrace(1)
	case "left", "right", "home", "end":
		return d.jump(name)
	case "ctrl+g": // said in a copy, in which nobody ticks
		return d.NextCopy()
	case "ctrl+x":
		return d.TypedFirst(ToSeeCopies{})
	}
	return parts.ToGoBack{}
}

// Render draws it for a window.
func (v TableView) Render(width, height int) string {
	d := v.Desk
	steps := d.Rep.TraceSteps()
	if len(steps) == 0 {
		return typeset.Block(typeset.Wrap(d.Rep.NothingToTrace(), width), width, height)
	}
	at := d.traceAt(d.trace)
	s := steps[at]
	head := strings.ToUpper(wording.Verbs[s.Action])
	if goesIn(s) {
		head += " INWARD"
	}
	head += fmt.Sprintf("  %s   step %d of %d", tracing.About(s), at+1, len(steps))
	switch {
	case d.Rep.Done(s):
		head += ", done"
	case d.Rep.DoneOtherwise(s):
		head += ", which has changed: do it again"
	}
	out := []string{d.styles.Answer.Render(typeset.Cut(head, width)), ""}
	if d.Message != "" {
		out[1] = d.styles.Warn.Render(typeset.Cut("> "+d.Message, width))
	}
	words := typeset.Wrap(tracing.Sentence(s, d.Rep.Scale), width)
	if amount := stepAmount(s, d.Rep.Scale); amount != "" {
		room := height - len(out) - len(words) - 2                                   // a blank line, and the keys
		out = append(append(out, typeset.Tall(amount, width, room-room*2/5)...), "") // the picture gets the rest
	}
	out = append(out, words...)
	if room := height - len(out) - 1; room > 0 {
		out = append(out, picture.OfStep(s, d.Rep.AsMarked(), width, room)...)
	}
	lines := strings.Split(typeset.Block(out, width, height-1), "\n")
	if height < 2 { // no room to say how to leave
		return typeset.Block(out, width, height)
	}
	return typeset.Block(append(lines, parts.KeyLine(tableKeys, d.styles, width)), width, height)
}

// tableKeys are for the bottom line of the table view.
var tableKeys = []parts.Key{
	{Show: "esc", Does: "leaves"}, {Show: "space", Does: "done, next"}, {Show: "up/down", Does: "step"},
	{Show: "left/right", Does: "piece"}, {Show: "x", Does: "not done"},
}

// stepAmount is the amount of a step to be read across a table, or "". What goes
// inward has no minus sign, which nobody would see; see goesIn.
func stepAmount(s trace.Step, sc units.Scale) string {
	pivot, slide := s.Pivot, s.Slide
	if goesIn(s) {
		pivot, slide = -pivot, -slide
	}
	switch s.Action {
	case trace.Mark, trace.SameAgain:
		switch {
		case slide == 0:
			return sc.OnRuler(pivot)
		case pivot == 0:
			return sc.OnRuler(slide)
		}
		return report.BothMarks(pivot, slide, sc)
	case trace.TurnTo:
		return sc.OnRuler(pivot)
	case trace.SlideOut:
		return sc.OnRuler(slide)
	}
	return ""
}

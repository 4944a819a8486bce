package ui

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
)

// Step 6: the steps at the table, one at a time, and as large as the screen.

// traceAt is a step number within the steps.
func (d *desk) traceAt(n int) int { return max(0, min(n, len(d.rep.traceSteps())-1)) }

// firstUndone is the first step that is not ticked off, or the last one.
func (d *desk) firstUndone() int {
	steps := d.rep.traceSteps()
	for i, s := range steps {
		if !d.rep.done(s) {
			return i
		}
	}
	return d.traceAt(len(steps))
}

// tick marks the step at hand as done and goes on to the next; a step that is
// done is marked as not done.
func (d *desk) tick() wish {
	steps := d.rep.traceSteps()
	if len(steps) == 0 {
		d.message = d.rep.nothingToTrace()
		return wish{}
	}
	if d.doc.ReadOnly != "" {
		d.message = d.readOnly()
		return wish{}
	}
	d.trace = d.traceAt(d.trace)
	id, done := steps[d.trace].ID, slices.Clone(d.doc.Sheet.Done)
	if i := slices.Index(done, id); i >= 0 {
		done = slices.Delete(done, i, i+1)
	} else {
		done = append(done, id)
		d.trace = d.traceAt(d.trace + 1)
	}
	before := d.doc.Sheet
	d.doc.Sheet.Done = done
	d.remember(before, "step "+id)
	d.reckon()
	return d.keep()
}

// traceLines is the page: what stands against cutting, the step at hand with
// its words, and the piece as it lies then.
func (d *desk) traceLines(width, height int) []string {
	r, steps := d.rep, d.rep.traceSteps()
	var out []string
	for _, f := range r.findings {
		if f.level == calc.Stop || f.code == calc.AnswerMissing {
			out = append(out, findingLines(f, d.styles, width, false)...)
		}
	}
	if len(out) > 0 {
		out = append([]string{d.styles.stop.Render("Do not cut yet:")}, out...)
	}
	if len(steps) == 0 {
		return append(out, r.nothingToTrace())
	}
	at := d.traceAt(d.trace)
	s := steps[at]
	state := "to do"
	if r.done(s) {
		state = "done"
	}
	out = append(out,
		d.styles.heading.Render(cut(fmt.Sprintf("%s: %s  (%d of %d, %s)", verbs[s.Action], about(s), at+1, len(steps), state), width)),
		cut(progress(r, steps, at), width))
	out = append(out, wrap(stepText(s, r), width)...)
	out = append(out, "")
	return append(out, stepPicture(s, r, width, height-len(out))...)
}

// progress shows every step as one cell: done, at hand, to do.
func progress(r report, steps []calc.TraceStep, at int) string {
	var b strings.Builder
	for i, s := range steps {
		switch {
		case i == at && r.done(s):
			b.WriteString("[x]")
		case i == at:
			b.WriteString("[ ]")
		case r.done(s):
			b.WriteByte('x')
		default:
			b.WriteByte('.')
		}
	}
	return b.String()
}

// tableView fills the screen with the step at hand, to be read from across a
// cutting table: the amount in tall digits, the verb, the piece, the picture.
type tableView struct{ desk *desk }

func (v tableView) key(name string) wish {
	d := v.desk
	switch name {
	case " ":
		return d.tick()
	case "up", "left", "pgup":
		d.trace = d.traceAt(d.trace - 1)
	case "down", "right", "pgdown", "enter":
		d.trace = d.traceAt(d.trace + 1)
	case "ctrl+c", "ctrl+q":
		return wish{kind: wishQuit}
	default:
		return wish{kind: wishBack}
	}
	return wish{}
}

func (v tableView) render(width, height int) string {
	d := v.desk
	steps := d.rep.traceSteps()
	if len(steps) == 0 {
		return block(wrap(d.rep.nothingToTrace(), width), width, height)
	}
	s := steps[d.traceAt(d.trace)]
	tick := ""
	if d.rep.done(s) {
		tick = "  [done]"
	}
	out := []string{d.styles.answer.Render(cut(strings.ToUpper(verbs[s.Action])+"  "+about(s)+tick, width)), ""}
	if amount := stepAmount(s, d.rep.scale); amount != "" {
		out = append(out, tall(amount, width, height-len(out))...)
		out = append(out, "")
	} else {
		out = append(out, wrap(stepText(s, d.rep), width)...)
		out = append(out, "")
	}
	return block(append(out, stepPicture(s, d.rep, width, height-len(out))...), width, height)
}

package ui

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/units"
	"capscye/worksheets"
)

// render draws the worksheet for a window. It reads and changes nothing else.
func (d *desk) render(width, height int) string {
	l := layoutFor(width, height, len(d.copies) > 0)
	if l.tooSmall {
		return smallWindow(width, height)
	}
	st := d.styles
	form := d.renderStep(l.formWidth, l.formHeight)
	top := cut(d.titleLine(width), width) + "\n" + tape(d.step, d.rep, st, width) + "\n"
	keys := "\n" + keyLine(d.working(), st, width)
	if l.beside {
		panel := block(d.panel(l.answerWidth, l.answerHeight), l.answerWidth, l.answerHeight)
		both := columns(form, panel, l.formWidth, 2)
		return top + both + "\n" + d.messageLine(both, width) + keys
	}
	answer := answerStrip(d.rep, st, width)
	if len(d.copies) > 0 {
		answer = d.besideIn(width, l.answerHeight)
	}
	strip := block(answer, width, l.answerHeight)
	return top + form + "\n" + d.messageLine(form+strip, width) + "\n" + strip + keys
}

// panel is the answer beside the form: the words, and the pieces below them.
// The findings give way to a picture; step 5 has them all. While copies lie beside
// the sheet it is what differs.
func (d *desk) panel(width, height int) []string {
	room := height
	if d.step != stepTrace { // its page has the pictures
		room -= 12
	}
	var words []string
	if len(d.copies) > 0 {
		words = d.besideIn(width, room)
	} else {
		words = answerPanel(d.rep, d.styles, width)
		words = append(words, panelFindings(d.rep, d.styles, width, room-len(words))...)
	}
	if d.step == stepTrace {
		return words
	}
	words = append(words, "")
	return append(words, d.panelPictures(width, height-len(words))...)
}

// titleLine names the sheet, and says how lengths are shown and where it is kept.
func (d *desk) titleLine(width int) string {
	right := fmt.Sprintf("%s, ruler %s  [%s]", unitWords(d.rep.scale.System), d.rep.scale.Ruler, d.state())
	left := pad(d.styles.heading.Render(d.rep.name()), width-len(right)-1)
	return left + " " + right
}

// messageLine says what just happened. With nothing to say it is a rule, which
// explains the sign of rounded lengths while any is to be seen, and counts the
// findings.
func (d *desk) messageLine(seen string, width int) string {
	if d.message != "" {
		return d.styles.warn.Render(cut("> "+d.message, width))
	}
	note, tally := offMarkNote(seen), d.rep.tally()
	if note != "" {
		note = "-- " + note + " "
	}
	if tally != "" {
		tally = " " + tally + " --"
	}
	return cut(note+strings.Repeat("-", max(0, width-len(note)-len(tally)))+tally, width)
}

// renderStep draws the step under the hands.
func (d *desk) renderStep(width, height int) string {
	switch d.step {
	case stepMatch:
		return d.page(matchLines(d.rep, d.styles, width), width, height)
	case stepTrace:
		return block(d.traceLines(width, height), width, height)
	}
	rows, focus := d.formRows(width)
	var fixed []string
	if d.step == stepSplit { // the bands stay in sight, whatever is scrolled
		fixed = bandRows(d.rep, width)
		head := append(costLines(d.rep, width), headed(sidesTable(d.rep), d.styles, width)...)
		rows, focus = append(head, rows...), focus+len(head)
	}
	const hintHeight = 3
	height -= len(fixed)
	room := min(len(rows)+1, height-hintHeight) // the hint stands close below the form
	seen, below := window(rows, focus, room)
	if below > 0 && len(seen) > 1 {
		seen[len(seen)-1] = cut(fmt.Sprintf("  ... and %d more below", below+1), width)
	}
	form := append(fixed, strings.Split(block(seen, width, room), "\n")...)
	return block(form, width, len(form)) + "\n" + block(d.hint(width), width, height-room)
}

// page is a step without fields, scrolled.
func (d *desk) page(lines []string, width, height int) string {
	return scrolled(lines, d.scroll, width, height)
}

// scrolled is the part of the lines from one on that a block takes, and how many
// are below it.
func scrolled(lines []string, from, width, height int) string {
	top := max(0, min(from, len(lines)-height))
	seen := slices.Clone(lines[top:min(len(lines), top+height)])
	if below := len(lines) - top - height; below > 0 && height > 0 {
		seen[height-1] = cut(fmt.Sprintf("... and %d lines more below", below+1), width)
	}
	return block(seen, width, height)
}

// formRows draws every field of the step, and tells which row has the hands.
func (d *desk) formRows(width int) (rows []string, focus int) {
	for i, it := range forms[d.step] {
		if it.heading != "" {
			rows = append(rows, d.styles.heading.Render(cut(it.heading, width)))
			continue
		}
		if i == d.at[d.step] {
			focus = len(rows)
			rows = append(rows, d.focusedRow(it.key, width))
			continue
		}
		rows = append(rows, cut("  "+pad(fields[it.key].label, labelWidth)+d.shownValue(it.key), width))
	}
	return rows, focus
}

// The columns of a field: two cells for the hands, the label, the value, and
// what there is to say of it.
const (
	labelWidth = 20
	valueWidth = 18
)

// shownValue is an answer that the hands are not on, as the sheet shows it,
// with a word behind it where there is one to say.
func (d *desk) shownValue(k worksheets.Key) string {
	s := d.sheet()
	if s.Check(k) != nil {
		return pad(plain(s.Text(k)), valueWidth) + d.styles.stop.Render("cannot be read")
	}
	value := d.rep.valueOrDash(k)
	if k.Kind() == worksheets.Text {
		return value
	}
	return pad(value, valueWidth) + d.remark(k)
}

// value is what an answer comes to, the usual one where it is left to that; ""
// where there is none.
func (r report) value(k worksheets.Key) string {
	s := &r.sheet
	text := s.Text(k)
	switch l := s.Reading(k); {
	case kindOf(k) == choiceField:
		options, now := optionsOf(s, k)
		return options[now]
	case kindOf(k) == slideField:
		return r.slideRule()
	case l.Known:
		return r.scale.Format(l.Length)
	case text == "" && k.Kind() == worksheets.Part:
		return units.Half.String()
	case text == "" && k.Kind() == worksheets.Count:
		return fmt.Sprint(s.Count(k))
	}
	return plain(text)
}

// valueOrDash is [report.value], a dash where there is none.
func (r report) valueOrDash(k worksheets.Key) string { return cmp.Or(r.value(k), "-") }

// remark stands behind a value: the usual ease at that place.
func (d *desk) remark(k worksheets.Key) string {
	place, ok := placeOf[k]
	if !ok {
		return ""
	}
	low, high := usualEase(place, d.rep.input.Fabric)
	return "usual " + span(low, high, d.rep.scale)
}

// usualEase is what all the sources span.
func usualEase(at calc.Place, fabric calc.Fabric) (low, high units.Length) {
	sources := calc.UsualEase(at, fabric)
	low, high = sources[0].Low, sources[0].High
	for _, r := range sources[1:] {
		low, high = min(low, r.Low), max(high, r.High)
	}
	return low, high
}

// span is "3 to 4 in", or one length where both ends are the same.
func span(low, high units.Length, sc units.Scale) string {
	if low == high {
		return sc.Format(low)
	}
	return sc.Number(low) + " to " + sc.Format(high)
}

// focusedRow is the field under the hands, with how it reads right now.
func (d *desk) focusedRow(k worksheets.Key, width int) string {
	lead := d.styles.here.Render(">") + " " + d.styles.answer.Render(pad(fields[k].label, labelWidth))
	switch kindOf(k) {
	case choiceField:
		options, now := optionsOf(d.sheet(), k)
		return cut(lead+"< "+d.styles.here.Render(options[now])+" >", width)
	case slideField:
		if d.fresh {
			return cut(lead+"< "+d.styles.here.Render(d.rep.slideRule())+" >   # slide now, l least, e even", width)
		}
	}
	room := valueWidth - 3
	if k.Kind() == worksheets.Text {
		room = width - labelWidth - 6
	}
	return cut(lead+"["+d.typedText(room)+"] "+d.reading(k), width)
}

// typedText is the line of input in a box of fixed width: the library's own
// grows by a cell when typing starts.
func (d *desk) typedText(room int) string {
	if d.fresh && d.entry.Value() != "" {
		return pad(d.styles.here.Render(cut(plain(d.entry.Value()), room)), room)
	}
	if strings.ContainsFunc(d.entry.Value(), unprintable) { // shown, not obeyed
		return pad(plain(d.entry.Value()), room)
	}
	e := d.entry
	e.Width = room - 1
	e.SetCursor(e.Position()) // lets it find the part that is seen, at this width
	return pad(e.View(), room)
}

// reading is how the typed text reads, in both systems, or that it does not.
func (d *desk) reading(k worksheets.Key) string {
	text := d.entry.Value()
	if text == "" || k.Kind() == worksheets.Text {
		return ""
	}
	typed, err := d.typed(k)
	if err != nil {
		return d.styles.stop.Render("cannot be read")
	}
	if r := typed.Reading(k); r.Known {
		return "= " + d.rep.scale.Both(r.Length)
	}
	if k.Kind() == worksheets.Part {
		return "= " + typed.Share(k).String() + " front, " + typed.Share(k).Rest().String() + " back"
	}
	return ""
}

// hint says how to measure, or why what is typed cannot be read.
func (d *desk) hint(width int) []string {
	k, ok := d.focused()
	if !ok {
		return nil
	}
	if kindOf(k) != choiceField && d.entry.Value() != "" {
		if _, err := d.typed(k); err != nil {
			return wrap(capitalised(plain(err.Error()))+".", width)
		}
	}
	text := d.rep.hint(k)
	if k == worksheets.Slide {
		text += " Left and right push it along the band; l is the least, e the even one; or type a length."
	}
	return wrap(text, width)
}

// hint says how to measure or choose, who gives which ease, and what a limit
// costs.
func (r report) hint(k worksheets.Key) string {
	text := fields[k].hint
	if place, ok := placeOf[k]; ok {
		for _, u := range calc.UsualEase(place, r.input.Fabric) {
			text += " " + capitalised(u.Source) + ": " + span(u.Low, u.High, r.scale) + "."
		}
	}
	return text + r.costOfLimit(k)
}

// answerPanel is the answer so far, for the right-hand side.
func answerPanel(r report, st styles, width int) []string {
	out := []string{st.heading.Render("The answer so far")}
	for _, p := range r.pieces() {
		out = append(out, "")
		out = append(out, bold(wrap(p.needWords(r.scale), width), st)...)
		for _, s := range p.sidesWords(r.scale) {
			out = append(out, hanging("  ", s, width)...)
		}
		if words := p.finishedWords(r.scale); words != "" {
			out = append(out, hanging("  ", "comes out: "+words, width)...)
		}
	}
	return out
}

// panelFindings are the graver findings for the panel, as many as the room
// takes whole, and what is still to be answered.
func panelFindings(r report, st styles, width, room int) []string {
	var out []string
	if wanted := r.wanted(); wanted != "" {
		out = append(append(out, ""), wrap("Still to answer: "+wanted+".", width)...)
	}
	if t := r.tally(); t != "" {
		out = append(out, "", st.heading.Render("Findings")+" "+t+" (step 5)")
	}
	for _, f := range r.findings {
		if f.level == calc.Note || f.code == calc.AnswerMissing {
			continue
		}
		lines := findingLines(f, st, width, false)
		if len(out)+len(lines) > room {
			break
		}
		out = append(out, lines...)
	}
	return out
}

func bold(lines []string, st styles) []string {
	for i, l := range lines {
		lines[i] = st.answer.Render(l)
	}
	return lines
}

// answerStrip is the answer in three lines, for below the form.
func answerStrip(r report, st styles, width int) []string {
	var out []string
	outcome := []string{}
	for _, p := range r.pieces() {
		line := p.needWords(r.scale)
		switch sides := p.sidesWords(r.scale); len(sides) {
		case 0:
		case 1:
			line += "; " + sides[0]
		default: // front and back in full would not fit
			line += fmt.Sprintf("; pivot + slide: front %s, back %s", r.marksShort(p.front), r.marksShort(p.back))
		}
		out = append(out, st.answer.Render(cut(line, width)))
		if words := p.finishedWords(r.scale); words != "" {
			outcome = append(outcome, words)
		}
	}
	last := "Comes out: " + strings.Join(outcome, "; ")
	switch {
	case r.plan.Open:
		last = "Nothing is planned until every answer is there: see step 5"
	case len(outcome) == 0:
		last = "Nothing is reckoned yet"
	}
	return append(out, last)
}

// findingLines is a finding with its level hanging out to the left.
func findingLines(f finding, st styles, width int, ways bool) []string {
	style, lead := st.answer, "note "
	switch f.level {
	case calc.Warn:
		style, lead = st.warn, "warn "
	case calc.Stop:
		style, lead = st.stop, "STOP "
	}
	text := f.text
	if ways {
		text = f.line()
	}
	out := hanging(lead, text, width)
	out[0] = style.Render(lead) + strings.TrimPrefix(out[0], lead)
	return out
}

package desk

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// Render draws the worksheet for a window. It reads and changes nothing else.
func (d *Desk) Render(width, height int) string {
	l := d.layout(width, height)
	if l.tooSmall {
		return parts.SmallWindow(width, height)
	}
	st := d.styles
	form := d.renderStep(l.formWidth, l.formHeight)
	top := typeset.Cut(d.titleLine(width), width) + "\n" + tape(d.step, d.Rep, st, width) + "\n"
	keys := "\n" + parts.KeyLine(d.keysNow(), st, width)
	if l.beside {
		panel := typeset.Block(d.panel(l.answerWidth, l.answerHeight), l.answerWidth, l.answerHeight)
		both := typeset.Columns(form, panel, l.formWidth, 2)
		return top + both + "\n" + d.messageLine(both, width) + keys
	}
	answer := answerStrip(d.Rep, st, width)
	if len(d.Copies) > 0 {
		answer = d.besideIn(width, l.answerHeight)
	}
	strip := typeset.Block(answer, width, l.answerHeight)
	return top + form + "\n" + d.messageLine(form+strip, width) + "\n" + strip + keys
}

// panel is the answer beside the form: the words, and the pieces below them.
// The findings give way to a picture; step 5 has them all. While copies lie beside
// the sheet it is what differs.
func (d *Desk) panel(width, height int) []string {
	room := height
	if d.step != forms.Trace { // its page has the pictures
		room -= 12
	}
	var words []string
	if len(d.Copies) > 0 {
		words = d.besideIn(width, room)
	} else {
		words = answerPanel(d.Rep, d.styles, width)
		if d.step != forms.Match { // whose page has them all
			words = append(words, panelFindings(d.Rep, d.styles, width, room-len(words))...)
		}
	}
	if d.step == forms.Trace {
		return words
	}
	words = append(words, "")
	return append(words, d.panelPictures(width, height-len(words))...)
}

// titleLine names the sheet, and says how lengths are shown and where it is saved.
func (d *Desk) titleLine(width int) string {
	right := fmt.Sprintf("%s, ruler %s  [%s]", wording.UnitWords(d.Rep.Scale.System), d.Rep.Scale.Ruler, d.state())
	left := typeset.Pad(d.styles.Heading.Render(d.Rep.Name()), width-len(right)-1)
	return left + " " + right
}

// messageLine says what just happened, and counts the findings where that leaves room.
// With nothing to say it is a rule, which explains the sign of rounded lengths while any is
// to be seen.
func (d *Desk) messageLine(seen string, width int) string {
	note, tally := typeset.OffMarkNote(seen), d.Rep.Tally()
	if message := typeset.Cut("> "+d.Message, width); d.Message != "" {
		line := d.styles.Warn.Render(message)
		if room := width - typeset.Width(message) - typeset.Width(tally) - len("   --"); tally != "" && room > 0 {
			line += " " + strings.Repeat("-", room) + " " + tally + " --"
		}
		return typeset.Cut(line, width)
	}
	if tally != "" {
		tally = " " + tally + " --"
	}
	if note != "" {
		note = "-- " + note + " "
	}
	if len(note)+len(tally) > width { // the count comes first
		note = ""
	}
	return typeset.Cut(note+strings.Repeat("-", max(0, width-len(note)-len(tally)))+tally, width)
}

// layout divides a window between the step and what differs from copies.
func (d *Desk) layout(width, height int) layout {
	if len(d.Copies) == 0 || width >= besideFrom {
		return layoutFor(width, height, 0, 0)
	}
	form := height // a page takes all that it gets
	if f := d.form(width); f.rows != nil {
		form = len(f.fixed) + len(f.rows) - countAir(f.rows) + len(f.hint)
	}
	return layoutFor(width, height, form, len(d.besideLines(width)))
}

// renderStep draws the step under the hands.
func (d *Desk) renderStep(width, height int) string {
	switch d.step {
	case forms.Match:
		return typeset.Scrolled(matchLines(d.Rep, d.styles, width), d.scroll, width, height)
	case forms.Trace:
		return typeset.Block(d.traceLines(width, height), width, height)
	}
	return d.form(width).render(width, height)
}

// form is a step with fields: lines that stay in sight, rows of which the one with the
// hands is always seen, and the hint for that.
type form struct {
	fixed, rows []string
	focus       int
	hint        []string
}

// form is the step under the hands; without rows on a page.
func (d *Desk) form(width int) (f form) {
	f.rows, f.focus = d.formRows(width)
	if d.step == forms.Split { // the bands stay in sight, whatever is scrolled
		f.fixed = bandRows(d.Rep, width)
		head := []string{""}
		for _, group := range [][]string{costLines(d.Rep, width), headed(report.SidesTable(d.Rep), d.styles, width)} {
			if len(group) > 0 {
				head = append(append(head, group...), "")
			}
		}
		f.rows, f.focus = append(head, f.rows...), f.focus+len(head)
	}
	f.hint = d.hint(width)
	return f
}

// hintMost is how many lines of a hint are shown where rows would be hidden for it.
const hintMost = 3

// render draws as many rows as have room, and says how many more there are. The hint
// stands close below them.
func (f form) render(width, height int) string {
	height = max(0, height-len(f.fixed))
	hint := f.hint
	if len(f.rows)+len(hint) > height { // no air where answers would be hidden for it
		f.focus -= countAir(f.rows[:f.focus])
		f.rows = slices.DeleteFunc(slices.Clone(f.rows), isAir)
	}
	if len(f.rows)+len(hint) > height { // a row and what is above and below it come first
		hint = hint[:max(0, min(len(hint), hintMost, height-3))]
	}
	room := max(1, height-len(hint))
	top, end := typeset.Seen(len(f.rows), f.focus, room)
	seen := slices.Clone(f.rows[top:end])
	if below := len(f.rows) - end; below > 0 && len(seen) > 1 {
		seen[len(seen)-1] = typeset.Cut(fmt.Sprintf("  ... and %d more below", below+1), width)
	}
	if top > 0 && top < f.focus && len(seen) > 2 {
		seen[0] = typeset.Cut(fmt.Sprintf("  ... and %d more above", top+1), width)
	}
	if len(seen) < room {
		seen = append(seen, "")
	}
	return typeset.Block(slices.Concat(f.fixed, seen, hint), width, height+len(f.fixed))
}

// isAir tells the empty line above a heading.
func isAir(row string) bool { return row == "" }

func countAir(rows []string) (n int) {
	for _, row := range rows {
		if isAir(row) {
			n++
		}
	}
	return n
}

// formRows draws every field of the step, and tells which row has the hands.
func (d *Desk) formRows(width int) (rows []string, focus int) {
	for i, it := range forms.Items[d.step] {
		if it.Heading != "" {
			if len(rows) > 0 {
				rows = append(rows, "")
			}
			rows = append(rows, d.styles.Heading.Render(typeset.Cut(it.Heading, width)))
			continue
		}
		if i == d.at[d.step] {
			focus = len(rows)
			rows = append(rows, d.focusedRow(it.Key, width))
			continue
		}
		row := typeset.Cut("  "+typeset.Pad(forms.Fields[it.Key].Label, labelWidth)+d.shownValue(it.Key, width-labelWidth-2), width)
		if forms.WorthOf(d.Sheet(), it.Key) == forms.Idle {
			row = d.styles.Idle.Render(row)
		}
		rows = append(rows, row)
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
// with a word behind it where there is one to say and room for it.
func (d *Desk) shownValue(k worksheets.Key, room int) string {
	s := d.Sheet()
	if draft := s.Drafts.Of(k); draft != "" {
		why := "cannot be read"
		if d.unfinished(k, draft) {
			why = "not finished"
		}
		return typeset.Pad(typeset.Cut(typeset.Plain(draft), valueWidth-1), valueWidth) + typeset.Fitting(room-valueWidth, d.styles.Stop.Render(why)+"; "+d.stays(k), d.styles.Stop.Render(why)+"; stays "+d.answerWords(k))
	}
	if s.Check(k) != nil {
		return typeset.Pad(typeset.Plain(s.Text(k)), valueWidth) + d.styles.Stop.Render("cannot be read")
	}
	value := d.Rep.Value(k)
	if value == "" || forms.Awaited(s, k) {
		value = d.worth(k)
	}
	if k.Kind() == worksheets.Text {
		return value
	}
	return typeset.Pad(value, valueWidth) + d.note(k)
}

// focusedRow is the field under the hands, with how it reads right now.
func (d *Desk) focusedRow(k worksheets.Key, width int) string {
	lead := d.styles.Here.Render(">") + " " + d.styles.Answer.Render(typeset.Pad(forms.Fields[k].Label, labelWidth))
	switch forms.KindOf(k) {
	case forms.ChoiceField:
		options, now := d.optionsOf(k)
		value := "choose: " + typeset.OrList(forms.SaidOf(options))
		if now >= 0 {
			value = options[now].Said
		}
		return typeset.Cut(lead+"< "+d.styles.Here.Render(value)+" > "+d.note(k), width)
	case forms.SlideField:
		if d.atValue() {
			return typeset.Cut(lead+"< "+d.styles.Here.Render(d.Rep.SlideRule())+" >   # slide now, l least, e even", width)
		}
	}
	room := valueWidth - 3
	if k.Kind() == worksheets.Text {
		room = width - labelWidth - 6
	}
	lead += "[" + d.typing.Render(room, d.styles) + "] "
	reading := d.reading(k)
	first, _, _ := strings.Cut(reading, " = ") // the other system gives way
	return typeset.Fitting(width, lead+reading, lead+first)
}

// reading is how the typed text reads, in both systems, or that it does not.
func (d *Desk) reading(k worksheets.Key) string {
	text := d.typing.Text()
	switch {
	case k.Kind() == worksheets.Text:
		return ""
	case text == "":
		return strings.TrimPrefix(d.worth(k), "- ")
	}
	typed, err := d.typed(k)
	if text, ok := d.meant(); ok {
		return d.styles.Answer.Render(text + "? enter takes it")
	}
	if err != nil {
		return d.styles.Stop.Render("cannot be read")
	}
	if text, ok := d.guessed(k); ok {
		return d.styles.Warn.Render(text)
	}
	if r := typed.Reading(k); r.Known {
		return "= " + d.Rep.Scale.Both(r.Length)
	}
	if k.Kind() == worksheets.Part {
		return "= " + typed.Share(k).String() + " front, " + typed.Share(k).Rest().String() + " back"
	}
	return ""
}

// hint says how to measure, or why what is typed cannot be read.
func (d *Desk) hint(width int) []string {
	k, ok := d.Focused()
	if !ok {
		return nil
	}
	if forms.KindOf(k) != forms.ChoiceField && d.typing.Text() != "" {
		if _, err := d.typed(k); err != nil {
			return typeset.Wrap(typeset.Capitalised(typeset.Plain(err.Error()))+". Until it reads, "+d.stays(k)+".", width)
		}
	}
	text := d.Rep.Hint(k)
	if k == worksheets.Slide {
		text += " Left and right push it through the range; l is the least, e the even one; or type a length."
	}
	return typeset.Wrap(text, width)
}

// answerPanel is the answer so far, for the right-hand side.
func answerPanel(r report.Report, st parts.Styles, width int) []string {
	out := verdictLines(r, st, width)
	for _, p := range r.Pieces() {
		out = append(out, "")
		out = append(out, typeset.Wrap(p.NeedWords(r.Scale), width)...)
		for _, s := range p.SidesWords(r.Scale) {
			out = append(out, parts.Bold(typeset.Hanging("  ", s, width), st)...)
		}
		if words := p.FinishedWords(r.Scale); words != "" {
			out = append(out, typeset.Hanging("  ", "then "+words, width)...)
		}
	}
	return out
}

// panelFindings are the graver findings for the panel, as many as the room
// takes whole.
func panelFindings(r report.Report, st parts.Styles, width, room int) []string {
	var out []string
	if t := r.Tally(); t != "" {
		out = append(out, "", st.Heading.Render(t)+" (step 5)")
	}
	for _, f := range r.Findings {
		if f.Level == calc.Note || f.Code == calc.AnswerMissing {
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

// verdictLines are the verdict, whose words carry what the colour does.
func verdictLines(r report.Report, st parts.Styles, width int) []string {
	v, style := r.Verdict(), st.Verdict
	if v.State == report.Stopped || v.State == report.Unreadable {
		style = st.Refused
	}
	lines := typeset.Wrap(v.Line(), width-2)
	for i := range lines { // a bar, so that it is found before anything else
		lines[i] = style.Render(typeset.Pad(" "+lines[i], width))
	}
	return lines
}

// answerStrip is the answer in four lines, for below the form: the verdict, as far as a
// line takes it, both pieces, and what comes out.
func answerStrip(r report.Report, st parts.Styles, width int) []string {
	out := verdictLines(r, st, width)
	if len(out) > 1 { // one line has room
		out = []string{verdictLines(r, st, 1000)[0]}
		out[0] = typeset.Cut(out[0], width)
	}
	var outcome, girths []string
	for _, p := range r.Pieces() {
		line := p.NeedWords(r.Scale)
		switch sides := p.SidesWords(r.Scale); len(sides) {
		case 0:
			line = typeset.Cut(line, width)
		case 1:
			answer := st.Answer.Render(sides[0])
			line = typeset.Fitting(width, line+"; "+answer, p.Name+", "+answer, p.Name+": amounts in step 4")
		default: // front and back in full would not fit
			answer := st.Answer.Render(fmt.Sprintf("front %s, back %s", r.MarksShort(p.Front), r.MarksShort(p.Back)))
			line = typeset.Fitting(width, line+"; pivot + slide: "+answer, p.Name+", pivot + slide: "+answer, p.Name+": "+answer, p.Name+": amounts in step 4")
		}
		out = append(out, line)
		if words := p.FinishedShort(r.Scale); words != "" {
			outcome = append(outcome, words)
			girths = append(girths, p.GirthShort(r.Scale))
		}
	}
	last := typeset.Fitting(width, "Finished: "+strings.Join(outcome, "; "), "Finished: "+strings.Join(girths, "; "))
	switch {
	case r.Plan.Open:
		last = "No amounts yet (step 5 says why)"
	case r.Plan.TooFar():
		last = "No amounts: nobody alters a pattern so far (step 5 says why)"
	case len(outcome) == 0:
		last = "No figures yet"
	}
	return append(out, last)
}

// findingLines is a finding with its level hanging out to the left.
func findingLines(f report.Finding, st parts.Styles, width int, ways bool) []string {
	style, lead := st.Answer, "note  "
	switch f.Level {
	case calc.Warn:
		style, lead = st.Warn, "check "
	case calc.Stop:
		style, lead = st.Stop, "STOP  "
	}
	text := f.Text
	if ways {
		text = f.Line()
	}
	out := typeset.Hanging(lead, text, width)
	out[0] = style.Render(lead) + strings.TrimPrefix(out[0], lead)
	return out
}

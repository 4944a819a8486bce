package screen

// What a test garment showed, and what follows for the ease.

// askFitting asks for a note. What is half typed waits in the sheet, however the note or
// the program is left, and is there the next time.
func (m *root) askFitting() part {
	switch {
	case m.desk.shut():
		m.desk.message = m.desk.readOnly()
		return nil
	case m.desk.onCopy():
		return nil
	case m.desk.isExample():
		m.desk.message = "Notes go into your own worksheet; this is an example. ^s begins one."
		return nil
	}
	n := newNaming("What did the test garment show? Say where, how much and which way, such as: upper arm 1/2 in too tight", m.desk.doc.Sheet.Drafts.Note, m.styles, nil)
	n.accept = "enter adds the note  esc back: it waits here"
	n.typed = m.desk.jot
	n.take = func(text string) wish {
		if text == "" {
			return toGoBack{}
		}
		w := m.desk.addFitting(text, m.today)
		m.front = nil
		if change, ok := readFitting(text, m.desk.sheet(), m.desk.rep.Scale.System); ok {
			m.front = m.askEase(change)
		}
		return w
	}
	return n
}

// askEase offers to turn a fitting into a change of ease.
func (m *root) askEase(c easeChange) part {
	return newQuestion("The note is saved. "+c.question(m.desk.rep.Scale), m.styles).
		or("y", "yes", toChangeEase{c: c}).
		or("esc", "no, the note alone", toGoBack{})
}

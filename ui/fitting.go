package ui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"capscye/units"
	"capscye/worksheets"
)

// What a test garment showed, and what follows for the ease.

// askFitting asks for a note.
func (m *root) askFitting() part {
	if m.desk.doc.ReadOnly != "" {
		m.desk.message = m.desk.readOnly()
		return nil
	}
	n := newNaming("What did the test garment show? Say where, how much and which way, such as: upper arm 1/2 in too tight", "", m.styles, nil)
	n.accept = "enter keeps the note  esc back"
	n.take = func(text string) wish {
		w := m.desk.addFitting(text, m.today)
		m.front = nil
		if change, ok := readFitting(text, &m.desk.doc.Sheet); ok {
			m.front = m.askEase(change)
		}
		return w
	}
	return n
}

// askEase offers to turn a fitting into a change of ease.
func (m *root) askEase(c easeChange) part {
	text := fmt.Sprintf("The note is kept. Change the %s from %s to %s?", fields[c.key].words, orNothing(c.before, m.desk.rep.scale),
		m.desk.rep.scale.Format(c.after))
	return &question{styles: m.styles, text: text, answers: []answer{
		{"y", "yes", wish{kind: wishEase, ease: &c}},
		{"esc", "no, the note alone", wish{kind: wishBack}},
	}}
}

func orNothing(r units.Reading, sc units.Scale) string {
	if !r.Known {
		return "nothing"
	}
	return sc.Format(r.Length)
}

// addFitting keeps a note with its day.
func (d *desk) addFitting(note string, day time.Time) wish {
	before, list := d.doc.Sheet, slices.Clone(d.doc.Sheet.Fittings)
	d.doc.Sheet.Fittings = append(list, worksheets.Fitting{Date: day.Format(time.DateOnly), Note: note})
	d.remember(before, "note of a fitting")
	d.reckon()
	d.message = "The note is kept with the sheet: see step 5."
	return d.keep()
}

// changeEase does what was offered, and says so.
func (d *desk) changeEase(c easeChange) wish {
	w := d.set(c.key, exactly(c.after, d.doc.Sheet.Scale()))
	d.message = fmt.Sprintf("The %s is now %s, where it was %s.", fields[c.key].words, d.rep.scale.Format(c.after),
		orNothing(c.before, d.rep.scale))
	return w
}

// easeChange is an ease and what a fitting makes of it.
type easeChange struct {
	key    worksheets.Key
	before units.Reading
	after  units.Length
}

// fittingPlaces are the words for the places at which there is ease; the first
// that a note has decides.
var fittingPlaces = []struct {
	word string
	key  worksheets.Key
}{
	{"upper arm", worksheets.EaseBicep}, {"bicep", worksheets.EaseBicep}, {"sleeve", worksheets.EaseBicep},
	{"bust", worksheets.EaseBust}, {"chest", worksheets.EaseBust}, {"waist", worksheets.EaseWaist}, {"hip", worksheets.EaseHip},
	{"elbow", worksheets.EaseElbow}, {"wrist", worksheets.EaseWrist}, {"cuff", worksheets.EaseWrist},
}

// fittingWays are the words for too little and too much.
var fittingWays = []struct {
	word string
	sign units.Length
}{{"tight", 1}, {"narrow", 1}, {"small", 1}, {"loose", -1}, {"wide", -1}, {"large", -1}, {"big", -1}, {"roomy", -1}}

// readFitting reads a place, an amount and a way out of a note, such as "upper
// arm 1/2 in too tight". A note that says less or more than one of them is a note
// and nothing else.
func readFitting(note string, s *worksheets.Sheet) (c easeChange, ok bool) {
	lower := strings.ToLower(note)
	place := slices.IndexFunc(fittingPlaces, func(p struct {
		word string
		key  worksheets.Key
	}) bool {
		return strings.Contains(lower, p.word)
	})
	var sign units.Length
	for _, w := range fittingWays {
		if !strings.Contains(lower, w.word) {
			continue
		}
		if sign != 0 && sign != w.sign {
			return easeChange{}, false
		}
		sign = w.sign
	}
	amount, found := amountIn(note, s.Unit())
	if place < 0 || sign == 0 || !found {
		return easeChange{}, false
	}
	c.key = fittingPlaces[place].key
	c.before = s.Reading(c.key)
	c.after = c.before.Or(0) + sign*amount
	return c, true
}

// amountIn finds the one length in a note: the longest run of words that reads
// as one.
func amountIn(note string, sys units.System) (units.Length, bool) {
	words := strings.Fields(strings.NewReplacer(";", " ", ":", " ", "(", " ", ")", " ").Replace(note))
	for size := min(4, len(words)); size > 0; size-- {
		for from := 0; from+size <= len(words); from++ {
			l, err := units.Parse(strings.Join(words[from:from+size], " "), sys)
			if err == nil && l > 0 {
				return l, true
			}
		}
	}
	return 0, false
}

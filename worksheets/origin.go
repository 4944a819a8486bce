package worksheets

import (
	"path/filepath"
	"slices"

	"capscye/worksheets/disk"
)

// Section is what one worksheet can take from another.
type Section uint8

// The sections.
const (
	BodySection    Section = iota // the girths, their day and the wearer
	PatternSection                // sleeve and bodice, measured flat, in every size
)

// origin is the key that keeps the name of the file that a section was taken from.
func (s Section) origin() Key { return [...]Key{BodyFrom, PatternFrom}[s] }

// tables are the tables of the file that make it.
func (s Section) tables() []string {
	return [...][]string{{"body"}, {"pattern", "sleeve", "bodice"}}[s]
}

// Keys lists the answers of the section, in the order of the file.
func (s Section) Keys() []Key {
	return slices.DeleteFunc(Keys(), func(k Key) bool { return !slices.Contains(s.tables(), k.table()) })
}

// Take puts a section of another sheet in the place of this one's, and remembers the
// file that it came from. A length that names no unit gets the one it was meant
// in, where this sheet has another. A pattern comes with its sizes; where it is taken
// again, the size stays in hand that was.
func (s *Sheet) Take(section Section, from Sheet, file string) {
	if section == PatternSection {
		if s.answers[PatternFrom] == tidy(filepath.Base(file)) {
			from = from.inHandAs(*s)
		}
		s.Sizes = from.Sizes
		if from.Unit() != s.Unit() {
			s.Sizes = sizesIn(from.Sizes, from.Unit())
		}
	}
	for _, k := range section.Keys() {
		text := from.answers[k]
		if k.IsLength() && from.Unit() != s.Unit() {
			text = WithUnit(text, from.Unit())
		}
		s.answers[k] = text
		s.Drafts = s.Drafts.With(k, "")
	}
	if section == BodySection && from.answers[Wearer] != "" {
		s.answers[Wearer] = from.answers[Wearer]
	}
	s.answers[section.origin()] = tidy(filepath.Base(file))
}

// Origin is a sheet of the same folder that a section was taken from, as it is now.
type Origin struct {
	Section Section
	File    string // its name in the folder
	Sheet   Sheet
}

// findOrigins reads the sheets that sections of this one were taken from into
// [Document.Origins]. One that is not in the folder any more, or cannot be read, is
// left out; a name that leads out of the folder is not followed.
func (d *Document) findOrigins() {
	for _, p := range []Section{BodySection, PatternSection} {
		file := d.Sheet.answers[p.origin()]
		if file == "" || file != filepath.Base(file) || !HasEnding(file) || file == filepath.Base(d.name) {
			continue
		}
		if from, err := loadAlone(disk.Beside(d.name, file)); err == nil {
			d.Origins = append(d.Origins, Origin{p, file, from.Sheet})
		}
	}
}

// IsOf tells that a sheet names this one as the origin of the section.
func (o Origin) IsOf(s Sheet) bool { return s.answers[o.Section.origin()] == o.File }

// inHandAs is the sheet with the size in hand that another sheet has in hand, if it has
// measured that.
func (s Sheet) inHandAs(other Sheet) Sheet {
	if i, ok := s.SizeNamed(other.answers[PatternSize]); ok {
		return s.TakeInHand(i)
	}
	return s
}

// Since lists the answers that the origin has now and a sheet has otherwise. An
// answer that the origin has not does not count, nor another way of writing it, nor
// that another size of a pattern is in hand.
func (o Origin) Since(s Sheet) []Key {
	if o.Section == PatternSection {
		o.Sheet = o.Sheet.inHandAs(s)
	}
	return slices.DeleteFunc(o.Section.Keys(), func(k Key) bool {
		theirs, ours := o.Sheet.Reading(k), s.Reading(k)
		switch {
		case o.Sheet.answers[k] == "" || k == MeasuredOn:
			return true
		case theirs.Known:
			return theirs == ours
		}
		return o.Sheet.answers[k] == s.answers[k]
	})
}

// Package worksheets says what is remembered: the sheet with its answers, the
// TOML file that it is kept in, the folder of such files, and the examples that
// come with the program.
//
// A sheet holds what the person typed, letter by letter; what an answer means
// is read from it on demand, so that nothing is lost in a file that is half
// filled or partly unreadable. It is a value, and a copy is another sheet: undo and
// what-ifs hold as many as they like.
//
//	doc, err := worksheets.Load("blouse.toml")
//	doc.Sheet.Set(worksheets.Bicep, "13 3/4")
//	r, err := doc.Sheet.Length(worksheets.Bicep) // 13 3/4 of the sheet's unit
//	_, err = doc.Save()                          // only that value changes in the file
//
// Saving splices the changed values into the bytes of the file, decodes the result and
// compares. Only where that fails is the file made anew, with the original put beside
// it. A file of the plain shape, a known key and a value on a line, is read by a quick
// reader, which declines whatever it does not know, right or wrong: the library stays the
// judge and words the errors. A fuzz target and a property hold the two together. What is
// in no file is guarded against a crash in a [Recovery], a file in the state folder with a
// lock beside it, in one of four slots for the path of a sheet and four for the number of
// its file.
//
// A pattern that prints several sizes has one of them in hand, in [sleeve] and [bodice], and
// the others beside it ([Size]); any of them can be taken in hand ([Sheet.TakeInHand]).
//
// It computes nothing, and so does not import calc.
package worksheets

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"capscye/units"
)

// Version is the version of the file format that this program writes.
const Version = 1

// Sheet is one worksheet. It is a value: a copy is another sheet. The slices
// are never changed in place. The zero value is an empty sheet in inches.
type Sheet struct {
	answers  [keyCount]string
	meant    units.System // the unit before one that cannot be read
	Sizes    []Size       // of the pattern, besides the one in hand
	Done     []string     // ids of finished tracing steps; see OfOtherSize
	Fittings []Fitting
	Drafts   Drafts // what is in no file: half typed
}

// Fitting is what a test garment showed on a day.
type Fitting struct {
	Date string // 2026-11-20, or ""
	Note string
}

// Since is the sheet with the answers that later has and earlier had not: what
// was changed between the two, laid over this one.
func (s Sheet) Since(earlier, later Sheet) Sheet {
	for k := range s.answers {
		if later.answers[k] != earlier.answers[k] {
			s.answers[k] = later.answers[k]
		}
	}
	if !slices.Equal(later.Sizes, earlier.Sizes) {
		s.Sizes = later.Sizes
	}
	if !slices.Equal(later.Done, earlier.Done) {
		s.Done = later.Done
	}
	if !slices.Equal(later.Fittings, earlier.Fittings) {
		s.Fittings = later.Fittings
	}
	s.Drafts = s.Drafts.since(earlier.Drafts, later.Drafts)
	return s
}

// Equal tells whether two sheets say the same in the same words, in their files.
func (s Sheet) Equal(other Sheet) bool {
	return s.answers == other.answers && slices.Equal(s.Sizes, other.Sizes) && slices.Equal(s.Done, other.Done) && slices.Equal(s.Fittings, other.Fittings)
}

// Same is [Sheet.Equal], and what is half typed is the same too.
func (s Sheet) Same(other Sheet) bool { return s.Equal(other) && s.Drafts.Equal(other.Drafts) }

// Text is the answer as it was typed.
func (s *Sheet) Text(k Key) string { return s.answers[k] }

// Set keeps an answer, readable or not, without the space around it. The error
// says why it cannot be read; the text is kept all the same. A draft for it is gone.
func (s *Sheet) Set(k Key, text string) error {
	s.Drafts = s.Drafts.With(k, "")
	if k == Unit {
		return s.setUnit(text)
	}
	s.answers[k] = tidy(text)
	return s.Check(k)
}

// tidy is a text as the file can hold it, without the space around it.
func tidy(text string) string {
	return strings.TrimSpace(strings.ToValidUTF8(text, "\ufffd"))
}

// setUnit changes what a bare number means and how lengths are shown, not what
// was measured: every length that named no unit gets the one it was meant in.
// While the unit cannot be read, the one before is still meant.
func (s *Sheet) setUnit(text string) error {
	before := s.Unit()
	s.answers[Unit] = tidy(text)
	if err := s.Check(Unit); err != nil {
		s.meant = before
		return err
	}
	if s.Unit() == before {
		return nil
	}
	for _, k := range Keys() {
		if k.IsLength() {
			s.answers[k] = WithUnit(s.answers[k], before)
		}
	}
	s.Sizes = sizesIn(s.Sizes, before)
	if s.answers[Ruler] == "" { // the ruler in the hand stays the same
		s.answers[Ruler] = units.UsualRuler(before).String()
	}
	return nil
}

// WithUnit names the unit of a length that names none. What is no length stays
// as it is.
func WithUnit(text string, sys units.System) string {
	if _, named, err := units.ParseNamed(text, sys); err != nil || named {
		return text
	}
	return text + " " + sys.String()
}

// Check says why the answer cannot be read, if it cannot.
func (s *Sheet) Check(k Key) error {
	text := s.answers[k]
	if text == "" {
		return nil
	}
	var err error
	switch k.Kind() {
	case Text:
		if k == PatternSize {
			err = s.checkName(text, -1)
		}
	case Choice:
		if !slices.Contains(k.Options(), text) {
			err = &ValueError{text, "is not a choice", "Choose " + choiceList(k.Options())}
		}
	case Date:
		if !isDay(text) {
			err = &ValueError{text, "is no day of the calendar", "Write it like 2026-10-03"}
		}
	case Scale:
		_, err = units.ParseRuler(text, s.Unit())
	case Girth, Amount, Signed:
		_, err = s.Length(k)
	case Part:
		_, err = units.ParseShare(text)
	case Slid:
		if text != "least" && text != "even" {
			_, err = s.Length(k)
		}
	case Count:
		if _, ok := smallCount(text); !ok {
			err = &ValueError{text, "is not " + wantCount, "Write it like 1"}
		}
	}
	return err
}

// noSlide is why a text that is neither of the two words is no slide, with all that one can be.
func noSlide(err error) error {
	var length *units.ParseError
	if !errors.As(err, &length) {
		return err
	}
	slide := *length
	slide.Kind, slide.Want = "slide", "Write it like least, even or 1 1/4"
	return &slide
}

// choiceList is "woven or knit", "set-in, shirt or gathered"; the list of typeset stands on
// a floor above.
func choiceList(options []string) string {
	last := len(options) - 1
	return strings.Join(options[:last], ", ") + " or " + options[last]
}

func smallCount(text string) (int, bool) {
	n, err := strconv.Atoi(text)
	return n, err == nil && 0 <= n && n <= mostCount
}

// Choice is the word that was chosen, or what stands for it where nothing readable
// was; "" where nothing does.
func (s *Sheet) Choice(k Key) string {
	if text := s.answers[k]; slices.Contains(k.Options(), text) {
		return text
	}
	if from, ok := s.Inherits(k); ok {
		return s.Choice(from)
	}
	return k.Usual()
}

// Inherits tells that an answer is empty, and which other one stands for it.
func (s *Sheet) Inherits(k Key) (from Key, ok bool) {
	from, ok = k.From()
	return from, ok && s.answers[k] == "" && s.answers[from] != "" && s.Check(from) == nil
}

// Unit is the system of bare numbers.
func (s *Sheet) Unit() units.System {
	if sys, err := units.ParseSystem(s.answers[Unit]); err == nil {
		return sys
	}
	if s.answers[Unit] != "" && s.meant != 0 {
		return s.meant
	}
	return units.Inches
}

// Ruler is the ruler in use, or the usual one of the unit.
func (s *Sheet) Ruler() units.Ruler {
	if r, err := units.ParseRuler(s.answers[Ruler], s.Unit()); err == nil {
		return r
	}
	return units.UsualRuler(s.Unit())
}

// Scale says how lengths of this sheet are shown.
func (s *Sheet) Scale() units.Scale { return units.Scale{System: s.Unit(), Ruler: s.Ruler()} }

// Length is a length that was measured or chosen. An empty answer is not known
// and no error, unless the key has a usual value, or another answer stands for it.
func (s *Sheet) Length(k Key) (units.Reading, error) {
	if from, ok := s.Inherits(k); ok {
		return s.Length(from)
	}
	text := s.answers[k]
	if text == "" {
		text = specs[k].usual
	}
	if !k.IsLength() || text == "" || k.Kind() == Slid && (text == "least" || text == "even") {
		return units.Reading{}, nil
	}
	l, err := units.Parse(text, s.Unit())
	switch {
	case err != nil && k.Kind() == Slid:
		return units.Reading{}, noSlide(err)
	case err != nil:
		return units.Reading{}, err
	case k.Kind() == Girth && l <= 0:
		return units.Reading{}, &ValueError{text, "must be more than 0", units.Example}
	case k.Kind() == Amount && l < 0:
		return units.Reading{}, &ValueError{text, "is below 0", units.Example}
	}
	return units.Known(l), nil
}

// Reading is [Sheet.Length] where an unreadable answer counts as none, or as
// the usual one.
func (s *Sheet) Reading(k Key) units.Reading {
	r, err := s.Length(k)
	if err != nil {
		without := *s
		without.answers[k] = ""
		r, _ = without.Length(k)
	}
	return r
}

// Share is the front's part, one half where nothing readable was written.
func (s *Sheet) Share(k Key) units.Share {
	if share, err := units.ParseShare(s.answers[k]); err == nil {
		return share
	}
	return units.Half
}

// Count is a small number, the usual one where nothing readable was written.
func (s *Sheet) Count(k Key) int {
	if n, ok := smallCount(s.answers[k]); ok {
		return n
	}
	n, _ := smallCount(specs[k].usual)
	return n
}

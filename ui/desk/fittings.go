package desk

import (
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode"

	"capscye/ui/forms"
	"capscye/ui/parts"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// What a test garment showed, and what follows for the ease.

// Jot lets a note wait that is not added yet.
func (d *Desk) Jot(note string) { d.Doc.Sheet.Drafts.Note = strings.TrimSpace(note) }

// AddFitting adds a note with its day.
func (d *Desk) AddFitting(note string, day time.Time) parts.Wish {
	sheet := *d.Sheet()
	sheet.Fittings = append(slices.Clone(sheet.Fittings), worksheets.Fitting{Date: day.Format(time.DateOnly), Note: note})
	sheet.Drafts.Note = ""
	w := d.Change(sheet, "note of a fitting")
	d.Message = "The note is added to the worksheet: see step 5."
	return w
}

// ChangeEase does what was offered, and says so.
func (d *Desk) ChangeEase(c EaseChange) parts.Wish {
	w := d.Set(c.key, forms.Exactly(c.after, d.Sheet().Scale()))
	d.Message = fmt.Sprintf("The %s is now %s, where it was %s.", forms.Fields[c.key].Words, d.Rep.Scale.Format(c.after),
		orNothing(c.before, d.Rep.Scale))
	return w
}

// EaseChange is an ease and what a fitting makes of it.
type EaseChange struct {
	key    worksheets.Key
	before units.Reading
	after  units.Length
}

// Question asks for the change.
func (c EaseChange) Question(sc units.Scale) string {
	text := fmt.Sprintf("Change the %s by %s, from %s to %s?", forms.Fields[c.key].Words,
		wording.Signed(c.after-c.before.Or(0), sc), orNothing(c.before, sc), sc.Format(c.after))
	if c.after < 0 {
		text += " That is smaller than the body: only a knit takes it."
	}
	return text
}

// fittingPlaces are the words for the places at which there is ease.
var fittingPlaces = map[string]worksheets.Key{
	"arm": worksheets.EaseBicep, "bicep": worksheets.EaseBicep, "biceps": worksheets.EaseBicep,
	"bust": worksheets.EaseBust, "chest": worksheets.EaseBust, "waist": worksheets.EaseWaist,
	"hip": worksheets.EaseHip, "hips": worksheets.EaseHip, "elbow": worksheets.EaseElbow, "wrist": worksheets.EaseWrist,
}

// fittingWays are the words for too little and too much.
var fittingWays = map[string]units.Length{
	"tight": 1, "narrow": 1, "small": 1, "loose": -1, "wide": -1, "large": -1, "big": -1, "roomy": -1,
}

// fittingDoubts are words with which a note says something else than how much
// ease is missing.
var fittingDoubts = []string{
	"not", "no", "longer", "long", "short", "hem", "cap", "armhole", "size", "sizes", "each", "side", "spare", "fine", "widened", "but",
	"lower", "sleeve", "shoulder",
}

// ReadFitting reads a place, an amount and a way out of a note, such as "upper
// arm 1/2 in too tight": exactly one of each, and nothing that could mean
// something else. Any other note is a note and nothing more. Bare numbers are in
// the system that is shown.
func ReadFitting(note string, s *worksheets.Sheet, shown units.System) (c EaseChange, ok bool) {
	amount, rest, found := amountIn(note, shown)
	if !found || strings.ContainsAny(rest, "0123456789½¼¾⅛⅜⅝⅞⅓⅔") {
		return EaseChange{}, false
	}
	var places []worksheets.Key
	var ways []units.Length
	for _, word := range strings.FieldsFunc(strings.ToLower(rest), func(r rune) bool { return !unicode.IsLetter(r) }) {
		if slices.Contains(fittingDoubts, word) {
			return EaseChange{}, false
		}
		if k, known := fittingPlaces[word]; known {
			places = append(places, k)
		}
		if sign, known := fittingWays[word]; known {
			ways = append(ways, sign)
		}
	}
	if len(places) != 1 || len(ways) != 1 {
		return EaseChange{}, false
	}
	c.key = places[0]
	c.before = s.Reading(c.key)
	c.after = c.before.Or(0) + ways[0]*amount
	return c, true
}

// amountIn finds the length in a note, the longest run of words that reads as
// one, and gives the note without it. A number without a unit has to stand
// before "too", as in "1/2 too tight".
func amountIn(note string, sys units.System) (l units.Length, rest string, ok bool) {
	words := strings.Fields(strings.NewReplacer(";", " ", ":", " ", "(", " ", ")", " ").Replace(note))
	for size := min(4, len(words)); size > 0; size-- {
		for from := 0; from+size <= len(words); from++ {
			l, named, err := units.ParseNamed(strings.Join(words[from:from+size], " "), sys)
			if err != nil || l <= 0 || !named && (from+size == len(words) || !strings.EqualFold(words[from+size], "too")) {
				continue
			}
			return l, strings.Join(slices.Concat(words[:from], []string{"|"}, words[from+size:]), " "), true
		}
	}
	return 0, "", false
}

func orNothing(r units.Reading, sc units.Scale) string {
	if !r.Known {
		return "nothing"
	}
	return sc.Format(r.Length)
}

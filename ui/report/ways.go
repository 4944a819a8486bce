package report

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
)

// The ways out in words, with their numbers.

// Way is a way out as it is shown, and as other programs read it.
type Way struct {
	Of    string
	Words string
	calc.Numbers
}

// wayWords are the ways out that need no number.
var wayWords = map[calc.Way]string{
	calc.OtherSize: "start from another pattern size", calc.OtherShare: "divide the need differently between front and back",
	calc.MoreEaseThere: "ask for more ease at the other piece", calc.FoldOut: "fold out what is too much",
	calc.WidenBelow: "taper only as far as that level allows", calc.TaperTheLine: "taper from the line instead",
	calc.NarrowerLimit: "lower the pivot limit, and slide more", calc.OtherStyle: "choose another sleeve style",
	calc.MeasureAgain: "measure again, on the seam lines", calc.TryTheSeam: "sew the cap into a test armhole first",
	calc.AlterTheBodice: "alter the bodice too, if it is not cut yet", calc.LetItOut: "widen it to match",
	calc.HoldIt: "keep its width", calc.MeasureTheSeams: "measure cap and armhole: the cap may have room",
	calc.FrontTakesMore: "give the front more of what the bust needs, or all of it: the back fits then",
}

// waysOut are the ways out of a finding of the plan.
func (r *Report) waysOut(f calc.Finding) []Way {
	ways := make([]Way, len(f.Ways))
	for i, w := range f.Ways {
		n := r.Plan.Numbers(r.Input, f, w)
		ways[i] = Way{w.String(), r.wayText(f, w, n), n}
	}
	return ways
}

// wayText is a way out, with the numbers that are known.
func (r *Report) wayText(f calc.Finding, w calc.Way, n calc.Numbers) string {
	p, say := WordsOfPiece(f.About), r.Scale.Format
	amount, each, usual := say(n.Amount.Length), say(n.EachSide.Length), wording.UsualOne(n.Amount.Length, r.Scale)
	switch {
	case w == calc.OtherSize:
		return r.otherSize(f)
	case w == calc.MeasureTheGirth:
		if f.Amount < 0 {
			return "measure the " + p.girth + " too, for you may want it narrower"
		}
		return "measure the " + p.girth + " too, for you may want the extra width"
	case !n.Amount.Known:
		return wayWords[w]
	case w == calc.WiderLimit:
		return "allow a pivot limit of " + amount + r.lowers(f, n, "more of its ")
	case w == calc.Gusset:
		return gussetText(p, amount, each, say(n.Adds.Length), n.EachSide.Known)
	case w == calc.SlashAndSpread:
		return spreadText(f, p, amount, each) + r.lowers(f, n, "of its ")
	case w == calc.FoldOut:
		return fmt.Sprintf("fold out %s at the %s, %s each side", amount, p.line, each)
	case w == calc.NarrowerLimit:
		return "lower the pivot limit to " + usual + ", and slide more"
	case w == calc.LessEaseThere:
		return fmt.Sprintf("ask for less ease at the %s, usually at least %s", p.otherName, usual)
	case f.Code == calc.TighterThanBody:
		return "ask for more ease, usually at least " + usual
	case f.Code == calc.BindsBelow:
		return fmt.Sprintf("ask for %s of ease at the %s", amount, wording.PlaceWords[f.At])
	}
	return fmt.Sprintf("ask for %s of ease at the %s", amount, p.girth)
}

// otherSize names the sizes that were measured and have neither that finding nor any stop.
func (r *Report) otherSize(f calc.Finding) string {
	var names []string
	for i, z := range r.Sheet.Sizes {
		alone := r.Sheet.SizeAlone(i)
		p := calc.Compute(Input(&alone, r.by.Today))
		against := func(other calc.Finding) bool {
			return other.Level == calc.Stop || other.Code == f.Code && WordsOfPiece(other.About) == WordsOfPiece(f.About)
		}
		if p.Whole() && !slices.ContainsFunc(p.Findings, against) {
			names = append(names, typeset.Plain(z.Name()))
		}
	}
	if len(names) == 0 {
		return wayWords[calc.OtherSize]
	}
	return "start from size " + typeset.OrList(names)
}

// lowers is the price of a way in the height of the cap or the depth of the armhole.
func (r *Report) lowers(f calc.Finding, n calc.Numbers, of string) string {
	p := WordsOfPiece(f.About)
	lost := r.Scale.Format(n.Lowers.Length)
	if n.Lowers.Length <= 0 || wording.ShownAsNothing(lost) {
		return ""
	}
	return fmt.Sprintf(": the %s loses %s %s", p.Seam, lost, of+p.Height)
}

func gussetText(p PieceWords, amount, each, adds string, alike bool) string {
	if p.Name != "sleeve" {
		return fmt.Sprintf("set a gusset %s wide into each side seam (run on into the sleeve, it adds %s at the bicep line)", amount, adds)
	}
	sides := ""
	if alike {
		sides = ", " + each + " each side"
	}
	return fmt.Sprintf("set in a gusset %s wide at the underarm%s (run on into the side seams, it adds %s to the bust)", amount, sides, adds)
}

func spreadText(f calc.Finding, p PieceWords, amount, each string) string {
	switch f.About {
	case calc.OfSleeve:
		return fmt.Sprintf("slash and spread by %s at the %s, %s each side of the slash", amount, p.line, each)
	case calc.OfBust:
		return fmt.Sprintf("slash and spread front and back, each piece by %s at the %s", each, p.line)
	}
	return fmt.Sprintf("slash and spread the %s by %s at the %s", wording.SubjectWords[f.About], each, p.line)
}

// accepted says what it means to accept a finding as it is, and the ease that comes out then;
// "" where that is no choice.
func (r *Report) accepted(f calc.Finding) (words string, ease units.Reading) {
	ease = r.Plan.Accepted(r.Input, f)
	return r.acceptedWords(f, ease), ease
}

func (r *Report) acceptedWords(f calc.Finding, accepted units.Reading) string {
	at, ease := f.At, accepted.Length
	if f.Code == calc.CannotReach {
		at = placeOf(f.About)
	}
	low, _ := calc.EaseSpan(at, r.Input.Fabric)
	least := wording.UsualOne(low, r.Scale)
	switch {
	case !accepted.Known:
		return ""
	case ease < 0:
		return fmt.Sprintf("accept it as it is, %s smaller than the body", r.Scale.Format(-ease))
	case ease == 0:
		return fmt.Sprintf("accept it as it is, without ease (usually at least %s)", least)
	}
	return fmt.Sprintf("accept it as it is, with %s of ease (usually at least %s)", r.Scale.Format(ease), least)
}

// placeOf is where the piece that a finding is about takes its ease.
func placeOf(s calc.Subject) calc.Place {
	if WordsOfPiece(s).Name == "sleeve" {
		return calc.AtBicep
	}
	return calc.AtBust
}

// Line is the finding in one paragraph, ways out behind it, and last what it means to accept
// it, which is none.
func (f Finding) Line() string {
	text := f.Text
	if words := f.WayWords(); words != "" && f.Level == calc.Note {
		text += " You can " + words + "."
	} else if words != "" {
		text += " Ways out: " + words + "."
	}
	if f.Accept != "" {
		text += " Or " + f.Accept + "."
	}
	return text
}

// WayWords are all the ways out of a finding, "" for none.
func (f Finding) WayWords() string {
	words := make([]string, len(f.Ways))
	for i, w := range f.Ways {
		words[i] = w.Words
	}
	return strings.Join(words, "; ")
}

package wording

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc/trace"
	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// Word is a word of the trade.
type Word struct {
	Word, says string           // one sentence
	Keys       []worksheets.Key // the answers that it names
	Acts       []trace.Action   // the steps at the table that it names
	Seen       []forms.Step     // where else it is to be read
	Worked     bool             // it is a figure of the working
}

// Glossary is in the order of the alphabet.
var Glossary = []Word{
	{Word: "armhole", says: "The seam of the bodice that the cap of the sleeve is sewn into.",
		Keys: []worksheets.Key{worksheets.ArmholeFront, worksheets.ArmholeBack, worksheets.Armhole}, Seen: []forms.Step{forms.Match, forms.Trace}},
	{Word: "bicep", says: "The fullest part of the upper arm.",
		Keys: []worksheets.Key{worksheets.Bicep, worksheets.BicepOther}, Seen: []forms.Step{forms.Ease, forms.Match}},
	{Word: "bicep line", says: "The line straight across the sleeve pattern, where the underarm seam meets the cap.",
		Keys: []worksheets.Key{worksheets.SleeveWidth}, Seen: []forms.Step{forms.Trace}},
	{Word: "bind", says: "To be too tight at one level, because the seam tapers in there.",
		Keys: []worksheets.Key{worksheets.ElbowWidth}},
	{Word: "bodice", says: "The part of a garment around the trunk, from the shoulder to the waist or below it.",
		Keys: []worksheets.Key{worksheets.BodiceFront, worksheets.BodiceBack}, Seen: []forms.Step{forms.Split, forms.Match, forms.Trace}},
	{Word: "bust", says: "The fullest part of the chest.", Keys: []worksheets.Key{worksheets.Bust}, Seen: []forms.Step{forms.Ease, forms.Pattern, forms.Match}},
	{Word: "bust line", says: "The line straight across a bodice piece at the fullest part of the bust, a little below the underarm.",
		Keys: []worksheets.Key{worksheets.BustDown}, Seen: []forms.Step{forms.Trace}},
	{Word: "cap", says: "The rounded top of a sleeve, whose seam is sewn into the armhole.",
		Keys: []worksheets.Key{worksheets.CapFront, worksheets.CapBack}, Seen: []forms.Step{forms.Match, forms.Trace}},
	{Word: "cap ease", says: "How much longer the cap seam is than the armhole; it is eased in when they are sewn.",
		Keys: []worksheets.Key{worksheets.SleeveStyle}, Seen: []forms.Step{forms.Split, forms.Match}, Worked: true},
	{Word: "cap height", says: "The height from the bicep line straight up to the shoulder dot; a pivot lowers it.",
		Keys: []worksheets.Key{worksheets.CapHeight}, Seen: []forms.Step{forms.Split}},
	{Word: "dart", says: "A fold sewn to a point, to give the cloth shape.", Seen: []forms.Step{forms.Pattern}},
	{Word: "ease", says: "How much larger than the body the garment must be: some to move in, more for looks.",
		Keys: []worksheets.Key{worksheets.EaseBicep, worksheets.EaseBust, worksheets.EaseWaist, worksheets.EaseHip, worksheets.EaseElbow,
			worksheets.EaseWrist}, Seen: []forms.Step{forms.Match}, Worked: true},
	{Word: "even", says: "The slide nearest to half of what a side needs; less is turned.", Seen: []forms.Step{forms.Split}, Worked: true},
	{Word: "facing", says: "A strip of cloth sewn to the inside of an edge to finish it.", Seen: []forms.Step{forms.Trace}},
	{Word: "finished", says: "As the garment measures once it is sewn.", Keys: []worksheets.Key{worksheets.FinishedBust}, Worked: true},
	{Word: "flat width", says: "The pattern laid flat and measured from seam line to seam line, for the whole way around.", Worked: true},
	{Word: "fold", says: "The line where cloth lies double, so that half a pattern cuts a whole piece.", Seen: []forms.Step{forms.Pattern}},
	{Word: "gathered", says: "A gathered sleeve has a cap much longer than the armhole, drawn up to fit it.", Seen: []forms.Step{forms.Pattern}},
	{Word: "girth", says: "A measurement around the body.", Seen: []forms.Step{forms.Body}},
	{Word: "grain line", says: "The line on a pattern that lies along the threads of the cloth.", Acts: []trace.Action{trace.Lay, trace.LayBack}},
	{Word: "gusset", says: "A piece of cloth set into a seam to give more room.", Seen: []forms.Step{forms.Match}},
	{Word: "hem", says: "The lower edge of the sleeve.", Keys: []worksheets.Key{worksheets.HemWidth}, Seen: []forms.Step{forms.Trace}},
	{Word: "high bust", says: "The girth of the chest close under the arms, above the bust.", Keys: []worksheets.Key{worksheets.HighBust}},
	{Word: "hip", says: "The fullest part of hip and seat.",
		Keys: []worksheets.Key{worksheets.Hip, worksheets.HipFront, worksheets.HipBack}, Seen: []forms.Step{forms.Ease}},
	{Word: "keep its width", says: "To pivot a piece back that slides too far, so that it comes out as wide as asked.", Seen: []forms.Step{forms.Split}},
	{Word: "keep the armhole", says: "To leave the armhole as it is, because the bodice is already cut.", Seen: []forms.Step{forms.Split}},
	{Word: "knit", says: "Cloth made of loops; it stretches.", Seen: []forms.Step{forms.Body}},
	{Word: "lean", says: "How far a seam runs in from straight down.", Keys: []worksheets.Key{worksheets.WaistFront, worksheets.WaistBack}},
	{Word: "least", says: "The slide nearest to 0; the armhole changes as little as it can.", Seen: []forms.Step{forms.Split}},
	{Word: "level line", says: "The line straight across a bodice piece, through its underarm point.", Seen: []forms.Step{forms.Trace}},
	{Word: "lining", says: "Thin cloth sewn inside the garment, in the same pieces.", Acts: []trace.Action{trace.AlterToo}},
	{Word: "mark", says: "An amount rounded to your ruler, to mark on the paper.",
		Keys: []worksheets.Key{worksheets.Ruler}, Acts: []trace.Action{trace.Mark}, Seen: []forms.Step{forms.Split, forms.Match}, Worked: true},
	{Word: "matches", says: "A piece matches when it slides more than it needs, so that its seam still fits the other piece.",
		Seen: []forms.Step{forms.Match}},
	{Word: "need", says: "Girth plus ease less the flat width: how much the pattern must gain, or come in.", Seen: []forms.Step{forms.Split}, Worked: true},
	{Word: "notch", says: "A small mark on a seam line where two pieces meet.", Acts: []trace.Action{trace.Notch}},
	{Word: "overlap", says: "Where one edge lies over another to be buttoned.", Seen: []forms.Step{forms.Pattern}},
	{Word: "pin", says: "The point about which a pattern is turned: a pin through the seam line at its top.",
		Keys: []worksheets.Key{worksheets.CornerDownFront, worksheets.CornerDownBack}, Acts: []trace.Action{trace.Pin}},
	{Word: "pivot", says: "The width a side gains when the pattern is turned about a pin at its top; cap and armhole keep their length.",
		Seen: []forms.Step{forms.Split, forms.Trace}, Worked: true},
	{Word: "pivot limit", says: "The most that one side may pivot, usually 1 in (2.5 cm); a wider turn lowers the cap more.",
		Keys: []worksheets.Key{worksheets.PivotLimitSleeve, worksheets.PivotLimitBodice}},
	{Word: "pleat", says: "A fold of the cloth, sewn down at one end and open at the other.", Seen: []forms.Step{forms.Pattern}},
	{Word: "range", says: "The slides that work for sleeve and bodice alike, from the smallest to the largest.", Seen: []forms.Step{forms.Split}},
	{Word: "seam", says: "Where two pieces are sewn together.", Seen: []forms.Step{forms.Pattern, forms.Match, forms.Trace}},
	{Word: "seam allowance", says: "The strip of a pattern between its seam line and its cut edge.",
		Keys: []worksheets.Key{worksheets.SleeveAllowance, worksheets.BodiceAllowance}},
	{Word: "seam line", says: "The line on which a piece is sewn, inside its cut edge by the seam allowance.",
		Keys: []worksheets.Key{worksheets.SleeveMeasured, worksheets.BodiceMeasured}, Seen: []forms.Step{forms.Trace}},
	{Word: "seamed edge", says: "An edge that is sewn to another, so it has a seam allowance.", Keys: []worksheets.Key{worksheets.Crossings}},
	{Word: "set-in", says: "A set-in sleeve has a high cap that is eased into the armhole.", Seen: []forms.Step{forms.Pattern}},
	{Word: "share", says: "The part of a need that the front takes; the back gets the rest.",
		Keys: []worksheets.Key{worksheets.FrontShareSleeve, worksheets.FrontShareBust}},
	{Word: "shirt", says: "A shirt sleeve has a low cap, hardly longer than the armhole.", Seen: []forms.Step{forms.Pattern}},
	{Word: "shoulder dot", says: "The point of the cap that meets the shoulder seam.", Seen: []forms.Step{forms.Pattern, forms.Trace}},
	{Word: "side", says: "One edge that you alter: sleeve front, sleeve back, bodice front or bodice back.", Seen: []forms.Step{forms.Split}},
	{Word: "side seam", says: "The seam of the bodice from underarm to waist.", Keys: []worksheets.Key{worksheets.SideSeam},
		Acts: []trace.Action{trace.CheckSides}},
	{Word: "slash and spread", says: "To cut a pattern through and spread the parts, for more width than pivot and slide can give.", Seen: []forms.Step{forms.Match}},
	{Word: "sleeve", says: "The part of a garment around the arm.", Keys: []worksheets.Key{worksheets.SleeveLength},
		Seen: []forms.Step{forms.Split, forms.Match, forms.Trace}},
	{Word: "slide", says: "The width a side gains when the pattern is moved straight out at the underarm; cap and armhole get longer by as much.",
		Keys: []worksheets.Key{worksheets.Slide}, Acts: []trace.Action{trace.SlideOut}, Worked: true},
	{Word: "take-off", says: "What lies under the tape and is sewn away: a dart, tuck, pleat or overlap.",
		Keys: []worksheets.Key{worksheets.TakeOffFront, worksheets.TakeOffBack}},
	{Word: "taper", says: "To draw a seam from its new upper end in to its old lower end.", Acts: []trace.Action{trace.Taper}, Seen: []forms.Step{forms.Pattern}},
	{Word: "test garment", says: "A first garment in cheap cloth, to try on and alter.", Acts: []trace.Action{trace.TestGarment}},
	{Word: "total", says: "The pivot plus the slide of one side.", Seen: []forms.Step{forms.Split}, Worked: true},
	{Word: "trace", says: "To draw along the edge of the pattern as it lies.", Acts: []trace.Action{trace.TraceCurve, trace.TraceAsIs, trace.Extend}},
	{Word: "true", says: "To draw an altered seam line smooth, and equally long on both pieces.", Acts: []trace.Action{trace.True}},
	{Word: "tuck", says: "A narrow fold of the cloth, stitched down.", Seen: []forms.Step{forms.Pattern}},
	{Word: "turn", says: "To swing the pattern around its pin; that is how it pivots.", Acts: []trace.Action{trace.TurnTo}, Seen: []forms.Step{forms.Pattern}},
	{Word: "underarm corner", says: "Where the cap or armhole ends and the seam below it begins.",
		Keys: []worksheets.Key{worksheets.CornerOutFront, worksheets.CornerOutBack}},
	{Word: "underarm point", says: "The underarm corner on the paper: where the seam lines cross, one seam allowance in from both edges.",
		Seen: []forms.Step{forms.Trace}},
	{Word: "underarm seam", says: "The seam of the sleeve from underarm to hem.", Keys: []worksheets.Key{worksheets.UnderarmSeam}, Seen: []forms.Step{forms.Trace}},
	{Word: "waist", says: "Where the body bends sideways.", Keys: []worksheets.Key{worksheets.Waist}, Seen: []forms.Step{forms.Ease, forms.Pattern, forms.Trace}},
	{Word: "walk", says: "To move one seam line along another, bit by bit, to compare their lengths.", Acts: []trace.Action{trace.CheckSeams}},
	{Word: "widen to match", says: "To let a piece that slides too far come out wider than asked.", Seen: []forms.Step{forms.Split}},
	{Word: "woven", says: "Cloth of crossed threads; it hardly stretches.", Keys: []worksheets.Key{worksheets.Fabric}},
}

// Where says where in the program the word is used.
func (t Word) Where() string {
	var places []string
	for s := range forms.StepCount {
		if slices.Contains(t.Seen, s) || s == forms.Trace && len(t.Acts) > 0 || slices.ContainsFunc(t.Keys, s.Asks) {
			places = append(places, fmt.Sprintf("step %d (%s)", s+1, forms.StepNames[s]))
		}
	}
	if t.Worked {
		places = append(places, "the working")
	}
	return "Used in " + typeset.AndList(places) + "."
}

// Line is the word with what there is to say of it.
func (t Word) Line() string { return t.Word + ": " + t.says + " " + t.Where() }

// Find are the words that begin like a text, the one that is it first.
func Find(text string) ([]Word, error) {
	text = strings.ToLower(strings.Join(strings.Fields(text), " "))
	var found []Word
	for _, t := range Glossary {
		switch {
		case t.Word == text:
			found = slices.Insert(found, 0, t)
		case strings.HasPrefix(t.Word, text):
			found = append(found, t)
		}
	}
	if len(found) == 0 {
		return nil, fmt.Errorf("no word here begins with %q; capscye words lists all %d", typeset.Cut(text, 40), len(Glossary))
	}
	return found, nil
}

// Explain is the glossary, or the part of it that begins like a text.
func Explain(text string) (string, error) {
	found, err := Find(text)
	if err != nil {
		return "", err
	}
	var out typeset.Printout
	for _, t := range found {
		lines := typeset.Wrap(t.Line(), typeset.PrintWidth-2)
		out.Line("%s", lines[0])
		for _, l := range lines[1:] {
			out.Line("  %s", l)
		}
	}
	return out.Text(), nil
}

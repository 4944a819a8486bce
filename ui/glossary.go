package ui

import (
	"fmt"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/worksheets"
)

// tradeWord is a word of the trade.
type tradeWord struct {
	word, says string           // one sentence
	keys       []worksheets.Key // the answers that it names
	acts       []calc.Action    // the steps at the table that it names
	seen       []step           // where else it is to be read
	worked     bool             // it is a figure of the working
}

// glossary is in the order of the alphabet.
var glossary = []tradeWord{
	{word: "armhole", says: "The seam of the bodice that the cap of the sleeve is sewn into.",
		keys: []worksheets.Key{worksheets.ArmholeFront, worksheets.ArmholeBack, worksheets.Armhole}, seen: []step{stepMatch, stepTrace}},
	{word: "band", says: "Every slide with which both sides of a half reach what they need.", seen: []step{stepSplit}},
	{word: "bicep", says: "The fullest part of the upper arm.",
		keys: []worksheets.Key{worksheets.Bicep, worksheets.BicepOther}, seen: []step{stepEase, stepMatch}},
	{word: "bicep line", says: "The line straight across the sleeve pattern where the underarm seam meets the cap.",
		keys: []worksheets.Key{worksheets.SleeveWidth}, seen: []step{stepTrace}},
	{word: "bind", says: "To be too tight at one level, because the seam tapers back there.",
		keys: []worksheets.Key{worksheets.ElbowWidth}, seen: []step{stepTrace}},
	{word: "bodice", says: "The part of a garment around the trunk, from the shoulder to the waist or below it.",
		keys: []worksheets.Key{worksheets.BodiceFront, worksheets.BodiceBack}, seen: []step{stepSplit, stepMatch, stepTrace}},
	{word: "bust", says: "The fullest part of the chest.", keys: []worksheets.Key{worksheets.Bust}, seen: []step{stepEase, stepPattern, stepMatch}},
	{word: "cap", says: "The rounded top of a sleeve, whose seam is sewn into the armhole.",
		keys: []worksheets.Key{worksheets.CapFront, worksheets.CapBack}, seen: []step{stepMatch, stepTrace}},
	{word: "cap ease", says: "What the cap seam is longer than the armhole seam, to be eased in where they are sewn together.",
		keys: []worksheets.Key{worksheets.SleeveStyle}, seen: []step{stepSplit, stepMatch}, worked: true},
	{word: "cap height", says: "Straight up from the bicep line to the shoulder dot, which a pivot makes less.",
		keys: []worksheets.Key{worksheets.CapHeight}, seen: []step{stepSplit}},
	{word: "dart", says: "A fold of the cloth sewn to a point, which gives it shape.", seen: []step{stepPattern}},
	{word: "ease", says: "What the garment must be larger than the body: some of it to move in, more of it for looks.",
		keys: []worksheets.Key{worksheets.EaseBicep, worksheets.EaseBust, worksheets.EaseWaist, worksheets.EaseHip, worksheets.EaseElbow,
			worksheets.EaseWrist}, seen: []step{stepMatch}, worked: true},
	{word: "even", says: "The slide nearest to half of what a side needs, so that less is turned.", seen: []step{stepSplit}, worked: true},
	{word: "facing", says: "A strip of cloth sewn to the inside of an edge to finish it.", seen: []step{stepTrace}},
	{word: "finished", says: "As the garment measures once it is sewn.", keys: []worksheets.Key{worksheets.FinishedBust}, worked: true},
	{word: "flat width", says: "The pattern measured flat at the level of a girth, seam line to seam line, around the whole body.", worked: true},
	{word: "fold", says: "The line on which cloth lies doubled, so that half a piece of paper cuts a whole piece of cloth.", seen: []step{stepPattern}},
	{word: "following", says: "Of a piece: sliding by more than it needs, because its seam has to match the other piece.",
		keys: []worksheets.Key{worksheets.Follow}},
	{word: "gathered", says: "Of a sleeve: with a cap much longer than the armhole, drawn up to fit it.", seen: []step{stepPattern}},
	{word: "girth", says: "A measurement around the body.", seen: []step{stepBody}},
	{word: "grain line", says: "The line on a pattern that has to lie along the threads of the cloth.", acts: []calc.Action{calc.Lay, calc.LayBack}},
	{word: "gusset", says: "A piece of cloth set into a seam for more room than the pattern can give.", seen: []step{stepMatch}},
	{word: "hem", says: "The lower edge of the sleeve.", keys: []worksheets.Key{worksheets.HemWidth}, seen: []step{stepTrace}},
	{word: "high bust", says: "The girth of the chest close under the arms, above the bust.", keys: []worksheets.Key{worksheets.HighBust}},
	{word: "hip", says: "The fullest part of hip and seat.",
		keys: []worksheets.Key{worksheets.Hip, worksheets.HipFront, worksheets.HipBack}, seen: []step{stepEase}},
	{word: "hold", says: "To pivot a following piece back, so that its width stays as asked.", seen: []step{stepSplit}},
	{word: "keep", says: "To leave an armhole as it is, because the bodice is already cut.", seen: []step{stepSplit}},
	{word: "knit", says: "Cloth of loops, which stretches.", seen: []step{stepBody}},
	{word: "lean", says: "How far a seam runs in from straight down.", keys: []worksheets.Key{worksheets.WaistFront, worksheets.WaistBack}},
	{word: "least", says: "The slide nearest to nothing, so that the armhole changes as little as it can.", seen: []step{stepSplit}, worked: true},
	{word: "let out", says: "To let a following piece come out wider than asked.", seen: []step{stepSplit}},
	{word: "level line", says: "A line straight across a bodice piece through its underarm corner.", seen: []step{stepTrace}},
	{word: "lining", says: "A second garment of thin cloth sewn inside the first.", acts: []calc.Action{calc.AlterToo}},
	{word: "mark", says: "An amount rounded to the ruler in the hand, to be marked on the paper.",
		keys: []worksheets.Key{worksheets.Ruler}, acts: []calc.Action{calc.Mark}, seen: []step{stepSplit, stepMatch}, worked: true},
	{word: "need", says: "Girth and ease less the flat width: what the pattern lacks, or has too much of.", seen: []step{stepSplit}, worked: true},
	{word: "notch", says: "A sign on a seam line that shows where two pieces meet.", acts: []calc.Action{calc.Notch}},
	{word: "overlap", says: "Where one edge lies over another to be buttoned.", seen: []step{stepPattern}},
	{word: "pin", says: "The point about which a pattern is turned, held by a pin in the seam line at its top.",
		keys: []worksheets.Key{worksheets.CornerDownFront, worksheets.CornerDownBack}, acts: []calc.Action{calc.Pin}},
	{word: "pivot", says: "What a side gains by turning the pattern about a pin at its top, while its cap or armhole keeps its length.",
		seen: []step{stepSplit, stepTrace}, worked: true},
	{word: "pivot limit", says: "The most that one side may pivot, commonly 1 in (2.5 cm), for a wider turn lowers the cap more.",
		keys: []worksheets.Key{worksheets.PivotLimitSleeve, worksheets.PivotLimitBodice}},
	{word: "pleat", says: "A fold of the cloth that is held at one end and open at the other.", seen: []step{stepPattern}},
	{word: "seam", says: "Where two pieces are sewn together.", seen: []step{stepPattern, stepMatch, stepTrace}},
	{word: "seam allowance", says: "The strip of a pattern between its seam line and its cut edge.",
		keys: []worksheets.Key{worksheets.SleeveAllowance, worksheets.BodiceAllowance}},
	{word: "seam line", says: "The line on which a piece is sewn, inside its cut edge by the seam allowance.",
		keys: []worksheets.Key{worksheets.SleeveMeasured, worksheets.BodiceMeasured}, seen: []step{stepTrace}},
	{word: "seamed edge", says: "An edge of a piece that is sewn to another and so has a seam allowance.", keys: []worksheets.Key{worksheets.Crossings}},
	{word: "set-in", says: "Of a sleeve: with a high cap that is eased into the armhole.", seen: []step{stepPattern}},
	{word: "share", says: "The part of a need that the front takes, while the back gets the rest.",
		keys: []worksheets.Key{worksheets.FrontShareSleeve, worksheets.FrontShareBust}},
	{word: "shirt", says: "Of a sleeve: with a low cap that is hardly longer than the armhole.", seen: []step{stepPattern}},
	{word: "shoulder dot", says: "The point of the cap that comes to lie on the shoulder seam.", seen: []step{stepPattern, stepTrace}},
	{word: "side", says: "One altered edge: sleeve front, sleeve back, bodice front or bodice back.", seen: []step{stepSplit}},
	{word: "side seam", says: "The seam of the bodice from underarm to waist.", keys: []worksheets.Key{worksheets.SideSeam},
		acts: []calc.Action{calc.CheckSides}},
	{word: "slash and spread", says: "To cut a pattern and lay its parts apart for more width than pivot and slide can give.", seen: []step{stepMatch}},
	{word: "sleeve", says: "The part of a garment around the arm.", keys: []worksheets.Key{worksheets.SleeveLength},
		seen: []step{stepSplit, stepMatch, stepTrace}},
	{word: "slide", says: "What a side gains by moving straight out at the underarm, by which its cap or armhole gets longer.",
		keys: []worksheets.Key{worksheets.Slide}, acts: []calc.Action{calc.SlideOut}, worked: true},
	{word: "take-off", says: "What lies inside the tape and is not worn: a dart, tuck, pleat or overlap.",
		keys: []worksheets.Key{worksheets.TakeOffFront, worksheets.TakeOffBack}},
	{word: "taper", says: "To draw a seam from its new upper end back to its old lower end.", acts: []calc.Action{calc.Taper}, seen: []step{stepPattern}},
	{word: "test garment", says: "A first garment of cheap cloth, sewn to be tried on and altered.", acts: []calc.Action{calc.TestGarment}},
	{word: "total", says: "Pivot and slide of a side together.", seen: []step{stepSplit}, worked: true},
	{word: "trace", says: "To draw along the edge of a pattern as it lies.", acts: []calc.Action{calc.TraceCurve, calc.TraceAsIs, calc.Extend}},
	{word: "true", says: "To draw a seam line smooth where it was altered, and equally long on both pieces.", acts: []calc.Action{calc.True}},
	{word: "tuck", says: "A narrow fold of the cloth, stitched down.", seen: []step{stepPattern}},
	{word: "turn", says: "To move a pattern around its pin, which is how it pivots.", acts: []calc.Action{calc.TurnTo}, seen: []step{stepPattern}},
	{word: "underarm corner", says: "Where the cap or the armhole ends and the seam below it begins.",
		keys: []worksheets.Key{worksheets.CornerOutFront, worksheets.CornerOutBack}, seen: []step{stepTrace}},
	{word: "underarm seam", says: "The seam of the sleeve from underarm to hem.", keys: []worksheets.Key{worksheets.UnderarmSeam}, seen: []step{stepTrace}},
	{word: "waist", says: "Where the body bends sideways.", keys: []worksheets.Key{worksheets.Waist}, seen: []step{stepEase, stepPattern, stepTrace}},
	{word: "walk", says: "To lay one seam line along another, bit by bit, to see how their lengths compare.", acts: []calc.Action{calc.CheckSeams}},
	{word: "woven", says: "Cloth of crossed threads, which hardly stretches.", keys: []worksheets.Key{worksheets.Fabric}},
}

// where says where in the program the word is used.
func (t tradeWord) where() string {
	var places []string
	for s := range stepCount {
		if slices.Contains(t.seen, s) || s == stepTrace && len(t.acts) > 0 || slices.ContainsFunc(t.keys, s.asks) {
			places = append(places, fmt.Sprintf("step %d %s", s+1, stepNames[s]))
		}
	}
	if t.worked {
		places = append(places, "the working")
	}
	return "In " + strings.Join(places, ", ") + "."
}

// asks tells whether the step asks for an answer.
func (s step) asks(k worksheets.Key) bool { return slices.Contains(forms[s], item{key: k}) }

// line is the word with what there is to say of it.
func (t tradeWord) line() string { return t.word + ": " + t.says + " " + t.where() }

// wordsFor are the words that begin like a text, or the one that is it.
func wordsFor(text string) ([]tradeWord, error) {
	text = strings.ToLower(strings.Join(strings.Fields(text), " "))
	var found []tradeWord
	for _, t := range glossary {
		if t.word == text {
			return []tradeWord{t}, nil
		}
		if strings.HasPrefix(t.word, text) {
			found = append(found, t)
		}
	}
	if len(found) == 0 {
		return nil, fmt.Errorf("no word here begins with %q; capscye words lists all %d", cut(text, 40), len(glossary))
	}
	return found, nil
}

// wordsText is the glossary, or the part of it that begins like a text.
func wordsText(text string) (string, error) {
	found, err := wordsFor(text)
	if err != nil {
		return "", err
	}
	var out printout
	for _, t := range found {
		lines := wrap(t.line(), printWidth-2)
		out.line("%s", lines[0])
		for _, l := range lines[1:] {
			out.line("  %s", l)
		}
	}
	return out.text(), nil
}

// glossaryText is the page of words; from is the one about what is at hand,
// which is pointed out.
func (d *desk) glossaryText(width int) (out []string, from int) {
	atHand := d.wordAtHand()
	for _, t := range glossary {
		lines := wrap(t.line(), width-4)
		lead := "  "
		if t.word == atHand {
			lead, from = d.styles.here.Render(">")+" ", len(out)
		}
		for i, l := range lines {
			if i > 0 {
				lead = "    "
			}
			out = append(out, lead+l)
		}
	}
	return out, from
}

// wordAtHand is the word that the field, the page or the step at the table is
// about, "" where there is none.
func (d *desk) wordAtHand() string {
	about := func(t tradeWord) bool { return t.word == "cap ease" } // the page of what must match
	if k, ok := d.focused(); ok {
		about = func(t tradeWord) bool { return slices.Contains(t.keys, k) }
	} else if d.step == stepTrace {
		steps, at := d.rep.traceSteps(), d.traceAt(d.trace)
		about = func(t tradeWord) bool { return len(steps) > 0 && slices.Contains(t.acts, steps[at].Action) }
	}
	if i := slices.IndexFunc(glossary, about); i >= 0 {
		return glossary[i].word
	}
	return ""
}

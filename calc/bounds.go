package calc

import "capscye/units"

// Bound is what an answer is held against: lengths of its own, or a part of another
// answer beside it. What lies outside is doubted, not refused.
type Bound struct {
	Of     Answer
	Beside Answer // NoAnswer where Low and High are lengths; else they are hundredths of this answer
	Low    units.Length
	High   units.Length
	For    Wearing
	Code   Code
	Source string
}

// Wearing says for which sheets a bound holds.
type Wearing uint8

// The sheets.
const (
	Anyone Wearing = iota
	GrownUp
	LongSleeve
	ShortSleeve
	SetInSleeve
	WovenCloth
	KnitCloth
)

// Ours is the source of a bound that is our own.
const Ours = "our bound"

// Where the others come from.
const (
	nhanes = "NHANES 2013-2014, age 20 and over, third-party copy"
	young  = "NHANES 2013-2014, every age, third-party copy"
	ansur  = "ANSUR II, 6,068 soldiers, fitter than most people"
)

// Bounds are all of them: what was measured on people (National Center for Health
// Statistics, NHANES 2013-2014; 2012 Anthropometric Survey of U.S. Army Personnel,
// Gordon et al., NATICK/TR-15/007, 2014), what is usual of ease (see [UsualEase]), and
// ours. Ours are as wide as the patterns and people that we know of ask for, and say
// nothing of taste: they are there for the slips of a hand.
var Bounds = append(bodyBounds(), append(easeBounds(), patternBounds()...)...)

// span is a bound of lengths, in millimetres; parts is one of hundredths of another
// answer.
func span(of Answer, low, high units.Length, worn Wearing, code Code, source string) Bound {
	return Bound{Of: of, Low: low * units.Millimetre, High: high * units.Millimetre, For: worn, Code: code, Source: source}
}

func parts(of, beside Answer, low, high units.Length, source string) Bound {
	return Bound{Of: of, Beside: beside, Low: low, High: high, Code: AnswerDoubted, Source: source}
}

// bodyBounds are of the girths. The waist has a span that refuses no adult in these
// data; of the elbow nobody has data.
func bodyBounds() []Bound {
	const people = Ours + ", wider than ANSUR II"
	list := []Bound{
		span(Bust, 695, 1469, GrownUp, GirthUnusual, ansur),
		span(HighBust, 650, 1450, GrownUp, GirthUnusual, Ours),
		span(Waist, 500, 1900, GrownUp, GirthUnusual, "a span that refuses no adult of ANSUR II or NHANES"),
		span(Hip, 737, 1341, GrownUp, GirthUnusual, ansur),
		span(Elbow, 170, 520, GrownUp, GirthUnusual, Ours),
		span(Wrist, 124, 216, GrownUp, GirthUnusual, ansur),
		parts(Bicep, BicepOther, 80, 125, Ours),
		parts(HighBust, Bust, 78, 108, Ours),
		parts(Waist, Bust, 61, 130, people),
		parts(Hip, Bust, 70, 150, people),
		parts(Hip, Waist, 72, 165, people),
	}
	for _, arm := range []Answer{Bicep, BicepOther} {
		chest := parts(arm, Bust, 25, 45, "ANSUR II: 26 to 42 % of the chest")
		chest.Code = ArmForBust
		list = append(list,
			span(arm, 178, 594, GrownUp, GirthUnusual, nhanes), span(arm, 104, 594, Anyone, GirthUnusual, young), chest,
			parts(Elbow, arm, 62, 135, Ours), parts(Wrist, arm, 33, 80, people))
	}
	return append(list, parts(Wrist, Elbow, 38, 80, Ours))
}

// easeBounds are half the least and twice the most that is usual; what is usual
// of a knit is at most nothing, so it may have less by as much again, and may be worn
// as loose as woven cloth. Only at bust and bicep does every garment fit: elsewhere it
// may hang, with the ease of the bust.
func easeBounds() (list []Bound) {
	_, bust := EaseSpan(AtBust, Woven)
	for at := AtBicep; at <= AtWrist; at++ {
		low, high := EaseSpan(at, Woven)
		least, _ := EaseSpan(at, Knit)
		if at != AtBicep {
			high = bust
		}
		list = append(list,
			Bound{Of: at.Ease(), Low: low.Half(), High: 2 * high, For: WovenCloth, Code: EaseUnusual, Source: Ours},
			Bound{Of: at.Ease(), Low: 2 * least, High: 2 * high, For: KnitCloth, Code: EaseUnusual, Source: Ours})
	}
	return list
}

// patternBounds are of the pattern, against the body and against itself. A width is
// held against others without its allowances and take-off.
func patternBounds() []Bound {
	alone := func(of Answer, low, high units.Length) Bound { return span(of, low, high, Anyone, AnswerDoubted, Ours) }
	only := func(w Wearing, b Bound) Bound { b.For = w; return b }
	list := []Bound{
		alone(SleeveWidth, 120, 900), alone(SleeveAllowance, 0, 32), alone(BodiceAllowance, 0, 32),
		alone(CapHeight, 15, 300), alone(CapFront, 60, 500), alone(CapBack, 60, 500), alone(UnderarmSeam, 10, 800),
		alone(BodiceFrontWidth, 80, 600), alone(BodiceBackWidth, 80, 600), alone(FinishedBust, 400, 2000),
		alone(TakeOffFront, 0, 200), alone(TakeOffBack, 0, 200),
		alone(ArmholeFront, 70, 500), alone(ArmholeBack, 70, 500), alone(BustDown, 0, 200), alone(SideSeam, 20, 1200),

		parts(SleeveWidth, Bicep, 65, 190, Ours), parts(SleeveWidth, BicepOther, 65, 190, Ours),
		parts(SleeveWidth, FinishedBust, 20, 65, Ours),
		parts(FinishedBust, Bust, 78, 150, Ours),
		parts(CapHeight, SleeveWidth, 10, 75, Ours), only(SetInSleeve, parts(CapHeight, SleeveWidth, 20, 75, Ours)),
		parts(CapFront, SleeveWidth, 50, 105, Ours), parts(CapBack, SleeveWidth, 50, 105, Ours),
		parts(CapFront, CapBack, 78, 122, Ours),
		parts(CapFront, ArmholeFront, 75, 160, Ours), parts(CapBack, ArmholeBack, 75, 160, Ours),
		only(LongSleeve, parts(UnderarmSeam, SleeveWidth, 50, 200, Ours)),
		only(ShortSleeve, parts(UnderarmSeam, SleeveWidth, 4, 110, Ours)),
		parts(HemWidth, SleeveWidth, 35, 150, Ours),
		parts(ElbowWidth, SleeveWidth, 55, 130, Ours), parts(HemWidth, ElbowWidth, 35, 150, Ours),
		parts(ElbowWidth, Elbow, 85, 220, Ours), only(LongSleeve, parts(HemWidth, Wrist, 95, 400, Ours)),

		parts(BodiceFrontWidth, BodiceBackWidth, 73, 137, Ours),
		parts(ArmholeFront, ArmholeBack, 78, 128, Ours),
		parts(CornerOutFront, CornerOutBack, 40, 250, Ours), parts(CornerDownFront, CornerDownBack, 75, 133, Ours),
		parts(BustDown, SideSeam, 0, 60, Ours), parts(WaistFront, WaistBack, 66, 150, Ours), parts(HipFront, HipBack, 66, 150, Ours),
	}
	for _, piece := range [][]Answer{
		{BodiceFrontWidth, TakeOffFront, ArmholeFront, CornerOutFront, CornerDownFront, WaistFront, HipFront},
		{BodiceBackWidth, TakeOffBack, ArmholeBack, CornerOutBack, CornerDownBack, WaistBack, HipBack},
	} {
		width, takeOff, armhole, out, down, waist, hip := piece[0], piece[1], piece[2], piece[3], piece[4], piece[5], piece[6]
		list = append(list,
			parts(width, Bust, 17, 40, Ours), parts(width, SleeveWidth, 35, 125, Ours), parts(takeOff, width, 0, 45, Ours),
			parts(armhole, width, 50, 140, Ours), parts(armhole, SleeveWidth, 38, 95, Ours), parts(out, armhole, 5, 45, Ours), parts(down, armhole, 50, 100, Ours),
			parts(SideSeam, armhole, 45, 220, Ours), parts(waist, width, 50, 150, Ours), parts(waist, Waist, 17, 50, Ours),
			parts(hip, width, 50, 180, Ours), parts(hip, Hip, 19, 50, Ours))
	}
	return list
}

// SlideBounds are from where on a slide is checked, and from where on it is no job for a
// hand: 2 and 4 in, 5 and 10 cm where the ruler is metric. Both are ours.
func SlideBounds(r units.Ruler) (check, stop units.Length) {
	if r.System() == units.Centimetres {
		return 5 * units.Centimetre, 10 * units.Centimetre
	}
	return 2 * units.Inch, 4 * units.Inch
}

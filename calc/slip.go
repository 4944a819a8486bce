package calc

import (
	"cmp"
	"strconv"
	"strings"

	"capscye/units"
)

// Slip is a usual mistake in measuring or typing.
type Slip uint8

// The slips.
const (
	NoSlip Slip = iota
	CentimetresAsInches
	InchesAsCentimetres
	WholeForHalf  // a whole width where half of it is asked
	Exchanged     // two answers stand in each other's place: arm and bust, front and back
	DigitTwice    // 133 for 13
	PointLost     // 365 for 36.5; also millimetres typed as centimetres
	Millimetres   // in a sheet in inches
	HalfAGirth    // half where the whole is asked
	DigitsSwapped // 31 for 13
	BothWhole     // the whole widths of front and back, where half of each is asked
	SpaceLost     // 141/2 for 14 1/2
)

// String is the slip as it is written for other programs.
func (s Slip) String() string {
	names := [...]string{"", "centimetres", "inches", "whole-for-half", "exchanged", "digit-twice", "point-lost", "millimetres", "half-for-whole", "digits-swapped", "whole-for-half", "space-lost"}
	if int(s) >= len(names) {
		return ""
	}
	return names[s]
}

// Typed is what was typed, for guessing at slips.
type Typed struct {
	Unit  units.System // what a bare number means
	Texts [AnswerCount]string
}

// costs say how unlikely a slip is, in hundredths of the way from the middle of a bound
// to its end: where several would explain the same, the guess is the one that costs the
// least with how far it lies from the middle. They are ours.
var costs = [...]int{
	CentimetresAsInches: 0, InchesAsCentimetres: 0, WholeForHalf: 0, PointLost: 0, Exchanged: 5, DigitTwice: 10, Millimetres: 20, HalfAGirth: 30, DigitsSwapped: 40,
	BothWhole: 0, SpaceLost: 0,
}

// pointless is what it costs more to have lost a point where nobody writes any.
const pointless = 35

// reading is what an answer may have been meant to be.
type reading struct {
	slip   Slip
	length units.Length
	text   string // as it would have been typed; "" where it is made from another
	cost   int
}

// isWhole tells the answers of which somebody may have taken half, isHalf those of which
// somebody may have taken the whole.
func isWhole(a Answer) bool {
	switch a {
	case Bicep, BicepOther, Bust, HighBust, Waist, Hip, Elbow, Wrist, SleeveWidth, HemWidth, ElbowWidth, FinishedBust:
		return true
	}
	return false
}

func isHalf(a Answer) bool {
	switch a {
	case BodiceFrontWidth, BodiceBackWidth, WaistFront, WaistBack, HipFront, HipBack:
		return true
	}
	return false
}

// PartnerOf is the answer that an answer may have been exchanged with. The other arm is
// asked between bicep and bust, so that a bust may stand there that was typed too soon.
func PartnerOf(a Answer) Answer {
	if a == BicepOther {
		return Bust
	}
	pairs := [...][2]Answer{
		{Bicep, Bust}, {BodiceFrontWidth, BodiceBackWidth}, {CapFront, CapBack}, {ArmholeFront, ArmholeBack}, {TakeOffFront, TakeOffBack},
		{CornerOutFront, CornerOutBack}, {CornerDownFront, CornerDownBack}, {WaistFront, WaistBack}, {HipFront, HipBack},
	}
	for _, p := range pairs {
		switch a {
		case p[0]:
			return p[1]
		case p[1]:
			return p[0]
		}
	}
	return NoAnswer
}

// TakesPartner tells a slip that two answers have together.
func (s Slip) TakesPartner() bool { return s == Exchanged || s == BothWhole }

// readings are what an answer may have been meant to be, the likeliest first.
func (in *Input) readings(a Answer) []reading {
	now := in.answer(a).Length
	var list []reading
	text, sheet := in.typedAs(a)
	point := sheet.point()
	add := func(slip Slip, l units.Length, text string) {
		if l != now {
			r := reading{slip, l, text, costs[slip]}
			if slip == PointLost && point == "" {
				r.cost += pointless
			}
			list = append(list, r)
		}
	}
	switch {
	case text == "": // only its length is known
		add(CentimetresAsInches, now*100/254, "")
		add(InchesAsCentimetres, now*254/100, "")
	case zeroFirst(text): // nobody types that but by a slip
	case sheet.Unit == units.Inches && strings.ContainsAny(text, "/⁄∕¼½¾⅛⅜⅝⅞⅓⅔"): // nobody writes centimetres so
	case sheet.Unit == units.Inches:
		sheet.reread(add, CentimetresAsInches, text+" cm")
	default:
		sheet.reread(add, InchesAsCentimetres, text+" in")
	}
	pointLost(text, cmp.Or(point, "."), sheet.rereader(add, PointLost))
	if isHalf(a) {
		add(WholeForHalf, now.Half(), "")
	}
	digitTwice(text, sheet.rereader(add, DigitTwice))
	if text != "" && sheet.Unit == units.Inches {
		sheet.reread(add, Millimetres, text+" mm")
	}
	if isWhole(a) {
		add(HalfAGirth, 2*now, "")
	}
	digitsSwapped(text, sheet.rereader(add, DigitsSwapped))
	for _, parted := range units.RunTogether(text) {
		sheet.reread(add, SpaceLost, parted)
	}
	return list
}

// typedAs is the text of an answer, if it is known and still the answer.
func (in *Input) typedAs(a Answer) (string, *Typed) {
	if in.Typed == nil {
		return "", nil
	}
	text := strings.TrimSpace(in.Typed.Texts[a])
	if l, err := units.Parse(text, in.Typed.Unit); err != nil || l != in.answer(a).Length {
		return "", in.Typed
	}
	return text, in.Typed
}

// point is the sign of decimals in this sheet, "" where nothing has any.
func (t *Typed) point() string {
	if t == nil {
		return ""
	}
	for _, text := range t.Texts {
		if i := strings.IndexAny(text, ".,"); i >= 0 {
			return text[i : i+1]
		}
	}
	return ""
}

// reread hands on what a text is read as, unless no ruler has its fraction: nobody means
// 14 13/61.
func (t *Typed) reread(add func(Slip, units.Length, string), slip Slip, text string) {
	if i := strings.IndexAny(text, "/⁄∕"); i >= 0 && !onRulers(text[i:]) {
		return
	}
	if l, err := units.Parse(text, t.Unit); err == nil {
		add(slip, l, text)
	}
}

// onRulers tells the fractions of rulers by what stands from the slash on: halves to 64ths.
func onRulers(text string) bool {
	digits := strings.TrimLeft(text, "/⁄∕ ")
	if end := strings.IndexFunc(digits, func(r rune) bool { return r < '0' || r > '9' }); end >= 0 {
		digits = digits[:end]
	}
	n, err := strconv.Atoi(digits)
	return err == nil && 0 < n && n <= 64 && n&(n-1) == 0
}

func (t *Typed) rereader(add func(Slip, units.Length, string), slip Slip) func(string) {
	return func(text string) { t.reread(add, slip, text) }
}

func digitAt(text string, i int) bool {
	return 0 <= i && i < len(text) && '0' <= text[i] && text[i] <= '9'
}

// zeroFirst tells a number like 01.
func zeroFirst(text string) bool { return digitAt(text, 1) && text[0] == '0' }

// pointLost puts a point into a whole number, from its end on.
func pointLost(text, point string, meant func(string)) {
	first := strings.IndexAny(text, "0123456789")
	end := first
	for digitAt(text, end) {
		end++
	}
	if strings.ContainsAny(text, ".,/⁄∕") {
		return
	}
	for i := end - 1; i > first; i-- {
		meant(text[:i] + point + text[i:])
	}
}

// digitTwice leaves out one of two digits that are alike.
func digitTwice(text string, meant func(string)) {
	for i := range text {
		if digitAt(text, i) && digitAt(text, i+1) && text[i] == text[i+1] && !(digitAt(text, i-1) && text[i-1] == text[i]) {
			meant(text[:i] + text[i+1:])
		}
	}
}

// digitsSwapped exchanges two neighbours.
func digitsSwapped(text string, meant func(string)) {
	for i := range text {
		if digitAt(text, i) && digitAt(text, i+1) && text[i] != text[i+1] && !(text[i+1] == '0' && !digitAt(text, i-1)) {
			meant(text[:i] + text[i+1:i+2] + text[i:i+1] + text[i+2:])
		}
	}
}

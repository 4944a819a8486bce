package units

import (
	"fmt"
	"strconv"
	"strings"
)

// System is a system of measurement. The zero value is none.
type System uint8

// The two systems that tapes are printed in.
const (
	Inches System = iota + 1
	Centimetres
)

// String is the unit that a bare number has in the system: "in" or "cm".
func (s System) String() string {
	switch s {
	case Inches:
		return "in"
	case Centimetres:
		return "cm"
	}
	return "none"
}

// Other is the other of the two systems.
func (s System) Other() System {
	if s == Inches {
		return Centimetres
	}
	return Inches
}

// ParseSystem reads "in" or "cm".
func ParseSystem(s string) (System, error) {
	switch s {
	case "in":
		return Inches, nil
	case "cm":
		return Centimetres, nil
	}
	return 0, &ParseError{Input: s, Kind: "unit of the worksheet", Want: "Write in or cm"}
}

// Ruler is the distance between the finest marks of a ruler.
type Ruler Length

// The rulers that are sold, finest mark by finest mark.
const (
	HalfInch         = Ruler(Inch / 2)
	QuarterInch      = Ruler(Inch / 4)
	EighthInch       = Ruler(Inch / 8)
	SixteenthInch    = Ruler(Inch / 16)
	ThirtySecondInch = Ruler(Inch / 32)
	SixtyFourthInch  = Ruler(Inch / 64)
	OneMillimetre    = Ruler(Millimetre)
	FiveMillimetres  = Ruler(5 * Millimetre)
)

// Rulers lists every ruler, coarse to fine, inches first.
func Rulers() []Ruler {
	return []Ruler{
		HalfInch, QuarterInch, EighthInch, SixteenthInch, ThirtySecondInch, SixtyFourthInch,
		FiveMillimetres, OneMillimetre,
	}
}

// UsualRuler is the ruler assumed where none was named: 1/8 in or 1 mm.
func UsualRuler(s System) Ruler {
	if s == Inches {
		return EighthInch
	}
	return OneMillimetre
}

// WantRuler says what [ParseRuler] reads.
const WantRuler = "1/2, 1/4, 1/8, 1/16, 1/32 or 1/64 in, 5 mm or 1 mm"

// ParseRuler reads the finest mark of a ruler, such as "1/8 in" or "1 mm". A
// bare number is in the given system.
func ParseRuler(s string, bare System) (Ruler, error) {
	l, err := Parse(s, bare)
	if err != nil {
		return 0, err
	}
	for _, r := range Rulers() {
		if Length(r) == l {
			return r, nil
		}
	}
	return 0, &ParseError{Input: s, Kind: "mark of a ruler", Want: "Write it like 1/8 in, 1/16 in or 1 mm"}
}

// Mark is the distance between two marks.
func (r Ruler) Mark() Length { return Length(r) }

// System is the system that the ruler is divided in.
func (r Ruler) System() System {
	if r == OneMillimetre || r == FiveMillimetres {
		return Centimetres
	}
	return Inches
}

// String names the finest mark as [ParseRuler] reads it: "1/8 in", "1 mm".
func (r Ruler) String() string {
	if r.System() == Inches {
		return fmt.Sprintf("1/%d in", Inch/Length(r))
	}
	return fmt.Sprintf("%d mm", Length(r)/Millimetre)
}

// Scale says how lengths are shown to a person: in which system, and on which
// ruler. The zero value shows centimetres.
type Scale struct {
	System System
	Ruler  Ruler
}

// OffMark stands before a length that is not on a mark of the scale and is
// therefore shown rounded to the nearest. It is ASCII, so it takes one cell in
// every terminal.
const OffMark = "~"

// finest is the step that the scale shows: the ruler's mark for inches, or
// 1/16 in where the ruler is metric; always the millimetre for centimetres.
func (s Scale) finest() Length {
	switch {
	case s.System != Inches:
		return Millimetre
	case s.Ruler == 0 || s.Ruler.System() != Inches:
		return SixteenthInch.Mark()
	}
	return s.Ruler.Mark()
}

// Number is the length in the scale's unit without naming it: a mixed number
// in lowest terms for inches, one decimal for centimetres. A length between
// two marks is rounded to the nearest and starts with [OffMark].
//
// It is rounded before it is split into whole and fraction, so no 16/16 can
// appear.
func (s Scale) Number(l Length) string {
	shown := l.Round(s.finest())
	sign := ""
	if shown != l {
		sign = OffMark
	}
	if shown < 0 {
		sign += "-"
		shown = -shown
	}
	if s.System == Inches {
		return sign + mixedNumber(shown)
	}
	tenths := shown / Millimetre
	return sign + strconv.FormatInt(int64(tenths/10), 10) + "." + strconv.FormatInt(int64(tenths%10), 10)
}

// Format is [Scale.Number] with the unit: "13 3/4 in", "~34.9 cm".
func (s Scale) Format(l Length) string {
	unit := " cm"
	if s.System == Inches {
		unit = " in"
	}
	return s.Number(l) + unit
}

// OnRuler shows a length in the system of the ruler that is held, whatever the
// sheet is shown in. Amounts to mark are shown so: they are on its marks.
func (s Scale) OnRuler(l Length) string {
	if s.Ruler == 0 {
		return s.Format(l)
	}
	held := Scale{System: s.Ruler.System(), Ruler: s.Ruler}
	return held.Format(l)
}

// Exact is the length without its unit, for lines of arithmetic that must add
// up as they are written: a fraction of an inch down to 1/256, a decimal number
// of centimetres down to 0.01 mm. Only what is finer than that, a third of an
// inch say, is rounded to three decimals and starts with [OffMark].
func (s Scale) Exact(l Length) string {
	if s.System == Inches && l%(Inch/256) == 0 {
		if l < 0 {
			return "-" + mixedNumber(-l)
		}
		return mixedNumber(l)
	}
	unit := Centimetre
	if s.System == Inches {
		unit = Inch
	}
	thousandths := divideRounded(1000*l, unit)
	sign := ""
	if thousandths*unit != 1000*l {
		sign = OffMark
	}
	if thousandths < 0 {
		sign += "-"
		thousandths = -thousandths
	}
	text := fmt.Sprintf("%d.%03d", thousandths/1000, thousandths%1000)
	return sign + strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// Both shows a length in the scale's own system and in the other one, as in
// "13 3/4 in = ~34.9 cm".
func (s Scale) Both(l Length) string {
	other := Scale{System: s.System.Other(), Ruler: s.Ruler}
	return s.Format(l) + " = " + other.Format(l)
}

// mixedNumber writes a length that is a multiple of 1/256 in, not negative, as
// whole inches and a fraction in lowest terms.
func mixedNumber(l Length) string {
	whole, rest := l/Inch, l%Inch
	if rest == 0 {
		return strconv.FormatInt(int64(whole), 10)
	}
	numerator, denominator := rest/(Inch/256), Length(256)
	for numerator%2 == 0 {
		numerator, denominator = numerator/2, denominator/2
	}
	var b strings.Builder
	if whole > 0 {
		b.WriteString(strconv.FormatInt(int64(whole), 10))
		b.WriteByte(' ')
	}
	b.WriteString(strconv.FormatInt(int64(numerator), 10))
	b.WriteByte('/')
	b.WriteString(strconv.FormatInt(int64(denominator), 10))
	return b.String()
}

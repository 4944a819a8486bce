package report

import (
	"fmt"
	"math"
	"strings"

	"capscye/calc"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// turnLine writes one line of the working of a turn, lengths to a thousandth of
// the sheet's unit:
//
//	sleeve front turn = lean 0 deg + arccos(6.5 / 9.155) - arctan(5.25 / 7.5) = 9.773 deg
func turnLine(l calc.TurnLine, sc units.Scale) string {
	var t [6]string // the terms: lengths, but for the angles
	for i, term := range l.Terms {
		t[i] = thousandths(term, sc)
	}
	angle := func(i int) string { return degrees(l.Terms[i]) }
	name := wording.SubjectWords[l.Side.Subject()]
	piece := WordsOfPiece(l.Side.Subject())
	result := thousandths(l.Result, sc) + " " + sc.System.String()
	words, how := "", ""
	switch l.Figure {
	case calc.SeamLean:
		words, result = "lean of the "+piece.Below, degrees(l.Result)
		how = fmt.Sprintf("arcsin(in %s / %s %s)", t[0], piece.Below, t[1])
	case calc.PinToSeam:
		words = "pin to " + piece.Below + " line"
		how = fmt.Sprintf("out %s x cos %s + down %s x sin %s", t[0], angle(1), t[2], angle(1))
	case calc.PinToMark:
		words = "pin to mark"
		how = fmt.Sprintf("square root of (out %s + pivot %s)^2 + down %s^2", t[0], t[1], t[2])
	case calc.TurnAngle:
		words, result = "turn", degrees(l.Result)
		sign := "+"
		if l.Terms[5] < 0 {
			sign = "-"
		}
		how = fmt.Sprintf("lean %s %s arccos(%s / %s) - arctan(%s / %s)", angle(0), sign, t[1], t[2], t[3], t[4])
	case calc.CornerLift:
		words = "lift of the corner"
		how = fmt.Sprintf("down %s - %s x cos %s + out %s x sin %s", t[0], t[0], angle(1), t[2], angle(1))
	case calc.HeightLeft:
		words = heightWords(l.Side) + " after"
		how = fmt.Sprintf("down %s - lift %s", t[0], t[1])
	case calc.PinToCorner:
		words = "pin to corner"
		how = fmt.Sprintf("square root of (out %s)^2 + (down %s)^2", t[0], t[1])
	case calc.InwardAngle:
		words, result = "turn", degrees(l.Result)
		how = fmt.Sprintf("arctan(%s / %s) - arccos(%s / %s)", t[0], t[1], t[2], t[3])
	case calc.CornerOut:
		words = "new corner, out"
		how = fmt.Sprintf("out %s x cos %s + down %s x sin %s + slide %s", t[0], angle(1), t[2], angle(1), t[3])
	case calc.LegToMark, calc.LegToLine, calc.LegToEnd:
		words = piece.Below + " to the " + map[calc.TurnFigure]string{calc.LegToMark: "last mark", calc.LegToLine: piece.line, calc.LegToEnd: piece.end}[l.Figure]
		how = fmt.Sprintf("square root of (sideways %s)^2 + (down %s)^2", t[0], t[1])
	case calc.SeamGrowth:
		words = piece.Below + ", change"
		last := len(l.Terms) - 1
		how = fmt.Sprintf("%s, less %s before", strings.Join(t[:last], " + "), t[last])
	case calc.FallOnSeam:
		words = piece.Below + ", change"
		how = fmt.Sprintf("less what the corner falls, %s", t[0])
	case calc.GainAtLine:
		words = "gain at the " + piece.line
		how = fmt.Sprintf("new corner %s + (%s %s - %s) x %s / %s, less %s before", t[0], piece.end, t[1], t[0], t[3], t[4], t[2])
	}
	return name + " " + words + " = " + how + " = " + result
}

// heightWords names what a pivot lowers.
func heightWords(s calc.Side) string {
	if s.OfSleeve() {
		return "cap height"
	}
	return "armhole depth"
}

// thousandths is a length of the turn to three decimals of the sheet's unit.
func thousandths(mm float64, sc units.Scale) string {
	unit := units.Centimetre
	if sc.System == units.Inches {
		unit = units.Inch
	}
	return decimals(mm / unit.Millimetres())
}

func degrees(radians float64) string { return decimals(radians*180/math.Pi) + " deg" }

// decimals is a number with at most three, and no minus before nothing.
func decimals(n float64) string {
	n = math.Round(n*1000) / 1000
	return fmt.Sprintf("%g", n+0)
}

// turns tells the answers that the turn of a side is made from.
func turns(k worksheets.Key, s calc.Side) bool {
	switch k {
	case worksheets.CapHeight, worksheets.UnderarmSeam, worksheets.HemWidth, worksheets.PivotLimitSleeve:
		return s.OfSleeve()
	case worksheets.CornerOutFront, worksheets.CornerDownFront, worksheets.WaistFront:
		return s == calc.BodiceFront
	case worksheets.CornerOutBack, worksheets.CornerDownBack, worksheets.WaistBack:
		return s == calc.BodiceBack
	case worksheets.SideSeam, worksheets.BustDown, worksheets.PivotLimitBodice:
		return !s.OfSleeve()
	}
	return false
}

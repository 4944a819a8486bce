// Package wording holds what the trade calls things: sides, figures, units, cautions,
// and the words that are explained. Tests hold that each of those is read where the
// glossary says, and that labels use no other.
package wording

import (
	"capscye/calc"
	"capscye/calc/trace"
	"capscye/worksheets"
)

// PlaceWords names the levels at which ease is asked for.
var PlaceWords = map[calc.Place]string{
	calc.AtBicep: "bicep", calc.AtBust: "bust", calc.AtWaist: "waist", calc.AtHip: "hip", calc.AtElbow: "elbow", calc.AtWrist: "wrist",
}

// HalfNames name the halves in a picture.
var HalfNames = map[calc.Half]string{calc.Front: "Front", calc.Back: "Back"}

// SectionWords names the sections.
var SectionWords = map[worksheets.Section]string{worksheets.BodySection: "body", worksheets.PatternSection: "pattern"}

// PieceNames are the pieces as the steps call them.
var PieceNames = map[trace.Piece]string{
	trace.SleevePiece: "sleeve", trace.BodiceFrontPiece: "bodice front", trace.BodiceBackPiece: "bodice back", trace.Garment: "garment",
}

// Verbs are the actions in a word or two, for reading across a table.
var Verbs = map[trace.Action]string{
	trace.Lay: "Lay", trace.Mark: "Mark", trace.Pin: "Pin", trace.TurnTo: "Pivot", trace.TraceCurve: "Trace", trace.SlideOut: "Slide",
	trace.Extend: "Extend", trace.Taper: "Taper", trace.SameAgain: "The same again", trace.True: "True", trace.Notch: "Notches",
	trace.LayBack: "Lay back", trace.TraceAsIs: "Trace", trace.Leave: "Leave", trace.Unreachable: "Leave",
	trace.CheckSeams: "Check", trace.CheckWidths: "Measure", trace.CheckSides: "Check", trace.AlterToo: "Alter too", trace.TestGarment: "Test garment",
}

// GirthLine is what the line is called where the girth of a drawn piece is measured. The
// steps draw a bust line only where it was measured.
func GirthLine(d trace.Drawing) string {
	switch {
	case len(d.Corners) > 1:
		return "bicep line"
	case d.BustLine:
		return "bust line"
	}
	return "level line"
}

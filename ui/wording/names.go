// Package wording holds what the trade calls things: sides, figures, units, cautions,
// and the words that are explained. Tests hold that each of those is read where the
// glossary says, and that labels use no other.
package wording

import (
	"capscye/calc"
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
var PieceNames = map[calc.Piece]string{
	calc.SleevePiece: "sleeve", calc.BodiceFrontPiece: "bodice front", calc.BodiceBackPiece: "bodice back", calc.Garment: "garment",
}

// Verbs are the actions in a word or two, for reading across a table.
var Verbs = map[calc.Action]string{
	calc.Lay: "Lay", calc.Mark: "Mark", calc.Pin: "Pin", calc.TurnTo: "Pivot", calc.TraceCurve: "Trace", calc.SlideOut: "Slide",
	calc.Extend: "Extend", calc.Taper: "Taper", calc.SameAgain: "The same again", calc.True: "True", calc.Notch: "Notches",
	calc.LayBack: "Lay back", calc.TraceAsIs: "Trace", calc.Leave: "Leave", calc.Unreachable: "Leave",
	calc.CheckSeams: "Check", calc.CheckWidths: "Measure", calc.CheckSides: "Check", calc.AlterToo: "Alter too", calc.TestGarment: "Test garment",
}

// GirthLine is what the line is called where the girth of a drawn piece is measured. The
// steps draw a bust line only where it was measured.
func GirthLine(d calc.Drawing) string {
	switch {
	case len(d.Corners) > 1:
		return "bicep line"
	case d.BustLine:
		return "bust line"
	}
	return "level line"
}

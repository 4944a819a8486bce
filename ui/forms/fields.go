package forms

import "capscye/worksheets"

// Field says how an answer is asked for.
type Field struct {
	Label string // on the form, at most 19 cells
	Words string // in a sentence or a line of working, without article
	Hint  string // how to measure or choose
}

// Fields holds every answer that the program asks for.
var Fields = map[worksheets.Key]Field{
	worksheets.Title:  {"Title", "title", "What this sheet is for: the garment, the pattern, the size."},
	worksheets.Wearer: {"Wearer", "wearer", "Who will wear it."},
	worksheets.Unit: {"Unit", "unit", "What a bare number means and how lengths are shown. " +
		"Changing it changes nothing that was measured."},
	worksheets.Ruler:  {"Finest ruler mark", "ruler mark", "The finest mark of the ruler in your hand: amounts to mark are rounded to it."},
	worksheets.Fabric: {"Fabric", "fabric", "Woven cloth needs ease to move in; a knit gives by itself."},
	worksheets.Notes:  {"Notes", "notes", "Anything worth keeping: pattern size, what the last garment showed."},

	worksheets.BodyFrom:    {"Body from", "sheet of the body", "The worksheet of this folder that the body was taken from."},
	worksheets.PatternFrom: {"Pattern from", "sheet of the pattern", "The worksheet of this folder that the pattern was taken from."},

	worksheets.MeasuredOn: {"Measured on", "day of measuring", "The day, as 2026-10-03. Measure again at least every six months " +
		"(Texas Agricultural Extension Service, E-372)."},
	worksheets.Bicep: {"Bicep", "bicep", "Around the fullest part of the upper arm, arm relaxed, tape snug but not pressing."},
	worksheets.BicepOther: {"Other arm", "other arm", "The same on the other arm; the larger of the two decides. " +
		"Leave it empty if you measured one."},
	worksheets.Bust:     {"Bust", "bust", "Around the fullest part of the bust, tape level all round, over what will be worn underneath."},
	worksheets.HighBust: {"High bust", "high bust", "Close under the arms, above the bust. A bust 2 in or more larger: choose the size by this one (E-372)."},
	worksheets.Waist:    {"Waist", "waist", "Around the natural waist, where the body bends sideways."},
	worksheets.Hip:      {"Hip", "hip", "Around the fullest part of hip and seat, tape level."},
	worksheets.Elbow:    {"Elbow", "elbow", "Around the bent elbow, for a long sleeve."},
	worksheets.Wrist:    {"Wrist", "wrist", "Around the wrist bone, for a long sleeve."},

	worksheets.EaseBicep: {"At the bicep", "ease at the bicep", "What the sleeve must be larger than the arm. Wearing ease is for moving; add more for looks."},
	worksheets.EaseBust:  {"At the bust", "ease at the bust", "What the bodice must be larger than the body at the bust."},
	worksheets.EaseWaist: {"At the waist", "ease at the waist", "What the bodice must be larger than the body at the waist."},
	worksheets.EaseHip:   {"At the hip", "ease at the hip", "What the garment must be larger than the body at the hip."},
	worksheets.EaseElbow: {"At the elbow", "ease at the elbow", "What a long sleeve must be larger than the bent elbow."},
	worksheets.EaseWrist: {"At the wrist", "ease at the wrist", "What a long sleeve must be larger than the wrist; a hand has to pass."},

	worksheets.PatternSize:   {"Size", "size", "What the pattern calls the size that is measured here, such as 14 or M."},
	worksheets.ChartBust:     {"Chart: bust", "bust in the size chart", "The bust that the pattern's own size chart gives for this size."},
	worksheets.ChartHighBust: {"Chart: high bust", "high bust in the size chart", "The high bust that the size chart gives, if it has one."},

	worksheets.SleeveMeasured: {"Measured", "how the pattern was measured", "From seam line to seam line, or from cut edge to cut edge. " +
		"Edge to edge: the allowances come off here; do not take them off yourself."},
	worksheets.SleeveAllowance: {"Seam allowance", "seam allowance of the sleeve", "Printed on most patterns; 5/8 in (1.5 cm) is common. " +
		"Taken off only when measured from cut edge to cut edge."},
	worksheets.SleeveWidth: {"Sleeve width", "sleeve width", "The sleeve pattern laid flat, straight across at the bicep line, " +
		"where the underarm seam meets the cap."},
	worksheets.BodiceFront: {"Front width", "bodice front width", "From the centre front, or the fold, to the side, at bust level; do not measure across darts or pleats."},
	worksheets.BodiceBack:  {"Back width", "bodice back width", "From the centre back, or the fold, to the side, at bust level."},
	worksheets.BodiceMeasured: {"Measured", "how the bodice was measured",
		"As above, unless you say otherwise here: from seam line to seam line, or from cut edge to cut edge. Edge to edge: an allowance comes off for every seamed edge that the tape crossed."},
	worksheets.BodiceAllowance: {"Seam allowance", "seam allowance of the bodice", "As above, unless you say otherwise here. Taken off only when measured from cut edge to cut edge."},
	worksheets.Crossings: {"Edges crossed", "seamed edges crossed",
		"Seamed edges that the tape crossed on each piece: 1 from the fold or the centre line, 2 with a centre seam."},
	worksheets.TakeOffFront: {"Take off, front", "take-off of the front", "Dart, tuck, pleat or button overlap inside the tape on the front; empty for none."},
	worksheets.TakeOffBack:  {"Take off, back", "take-off of the back", "The same on the back."},
	worksheets.DartFront:    {"Dart, front", "dart of the front", "Where something was taken off the front: the seam in which its dart starts, side, waist, shoulder or armhole; none for a tuck or an overlap; any if you leave it open."},
	worksheets.DartBack:     {"Dart, back", "dart of the back", "The same on the back."},
	worksheets.FinishedBust: {"Printed bust", "finished bust of the pattern",
		"The finished bust that the pattern prints. Where given, it is used instead of front and back."},

	worksheets.SleeveStyle: {"Sleeve style", "sleeve style", "Set-in, shirt or gathered: how much longer than the armhole its cap is commonly cut."},
	worksheets.CapFront: {"Cap seam, front", "front cap seam",
		"Along the front seam line, underarm to shoulder dot. All four seams unlock the cap ease, and what a cap can take of a kept armhole."},
	worksheets.CapBack:      {"Cap seam, back", "back cap seam", "Along the back seam line, underarm to shoulder dot."},
	worksheets.ArmholeFront: {"Armhole, front", "front armhole", "Along the front armhole seam line, shoulder seam to side seam."},
	worksheets.ArmholeBack:  {"Armhole, back", "back armhole", "Along the back armhole seam line, shoulder seam to side seam."},

	worksheets.SleeveLength: {"Sleeve length", "sleeve length", "Short: the whole underarm seam moves out. Long: it tapers back to the hem."},
	worksheets.CapHeight: {"Cap height", "cap height", "Straight up from the bicep line to the shoulder dot. Unlocks how much the pivot turns, " +
		"and how much cap height that takes."},
	worksheets.UnderarmSeam: {"Underarm seam", "underarm seam", "Along the seam line from underarm to hem. Unlocks how much longer it gets on a long sleeve."},
	worksheets.HemWidth: {"Hem width", "hem width", "The sleeve laid flat, across the hem. With the underarm seam it tells how the seam leans; " +
		"on a long sleeve it is held against the wrist."},
	worksheets.ElbowWidth: {"Elbow width", "elbow width", "A long sleeve laid flat, across the elbow. Unlocks whether the taper binds there."},
	worksheets.CornerOutFront: {"Front corner, out", "front corner out", "Where the underarm corner of the front lies: how far outside the pin, " +
		"which stands where the shoulder seam line crosses the armhole. Unlocks the turn of the front."},
	worksheets.CornerDownFront: {"Front corner, down", "front corner down", "How far the underarm corner of the front lies below the pin."},
	worksheets.CornerOutBack:   {"Back corner, out", "back corner out", "The same on the back: how far outside the pin."},
	worksheets.CornerDownBack:  {"Back corner, down", "back corner down", "How far the underarm corner of the back lies below the pin."},
	worksheets.BustDown: {"Bust line, down", "bust line below the underarm", "How far below the underarm corner, along the side seam, the bust line lies: " +
		"the new side seam reaches its full width there. 1 to 3 in (2.5 to 7.5 cm) is common."},
	worksheets.SideSeam: {"Side seam", "side seam", "Along the side seam line from underarm to waist. Unlocks how much longer it gets."},
	worksheets.WaistFront: {"Waist width, front", "waist width of the front", "Centre or fold to side at the waist, darts left out. " +
		"Unlocks how the side seam leans, and whether the waist binds."},
	worksheets.WaistBack: {"Waist width, back", "waist width of the back", "The same on the back."},
	worksheets.HipFront:  {"Hip width, front", "hip width of the front", "Centre or fold to side at the hip, if the bodice reaches it. Unlocks whether the hip binds."},
	worksheets.HipBack:   {"Hip width, back", "hip width of the back", "The same on the back."},

	worksheets.PivotLimitSleeve: {"Limit, sleeve side", "pivot limit of a sleeve side", "The most that one side may pivot: 1 in (2.5 cm) is common practice. " +
		"A wider turn lowers the cap more."},
	worksheets.PivotLimitBodice: {"Limit, bodice side", "pivot limit of a bodice side", "The most that one side may pivot: 1 in (2.5 cm) is common practice."},
	worksheets.FrontShareSleeve: {"Front gets, sleeve", "front share of the sleeve", "What part of the sleeve's need the front takes: 1/2, 0.45, 55 %. The back gets the rest."},
	worksheets.FrontShareBust:   {"Front gets, bust", "front share of the bust", "What part of the bust's need the front takes; front and back need not be equal."},
	worksheets.Slide:            {"Slide", "chosen slide", "How far both pieces move out at the underarm."},
	worksheets.Follow: {"A following piece", "what a following piece does",
		"Where the slide is more than a piece needs: let out, it comes out wider (common practice); hold, it pivots back (geometry, not custom)."},
	worksheets.TaperFrom: {"Taper from", "where the taper starts", "Line: the new seam has its full width at the bicep or bust line, and tapers from there. " +
		"Corner: straight from the new underarm corner; quicker, but narrower at that line."},
	worksheets.Armhole: {"Armhole", "armhole", "Alter: the bodice is still paper. Keep: it is already cut, and the sleeve has to do it alone."},
}

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
	worksheets.Title:  {"Title", "title", "What this worksheet is for: the garment, the pattern, the size."},
	worksheets.Wearer: {"Wearer", "wearer", "Who will wear it."},
	worksheets.Unit: {"Unit", "unit", "The unit of a bare number, and of every length shown. " +
		"Changing it changes nothing that was measured."},
	worksheets.Ruler:  {"Finest ruler mark", "ruler mark", "The finest mark of your ruler: amounts to mark are rounded to it."},
	worksheets.Fabric: {"Fabric", "fabric", "Woven cloth needs ease to move in; a knit gives by itself."},
	worksheets.Notes:  {"Notes", "notes", "Anything to remember: pattern size, what the last garment showed."},

	worksheets.BodyFrom:    {"Body from", "worksheet of the body", "The worksheet of this folder that the body was taken from."},
	worksheets.PatternFrom: {"Pattern from", "worksheet of the pattern", "The worksheet of this folder that the pattern was taken from."},

	worksheets.MeasuredOn: {"Measured on", "day of measuring", "The day, as 2026-10-03. Measure again at least every six months."},
	worksheets.Bicep:      {"Bicep", "bicep", "Around the fullest part of the upper arm, arm relaxed, tape snug but not pressing."},
	worksheets.BicepOther: {"Other arm", "other arm", "The same on the other arm; the larger one counts. " +
		"Leave it empty if you measured one."},
	worksheets.Bust:     {"Bust", "bust", "Around the fullest part of the bust, tape level all round, over what will be worn underneath."},
	worksheets.HighBust: {"High bust", "high bust", "Close under the arms, above the bust. If the bust is larger by 2 in (5 cm) or more, choose the pattern size by the high bust."},
	worksheets.Waist:    {"Waist", "waist", "Around the natural waist, where the body bends sideways."},
	worksheets.Hip:      {"Hip", "hip", "Around the fullest part of hip and seat, tape level."},
	worksheets.Elbow:    {"Elbow", "elbow", "Around the bent elbow, for a long sleeve."},
	worksheets.Wrist:    {"Wrist", "wrist", "Around the wrist bone, for a long sleeve."},

	worksheets.EaseBicep: {"At the bicep", "ease at the bicep", "How much larger than the arm the sleeve must be. Wearing ease is for moving; add more for looks."},
	worksheets.EaseBust:  {"At the bust", "ease at the bust", "How much larger than the body the bodice must be at the bust."},
	worksheets.EaseWaist: {"At the waist", "ease at the waist", "How much larger than the body the bodice must be at the waist."},
	worksheets.EaseHip:   {"At the hip", "ease at the hip", "How much larger than the body the garment must be at the hip."},
	worksheets.EaseElbow: {"At the elbow", "ease at the elbow", "How much larger than the bent elbow a long sleeve must be."},
	worksheets.EaseWrist: {"At the wrist", "ease at the wrist", "How much larger than the wrist a long sleeve must be; a hand has to pass."},

	worksheets.PatternSize:   {"Size", "size", "The size that you measured, as the pattern calls it: 14 or M."},
	worksheets.ChartBust:     {"Chart: bust", "bust in the size chart", "The bust of this size in the pattern's own size chart."},
	worksheets.ChartHighBust: {"Chart: high bust", "high bust in the size chart", "The high bust of this size in that chart, if it has one."},

	worksheets.SleeveMeasured: {"Measured", "how the pattern was measured", "From seam line to seam line, or edge to edge. " +
		"Edge to edge: the allowances come off here; do not take them off yourself."},
	worksheets.SleeveAllowance: {"Seam allowance", "seam allowance of the sleeve", "Printed on most patterns; 5/8 in (1.5 cm) is common. " +
		"It comes off only if you measured edge to edge."},
	worksheets.SleeveWidth: {"Sleeve width", "sleeve width", "The sleeve pattern laid flat, straight across at the bicep line, " +
		"where the underarm seam meets the cap."},
	worksheets.BodiceFront: {"Front width", "bodice front width", "From the centre front, or the fold, to the side, at bust level; do not measure across darts or pleats."},
	worksheets.BodiceBack:  {"Back width", "bodice back width", "From the centre back, or the fold, to the side, at bust level."},
	worksheets.BodiceMeasured: {"Measured", "how the bodice was measured",
		"Leave it if you measured as at the sleeve. From seam line to seam line, or edge to edge: then an allowance comes off for each seamed edge that the tape crossed."},
	worksheets.BodiceAllowance: {"Seam allowance", "seam allowance of the bodice", "Leave it if it is that of the sleeve. It comes off only if you measured edge to edge."},
	worksheets.Crossings: {"Edges crossed", "seamed edges crossed",
		"How many seamed edges the tape crossed on each piece: 1 from the fold or the centre line, 2 with a centre seam."},
	worksheets.TakeOffFront: {"Take off, front", "take-off of the front", "How wide a dart, tuck, pleat or button overlap lies under the tape on the front; empty for none."},
	worksheets.TakeOffBack:  {"Take off, back", "take-off of the back", "The same on the back."},
	worksheets.DartFront:    {"Dart, front", "dart of the front", "Where the dart on the front starts: at the side, waist, shoulder or armhole. None for a tuck or an overlap; any if you do not say."},
	worksheets.DartBack:     {"Dart, back", "dart of the back", "The same on the back."},
	worksheets.FinishedBust: {"Printed bust", "finished bust of the pattern",
		"The finished bust printed on the pattern. It is used instead of front and back."},

	worksheets.SleeveStyle: {"Sleeve style", "sleeve style", "Set-in, shirt or gathered: it says how much longer than the armhole the cap usually is."},
	worksheets.CapFront: {"Cap seam, front", "front cap seam",
		"Along the front seam line, underarm to shoulder dot. With all four seams the cap ease is known, and how much a cap can take if the armhole is kept."},
	worksheets.CapBack:      {"Cap seam, back", "back cap seam", "Along the back seam line, underarm to shoulder dot."},
	worksheets.ArmholeFront: {"Armhole, front", "front armhole", "Along the front armhole seam line, shoulder seam to side seam."},
	worksheets.ArmholeBack:  {"Armhole, back", "back armhole", "Along the back armhole seam line, shoulder seam to side seam."},

	worksheets.SleeveLength: {"Sleeve length", "sleeve length", "Short: the whole underarm seam moves out. Long: it tapers back to the hem."},
	worksheets.CapHeight: {"Cap height", "cap height", "From the bicep line straight up to the shoulder dot. " +
		"Shows the turn and the cap height it costs."},
	worksheets.UnderarmSeam: {"Underarm seam", "underarm seam", "Along the seam line from underarm to hem. Shows how much longer it gets on a long sleeve."},
	worksheets.HemWidth: {"Hem width", "hem width", "The sleeve laid flat, across the hem. With the underarm seam it shows how the seam leans; " +
		"on a long sleeve it is compared with the wrist."},
	worksheets.ElbowWidth: {"Elbow width", "elbow width", "A long sleeve laid flat, across the elbow. Shows whether the sleeve binds there."},
	worksheets.CornerOutFront: {"Front corner, out", "front corner out", "How far outside the pin the underarm corner of the front lies. " +
		"The pin goes where the shoulder seam line crosses the armhole. Shows the turn of the front."},
	worksheets.CornerDownFront: {"Front corner, down", "front corner down", "How far below the pin the underarm corner of the front lies."},
	worksheets.CornerOutBack:   {"Back corner, out", "back corner out", "The same on the back: how far outside the pin."},
	worksheets.CornerDownBack:  {"Back corner, down", "back corner down", "How far below the pin the underarm corner of the back lies."},
	worksheets.BustDown: {"Bust line, down", "bust line below the underarm", "How far below the underarm corner the bust line lies, along the side seam. " +
		"The new side seam has its full width from there. 1 to 3 in (2.5 to 7.5 cm) is common."},
	worksheets.SideSeam: {"Side seam", "side seam", "Along the side seam line from underarm to waist. Shows how much longer it gets."},
	worksheets.WaistFront: {"Waist width, front", "waist width of the front", "From centre or fold to side at the waist, less what darts take there. Shows whether the waist binds, " +
		"and how the side seam leans: too much, where a dart was left out."},
	worksheets.WaistBack: {"Waist width, back", "waist width of the back", "The same on the back."},
	worksheets.HipFront:  {"Hip width, front", "hip width of the front", "From centre or fold to side at the hip, if the bodice reaches it. Shows whether the hip binds."},
	worksheets.HipBack:   {"Hip width, back", "hip width of the back", "The same on the back."},

	worksheets.PivotLimitSleeve: {"Limit, sleeve side", "pivot limit of a sleeve side", "The most that one side may pivot, usually 1 in (2.5 cm). " +
		"A wider turn lowers the cap more."},
	worksheets.PivotLimitBodice: {"Limit, bodice side", "pivot limit of a bodice side", "The most that one side may pivot, usually 1 in (2.5 cm)."},
	worksheets.FrontShareSleeve: {"Front gets, sleeve", "front share of the sleeve", "The part of the sleeve's need that the front takes: 1/2, 0.45, 55 %. The back gets the rest."},
	worksheets.FrontShareBust:   {"Front gets, bust", "front share of the bust", "The part of the bust's need that the front takes; front and back may differ."},
	worksheets.Slide:            {"Slide", "slide", "How far both pieces move straight out at the underarm."},
	worksheets.Follow: {"If slid too far", "what slides too far",
		"Where the slide is more than a piece needs. Widen to match: it comes out wider (usual). Keep its width: it pivots back (unusual)."},
	worksheets.TaperFrom: {"Taper from", "where the taper starts", "Line: the new seam has its full width at the bicep or bust line. " +
		"Corner: it runs straight from the new underarm corner; quicker, but narrower at that line."},
	worksheets.Armhole: {"Armhole", "armhole", "Alter it while the bodice is still paper. Keep the armhole if the bodice is cut: the sleeve then has to do it alone."},
}

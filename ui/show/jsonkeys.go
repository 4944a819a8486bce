package show

import (
	"reflect"
	"slices"
	"strings"

	"capscye/calc"
	"capscye/calc/trace"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// JSONKey is a key of the JSON that a command prints, and what it holds.
type JSONKey struct{ Path, Says string }

// JSONKeys are the keys of what is printed as a type, in their order, each with what
// is said of its path. Behind [] are the keys of an array's objects; where all the keys
// of an object hold the same, * is any of them. The types that are told elsewhere are
// not gone into.
func JSONKeys(printed any, says map[string]string, elsewhere ...any) []JSONKey {
	var keys []JSONKey
	var walk func(path string, t reflect.Type)
	walk = func(path string, t reflect.Type) {
		for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
			if t.Kind() == reflect.Slice && path != "" {
				path += "[]"
			}
			t = t.Elem()
		}
		if t.Kind() != reflect.Struct || slices.ContainsFunc(elsewhere, func(v any) bool { return reflect.TypeOf(v) == t }) {
			return
		}
		if path != "" {
			path += "."
		}
		if names, alike := sameObjects(t); alike {
			keys = append(keys, JSONKey{path + "*", strings.TrimSpace(says[path+"*"] + " * is " + typeset.OrList(names) + ".")})
			walk(path+"*", t.Field(0).Type)
			return
		}
		for i := range t.NumField() {
			f := t.Field(i)
			name := path + jsonName(f)
			keys = append(keys, JSONKey{name, says[name]})
			walk(name, f.Type)
		}
	}
	walk("", reflect.TypeOf(printed))
	return keys
}

// sameObjects tells an object whose keys all hold objects of one type.
func sameObjects(t reflect.Type) (names []string, ok bool) {
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Type.Kind() != reflect.Struct || f.Type != t.Field(0).Type {
			return nil, false
		}
		names = append(names, jsonName(f))
	}
	return names, t.NumField() > 0
}

func jsonName(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}

// SheetKeys are the keys of a computed worksheet.
func SheetKeys() []JSONKey {
	says := map[string]string{
		"title": "The title.",
		"unit":  "The unit of the worksheet, in or cm. The lengths here are millimetres in either case.",

		"need":           "How much each piece must gain; negative where it must come in.",
		"need.sleeve_mm": "The sleeve, around the arm.",
		"need.bust_mm":   "The bodice, around the body.",

		"slide_band":          "The range of slides that work, for the front and the back.",
		"slide_band.*":        "One half.",
		"slide_band.*.low_mm": "The smallest slide that works.", "slide_band.*.high_mm": "The largest.",
		"slide_band.*.empty": "true where no slide works.",

		"sides":                       "What each altered edge does.",
		"sides.*":                     "One edge.",
		"sides.*.need_mm":             "What the edge must gain.",
		"sides.*.pivot_mm":            "What it pivots; negative inward.",
		"sides.*.slide_mm":            "What it slides; negative inward.",
		"sides.*.total_mm":            "Pivot plus slide. On a piece that only matches it differs from need_mm.",
		"sides.*.pivot_mark_mm":       "The pivot to mark with the ruler: the rounded total less the marked slide.",
		"sides.*.slide_mark_mm":       "The slide to mark with the ruler.",
		"sides.*.left_over_mm":        "What the edge is short by: the need that pivot and slide cannot reach.",
		"sides.*.turn_deg":            "The angle of the pivot, in degrees.",
		"sides.*.lift_mm":             "How far the underarm corner rises in the pivot; negative where it falls.",
		"sides.*.cap_height_after_mm": "The cap height after the pivot; on a bodice edge the depth of the armhole.",
		"sides.*.seam_growth_mm":      "How much longer the underarm or side seam gets.",
		"sides.*.at_line_mm":          "What the edge gains at the line where the girth is measured, read off the new outline.",
		"sides.*.bend_deg":            "The sharpest bend of the new seam below the underarm, in degrees.",
		"sides.*.outline_mm":          "The points of that seam from the underarm corner down, each [out, up] from the pin.",

		"finished":                   "What the garment measures in the end, without what the steps draw out to fit further down.",
		"finished.bicep_mm":          "Around the sleeve at the bicep line.",
		"finished.bust_mm":           "Around the bodice at the bust line.",
		"finished.bicep_marked_mm":   "The same sleeve, by the rounded marks.",
		"finished.bust_marked_mm":    "The same bodice, by the rounded marks.",
		"finished.bicep_ease_mm":     "The ease at the bicep in the end.",
		"finished.bust_ease_mm":      "The ease at the bust in the end.",
		"finished.across_corners_mm": "The sleeve straight across its new underarm corners, which lie above the bicep line.",

		"seams":                   "Cap and armhole, front and back together.",
		"seams.cap_before_mm":     "The cap seam now.",
		"seams.cap_after_mm":      "The cap seam after.",
		"seams.armhole_before_mm": "The armhole now.", "seams.armhole_after_mm": "The armhole after.",
		"seams.cap_ease_before_mm": "How much longer the cap seam is than the armhole, now.", "seams.cap_ease_after_mm": "The same after.",

		"findings":            "What the program has to say, the most urgent first: stops, before them a doubted answer that they may follow from, then checks, then notes; of one level what makes the rest meaningless.",
		"findings[].code":     "The code of the finding; see FINDINGS.",
		"findings[].level":    "note, warn or stop.",
		"findings[].about":    "What it is about: " + strings.Join(subjects(), ", ") + ", or a key of the file.",
		"findings[].text":     "The finding in words.",
		"findings[].ways_out": "What helps, in words; left out where there is nothing to do.",
		"findings[].key":      "The answer of the file that it is about, such as body.bicep; left out for none.",
		"findings[].guess":    "What may have been meant by that answer, as it would be typed; left out for none.",
		"findings[].slip":     "The slip that would explain it: " + typeset.OrList(slips()) + "; left out for none.",

		"findings[].ways":                "The same with their numbers, null where there is none.",
		"findings[].ways[].way":          "The way: " + strings.Join(ways(), ", ") + ".",
		"findings[].ways[].amount_mm":    "The new pivot limit or ease; the width of a gusset; how far a slash is spread or a fold taken, around the body.",
		"findings[].ways[].each_side_mm": "What of it falls to one side.",
		"findings[].ways[].adds_mm":      "What a gusset adds to the other piece, around, where it runs on into its seam.",
		"findings[].ways[].lowers_mm":    "What the cap height, or the depth of the armhole, loses by it.",
		"findings[].accept":              "What it means to accept the finding as it is, which is no way out; left out where that is no choice.",
		"findings[].accept.ease_mm":      "The ease that comes out then; negative where the garment is smaller than the body.",
		"findings[].accept.text":         "The same in words.",

		"working": "With --working, the lines of the arithmetic; else left out.",
	}
	return JSONKeys(Sheet{}, says)
}

// ways are the names of the ways out.
func ways() (names []string) {
	for w := calc.OtherSize; w <= calc.FrontTakesMore; w++ {
		names = append(names, w.String())
	}
	return append(names, "take-it-again", "leave-it")
}

// slips are the names of the slips.
func slips() (names []string) {
	for s := calc.NoSlip + 1; s.String() != ""; s++ {
		if !slices.Contains(names, s.String()) {
			names = append(names, s.String())
		}
	}
	return names
}

// subjects are what a finding can be about.
func subjects() (names []string) {
	for s := calc.OfSheet; s <= calc.OfBodiceBack; s++ {
		names = append(names, Underscored(wording.SubjectWords[s]))
	}
	return names
}

// StepKeys are the keys of a step at the table.
func StepKeys() []JSONKey {
	var pieces, actions []string
	for p := trace.SleevePiece; p <= trace.Garment; p++ {
		pieces = append(pieces, Underscored(wording.PieceNames[p]))
	}
	for a := trace.Lay; int(a) < len(actionNames); a++ {
		actions = append(actions, actionNames[a])
	}
	return JSONKeys(Step{}, map[string]string{
		"id":       "The name of the step, as [progress] done of the file has it.",
		"piece":    "The piece: " + strings.Join(pieces, ", ") + ".",
		"side":     "The edge, as in sides of show --json; null where the step is about no single edge.",
		"action":   "What the hands do: " + strings.Join(actions, ", ") + ".",
		"text":     "The step in words.",
		"pivot_mm": "The pivot to mark.",
		"slide_mm": "The slide to mark.",
		"done":     "true once the step is ticked off.",
	})
}

// FailureKeys are the keys of what stands in an array for a file that cannot be read.
func FailureKeys() []JSONKey {
	return JSONKeys(Failure{}, map[string]string{"file": "The file, where it cannot be read.", "error": "Why not."})
}

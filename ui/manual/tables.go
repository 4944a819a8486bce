package manual

import (
	"fmt"
	"strings"

	"capscye/calc"
	"capscye/calc/remedy"
	"capscye/ui/console"
	"capscye/ui/desk"
	"capscye/ui/forms"
	"capscye/ui/report"
	"capscye/ui/roster"
	"capscye/ui/show"
	"capscye/ui/sizes"
	"capscye/ui/terminal"
	"capscye/ui/try"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/units"
	"capscye/worksheets"
)

// The sections that are made from tables of the program, so that they say what is so.

func keys() section {
	s := section{name: "KEYS"}
	s.say("On the screen; ^s is ctrl and s together.")
	for _, k := range desk.Help() {
		s.entry(k.Key, k.Says)
	}
	s.say(fmt.Sprintf(keyProse, terminal.AfterPaste.Seconds()))
	return s
}

// whatIf tells how far a way out is looked for.
func whatIf() section {
	inches := units.Scale{System: units.Inches, Ruler: units.EighthInch}
	return told("WHAT IF", fmt.Sprintf(whatIfProse, desk.MostCopies, inches.Format(calc.MostLimit), remedy.LeastPercent, remedy.MostPercent))
}

// file tells every table and every key of a worksheet.
func file() section {
	s := section{name: "FILE"}
	s.say(fmt.Sprintf(fileProse, worksheets.MaxBytes>>10, worksheets.MaxDepth))
	s.lines(FirstWorksheet)
	s.say(fileSums)
	s.entry("version", fmt.Sprintf("The version of the format: %d. A file with a newer one opens for reading only.", worksheets.Version))
	table := ""
	for _, k := range worksheets.Keys() {
		in, name, _ := strings.Cut(k.Path(), ".")
		if in != table {
			table = in
			s.below("[" + table + "]")
		}
		s.entry(name, keyWords(k))
	}
	s.below("[progress]")
	s.entry("done", "A list of the steps at the table that are ticked off, each with a sign of what it said then: a step that says something else by now has no tick. Behind those done to another size stands its name.")
	s.below("[[size]]")
	s.say(fmt.Sprintf(sizeProse, worksheets.MostSizes))
	s.entry("name", fmt.Sprintf("What the pattern calls the size. Takes any text of at most %d characters that no other size has.", worksheets.LongestSize))
	s.entry("chart_bust", "As in [pattern].")
	s.entry("chart_high_bust", "As in [pattern].")
	s.entry("[size.sleeve]", "The keys of [sleeve] that differ by size, as far as measured: "+sizeKeys("sleeve")+".")
	s.entry("[size.bodice]", "The keys of [bodice] that differ by size: "+sizeKeys("bodice")+".")
	s.below("[[fitting]]")
	s.say("What a test garment showed; as many as there were.")
	s.entry("date", "The day.")
	s.entry("note", "What it showed, in your words.")
	return s
}

// sizeKeys are the names of the keys of a table that differ by size.
func sizeKeys(table string) string {
	var names []string
	for _, k := range worksheets.SizeKeys() {
		if in, name, _ := strings.Cut(k.Path(), "."); in == table {
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ")
}

// keyWords say what an answer is, what may be written, and what stands for an empty
// one. A comment that goes on from the one before it gives way to the hint of the form.
func keyWords(k worksheets.Key) string {
	says := k.Comment()
	takes := k.Kind().Takes()
	if k.Kind() == worksheets.Choice {
		takes = typeset.OrList(k.Options())
	}
	if says == "" || strings.HasPrefix(says, "...") || says == takes {
		says = forms.Fields[k].Hint
	}
	usual := k.Usual()
	if k.Kind() == worksheets.Scale {
		usual = fmt.Sprintf("%s, or %s where the unit is cm", units.UsualRuler(units.Inches), units.UsualRuler(units.Centimetres))
	}
	if from, ok := k.From(); ok {
		usual = "that of " + from.Path()
	}
	if usual != "" {
		usual = " If empty: " + usual + "."
	}
	return typeset.Capitalised(strings.TrimSuffix(says, ".")) + ". Takes " + takes + "." + usual
}

// ease tells who says how much of it.
func ease() section {
	s := section{name: "USUAL EASE"}
	s.say("In woven cloth, and in a knit at the end. Sources differ; you decide.")
	inches, metric := units.Scale{System: units.Inches, Ruler: units.EighthInch}, units.Scale{System: units.Centimetres, Ruler: units.OneMillimetre}
	say := func(lead string, at calc.Place, fabric calc.Fabric) {
		var texts []string
		for _, u := range calc.UsualEase(at, fabric) {
			texts = append(texts, fmt.Sprintf("%s: %s (%s).", typeset.Capitalised(u.Source), wording.Usual(u.Low, u.High, inches), wording.Usual(u.Low, u.High, metric)))
		}
		s.entry(lead, strings.Join(texts, " "))
	}
	for _, k := range worksheets.Keys() {
		if at, ok := forms.PlaceOf[k]; ok {
			say(k.Path(), at, calc.Woven)
		}
	}
	say("any, knit", calc.AtBust, calc.Knit)
	return s
}

// lengths tells how lengths are written.
func lengths() section {
	s := section{name: "LENGTHS"}
	s.say("A number without a unit is in the unit of the worksheet.")
	for _, f := range units.Forms {
		s.entry(f.Example, typeset.Capitalised(f.Says)+".")
	}
	for _, u := range units.UnitNames {
		name := map[units.Length]string{units.Inch: "Inches", units.Centimetre: "Centimetres", units.Millimetre: "Millimetres"}[u.Unit]
		s.entry("13 "+u.Words[0], name+". Write "+strings.Join(u.Words, "  ")+", or in capitals.")
	}
	s.say(lengthProse)
	return s
}

// printed are the commands that print JSON, with its keys.
var printed = []struct {
	command, shape string
	keys           func() []show.JSONKey
}{
	{"show", "An object for one file, an array for several. In the array, a file that cannot be read is an object of file and error.", func() []show.JSONKey { return append(show.SheetKeys(), show.FailureKeys()...) }},
	{"trace", "An array of the steps.", show.StepKeys},
	{"sizes", "An array with an object for each size, the one in hand first.", sizes.JSONKeys},
	{"try", "An object; an array of such objects for a range.", try.JSONKeys},
	{"roster", "An array with an object for each worksheet; one that cannot be read is an object of file, state and error.", roster.JSONKeys},
}

// json tells the keys of what every command prints.
func json() section {
	s := section{name: "JSON"}
	s.say(jsonProse)
	for _, p := range printed {
		s.below(p.command + " --json")
		s.say(p.shape)
		for _, k := range p.keys() {
			s.entry(k.Path, k.Says)
		}
	}
	return s
}

// findings tells every code.
func findings() section {
	s := section{name: "FINDINGS"}
	var levels []string
	for l := calc.Note; l <= calc.Stop; l++ {
		levels = append(levels, l.String()+" ("+report.LevelMeanings[l]+")")
	}
	s.say("Every finding has a level: " + typeset.OrList(levels) + ".")
	for _, c := range report.Codes {
		var at []string
		for _, l := range c.Levels {
			at = append(at, l.String())
		}
		s.entry(string(c.Code), strings.Join(at, " or ")+": "+c.Says)
	}
	return s
}

func statuses() section {
	s := section{name: "EXIT STATUS"}
	for _, w := range console.Statuses {
		s.entry(w.Status, w.Says)
	}
	return s
}

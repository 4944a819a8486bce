package ask

import (
	"bytes"
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"capscye/ui/forms"
	"capscye/ui/internal/props"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// answers asks with a sheet of the folder, and types the lines.
func answers(t *testing.T, lines ...string) (status int, out, errs string) {
	t.Helper()
	return run(strings.Join(lines, "\n")+"\n", "ask", "sheet.toml")
}

// Every question that matters is asked, on a line of its own, and Enter leaves it as it is:
// the file is the same to the byte, and the answer is that of the sheet. The
// amounts are worked out by hand: needs of 2 1/2 in, 1 1/4 and 5/8 a side.
func TestAskEveryQuestion(t *testing.T) {
	props.Lay(t, "choir-blouse")
	before := props.Read(t, "sheet.toml")
	status, out, errs := answers(t, make([]string, len(questions))...)
	if status != 0 || errs != "" || props.Read(t, "sheet.toml") != before {
		t.Errorf("status %d, %s", status, errs)
	}
	asked := 0
	for _, l := range strings.Split(out, "\n") {
		if strings.Contains(l, "? Now ") || strings.HasSuffix(l, "? Empty.") {
			asked++
		}
		if strings.Contains(l, "  ") {
			t.Errorf("aligned: %q", l)
		}
	}
	// Nobody is asked where body and pattern were taken from, nor for a size; of a short
	// sleeve neither for elbow nor wrist, nor for their ease, nor for the elbow width; of
	// seam lines not for edges crossed; without a take-off not for its two darts; without
	// waist and hip not for their ease.
	if want := len(forms.Fields) - 2 - 3 - 5 - 1 - 2 - 2; asked != want {
		t.Errorf("%d of %d questions", asked, want)
	}
	props.Says(t, out, "Choir blouse, for Odile. Lengths in inches; amounts to mark for a ruler in 1/8 in.",
		"53 questions; 5 are enough for a plan, and come first: bicep, ease at the bicep, sleeve length, how the pattern was measured, sleeve width.\nEnter keeps, ",
		"First: what is enough for a plan. 5 questions; next skips them.\nBicep, in inches? Now 13 3/4 in.", "Sleeve width, in inches? Now 13 in.",
		"Step 1, Body. Girths of the body. 6 questions, all optional.", "Unit: in or cm? Now in.",
		"Step 2, Ease. How much larger the garment is than the body. 1 question, needed.\nEase at the bust,", "Step 3, Pattern. The pattern, laid flat. 1 question, optional.", "Bodice, laid flat. 7 questions, 2 needed.", "Take-off of the front, in inches? Empty.", "Optional: for the cap ease, and if the bodice is already cut. 5 questions.", "Step 4, Split. 8 questions",
		"Slide: least, even, or a length in inches? Now least.",
		"Ready to trace.\nChoir blouse, for Odile.\n", "Sleeve, each side, on the bicep line: pivot 1 in and slide 1/4 in.\n",
		"Bodice, each side, on the level line through the underarm: pivot 3/8 in and slide 1/4 in.\n",
		"Finished sleeve: 15 1/2 in around, 1 3/4 in of ease.\nFinished bodice: 42 1/2 in around, 3 in of ease.\n",
		"Note: The sleeve pivots and slides", "Sleeve needs 2 1/2 in.\n", "Bodice needs 2 1/2 in.\n", wording.Cautions[0]+"\n"+wording.Cautions[1]+"\n"+wording.Cautions[2]+"\nSaved in sheet.toml.\n")
}

// Answers typed into a new worksheet, each as a built-in sheet has it, come to
// the same plan.
func TestAskedForIsTheSameSheet(t *testing.T) {
	for _, name := range worksheets.Examples() {
		t.Chdir(t.TempDir())
		d, err := worksheets.Example(name)
		if err != nil {
			t.Fatal(err)
		}
		lines := []string{d.Sheet.Unit().String()}
		so := &asking{doc: worksheets.New(forms.Begin(d.Sheet.Unit()))}
		for _, q := range questions {
			if so.passes(q) {
				continue
			}
			if q.key == otherSize {
				lines = append(lines, sizesAnswered(d.Sheet)...)
				continue
			}
			text := d.Sheet.Text(q.key)
			so.doc.Sheet.Set(q.key, text)
			if text == "" && forms.KindOf(q.key) != forms.ChoiceField {
				text = "empty"
			}
			lines = append(lines, text)
		}
		if _, _, errs := answers(t, lines...); errs != "" {
			t.Error(errs)
		}
		_, want, _ := run("", "show", "--json", props.Example(name))
		_, got, _ := run("", "show", "--json", "sheet.toml")
		var a, b bytes.Buffer
		if json.Compact(&a, []byte(want)) != nil || json.Compact(&b, []byte(got)) != nil || a.String() != b.String() {
			t.Errorf("%s: asked for\n%s\nthe sheet\n%s", name, got, want)
		}
	}
}

// What cannot be read is explained and asked again; what was there stays.
func TestAskAgain(t *testing.T) {
	props.Lay(t, "choir-blouse")
	_, out, _ := answers(t, "1 3/x", "-3", "14", "next", "", strings.Repeat("9", 3000), "\x1b[A", "\xff", "40")
	again := "Bicep, in inches? Now 13 3/4 in.\n"
	props.Says(t, out, again, `"1 3/x" is not a length: no number after the slash.`, "Write it like 13 3/4", again, `"-3" must be more than 0`, again,
		"Bicep: 14 in.\nSleeve needs 2 3/4 in.\nBodice, each side: pivot 1/4 in, slide 3/8 in.", "Other arm",
		"Bust, in inches?", "Too long: at most 2000 characters", "Bust,", "There are keys in it", "Bust,", "There are keys in it", "Bust,",
		"Bodice needs 3 in.", "High bust,")
	if props.AnswerIn(t, "sheet.toml", worksheets.Bicep) != "14" || props.AnswerIn(t, "sheet.toml", worksheets.Bust) != "40" {
		t.Errorf("the file is\n%s", props.Read(t, "sheet.toml"))
	}
}

// sizesAnswered are the answers that give a sheet its sizes.
func sizesAnswered(s worksheets.Sheet) (lines []string) {
	text := func(s worksheets.Sheet, k worksheets.Key) string {
		if s.Text(k) == "" {
			return "empty"
		}
		return s.Text(k)
	}
	for i := range s.Sizes {
		alone := s.SizeAlone(i)
		if lines = append(lines, "yes"); i == 0 {
			lines = append(lines, s.Text(worksheets.PatternSize), text(s, worksheets.ChartBust), text(s, worksheets.ChartHighBust))
		}
		for _, k := range worksheets.SizeKeys() {
			if alone.Text(k) != "" || forms.WorthOf(&alone, k) != forms.Idle {
				lines = append(lines, text(alone, k))
			}
		}
	}
	return append(lines, "no")
}

// As many sizes as are given are asked for, from their names on; what steers works there
// too, and a slip is no name.
func TestAskForSizes(t *testing.T) {
	props.Lay(t, "choir-blouse")
	blouse := props.Read(t, "sheet.toml")
	skip := slices.Repeat([]string{"next"}, 10)
	_, out, _ := answers(t, append(skip, "?", "13 1/2", "yes", "14", "36", "", "yes", // goes back to the question for a name
		"quit")...)
	props.Says(t, out, "Another size of this pattern? None yet.", "capscye sizes shows what each would cost", "Answer yes or no.", "What does the pattern call the size",
		"Size 14: bust in the size chart, in inches? Empty.", "What does it call the other size?", "Size yes: bust in the size chart")
	os.WriteFile("sheet.toml", []byte(blouse), 0o644)
	_, out, _ = answers(t, append(skip, "yes", strings.Repeat("x", 5000), "quit")...)
	props.Says(t, out, "What does the pattern call the size", "Too long: at most 2000 characters; nothing was changed.", "Another size of this pattern? None yet.")
	if got := props.Read(t, "sheet.toml"); got != blouse {
		t.Errorf("the file is\n%s", got)
	}
	_, out, _ = answers(t, append(skip, "yes", "14", "36", "", "16", "38", "", "141/2", "yes", "x", "empty", "back", "51/2", "no", "5 1/2", "next", "y", "14", "no", "quit")...)
	props.Says(t, out, "Size 16: sleeve width, in inches? Empty", "Did you mean 14 1/2 in?", "Size 16, sleeve width: 14 1/2 in.\nSize 16: cap height", `"x" is not a length`, "Size 16, cap height: empty.\n", "Did you mean 5 1/2 in?", "Size 16: cap height", "Size 16, cap height: 5 1/2 in.", "Another size of this pattern? Measured: 16.", "the name of another size already", "Step 4, Split.", "Saved in sheet.toml.\nTo hear the sizes compared:\ncapscye sizes --sentences sheet.toml\n")
	want := blouse + "\n[pattern]\nsize = \"14\"\nchart_bust = \"36\"\n\n[[size]]\nname = \"16\"\nchart_bust = \"38\"\n\n[size.sleeve]\nwidth = \"14 1/2\"\ncap_height = \"5 1/2\"\n"
	os.WriteFile("my smock.toml", []byte(want), 0o644)
	_, out, _ = run("quit\n", "ask", "my smock.toml")
	if !strings.HasSuffix(out, "\nTo hear the sizes compared:\ncapscye sizes --sentences \"my smock.toml\"\n") {
		t.Errorf("it ends with\n%s", out)
	}
	if got := props.Read(t, "sheet.toml"); got != want {
		t.Errorf("the file is\n%s", got)
	}
}

// The words that steer: back, next, empty, ? and quit, in any capitals; with =
// before it, a word is an answer.
func TestWordsThatSteer(t *testing.T) {
	props.Lay(t, "choir-blouse")
	status, out, _ := answers(t, "back", "?", "? SEAM A", "? zip", "??", "14", "BACK", "14 1/4", "next", "empty", "Next", "=Quit", "==", "next",
		"back", "quit", "15")
	props.Says(t, out, "This is the first question.", "Around the fullest part of the upper arm", "A length is written as 13 3/4",
		"Seam allowance: The strip of a pattern", "No word here begins with \"zip\"", "Enter keeps, back and next move", "Ease at the bicep", "Bicep, in inches? Now 14 in.", "Ease at", "Other arm", "Other arm: empty.", "Bust,",
		"This worksheet. 6 questions, all optional.\nTitle?", "Wearer? Now Odile.", "Unit:",
		"Step 2, Ease.", "Step 1, Body. This worksheet.", "Notes?", "Quit, for is.\nLengths are in inches", "Saved in sheet.toml.")
	if status != 0 || strings.Count(out, "Notes?") != 1 {
		t.Errorf("status %d; quit did not stop:\n%s", status, out)
	}
	for k, want := range map[worksheets.Key]string{worksheets.Bicep: "14 1/4", worksheets.BicepOther: "", worksheets.Title: "Quit", worksheets.Wearer: "="} {
		if got := props.AnswerIn(t, "sheet.toml", k); got != want {
			t.Errorf("%s = %q", k, got)
		}
	}
}

// A choice is answered by a beginning that only one of its words has, and is
// never empty.
func TestChoicesByTheirBeginning(t *testing.T) {
	props.Lay(t, "archive-coat")
	_, out, _ := answers(t, "next", "next", "next=", "", "empty", "furlong", "Inch", "1/", "1/3", "5", "w", "KN", "quit")
	props.Says(t, out, "Unit: in or cm? Now cm.", "This always has an answer, now cm; it can be in or cm.", "is not a unit here. Answer inches (in) or centimetres (cm)",
		"Nothing that was measured changes. The ruler stays 1 mm.", "Ruler mark: 1/2 in, 1/4 in, 1/8 in,",
		"could be 1/2 in, 1/4 in, 1/8 in, 1/16 in, 1/32 in or 1/64 in", "Fabric: woven or knit?", `"5" is not a choice.`,
		"Notes?")
	for k, want := range map[worksheets.Key]string{worksheets.Unit: "in", worksheets.Ruler: "1/32 in", worksheets.Fabric: "woven", worksheets.Notes: "KN"} {
		if got := props.AnswerIn(t, "sheet.toml", k); got != want {
			t.Errorf("%s = %q", k, got)
		}
	}
	if got := props.AnswerIn(t, "sheet.toml", worksheets.Bicep); !strings.HasSuffix(got, " cm") {
		t.Errorf("what was measured in centimetres is now %q", got)
	}
	props.Lay(t, "choir-blouse")
	skip := slices.Repeat([]string{"next"}, 11)
	_, out, _ = answers(t, append(skip, "?", "evn", "e", "", "", "", "150 %", "55 %", "", "letout", "k")...)
	props.Says(t, out, "Slide: least, even", "Front slide: 1/4 in (1/4 to 1 1/4 in would work).", "is not a slide. Write it like least, even or 1 1/4.", "Sleeve, each side: pivot 5/8 in, slide 5/8 in.",
		"is not a share", "What slides too far: widen to match or keep its width?", "Armhole: alter or keep?")
	if props.AnswerIn(t, "sheet.toml", worksheets.Slide) != "even" || props.AnswerIn(t, "sheet.toml", worksheets.FrontShareBust) != "55 %" ||
		props.AnswerIn(t, "sheet.toml", worksheets.Follow) != "let out" || props.AnswerIn(t, "sheet.toml", worksheets.Armhole) != "keep" {
		t.Errorf("the file is\n%s", props.Read(t, "sheet.toml"))
	}
}

// A slip of the unit is heard at once, and no rounded length has a sign that a
// reader would spell out.
func TestSlipsAreSaidAtOnce(t *testing.T) {
	props.Lay(t, "choir-blouse")
	_, out, _ := answers(t, "34.9 cm", "next", "34.9", "14")
	props.Says(t, out, "Sleeve needs about 2 1/2 in.", "Other arm: 34.9 in.\n34.9 in is not what people measure, 7 to 23 1/2 in.\nDid you mean 34.9 cm? Answer yes to take that.\nBust,")
	if strings.Contains(out, "~") {
		t.Errorf("a sign is said:\n%s", out)
	}
}

// A doubt without a guess is heard at its question too, and nothing that follows from it
// before it, or with it.
func TestADoubtWithoutAGuessIsSaidAtItsQuestion(t *testing.T) {
	props.Lay(t, "choir-blouse")
	_, out, _ := answers(t, "", "17 3/4", "", "", "", "17 5/8", "17 5/8", "quit")
	props.Says(t, out, "Ease at the bicep: 17 3/4 in.\n17 3/4 in is far from the usual ease, 2 in.\nSleeve length", "Check: Is the ease at the bicep right?\n17 3/4 in is far")
}

// A sleeve is not short because nobody said so: it is asked as what is needed, and the end
// says how it was taken.
func TestNobodySaidWhetherTheSleeveIsLong(t *testing.T) {
	t.Chdir(t.TempDir())
	_, out, _ := run("in\n13\n2\n\nseam\n12\nquit\nown\n", "ask")
	props.Says(t, out, "Sleeve length: short or long? Empty, needed; short is taken until you answer.\nHow", "Note: The sleeve is taken as short: say so if it is long.")
	props.Says(t, out, "\nown.toml.\nLengths are") // by the name that it was given just now
	if strings.Contains(out, "the usual.\nHow") || strings.Count(out, "Untitled") > 1 {
		t.Errorf("it says\n%s", out)
	}
}

// The guess at a slip is taken with one word, and only right behind it.
func TestAGuessIsTakenWithYes(t *testing.T) {
	props.Lay(t, "archive-coat")
	_, out, _ := answers(t, "365", "yes", "yes", "quit")
	props.Says(t, out, "Bicep: 365 cm.\n365 cm is not what people measure, 18 to 59.5 cm.\nDid you mean 36,5 cm? Answer yes to take that.\n", "Bicep: 36,5 cm.\nSleeve needs 5.6 cm.\n", `"yes" is not`)
	if got := props.AnswerIn(t, "sheet.toml", worksheets.Bicep); got != "36,5" {
		t.Errorf("the file has %q", got)
	}
	_, out, _ = answers(t, "36.4", "quit")
	if strings.Contains(out, "Answer yes") {
		t.Errorf("there is nothing to guess:\n%s", out)
	}
}

// What is needed is said where it is asked; what is optional is not.
func TestAskSaysWhatIsNeeded(t *testing.T) {
	t.Chdir(t.TempDir())
	_, out, _ := run("in\n\nnext\n\n40\nquit\n\n", "ask")
	props.Says(t, out, "Bicep, in inches? Empty, needed.\n", "8 questions, 1 needed.\nOther arm, in inches? Empty.\nBust, in inches? Empty, needed.\nBust: 40 in.\nHigh bust, in inches? Empty.\n")
	// The ease of a girth that was not given adds to nothing, unless it was given itself.
	_, out, _ = run("in\n13\n"+strings.Repeat("\n", 60)+"\n", "ask")
	if strings.Contains(out, "Ease at the bust") || strings.Contains(out, "Ease at the wrist") || strings.Contains(out, "Step 2") {
		t.Errorf("it is asked:\n%s", out)
	}
	os.WriteFile("own.toml", []byte("version = 1\n[about]\nunit = \"in\"\n[body]\nbicep = \"13\"\n[ease]\nwaist = \"2\"\nhip = \"\"\n"), 0o644)
	if _, out, _ = run(strings.Repeat("\n", 60), "ask", "own.toml"); !strings.Contains(out, "Ease at the waist, in inches? Now 2 in.") || strings.Contains(out, "Ease at the hip") {
		t.Errorf("it is not asked as it should be:\n%s", out)
	}
	_, out, _ = run("in\n13\n\n\nquit\n\n", "ask")
	props.Says(t, out, "How the pattern was measured: seam to seam or edge to edge? Empty, needed.")
}

// Digits that were run together are asked about, and nothing is taken before that is
// answered; with yes it is what was meant, with no it is asked again.
func TestRunTogetherIsAskedAbout(t *testing.T) {
	props.Lay(t, "choir-blouse")
	_, out, _ := answers(t, "141/2", "no", "141/2", "15", "back", "111/16", "141/2", "yes", "next", "131/4 in", "Yes", "yes", "quit")
	props.Says(t, out, "Did you mean 14 1/2 in? Answer yes, or type it again.\nBicep, in inches? Now 13 3/4 in.\nBicep, in inches? Now 13 3/4 in.\nDid you mean",
		"Bicep: 15 in.", "That can be 1 11/16 or 11 1/16. Type it again, with the space.\nBicep, in inches? Now 15 in.", "Did you mean 14 1/2 in?", "Bicep: 14 1/2 in.",
		"Did you mean 13 1/4 in?", "Other arm: 13 1/4 in.", `"yes" is not`)
	if props.AnswerIn(t, "sheet.toml", worksheets.Bicep) != "14 1/2" || props.AnswerIn(t, "sheet.toml", worksheets.BicepOther) != "13 1/4 in" {
		t.Errorf("the file is\n%s", props.Read(t, "sheet.toml"))
	}
}

// Nobody reads tenths off a tape of inches.
func TestAGuessInInchesHasNoTenth(t *testing.T) {
	props.Lay(t, "choir-blouse")
	_, out, _ := answers(t, "140", "yes", "quit")
	props.Says(t, out, "Did you mean 14 in? Answer yes to take that.", "Bicep: 14 in.\n")
}

// A doubt is said once, whatever is answered after it; a changed answer is doubted anew.
func TestADoubtIsSaidOnce(t *testing.T) {
	props.Lay(t, "archive-coat")
	const why = "is not what people measure, 18 to 59.5 cm"
	_, out, _ := answers(t, "365", "4,5", "5", "quit")
	if said, _, _ := strings.Cut(out, "\nDo not cut"); strings.Count(said, "365 cm "+why) != 1 {
		t.Errorf("it is said again:\n%s", out)
	}
	_, out, _ = answers(t, "356", "back", "375", "quit")
	props.Says(t, out, "356 cm "+why, "Did you mean 35,6 cm?", "375 cm "+why, "Did you mean 37,5 cm?")
}

// A text that a line cannot hold is not replaced by accident, and a value that
// cannot be read is asked for.
func TestAskAboutWhatIsOddInTheFile(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("sheet.toml", []byte("[about]\nnotes = \"\"\"one\ntwo\x20\\u001b[31m\"\"\"\n[body]\nbicep = \"13 x\"\n"), 0o644)
	status, out, _ := answers(t, "?", "", "next", "next", "", "", "", "", "", "three", "quit")
	props.Says(t, out, "Bicep, in inches? Now 13 x, which cannot be read; ? says why.", `"13 x" is not a length`, "Bicep,", "Notes? Now one two", "The text that is there has several lines",
		"Do not cut: body.bicep in line 5 cannot be read.", "Stop: ")
	if status != 1 || strings.Contains(out, "\x1b") || !strings.Contains(props.Read(t, "sheet.toml"), "one\ntwo") {
		t.Errorf("status %d\n%s", status, out)
	}
}

// A file that must not be written is printed, and nothing is asked.
func TestAskNothingOfAReadOnlySheet(t *testing.T) {
	t.Chdir(t.TempDir())
	source := "version = 99\n[body]\nbicep = \"13\"\n"
	os.WriteFile("sheet.toml", []byte(source), 0o644)
	status, out, _ := answers(t, "14")
	props.Says(t, out, "sheet.toml stays as it is: ", "Answers missing: ", wording.Cautions[0])
	if status != 1 || strings.Contains(out, "?") || props.Read(t, "sheet.toml") != source {
		t.Errorf("status %d\n%s", status, out)
	}
	os.WriteFile("broken.toml", []byte("[body\n"), 0o644)
	if status, out, errs := run("14\n", "ask", "broken.toml"); status != 2 || out != "" || !strings.Contains(errs, "broken.toml, line 1") {
		t.Errorf("status %d, %q, %q", status, out, errs)
	}
	if status, _, errs := run("14\n", "ask", "-"); status != 2 || !strings.Contains(errs, "has to be a file") {
		t.Errorf("status %d, %q", status, errs)
	}
}

// A file that is not there is begun once the unit is known, before anything else
// is answered.
func TestAskBeginsAFile(t *testing.T) {
	t.Chdir(t.TempDir())
	status, out, _ := run("", "ask", "smock")
	props.Says(t, out, "smock.toml does not exist yet.\nBegin it in inches or in centimetres?\nNo worksheet was made.\n")
	if left, _ := os.ReadDir("."); status != 1 || len(left) != 0 {
		t.Errorf("status %d, %v", status, left)
	}
	status, out, _ = run("\nfeet\n?\nc\n34,9\n", "ask", "smock")
	props.Says(t, out, "?\nAnswer inches (in) or centimetres (cm).\n", `"feet" is not a unit here.`, "The unit of a bare number", "Lengths in centimetres", "Bicep, in centimetres? Empty, needed.",
		"Answers missing: sleeve width.", "Saved in smock.toml.")
	if status != 1 || props.AnswerIn(t, "smock.toml", worksheets.Bicep) != "34,9" || props.AnswerIn(t, "smock.toml", worksheets.PivotLimitSleeve) != "2.5" {
		t.Errorf("status %d, the file is\n%s", status, props.Read(t, "smock.toml"))
	}
	if status, _, errs := run("c\n", "ask", "nosuch/smock"); status != 2 || !strings.Contains(errs, "there is no folder nosuch. Make it first") {
		t.Errorf("status %d, %q", status, errs)
	}
}

// Without a file, a name is asked for at the end; at the end of the answers the
// first free one is taken, and said. Where nothing was answered nothing is left.
func TestAskWithoutAFile(t *testing.T) {
	t.Chdir(t.TempDir())
	_, out, _ := run("i\nquit\n", "ask")
	if left, _ := os.ReadDir("."); len(left) != 0 || !strings.Contains(out, "Nothing was answered, so nothing is saved.") {
		t.Errorf("left %v\n%s", left, out)
	}
	_, out, _ = run("i\n13\nnext\nnext\nAllotment smock\nquit\nback\n2\nquit\n\n", "ask")
	props.Says(t, out, "New worksheet; you name it at the end.", "Bicep, in inches?",
		"File name? Enter for allotment-smock.toml.", "Armhole: alter or keep?", `"2" is not a choice.`, "Armhole:",
		"Enter for allotment-smock.toml.", "Saved in allotment-smock.toml.")
	if props.AnswerIn(t, "allotment-smock.toml", worksheets.Bicep) != "13" {
		t.Error("the answer is lost")
	}
	before := props.Read(t, "allotment-smock.toml")
	_, out, _ = run("i\n14\nnext\nnext\nAllotment smock\nquit\n?\nallotment-smock\nnosuch/a\n", "ask")
	props.Says(t, out, "Enter for allotment-smock-2.toml.", ".toml is added", "allotment-smock.toml exists already", "A name has no slash in it.",
		"Saved in allotment-smock-2.toml.")
	if props.Read(t, "allotment-smock.toml") != before || props.AnswerIn(t, "allotment-smock-2.toml", worksheets.Bicep) != "14" {
		t.Error("written over, or lost")
	}
	run("c\n30\n", "ask")
	run("c\n31\n", "ask")
	if props.AnswerIn(t, "worksheet.toml", worksheets.Bicep) != "30" || props.AnswerIn(t, "worksheet-2.toml", worksheets.Bicep) != "31" {
		t.Error("not kept under the first free name")
	}
}

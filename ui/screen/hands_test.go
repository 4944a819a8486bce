package screen

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"capscye/ui/forms"
	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// What the keys do to a field.

// What cannot be read says why, right there, and stops nobody from going on. It waits in
// its field, while the answer that was there stays, in the plan and in the file.
func TestUnreadableWaitsAndTheAnswerStays(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r.Types("13 1/2 1/2").Sees("cannot be read", `"13 1/2 1/2"`, "bicep stays 13 3/4 in")
	r.Sees("Sleeve needs 2 1/2 in")
	r.Press("tab").Sees(`"13 1/2 1/2" cannot be read: bicep stays 13 3/4 in.`, "13 1/2 1/2        cannot be read; bicep stays 13 3/4 in", "> Other arm", "[saved]")
	r.Press("f5").DoesNotSee("STOP")
	r.Press("f1", "up").Sees("[13 1/2 1/2", "Sleeve needs 2 1/2 in")
	if props.Read(t, "sheet.toml") != before {
		t.Error("the file was changed")
	}
	r.Press("esc").Sees("[13 3/4", "Bicep stays 13 3/4 in. ^z brings back what you typed.").Press("ctrl+z").Sees("[13 1/2 1/2")
	r.Types("13.75").Press("enter").Sees("  Bicep               13 3/4 in", "Sleeve needs 2 1/2 in")
	if got := props.Read(t, "sheet.toml"); got != strings.Replace(before, `"13 3/4"`, `"13.75"`, 1) {
		t.Errorf("the file is\n%s", got)
	}
}

// Tab, Enter, the arrows, a step and the end of the program all keep what was typed.
func TestNoKeyThrowsAwayWhatWasTyped(t *testing.T) {
	for _, key := range []string{"up", "down", "tab", "enter", "shift+tab", "pgdown", "ctrl+n", "f6", "ctrl+s", "ctrl+o", "ctrl+c", "ctrl+t"} {
		r := sitWithFile(t, "choir-blouse", 80, 24)
		r.Types("14 1/8").Press(key)
		d, err := worksheets.Load("sheet.toml")
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Sheet.Text(worksheets.Bicep); got != "14 1/8" && got != "14 1/8 in" {
			t.Errorf("after %s the file has %q", key, got)
		}
		if key == "ctrl+c" && !r.Ended {
			t.Error("ctrl+c did not end the program")
		}
	}
}

// The first esc brings back what was there, the next what was typed; nothing is lost
// and nothing is saved by either.
func TestEscBringsBackWhatWasThere(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r.Types("99").Sees("esc as it was").Press("esc").Sees("[13 3/4", "As it was. Esc again brings back what you typed.")
	r.Press("esc").Sees("[99", "= 99 in").Press("esc", "tab", "f2", "f1").Sees("  Bicep               13 3/4 in")
	r.Press("up").Press("delete").Sees("[               ]").Press("esc").Sees("[13 3/4").Press("end", "backspace", "esc").Sees("[13 3/4").Press("down")
	if props.Read(t, "sheet.toml") != before {
		t.Error("the file was changed")
	}
}

// Typing over a value replaces it; home and end go into it, and then the arrows move
// inside what is typed.
func TestTypingReplacesAndHomeAndEndEdit(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.Press("end", "left", "left", "left").Types("1").Sees("[13 13/4").Press("backspace").Sees("[13 3/4")
	r.Press("end").Types(" in").Sees("[13 3/4 in").Press("enter").Sees("  Bicep               13 3/4 in")
	r.Press("up").Types("15").Press("left").Types("2").Sees("[125").Press("right").Types(" ").Press("esc").Sees("[13 3/4")
}

func TestLeftAndRightNudgeByOneMark(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.Press("right").Sees("[13 7/8", "Sleeve needs 2 5/8 in").Press("left", "left").Sees("[13 5/8", "Sleeve needs 2 3/8 in")
	r.Types("13.7").Press("down", "up", "right").Sees("[13 3/4") // to the next mark, not past it
	r.Types("13.7").Press("down", "up", "left").Sees("[13 5/8")
	r.Press("tab", "tab", "tab", "tab").Sees("> Waist").Press("right").Sees("Type a length first")
	metric := sitWithExample(t, "archive-coat", 80, 24)
	metric.Press("right").Sees("[36.5").Press("left", "left").Sees("[36.3")
}

func TestChoicesGoRound(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("f4", "shift+tab")
	r.Sees("> Armhole             < alter >").Press("right").Sees("< keep >", "1 stop").Press("right").Sees("< alter >")
	r.Press("left").Sees("< keep >")
}

// A choice answers letters by its words; digits, spaces and what empties a field are
// refused aloud and change nothing.
func TestChoicesAnswerLetters(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f4", "up").Sees("> Armhole             < alter >")
	before := props.Read(t, "sheet.toml")
	for _, key := range []string{"1", " ", "0", "backspace", "delete"} {
		r.Press(key).Sees("< alter >", "Left and right choose, or a first letter: alter, keep.")
	}
	r.Press("x").Sees(`No choice begins with "x": alter, keep.`, "< alter >")
	if props.Read(t, "sheet.toml") != before {
		t.Error("the file was changed")
	}
	r.Press("k").Sees("< keep >").Types("eep").Sees("< keep >").Press("a").Sees("< alter >").Press("K").Sees("< keep >", "[saved]")
	r.Press("up").Sees("< widen to match >").Types("hold").Sees("< keep its width >").Press("up", "down").Types("let out").Sees("< widen to match >").Types("keep").Sees("< keep its width >").Press("w").Sees("< widen to match >")
	r.Press("f3")
	for !strings.Contains(r.Screen(), "> Sleeve style") {
		r.Press("down")
	}
	r.Press("g").Sees("< gathered >").Press("s").Sees("< set-in >").Press("s").Sees("< shirt >").Press("s").Sees("< set-in >")
	r.Types("h").Sees("< shirt >").Press("e").Sees(`No choice begins with "e"`, "< shirt >").Types("set").Sees("< set-in >")
	r.Tell(robot.Pasted("gath"))
	r.Sees("< gathered >").Press("f1")
	for !strings.Contains(r.Screen(), "> Unit") {
		r.Press("down")
	}
	r.Types("centimetres").Sees("< cm >").Types("inches").Sees("< in >").Press("down").Sees("> Finest ruler mark").Press("m").Sees("< 5 mm >").Press("m").Sees("< 1 mm >")
	r.Press("1").Sees("< 1 mm >", "Left and right choose: ").DoesNotSee("first letter") // all begin with digits
}

// What cannot begin an answer does not replace one, and says what could.
func TestWhatCannotBeginAnAnswerReplacesNone(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	for _, slip := range []struct{ key, says string }{
		{"d", `"d" begins no answer here; type a length, such as 13 3/4.`},
		{" ", "A space begins no answer here; type a length"},
		{"/", `"/" begins no answer here`},
		{"-", `"-" begins no answer here`}, // a girth is never below zero
	} {
		r.Press(slip.key).Sees(slip.says, "[13 3/4")
	}
	r.Tell(robot.Pasted("thirty"))
	r.Sees(`"thirty" begins no answer here`, "[13 3/4").Press("up").Sees("> Notes").Press("down", "down", "down", "down", "down").Sees("> Waist").Press("x").Sees(`"x" begins no answer`, "[               ]")
	for !strings.Contains(r.Screen(), "> Measured on") {
		r.Press("down")
	}
	r.Press("x").Sees("type a day, such as 2026-10-03")
	r.Press("f4", "x").Sees("< least >", `"x" begins no answer`).Press("down", "down", "down", "x").Sees("type a part, such as 1/2 or 55 %")
	r.Press("f3", "down", "down", "down", "down", "down", "down", "down", "down").Sees("> Edges crossed").Press("7").Sees("type 0, 1, 2, 3 or 4").Press("tab")
	if props.Read(t, "sheet.toml") != before {
		t.Errorf("the file is now\n%s", props.Read(t, "sheet.toml"))
	}
	r.Press("f2", "-").Sees("[-").Types("1/2").Press("enter").Sees("  At the bicep        -1/2 in") // ease may be less than nothing
}

// A fraction that ran together is asked about at the field. Enter takes what is meant;
// whoever goes on without it keeps the answer that was there.
func TestRunTogetherIsAskedAbout(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r.Types("141/2").Sees("[141/2", "14 1/2? enter takes it", "Until it reads, bicep stays")
	r.Press("down").Sees("141/2             cannot be read; bicep stays 13 3/4 in", "Sleeve needs 2 1/2 in")
	if props.Read(t, "sheet.toml") != before {
		t.Error("the file was changed")
	}
	r.Press("up").Sees("14 1/2? enter takes it").Press("enter").Sees("> Other arm", "  Bicep               14 1/2 in", "Bicep is now 14 1/2 in. ^z undoes that.", "Sleeve needs 3 1/4 in")
	if got := props.Read(t, "sheet.toml"); got != strings.Replace(before, `"13 3/4"`, `"14 1/2"`, 1) {
		t.Errorf("the file is\n%s", got)
	}
	r.Types("111/16").Sees("cannot be read", "can be 1 11/16 or 11 1/16: put the space in").Press("enter").Sees("other arm stays 13 1/2 in")
	r.Press("down", "down", "ctrl+t").Sees("> Waist").Types("281/2").Sees("28 1/2 cm? enter takes it").Press("enter").Sees("  Waist               28.5 cm")
}

// Up and down go from field to field, in every form and round it, and change nothing.
func TestUpAndDownGoFromFieldToField(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	for s := forms.Body; s <= forms.Split; s++ {
		r.Press(fmt.Sprintf("f%d", s+1))
		var down, up []worksheets.Key
		first, _ := rootOf(r).desk.Focused()
		for _, way := range []struct {
			key string
			met *[]worksheets.Key
		}{{"down", &down}, {"up", &up}} {
			for at := worksheets.Key(0); len(*way.met) == 0 || at != first; *way.met = append(*way.met, at) {
				r.Press(way.key)
				at, _ = rootOf(r).desk.Focused()
			}
		}
		slices.Reverse(up[:len(up)-1])
		fields := 0
		for _, it := range forms.Items[s] {
			if it.Heading == "" {
				fields++
			}
		}
		if len(down) != fields || !slices.Equal(up, down) {
			t.Errorf("step %d has %d fields; down goes to %v, up back by %v", s+1, fields, down, up)
		}
	}
	if props.Read(t, "sheet.toml") != before {
		t.Error("the file was changed")
	}
}

// Delete or backspace empty a field just reached; that is said, and can be undone.
func TestDeleteEmptiesAFieldJustReached(t *testing.T) {
	for _, key := range []string{"delete", "backspace"} {
		r := sitWithExample(t, "choir-blouse", 80, 24)
		r.Press("tab", key, "enter").Sees("  Other arm           -", "Other arm is empty now; ^z brings back 13 1/2 in.").Press("ctrl+z").Sees("  Other arm           13 1/2 in")
	}
}

// The drill keeps the same rules: what begins no length is refused, a fraction that ran
// together is asked about, and the first esc takes back what is typed.
func TestHandsInTheDrill(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+d").Press("x").Sees(`"x" begins no answer here; type a length`)
	r.Types("141/2").Press("enter").Sees("Is it 14 1/2? Enter answers that.", "[14 1/2").Press("esc").Sees("As it was.", "[         ").Types("1").Press("esc", "esc").Sees("[1 Body]")
	r.Press("ctrl+d", "backspace", "?").Types("13").Press("esc").Sees("Esc again shows the score").Press("esc").Sees("Still to do")
}

// A name that is asked for comes back with the first esc; the second goes back.
func TestEscInANameBringsBackTheSuggestion(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("ctrl+l", "right", "ctrl+x", "s").Sees("[choir-blouse-what-if.toml ").Types("x").Sees("what-if.tomlx").Press("esc")
	r.Sees("[choir-blouse-what-if.toml ", "As it was. Esc again goes back.").Press("esc").Sees("[1 Body]")
}

// A half-typed note of a fitting waits, however it is left; added, it waits no more, and
// undo brings it back to be typed on.
func TestAHalfTypedNoteWaits(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r := reopen(t, "sheet.toml").Press("f6", "n").Types("drags at the").Press("esc").Sees("[6 Trace]", "[saved]").Press("n").Sees("[drags at the ")
	crash(r)
	r = reopen(t, "sheet.toml").Sees("Typed before and not finished: the note of a fitting (step 6, n).").Press("f6", "n").Sees("[drags at the ")
	if props.Read(t, "sheet.toml") != before {
		t.Error("the file has half a note")
	}
	r.Types(" back").Press("enter", "f5", "end").Press("f6", "n").Sees("[   ").Press("esc")
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, "drags at the back") {
		t.Errorf("the file is\n%s", got)
	}
	crash(r)
	r = reopen(t, "sheet.toml").DoesNotSee("not finished").Press("f6", "n").Types("tight").Press("enter", "ctrl+z", "n").Sees("[tight").Press("esc", "ctrl+y", "n").Sees("[   ")
	r.Types("other").Press("esc", "ctrl+z", "n").Sees("[other") // what was typed since is not given up for it
}

// What is half typed in a field outlives the program too, and is back in its field.
func TestHalfTypedFieldsWait(t *testing.T) {
	sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r := reopen(t, "sheet.toml").Types("14 1/").Press("ctrl+c")
	if !r.Ended {
		t.Fatal("it did not end")
	}
	if err := rootOf(r).leave(false); err != nil {
		t.Fatal(err)
	}
	r = reopen(t, "sheet.toml").Sees(`Typed before and not finished: bicep "14 1/".`, "[14 1/", "[saved]").Press("down").Sees("14 1/             cannot be read; bicep stays 13 3/4 in")
	r.Press("ctrl+o").Types("coat").Press("enter").Sees("Work coat") // another sheet in its place
	if props.Read(t, "sheet.toml") != before {
		t.Error("the file was changed")
	}
	r = reopen(t, "sheet.toml").Sees("[14 1/").Press("end").Types("2").Press("enter").Sees("[saved]", "  Bicep               14 1/2 in")
	crash(r)
	reopen(t, "sheet.toml").DoesNotSee("not finished")
}

// A question mark asks for help wherever it can be no answer; in words it is a sign.
func TestAQuestionMarkAsksForHelp(t *testing.T) {
	r := sitWithFile(t, "archive-coat", 80, 24)
	for _, at := range [][]string{{"f1"}, {"f3"}, {"f5"}, {"f6"}} { // a length, a choice, and pages
		r.Press(at...).Press("?").Sees("any other key goes back", "Lengths: 13 3/4").Press("esc")
	}
	r.Press("f1", "up", "?").Sees("> Notes").DoesNotSee("any other key goes back")
	r.Press("esc", "down").Press("x").Sees("type a length, such as 34,9.") // the coat is in centimetres
}

package ui

import (
	"fmt"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"capscye/ui/forms"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// The six steps of the built-in example, as a person sees them, at the two
// sizes that matter most. go test ./ui -update writes them anew; look at them.
func TestStepsAsSeen(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}} {
		for s := range forms.StepCount {
			t.Run(fmt.Sprintf("%dx%d/%d-%s", size.width, size.height, s+1, forms.StepNames[s]), func(t *testing.T) {
				r := sitWithExample(t, "choir-blouse", size.width, size.height).press(fmt.Sprintf("f%d", s+1)).fits()
				golden.RequireEqual(t, r.screen()+"\n")
			})
		}
	}
}

func TestMetricSheetAndKeysAsSeen(t *testing.T) {
	t.Run("split", func(t *testing.T) {
		r := sitWithExample(t, "archive-coat", 80, 24).press("f4").fits()
		golden.RequireEqual(t, r.screen()+"\n")
	})
	t.Run("match", func(t *testing.T) {
		r := sitWithExample(t, "allotment-shirt", 80, 24).press("f5").fits()
		golden.RequireEqual(t, r.screen()+"\n")
	})
	t.Run("keys", func(t *testing.T) {
		r := sitWithExample(t, "choir-blouse", 80, 24).press("ctrl+k").fits()
		golden.RequireEqual(t, r.screen()+"\n")
	})
}

// A person types a girth: it shows how it reads, the answer waits for it to be
// kept, and then follows.
func TestTypingChangesTheAnswerWhenKept(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.sees("Sleeve needs 2 1/2 in; each side: pivot 1 in, slide 1/4 in")
	r.types("14").sees("[14", "= 14 in = ~35.6 cm", "Sleeve needs 2 1/2 in")
	r.types(" 1/4").sees("= 14 1/4 in = ~36.2 cm", "Sleeve needs 2 1/2 in")
	r.press("enter").sees("Sleeve needs 3 in; each side: pivot 1 in, slide 1/2 in", "  Bicep               14 1/4 in")
}

// What cannot be read says why, right there, and stops nobody from going on.
func TestUnreadableIsSaidAndNothingIsStopped(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.types("13 1/2 1/2").sees("cannot be read", `Cannot read "13 1/2 1/2" at character 8, '1': a second number`)
	r.sees("Sleeve needs 2 1/2 in")
	r.press("tab").sees("13 1/2 1/2        cannot be read", "> Other arm")
	r.press("f5").sees("STOP body.bicep: cannot read")
	r.press("f1", "shift+tab").sees("[13 1/2 1/2").types("13.75").press("enter").sees("  Bicep               13 3/4 in", "Sleeve needs 2 1/2 in")
}

// Esc, Tab, Enter, a step and the end of the program all keep what was typed.
func TestNoKeyThrowsAwayWhatWasTyped(t *testing.T) {
	for _, key := range []string{"esc", "tab", "enter", "shift+tab", "pgdown", "ctrl+n", "f6", "ctrl+s", "ctrl+o", "ctrl+c", "ctrl+t"} {
		r := sitWithFile(t, "choir-blouse", 80, 24)
		r.types("14 1/8").press(key)
		d, err := worksheets.Load("sheet.toml")
		if err != nil {
			t.Fatal(err)
		}
		if got := d.Sheet.Text(worksheets.Bicep); got != "14 1/8" && got != "14 1/8 in" {
			t.Errorf("after %s the file has %q", key, got)
		}
		if key == "ctrl+c" && !r.ended {
			t.Error("ctrl+c did not end the program")
		}
	}
}

// Text that arrives at once is text, also where it is the name of a key.
func TestTextThatArrivesAtOnceIsText(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	for !strings.Contains(r.screen(), "> Wearer") {
		r.press("tab")
	}
	for _, word := range []string{"tab", " left", "up", "home", "enter", "f6", "ctrl+c"} {
		r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(word)})
	}
	r.sees("> Wearer              [Odiletab leftuphomeenterf6ctrl+c")
}

// Typing over a value replaces it; the arrow keys go into it instead.
func TestTypingReplacesAndArrowsEdit(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.press("left", "left", "left").types("1").sees("[13 13/4").press("backspace").types("").sees("[13 3/4")
	r.press("end").types(" in").sees("[13 3/4 in").press("enter").sees("  Bicep               13 3/4 in")
}

func TestUpAndDownNudgeByOneMark(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.press("up").sees("[13 7/8", "Sleeve needs 2 5/8 in").press("down", "down").sees("[13 5/8", "Sleeve needs 2 3/8 in")
	r.types("13.7").press("up").sees("[13 3/4") // to the next mark, not past it
	r.types("13.7").press("down").sees("[13 5/8")
	r.press("tab", "tab", "tab", "tab").sees("> Waist").press("up").sees("Type a length first")
	metric := sitWithExample(t, "archive-coat", 80, 24)
	metric.press("up").sees("[36.5").press("down", "down").sees("[36.3")
}

// The marker is pushed mark by mark to the ends of its band and no farther.
func TestSlideIsPushedAlongItsBand(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f4")
	r.sees("> Slide               < least >", "Sleeve front    1 1/4       1     1/4   1 1/4   1 + 1/4 in")
	r.press("right").sees("< 3/8 in, chosen >", "Sleeve front    1 1/4     7/8     3/8   1 1/4   7/8 + 3/8 in")
	r.press("left").sees("< 1/4 in, chosen >").press("left").sees("The slide is at the end of its band.")
	for range 8 {
		r.press("right")
	}
	r.sees("< 1 1/4 in, chosen >", "Sleeve front    1 1/4       0   1 1/4").press("right").sees("end of its band")
	r.press("e").sees("< even >", "Sleeve front    1 1/4     5/8     5/8").press("l").sees("< least >")
	r.types("3").sees("= 3 in = ~7.6 cm").press("enter").sees("  Slide               3 in, chosen", "1 1/4   0 + 1 1/4 in")
	r.press("f5").sees("A slide of 3 in lies outside the front band and was moved to 1 1/4 in.")
}

func TestChoicesGoRound(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f4", "shift+tab")
	r.sees("> Armhole             < alter >").press("right").sees("< keep >", "1 stop").press("right").sees("< alter >")
	r.press("left").sees("< keep >").press(" ").sees("< alter >")
}

// Changing the unit changes how lengths are shown, and no amount.
func TestUnitSwitchChangesNoAmount(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := sitWithExample(t, name, 80, 24)
		before := rootOf(r).desk.rep.Plan
		r.press("ctrl+t")
		after := rootOf(r).desk.rep.Plan
		if before.Sides != after.Sides || before.Bands != after.Bands || before.Sleeve != after.Sleeve || before.Bust != after.Bust {
			t.Errorf("%s: the plan changed with the unit", name)
		}
		r.press("ctrl+t")
		if rootOf(r).desk.rep.Plan.Sides != before.Sides {
			t.Errorf("%s: the plan changed there and back", name)
		}
	}
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := read(t, "sheet.toml")
	r.press("ctrl+t")
	if read(t, "sheet.toml") != before {
		t.Error("looking at centimetres changed the file")
	}
	r.sees("centimetres, ruler 1/8 in", "Sleeve needs ~6.4 cm; each side: pivot 1 in, slide 1/4 in", "nothing measured changes")
	r.types("35").press("enter").sees("  Bicep               35.0 cm")
	if !strings.Contains(read(t, "sheet.toml"), `bicep       = "35 cm"`) {
		t.Errorf("what is typed while centimetres are shown is centimetres:\n%s", read(t, "sheet.toml"))
	}
	// The unit of the sheet is a field: then bare numbers get the one they had.
	r.press("ctrl+t", "f1")
	for !strings.Contains(r.screen(), "> Unit") {
		r.press("tab")
	}
	r.press("right").sees("centimetres, ruler 1/8 in", "Sleeve needs")
	if got := read(t, "sheet.toml"); !strings.Contains(got, `bust        = "39 1/2 in"`) || !strings.Contains(got, `unit   = "cm"`) {
		t.Errorf("the file is now\n%s", got)
	}
}

// Up and down change what is under the hands or scroll, and never move from
// field to field, where the next press would change a measurement.
func TestUpAndDownNeverLeaveTheField(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	for s := range forms.StepCount {
		r.press(fmt.Sprintf("f%d", s+1))
		for range forms.Items[s] {
			before, _ := rootOf(r).desk.focused()
			r.press("up", "down")
			if after, _ := rootOf(r).desk.focused(); after != before {
				t.Errorf("from %v to %v", before, after)
			}
			r.press("tab")
		}
	}
}

func TestDeleteEmptiesAFieldJustReached(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.press("tab", "delete", "enter").sees("  Other arm           -")
}

// A page scrolled past its end comes back at the first press.
func TestScrollingEndsWhereThePageDoes(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 60, 16).press("f5")
	top := r.screen()
	for range 50 {
		r.press("down")
	}
	bottom := r.screen()
	if r.press("up"); r.screen() == bottom {
		t.Error("up did nothing at the end of the page")
	}
	for range 50 {
		r.press("up")
	}
	if r.screen() != top {
		t.Errorf("not back at the top:\n%s", r.screen())
	}
}

func TestPageOfKeysScrollsInASmallWindow(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 60, 16).press("ctrl+k").fits().sees("any other key goes back")
	for range 30 {
		r.press("down").fits()
	}
	r.sees("~ stands before").press("x").sees("1 BODY")
}

// The working opens at the figure at hand, in the words of the sheet, and every
// line of it is one that show --working prints.
func TestWorkingOfTheFigureAtHand(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("ctrl+r").fits()
	r.sees("> sleeve larger arm", "      = the largest of bicep 13 3/4 and other arm 13 1/2 = 13 3/4 in").press("x").sees("1 BODY")
	r.press("f2", "tab", "ctrl+r").sees("> bust need", "= bust 39 1/2 + ease at the bust 3 - bust flat width 40 = 2 1/2 in").press("esc")
	r.press("f4", "ctrl+r").sees("> front slide").press("esc", "f5", "ctrl+r").sees("> bust finished").press("esc")
	r.press("f6", "down", "ctrl+r").sees("> sleeve front slide to mark", "= front slide 1/4, to the nearest mark of 1/8 in = 1/4 in").press("home").sees("any other key goes back")

	_, printed, _ := run("", "show", "--working", example("choir-blouse"))
	for range 30 {
		for _, line := range strings.Split(r.fits().screen(), "\n")[1:] {
			if line = strings.TrimSpace(strings.TrimPrefix(line, ">")); !strings.Contains(printed, line) {
				t.Errorf("%q is not what is printed", line)
			}
		}
		r.press("pgdown")
	}
	r.sees("bodice back side seam, change")
	r.press("esc", "home", "down", "down", "down").sees("Turn: sleeve").press("ctrl+r").sees("> sleeve front pin to underarm seam line", "> sleeve front turn")
	sitWithExample(t, "choir-blouse", 40, 10).press("ctrl+r").fits().sees("> sleeve larger arm")
	sitWithExample(t, "choir-blouse", 80, 24).press("f3", "delete", "enter", "ctrl+r").fits().sees("Working")
}

// What is asked and lacks an answer leaves both pieces open, on every page.
func TestOpenAnswersAreSaidAndNothingIsPlanned(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f3", "delete", "enter")
	r.sees("Sleeve: an answer is missing", "Nothing is planned until every answer is there").press("f6")
	r.sees("Do not cut yet:", "the sleeve width is missing").doesNotSee("stays as it is").press("f4").sees("not known yet")
	r = sitWithExample(t, "choir-blouse", 80, 24).types("14 3/").press("tab", "f6")
	r.sees("Do not cut yet:", "an answer cannot be read").doesNotSee("not asked")
}

// A kept armhole is never told to change.
func TestKeptArmholeStays(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 120, 40).press("f4", "shift+tab", "right", "f5")
	r.sees("The armhole is kept", "the armhole stays as it is.").doesNotSee("so must the armhole")
}

// An unreadable slide is the least one and a finding, not a slide of nothing.
func TestUnreadableSlide(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f4").types("1/e").press("enter", "f5")
	r.sees("STOP", "method.slide").doesNotSee("A slide of 0")
}

func TestEaseShowsTheUsualRange(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).press("f2", "tab")
	r.sees("> At the bust         [3", "NMSU Guide C-228", "At the waist        -                 usual 3/4 to 1 in")
}

func TestPasteWithALineBreakIsNotALength(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("36\n1/2"), Paste: true})
	r.sees("A pasted text with a line break is not taken", "[13 3/4")
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("14 1/2"), Paste: true})
	r.press("enter").sees("  Bicep               14 1/2 in")
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(strings.Repeat("7", 1_000_000)), Paste: true})
	r.fits()
}

// A key with alt is no letter, and a letter is no command in a field.
func TestAltIsNotTyped(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("a"), Alt: true})
	r.sees("[13 3/4")
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("4"), Alt: true})
	r.sees("4 SPLIT")
}

func TestSmallWindowAsksForRoomAndKeepsEverything(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).types("14")
	r.tell(tea.WindowSizeMsg{Width: 40, Height: 10})
	r.sees("This window has 40 x 10 cells").fits()
	r.tell(tea.WindowSizeMsg{Width: 80, Height: 24})
	r.sees("[14")
}

// Every step in every window that is large enough shows the field under the
// hands, and in every window at all nothing sticks out.
func TestEveryWindow(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := sitWithExample(t, name, 80, 24)
		for _, size := range []struct{ w, h int }{{1, 1}, {3, 2}, {59, 30}, {60, 16}, {61, 17}, {80, 24}, {99, 40}, {100, 16}, {120, 40}, {500, 200}} {
			r.tell(tea.WindowSizeMsg{Width: size.w, Height: size.h})
			for s := range forms.StepCount {
				r.press(fmt.Sprintf("f%d", s+1))
				for range max(len(forms.Items[s]), 1) {
					r.fits()
					if k, ok := rootOf(r).desk.focused(); ok && size.w >= smallestWidth && size.h >= smallestHeight {
						r.sees("> " + forms.Fields[k].Label)
					}
					r.press("tab")
				}
			}
		}
	}
}

func TestLabelsFitTheirColumn(t *testing.T) {
	for s := range forms.StepCount {
		for _, it := range forms.Items[s] {
			if it.Heading != "" {
				continue
			}
			f, ok := forms.Fields[it.Key]
			if !ok || f.Label == "" || f.Words == "" || f.Hint == "" || len([]rune(f.Label)) >= labelWidth {
				t.Errorf("%v: field %+v", it.Key, f)
			}
		}
	}
}

// Without colour, what is under the hands is still reversed and bold.
func TestNoColourKeepsTheCursor(t *testing.T) {
	st := newStyles(os.Stdout, termenv.ANSI, false)
	if got := st.here.Render("x"); got != "\x1b[7mx\x1b[0m" {
		t.Errorf("%q", got)
	}
	coloured := newStyles(os.Stdout, termenv.ANSI, true)
	if got := coloured.stop.Render("x"); got != "\x1b[1;31mx\x1b[0m" {
		t.Errorf("%q", got)
	}
}

// Text from a file is shown, never obeyed, under the hands and elsewhere; and
// looking at it changes no file.
func TestHostileTextIsShown(t *testing.T) {
	t.Chdir(t.TempDir())
	source := "version = 1\n[about]\ntitle = \"a\\u001b]0;own\\u0007b\\u202Ec\\u009Bd\\u200Be\"\nwearer = \"x\\u001b[2J\"\n[body]\nbicep = \"1\\u001b[31m\"\n"
	d, err := worksheets.Decode("evil\x1b[2J.toml", []byte(source))
	if err != nil {
		t.Fatal(err)
	}
	r := sit(t, d, 80, 24)
	for s := range forms.StepCount {
		r.press(fmt.Sprintf("f%d", s+1))
		for range max(len(forms.Items[s]), 1) {
			for _, c := range r.fits().model.View() {
				if c != '\n' && typeset.Unprintable(c) {
					t.Fatalf("step %d shows %U raw", s+1, c)
				}
			}
			r.press("tab")
		}
	}
	r.press("f1").sees(`a\x1b]0;own`)
	if left, _ := os.ReadDir("."); len(left) != 0 {
		t.Errorf("looking left %v behind", left)
	}
}

// One whole frame, pictures and all.
func BenchmarkFrame(b *testing.B) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}} {
		b.Run(fmt.Sprintf("%dx%d", size.width, size.height), func(b *testing.B) {
			d, err := worksheets.Example("choir-blouse")
			if err != nil {
				b.Fatal(err)
			}
			m := &root{styles: newStyles(os.Stdout, termenv.ANSI, true), today: someDay}
			m.opened(openedMsg{doc: d})
			m.resize(size.width, size.height)
			for b.Loop() {
				m.View()
			}
		})
	}
}

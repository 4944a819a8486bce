package screen

import (
	"fmt"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/exp/golden"
	"github.com/muesli/termenv"

	"capscye/ui/forms"
	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/ui/parts"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// The six steps of the built-in example, as a person sees them, at the two
// sizes that matter most. go test ./ui/screen -update writes them anew; look at them.
func TestStepsAsSeen(t *testing.T) {
	for _, size := range []struct{ width, height int }{{80, 24}, {120, 40}} {
		for s := range forms.StepCount {
			t.Run(fmt.Sprintf("%dx%d/%d-%s", size.width, size.height, s+1, forms.StepNames[s]), func(t *testing.T) {
				r := lookAt(t, "choir-blouse", size.width, size.height).Press(fmt.Sprintf("f%d", s+1)).Fits()
				golden.RequireEqual(t, r.Screen()+"\n")
			})
		}
	}
}

func TestMetricSheetAndKeysAsSeen(t *testing.T) {
	t.Run("split", func(t *testing.T) {
		r := lookAt(t, "archive-coat", 80, 24).Press("f4").Fits()
		golden.RequireEqual(t, r.Screen()+"\n")
	})
	t.Run("match", func(t *testing.T) {
		r := lookAt(t, "allotment-shirt", 80, 24).Press("f5").Fits()
		golden.RequireEqual(t, r.Screen()+"\n")
	})
	t.Run("keys", func(t *testing.T) {
		r := lookAt(t, "choir-blouse", 80, 24).Press("ctrl+k").Fits()
		golden.RequireEqual(t, r.Screen()+"\n")
	})
}

// A person types a girth: it shows how it reads, the answer waits for it to be
// kept, and then follows.
func TestTypingChangesTheAnswerWhenKept(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.Sees("Sleeve needs 2 1/2 in; each side: pivot 1 in, slide 1/4 in")
	r.Types("14").Sees("[14", "= 14 in = ~35.6 cm", "Sleeve needs 2 1/2 in")
	r.Types(" 1/4").Sees("= 14 1/4 in = ~36.2 cm", "Sleeve needs 2 1/2 in")
	r.Press("enter").Sees("Sleeve needs 3 in; each side: pivot 1 in, slide 1/2 in", "  Bicep               14 1/4 in")
}

// Text that arrives at once is text, also where it is the name of a key.
func TestTextThatArrivesAtOnceIsText(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	for !strings.Contains(r.Screen(), "> Wearer") {
		r.Press("tab")
	}
	for _, word := range []string{"tab", " left", "up", "home", "enter", "f6", "ctrl+c"} {
		r.Tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(word)})
	}
	r.Sees("> Wearer              [Odiletab leftuphomeenterf6ctrl+c")
}

// The marker is pushed mark by mark to the ends of its band and no farther.
func TestSlideIsPushedAlongItsBand(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("f4")
	r.Sees("> Slide               < least >", "Sleeve front    1 1/4       1     1/4   1 1/4   1 + 1/4 in")
	r.Press("right").Sees("< 3/8 in >", "Sleeve front    1 1/4     7/8     3/8   1 1/4   7/8 + 3/8 in")
	r.Press("left").Sees("< 1/4 in >").Press("left").Sees("That is as far as the slide can go.")
	for range 8 {
		r.Press("right")
	}
	r.Sees("< 1 1/4 in >", "Sleeve front    1 1/4       0   1 1/4").Press("right").Sees("as far as the slide can go")
	r.Press("e").Sees("< even >", "Sleeve front    1 1/4     5/8     5/8").Press("l").Sees("< least >")
	r.Types("3").Sees("= 3 in = ~7.6 cm").Press("enter").Sees("  Slide               3 in", "1 1/4   0 + 1 1/4 in")
	r.Press("f5").Sees("A slide of 3 in is outside the front range, so it was moved to 1 1/4 in.")
}

// Changing the unit changes how lengths are shown, and no amount.
func TestUnitSwitchChangesNoAmount(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := sitWithExample(t, name, 80, 24)
		before := rootOf(r).desk.Rep.Plan
		r.Press("ctrl+t")
		after := rootOf(r).desk.Rep.Plan
		if before.Sides != after.Sides || before.Bands != after.Bands || before.Sleeve != after.Sleeve || before.Bust != after.Bust {
			t.Errorf("%s: the plan changed with the unit", name)
		}
		r.Press("ctrl+t")
		if rootOf(r).desk.Rep.Plan.Sides != before.Sides {
			t.Errorf("%s: the plan changed there and back", name)
		}
	}
	r := sitWithFile(t, "choir-blouse", 80, 24)
	before := props.Read(t, "sheet.toml")
	r.Press("ctrl+t")
	if props.Read(t, "sheet.toml") != before {
		t.Error("looking at centimetres changed the file")
	}
	r.Sees("centimetres, ruler 1/8 in", "Sleeve needs ~6.4 cm; each side: pivot 1 in, slide 1/4 in", "nothing measured changes")
	r.Types("35").Press("enter").Sees("  Bicep               35.0 cm")
	if !strings.Contains(props.Read(t, "sheet.toml"), `bicep       = "35 cm"`) {
		t.Errorf("what is typed while centimetres are shown is centimetres:\n%s", props.Read(t, "sheet.toml"))
	}
	// The unit of the sheet is a field: then bare numbers get the one they had.
	r.Press("ctrl+t", "f1")
	for !strings.Contains(r.Screen(), "> Unit") {
		r.Press("tab")
	}
	r.Press("right").Sees("centimetres, ruler 1/8 in", "Sleeve needs")
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, `bust        = "39 1/2 in"`) || !strings.Contains(got, `unit   = "cm"`) {
		t.Errorf("the file is now\n%s", got)
	}
}

// A page scrolled past its end comes back at the first press.
func TestScrollingEndsWhereThePageDoes(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 60, 16).Press("f5")
	top := r.Screen()
	for range 50 {
		r.Press("down")
	}
	bottom := r.Screen()
	if r.Press("up"); r.Screen() == bottom {
		t.Error("up did nothing at the end of the page")
	}
	for range 50 {
		r.Press("up")
	}
	if r.Screen() != top {
		t.Errorf("not back at the top:\n%s", r.Screen())
	}
}

func TestPageOfKeysScrollsInASmallWindow(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 60, 16).Press("ctrl+k").Fits().Sees("any other key goes back")
	for range 30 {
		r.Press("down").Fits()
	}
	r.Sees("~ before a length").Press("x").Sees("[1 Body]")
}

// The working opens at the figure at hand, in the words of the sheet, and every
// line of it is one that show --working prints.
func TestWorkingOfTheFigureAtHand(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("ctrl+r").Fits()
	r.Sees("> sleeve larger arm", "      = the larger of bicep 13 3/4 and other arm 13 1/2 = 13 3/4 in").Press("x").Sees("[1 Body]")
	r.Press("f2", "tab", "ctrl+r").Sees("> bust need", "= bust 39 1/2 + ease at the bust 3 - bust flat width 40 = 2 1/2 in").Press("esc")
	r.Press("f4", "ctrl+r").Sees("> front slide").Press("esc", "f5", "ctrl+r").Sees("> bust finished").Press("esc")
	r.Press("f6", "down", "ctrl+r").Sees("> sleeve front slide to mark", "= front slide 1/4, to the nearest mark of 1/8 in = 1/4 in").Press("home").Sees("any other key goes back")

	_, printed, _ := run("", "show", "--working", props.Example("choir-blouse"))
	for range 30 {
		for _, line := range strings.Split(r.Fits().Screen(), "\n")[1:] {
			if line = strings.TrimSpace(strings.TrimPrefix(line, ">")); !strings.Contains(printed, line) && !strings.HasSuffix(line, " lines more below") {
				t.Errorf("%q is not what is printed", line)
			}
		}
		r.Press("pgdown")
	}
	r.Sees("bodice back side seam, change")
	r.Press("esc", "home", "down", "down", "down").Sees("Pivot: sleeve").Press("ctrl+r").Sees("> sleeve front pin to underarm seam line", "> sleeve front turn")
	sitWithExample(t, "choir-blouse", 40, 10).Press("ctrl+r").Fits().Sees("> sleeve larger arm")
	sitWithExample(t, "choir-blouse", 80, 24).Press("f3", "delete", "enter", "ctrl+r").Fits().Sees("Working")
}

// What is asked and lacks an answer leaves both pieces open, on every page.
func TestOpenAnswersAreSaidAndNothingIsPlanned(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("f3", "tab", "tab", "tab", "delete", "enter")
	r.Sees("Answers missing: sleeve width.", "Sleeve: an answer is missing", "No amounts yet").Press("f6")
	r.Sees("Do not cut yet:", "The sleeve width is missing").DoesNotSee("stays as it is").Press("f4").Sees("not known yet")
	sitWithFile(t, "choir-blouse", 80, 24) // nothing that cannot be read gets into a file from here, but by an editor
	os.WriteFile("sheet.toml", []byte(strings.Replace(props.Read(t, "sheet.toml"), `"13 3/4"`, `"14 3/"`, 1)), 0o644)
	r = reopen(t, "sheet.toml").Sees("[14 3/").Press("f6")
	r.Sees("Do not cut yet:", "an answer cannot be read").DoesNotSee("not asked")
}

// A kept armhole is never told to change.
func TestKeptArmholeStays(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 120, 40).Press("f4", "shift+tab", "right", "f5")
	r.Sees("The armhole is kept", "the armhole stays as it is.").DoesNotSee("so must the armhole")
}

// An unreadable slide waits, and the slide stays; from a file it is the least one and a
// finding, not a slide of nothing.
func TestUnreadableSlide(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("f4").Types("1/e").Press("enter")
	r.Sees("1/e               cannot be read; slide stays least").Press("up").Sees("[1/e").Press("esc").Sees("< least >")
	sitWithFile(t, "choir-blouse", 80, 24)
	os.WriteFile("sheet.toml", []byte(strings.Replace(props.Read(t, "sheet.toml"), `"least"`, `"1/e"`, 1)), 0o644)
	reopen(t, "sheet.toml").Press("f5").Sees("STOP", "method.slide").DoesNotSee("A slide of 0")
}

func TestEaseShowsTheUsualRange(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Press("f2", "tab")
	r.Sees("> At the bust         [3", "Usual 1 1/2", "At the waist        - optional        usual 3/4 to 1 in").DoesNotSee("NMSU")
	r.Press("ctrl+e").Sees("> ease:", "NMSU Guide C-228, table 1: 3 to 4 in.") // who says so, on asking
	sitWithExample(t, "archive-coat", 80, 24).Press("f2").Sees("At the bust         10.0 cm           usual 4 to 10 cm")
}

func TestPasteWithALineBreakIsNotALength(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.Tell(robot.Pasted("36\n1/2"))
	r.Sees("The paste has a line break", "[13 3/4")
	r.Tell(robot.Pasted("14 1/2"))
	r.Press("enter").Sees("  Bicep               14 1/2 in")
	r.Tell(robot.Pasted(strings.Repeat("7", 1_000_000)))
	r.Fits()
}

// A key with alt is no letter, and a letter is no command in a field.
func TestAltIsNotTyped(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24)
	r.Tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("a"), Alt: true})
	r.Sees("[13 3/4")
	r.Tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("4"), Alt: true})
	r.Sees("[4 Split]")
}

func TestSmallWindowAsksForRoomAndKeepsEverything(t *testing.T) {
	r := sitWithExample(t, "choir-blouse", 80, 24).Types("14")
	r.Tell(tea.WindowSizeMsg{Width: 40, Height: 10})
	r.Sees("This window has 40 x 10 cells").Fits()
	r.Tell(tea.WindowSizeMsg{Width: 80, Height: 24})
	r.Sees("[14")
}

// Every step in every window that is large enough shows the field under the
// hands, and in every window at all nothing sticks out.
func TestEveryWindow(t *testing.T) {
	for _, name := range worksheets.Examples() {
		r := sitWithExample(t, name, 80, 24)
		for _, size := range []struct{ w, h int }{{1, 1}, {3, 2}, {59, 30}, {60, 16}, {61, 17}, {80, 24}, {99, 40}, {100, 16}, {120, 40}, {500, 200}} {
			r.Tell(tea.WindowSizeMsg{Width: size.w, Height: size.h})
			for s := range forms.StepCount {
				r.Press(fmt.Sprintf("f%d", s+1))
				for range max(len(forms.Items[s]), 1) {
					r.Fits()
					if k, ok := rootOf(r).desk.Focused(); ok && size.w >= parts.SmallestWidth && size.h >= parts.SmallestHeight {
						r.Sees("> " + forms.Fields[k].Label)
					}
					r.Press("tab")
				}
			}
		}
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
		r.Press(fmt.Sprintf("f%d", s+1))
		for range max(len(forms.Items[s]), 1) {
			for _, c := range r.Fits().Model.View() {
				if c != '\n' && typeset.Unprintable(c) {
					t.Fatalf("step %d shows %U raw", s+1, c)
				}
			}
			r.Press("tab")
		}
	}
	r.Press("f1").Sees(`a\x1b]0;own`)
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
			m := &root{styles: parts.NewStyles(os.Stdout, termenv.ANSI, true), today: props.SomeDay}
			m.opened(openedMsg{doc: d})
			m.resize(size.width, size.height)
			for b.Loop() {
				m.View()
			}
		})
	}
}

// In a new worksheet the hands land on what amounts wait for, marked in words; what
// cannot matter says why, is passed over by enter, and can be reached all the same. The
// bodice shows what it takes from the sleeve.
func TestTheHandsLandOnWhatIsNeeded(t *testing.T) {
	t.Chdir(t.TempDir())
	r := sit(t, nil, 80, 24)
	rootOf(r).front = rootOf(r).askBegin("smock.toml")
	r.Press("i", "enter").Sees("> Bicep", "Bust                - needed", "Other arm           - optional")
	r.Types("13 3/4").Press("enter").Sees("Bust                - optional", "Elbow               - optional") // nobody has said that the sleeve is short
	r.Press("f3").Sees("> Sleeve length       < choose: short or long >", "Measured            - needed", "Sleeve width        - needed", "Front width         - optional")
	r.Press("right", "enter").Sees("Sleeve length       short", "> Measured            < choose: seam to seam or edge to edge >").Press("s", "enter")
	r.Sees("Seam allowance      -                 comes off only edge to edge", "> Sleeve width        [               ] needed").Types("13").Press("enter")
	r.Sees("Sleeve needs 2 3/4 in", "Measured            seam to seam      as above") // 13 3/4 + 2 - 13
	r.Press("f1").Sees("Elbow               -                 not for a short sleeve").Press("f3").Sees("> Front width")
	r.Press("up", "up").Sees("> Seam allowance      [").Types("5/8").Press("f1").Types("39").Press("up", "up")
	r.Press("f3").Sees("Seam allowance      5/8 in            comes off only edge to edge")
}

// What was told by mistake can be taken back: the bodice is as the sleeve again.
func TestTheBodiceIsAsTheSleeveAgain(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f3", "down", "down", "down", "down", "down", "down").Sees("> Measured            < seam to seam >")
	r.Press("e").Sees("> Measured            < edge to edge >").Press("backspace").Sees("< seam to seam > as above", "[saved]")
	if got := props.Read(t, "sheet.toml"); !strings.Contains(got, `measured          = ""`) {
		t.Errorf("the file is\n%s", got)
	}
	r.Press("1").Sees("Left and right choose, or a first letter").Press("e").Sees("< edge to edge >")
}

package screen

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"capscye/ui/forms"
	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// newcomer sits down in an empty folder, and counts keys.
type newcomer struct {
	*robot.Robot
	keys int
}

func sitDownNew(t *testing.T, width, height int) *newcomer {
	t.Helper()
	t.Chdir(t.TempDir())
	r := sit(t, nil, width, height)
	openFolder(rootOf(r))
	return &newcomer{Robot: r}
}

func (n *newcomer) press(keys ...string) *newcomer {
	n.keys += len(keys)
	n.Press(keys...)
	return n
}

// types types a text, each letter a key.
func (n *newcomer) types(text string) *newcomer {
	n.keys += len(text)
	n.Types(text)
	return n
}

// Whoever presses a key that answers nothing is told which keys do.
func TestAKeyThatAnswersNothingIsToldWhichDo(t *testing.T) {
	n := sitDownNew(t, 80, 24)
	n.Sees("Work out how to widen a sleeve and a bodice").Press("?").Sees("Press b, l or o.").Press("q").Sees("Press b, l or o.")
	n.Press("b").Types("smock")
	n.Press("enter", "enter").Sees("Press i, c or esc.").Press("i").Sees("Title")
}

// The first screen of an empty folder is three lines, the hands on the first; four keys
// and a name begin a worksheet, the hands on the bicep.
func TestAWorksheetIsBegunInFourKeys(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 40}, {60, 16}} {
		n := sitDownNew(t, size[0], size[1])
		n.Sees("> b  Begin your own worksheet", "l  Look at a worked example", "o  Open a worksheet from another folder").Fits()
		n.press("enter").Types("smock")
		n.press("enter").DoesNotSee("another worksheet") // there is none
		n.press("i", "enter").Fits().Sees("smock.toml", "inches, ruler 1/8 in  [saved]", "> Bicep")
		if n.keys != 4 {
			t.Errorf("%d keys", n.keys)
		}
		if _, err := worksheets.Load("smock.toml"); err != nil {
			t.Error(err)
		}
	}
}

// A title is taken; the list of examples and a worksheet elsewhere are a key or two away,
// and Esc goes back to the three lines.
func TestTheThreeLines(t *testing.T) {
	n := sitDownNew(t, 80, 24)
	n.Press("down", "up", "b", "esc").Sees("> b  Begin").Press("tab", "enter").Sees("Choir blouse, for Odile")
	n = sitDownNew(t, 80, 24)
	n.Press("b").Types("smock").Press("enter", "c").Types("Garden smock").Press("enter").Sees("Garden smock  ", "centimetres, ruler 1 mm  [saved]")
	path := props.Example("archive-coat")
	n = sitDownNew(t, 80, 24)
	n.Press("o").Types("nosuch").Press("enter").Sees("nosuch.toml: there is no such file").Press("ctrl+u")
	n.Types(strings.TrimSuffix(path, ".toml")).Press("enter").Sees("Work coat for the archive")
}

// Names that cannot be, each with one sentence that has an example.
func TestNamesThatAreNone(t *testing.T) {
	n := sitDownNew(t, 80, 24)
	n.Press("b")
	for name, says := range map[string]string{
		"": "Type a name, such as blouse.", "   ": "Type a name, such as blouse.", " .toml": "Type a name, such as blouse.",
		"nosuch/x": "A name has no slash in it. Type one such as blouse.", "/": "A name has no slash in it. Type one such as blouse.",
		".smock": "A name that begins with a dot is hidden. Type one such as blouse.",
	} {
		n.Types(name).Press("enter").Sees(says, "What is your worksheet called?").Press("ctrl+u")
	}
	n.Types(" smock  ").Press("enter", "i", "enter").Sees("[saved]")
	n.Press("ctrl+o").Types("begin").Press("enter").Types("coat .toml").Press("enter", "i", "enter").Sees("[saved]")
	for _, name := range []string{"smock.toml", "coat.toml"} {
		if _, err := os.Stat(name); err != nil {
			t.Error(err)
		}
	}
	for name, says := range map[string]string{
		"": "a worksheet needs a name, such as blouse.toml", "blouse ": `"blouse " begins or ends with a space. Write it like blouse.toml`,
		"nosuch/blouse": "there is no folder nosuch. Make it first, or write a name like blouse.toml",
	} {
		if status, _, errs := run("", "ask", name); status != 2 || !strings.Contains(errs, says) {
			t.Errorf("%q: status %d, %q", name, status, errs)
		}
	}
}

// From an empty folder to the first answer of one's own, without having read anything:
// what is asked is answered, and Enter goes on. Counted are all keys but the letters of
// the worksheet's name, until both the amounts of a sleeve side are shown: its bicep, its
// width, and between what that was measured.
func TestTheFirstAnswerOfOnesOwn(t *testing.T) {
	n := sitDownNew(t, 80, 24)
	n.press("enter").Types("smock")
	n.press("enter", "i", "enter").types("13.75").press("pgdown", "pgdown")
	for range 6 { // whatever is needed first
		k, ok := rootOf(n.Robot).desk.Focused()
		switch {
		case !ok:
			t.Fatal(n.Screen())
		case k == worksheets.SleeveWidth:
			n.types("13")
		case forms.KindOf(k) == forms.ChoiceField && k == worksheets.SleeveMeasured:
			n.types("s")
		}
		if n.press("enter"); strings.Contains(n.Screen(), "pivot 1 in, slide") {
			break
		}
	}
	if n.Sees("each side: pivot 1 in, slide"); n.keys > 25 {
		t.Errorf("%d keys", n.keys)
	}
	t.Log(fmt.Sprint(n.keys, " keys"))
}

// Nobody takes from worksheets that are not there.
func TestAWorksheetThatIsNamedTakesOnlyFromThoseThatAreThere(t *testing.T) {
	n := sitDownNew(t, 80, 24)
	rootOf(n.Robot).front = rootOf(n.Robot).askBegin("neu.toml")
	n.Sees("begin it in inches").DoesNotSee("another worksheet").Press("b").Sees("Press i, c or esc.")
	os.WriteFile("broken.toml", []byte("[body\n"), 0o644)
	rootOf(n.Robot).front = rootOf(n.Robot).askBegin("neu.toml")
	n.DoesNotSee("another worksheet")
	props.LayAt(t, "blouse.toml", "choir-blouse")
	rootOf(n.Robot).front = rootOf(n.Robot).askBegin("neu.toml")
	n.Sees("begin it with the body of another worksheet here", "begin it with the pattern of another worksheet here")
}

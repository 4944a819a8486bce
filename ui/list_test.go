package ui

import (
	"fmt"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// class writes sheets of a class into a folder of their own and sits down there.
func class(t *testing.T, width, height int) *robot {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"ada.toml": "[about]\ntitle = \"Smock\"\nwearer = \"Jakob Adamek\"\n[body]\nbicep = \"13\"\n[ease]\nbicep = \"2\"\n[sleeve]\nwidth = \"14\"\n",
		"ben.toml": "[about]\ntitle = \"Choir robe\"\nwearer = \"Kjell\"\n[body]\nbicep = \"20\"\n[ease]\nbicep = \"2\"\n[sleeve]\nwidth = \"12\"\n[method]\narmhole = \"keep\"\n",
		"cut.toml": "[body\n",
	} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	r := sit(t, nil, width, height)
	rows, err := rosterRows(".", someDay)
	r.tell(listedMsg{found: rows, err: err})
	return r
}

// The list says of each sheet what it needs and how grave its findings are: 13 +
// 2 - 14 is 1 in, 20 + 2 - 12 is 10 in and more than a sleeve can take.
func TestListShowsNeedsAndFindings(t *testing.T) {
	r := class(t, 80, 24)
	r.sees("> ada.toml                note         1        - in  Jakob Adamek, Smock",
		"  ben.toml                stop        10        - in  Kjell, Choir robe",
		"  cut.toml                cannot be read: line 1").fits()
	class(t, 60, 16).sees("ada.toml", "note         1        - in", "stop        10").fits()
	class(t, 120, 40).sees("Jakob Adamek, Smock", rosterDayOf(t, "ada.toml")).fits()
}

func rosterDayOf(t *testing.T, name string) string {
	t.Helper()
	row, _, ok := rosterRowOf(name, someDay)
	if !ok {
		t.Fatal(name)
	}
	return row.day()
}

// Letters find, those that move elsewhere too; arrows move.
func TestListFindsByTyping(t *testing.T) {
	r := class(t, 80, 24)
	r.press("down").sees("> ben.toml").press("up").sees("> ada.toml")
	r.press("j").sees("Find: j", "> ada.toml", "ben.toml").press("a").sees("Find: ja", "> ada.toml").doesNotSee("ben.toml")
	r.press("backspace", "backspace").types("kj").sees("> ben.toml").doesNotSee("ada.toml").doesNotSee("Begin")
	r.press("down", "up").sees("> ben.toml").press("esc").sees("> ada.toml", "cut.toml", "Begin a new worksheet", "Type to find")
	r.types("ROBE choir").sees("> ben.toml").doesNotSee("Example").press("esc").types("choir").sees("> ben.toml", "  Example: choir-blouse")
	r.types("nobody").sees("no row has that").press("enter", "down", "up", "end", "home").fits().sees("no row has that")
	r.press("esc").types("kj").press("enter").sees("Choir robe, for Kjell", "1 BODY")
}

// Esc takes back what is typed before it goes back to the sheet, and what is
// pasted stays a line.
func TestListEscAndPaste(t *testing.T) {
	r := class(t, 80, 24).press("enter").sees("1 BODY").press("ctrl+o").types("ben").press("esc").sees("Worksheets of this folder", "ada.toml")
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("\x1b[2Jben\nx"), Paste: true})
	r.sees("Find: \\x1b[2Jben x").fits().press("esc")
	r.tell(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(strings.Repeat("w", 100_000)), Paste: true})
	r.sees("> ada.toml").fits().press("esc").sees("1 BODY")
}

// A folder of many is drawn only where it is seen.
func TestListOfManyScrolls(t *testing.T) {
	var rows []rosterRow
	for i := range 5000 {
		rows = append(rows, rosterRow{path: fmt.Sprintf("s%04d.toml", i), needs: [2]string{"1", "-"}, unit: "in"})
	}
	r := sit(t, nil, 80, 24)
	r.tell(listedMsg{found: rows})
	r.sees("> s0000.toml", "s0019.toml").doesNotSee("s0020").press("end").sees("> Drill").press("home").sees("> s0000.toml").fits()
	r.types("s4711").sees("> s4711.toml").doesNotSee("s4712")
}

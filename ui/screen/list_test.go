package screen

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/internal/robot"
	"capscye/ui/report"
	"capscye/ui/roster"
)

// class writes sheets of a class into a folder of their own and sits down there.
func class(t *testing.T, width, height int) *robot.Robot {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"ada.toml": "[about]\ntitle = \"Smock\"\nwearer = \"Jakob Adamek\"\n[body]\nbicep = \"13\"\n[ease]\nbicep = \"2\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"14\"\n",
		"ben.toml": "[about]\ntitle = \"Choir robe\"\nwearer = \"Kjell\"\n[body]\nbicep = \"20\"\n[ease]\nbicep = \"2\"\n[sleeve]\nmeasured = \"seam\"\nwidth = \"12\"\n[method]\narmhole = \"keep\"\n",
		"cut.toml": "[body\n",
	} {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	r := sit(t, nil, width, height)
	rows, err := roster.Rows(".", props.SomeDay)
	r.Tell(listedMsg{found: rows, err: err})
	return r
}

// The list says of each sheet what it needs and how grave its findings are: 13 +
// 2 - 14 is 1 in, 20 + 2 - 12 is 10 in and more than a sleeve can take.
func TestListShowsNeedsAndFindings(t *testing.T) {
	r := class(t, 80, 24)
	r.Sees("> ada.toml                ready                1        - in  Jakob Adamek, S...",
		"  ben.toml                stop                10        - in  Kjell, Choir robe",
		"  cut.toml                unreadable    line 1").Fits()
	class(t, 60, 16).Sees("ada.toml", "ready                1        - in", "stop                10").Fits()
	class(t, 120, 40).Sees("Jakob Adamek, Smock", rosterDayOf(t, "ada.toml")).Fits()
}

func rosterDayOf(t *testing.T, name string) string {
	t.Helper()
	row, _, ok := roster.RowOf(name, report.Reckoner{Today: props.SomeDay})
	if !ok {
		t.Fatal(name)
	}
	return row.Day()
}

// Letters find, those that move elsewhere too; arrows move.
func TestListFindsByTyping(t *testing.T) {
	r := class(t, 80, 24)
	r.Press("down").Sees("> ben.toml").Press("up").Sees("> ada.toml")
	r.Press("j").Sees("Find: j", "> ada.toml", "ben.toml").Press("a").Sees("Find: ja", "> ada.toml").DoesNotSee("ben.toml")
	r.Press("backspace", "backspace").Types("kj").Sees("> ben.toml").DoesNotSee("ada.toml").DoesNotSee("Begin")
	r.Press("down", "up").Sees("> ben.toml").Press("esc").Sees("> ada.toml", "cut.toml", "Begin a new worksheet", "Type to find")
	r.Types("ROBE choir").Sees("> ben.toml").DoesNotSee("Example").Press("esc").Types("choir").Sees("> ben.toml", "  Example: choir-blouse")
	r.Types("nobody").Sees("no row has that").Press("enter", "down", "up", "end", "home").Fits().Sees("no row has that")
	r.Press("esc").Types("kj").Press("enter").Sees("Choir robe, for Kjell", "[1 Body]")
}

// Esc takes back what is typed before it goes back to the sheet, and what is
// pasted stays a line.
func TestListEscAndPaste(t *testing.T) {
	r := class(t, 80, 24).Press("enter").Sees("[1 Body]").Press("ctrl+o").Types("ben").Press("esc").Sees("Worksheets of this folder", "ada.toml")
	r.Tell(robot.Pasted("\x1b[2Jben\nx"))
	r.Sees("Find: \\x1b[2Jben x").Fits().Press("esc")
	r.Tell(robot.Pasted(strings.Repeat("w", 100_000)))
	r.Sees("> ada.toml").Fits().Press("esc").Sees("[1 Body]")
}

// A folder of many is drawn only where it is seen.
func TestListOfManyScrolls(t *testing.T) {
	var rows []roster.Row
	for i := range 5000 {
		rows = append(rows, roster.Row{Path: fmt.Sprintf("s%04d.toml", i), Needs: [2]string{"1", "-"}, Unit: "in"})
	}
	r := sit(t, nil, 80, 24)
	r.Tell(listedMsg{found: rows})
	r.Sees("> s0000.toml", "s0019.toml").DoesNotSee("s0020").Press("end").Sees("> Drill").Press("home").Sees("> s0000.toml").Fits()
	r.Types("s4711").Sees("> s4711.toml").DoesNotSee("s4712")
}

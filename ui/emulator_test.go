//go:build linux

package ui_test

import (
	"slices"
	"strings"
	"testing"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
)

// The emulator sees what it is there for.
func TestTheEmulatorSeesEveryCommand(t *testing.T) {
	for stream, want := range map[string]string{
		"\x1b[?1049h": "CSI", "\x1b[?25l": "CSI", "\x1b[4h": "CSI", "\x1b[6n": "CSI", "\x1b[2;5r": "CSI", "\x1b[>c": "CSI", "\x1b[!p": "CSI", "\x1bc": "ESC",
		"\x1b]0;t\x07": "OSC 0", "\x1b]52;c;aGk=\x1b\\": "OSC 52", "\x1b]8;;x\x1b\\": "OSC 8", "\x1bPq#0\x1b\\": "DCS", "\x1b_Gx\x1b\\": "APC", "\x1b^x\x1b\\": "PM",
		"\x1bXx\x1b\\": "SOS", "\a": "control", "\x0e": "control", "\u009b": "print U+009B", "\u202e": "print U+202E", "\u200b": "print U+200B", "\u2028": "print U+2028",
	} {
		if got := program.Told("a" + stream + "b"); len(got) == 0 || !strings.HasPrefix(got[0], want) {
			t.Errorf("%q: %q, want %s", stream, got, want)
		}
	}
	if got := program.Told("\x1b[H\x1b[2J\x1b[1;31mé 1/2\x1b[K\x1b[m\r\n\x1b[3A\x1b[5;6H⣀💩"); got != nil {
		t.Errorf("what every screen does is told as %q", got)
	}
}

// The real program, on a hostile sheet in a hostile folder, tells its terminal what
// it tells it on any other, page after page, and after the end.
func TestAHostileSheetTellsTheTerminalNothing(t *testing.T) {
	t.Parallel()
	tour := func(t *testing.T, p string) (report []string) {
		folder, file := props.HostileFolder(t, p)
		term := program.Start(t, folder, []string{"XDG_STATE_HOME=" + t.TempDir()}, file)
		term.Await("Blouse")
		for _, step := range [][2]string{
			{"\x1bOQ", "[2 Ease]"}, {"\x1bOR", "[3 Pattern]"}, {"\x1bOS", "[4 Split]"}, {"\x1b[15~", "[5 Match]"}, {"w", "What would make it work"}, {"\x1b", "[5 Match]"}, {"\x1b[17~", "[6 Trace]"},
			{"t", "MARK"}, {"\x1b", "[6 Trace]"}, {"n", "What did the test garment show"}, {"\x1b", "[6 Trace]"}, {"\x0f", "Worksheets of this folder"}, {"\r", "13 3/4\""}, {"\x1b", "[6 Trace]"},
			{"\x12", "Working"}, {"\x1b", "[6 Trace]"}, {"\x05", "Words"}, {"\x1b", "[6 Trace]"}, {"\x0b", "Keys"}, {"\x1b", "[6 Trace]"}, {"\x1bOP", "[1 Body]"}, {"\x06", "to take the body from"}, {"\x1b", "[1 Body]"},
			{"\x0c", "copy 1 of 1"}, {"17\r", "17 in"}, {"\x18", "What if"}, {"k", "saved"}, {"\x04", "Drill"}, {"\x1b", "[1 Body]"},
		} {
			term.Goes(step[0], step[1])
		}
		term.Types("\x03")
		if status := term.Ends(); status != 0 {
			t.Errorf("%q: status %d", p, status)
		}
		term.GivenBack()
		return program.Told(term.Raw())
	}
	want := tour(t, " of the choir")
	if len(want) == 0 {
		t.Fatal("even the switch to the other screen is not seen")
	}
	for _, p := range []string{
		"\x1b]0;title\a\x1b]52;c;aGk=\a\x1b]8;;http://x\x1b\\", "\x1bP1$r0m\x1b\\\x1b_Ga=T\x1b\\\x1b^p\x1b\\\x1bXs\x1b\\", "\x1b[?1000h\x1b[?1049l\x1bc\x1b[6n\u009b2J\u009d0;t\a", "\u202e\u2066\u200b\u2028\ufeff\r\n\b",
	} {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			if got := tour(t, p); !slices.Equal(got, want) {
				t.Errorf("%q: the terminal is told\n%q\nand else\n%q", p, got, want)
			}
		})
	}
}

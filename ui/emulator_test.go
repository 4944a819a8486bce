//go:build linux

package ui

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
)

// told is what a stream of bytes tells a terminal besides text, moving the cursor,
// erasing and styling, in order: modes, titles, clipboards, anything.
func told(stream string) (list []string) {
	add := func(format string, args ...any) { list = append(list, fmt.Sprintf(format, args...)) }
	p := ansi.NewParser()
	p.SetDataSize(1 << 20)
	text := func(kind string) func([]byte) { return func(data []byte) { add("%s %q", kind, data) } }
	p.SetHandler(ansi.Handler{
		Print: func(r rune) {
			if acts(string(r)) {
				add("print %U", r)
			}
		},
		Execute: func(b byte) {
			if b != '\r' && b != '\n' && b != '\b' {
				add("control %#x", b)
			}
		},
		HandleCsi: func(cmd ansi.Cmd, params ansi.Params) {
			if cmd.Prefix() == 0 && cmd.Intermediate() == 0 && strings.ContainsRune("ABCDEFGHJKdfm", rune(cmd.Final())) {
				return
			}
			add("CSI %q %q %q %v", cmd.Prefix(), cmd.Intermediate(), cmd.Final(), params)
		},
		HandleEsc: func(cmd ansi.Cmd) { add("ESC %q %q", cmd.Intermediate(), cmd.Final()) },
		HandleDcs: func(cmd ansi.Cmd, _ ansi.Params, data []byte) { add("DCS %q %q", cmd.Final(), data) },
		HandleOsc: func(cmd int, data []byte) { add("OSC %d %q", cmd, data) },
		HandlePm:  text("PM"),
		HandleApc: text("APC"),
		HandleSos: text("SOS"),
	})
	for i := range len(stream) {
		p.Advance(stream[i])
	}
	return list
}

// The emulator sees what it is there for.
func TestTheEmulatorSeesEveryCommand(t *testing.T) {
	for stream, want := range map[string]string{
		"\x1b[?1049h": "CSI", "\x1b[?25l": "CSI", "\x1b[4h": "CSI", "\x1b[6n": "CSI", "\x1b[2;5r": "CSI", "\x1b[>c": "CSI", "\x1b[!p": "CSI", "\x1bc": "ESC",
		"\x1b]0;t\x07": "OSC 0", "\x1b]52;c;aGk=\x1b\\": "OSC 52", "\x1b]8;;x\x1b\\": "OSC 8", "\x1bPq#0\x1b\\": "DCS", "\x1b_Gx\x1b\\": "APC", "\x1b^x\x1b\\": "PM",
		"\x1bXx\x1b\\": "SOS", "\a": "control", "\x0e": "control", "\u009b": "print U+009B", "\u202e": "print U+202E", "\u200b": "print U+200B", "\u2028": "print U+2028",
	} {
		if got := told("a" + stream + "b"); len(got) == 0 || !strings.HasPrefix(got[0], want) {
			t.Errorf("%q: %q, want %s", stream, got, want)
		}
	}
	if got := told("\x1b[H\x1b[2J\x1b[1;31mé 1/2\x1b[K\x1b[m\r\n\x1b[3A\x1b[5;6H⣀💩"); got != nil {
		t.Errorf("what every screen does is told as %q", got)
	}
}

// goes presses keys and waits until a text is written behind them.
func (m *terminal) goes(keys, text string) {
	m.t.Helper()
	from := len(m.raw())
	m.types(keys)
	for deadline := time.Now().Add(10 * time.Second); time.Now().Before(deadline); time.Sleep(2 * time.Millisecond) {
		if strings.Contains(ansi.Strip(m.raw()[from:]), text) {
			return
		}
	}
	m.t.Fatalf("%q does not bring %q; there is\n%q", keys, text, m.raw()[from:])
}

// The real program, on a hostile sheet in a hostile folder, tells its terminal what
// it tells it on any other, page after page, and after the end.
func TestAHostileSheetTellsTheTerminalNothing(t *testing.T) {
	tour := func(p string) (report []string) {
		file := layHostile(t, p)
		term := start(t, ".", []string{"XDG_STATE_HOME=" + t.TempDir()}, file)
		term.await("Blouse")
		for _, step := range [][2]string{
			{"\x1bOQ", "EASE"}, {"\x1bOR", "PATTERN"}, {"\x1bOS", "SPLIT"}, {"\x1b[15~", "MATCH"}, {"w", "What would make it work"}, {"\x1b", "MATCH"}, {"\x1b[17~", "TRACE"},
			{"t", "MARK"}, {"\x1b", "TRACE"}, {"n", "What did the test garment show"}, {"\x1b", "TRACE"}, {"\x0f", "Worksheets of this folder"}, {"\r", "13 3/4\""}, {"\x1b", "TRACE"},
			{"\x12", "Working"}, {"\x1b", "TRACE"}, {"\x05", "Words"}, {"\x1b", "TRACE"}, {"\x0b", "Keys"}, {"\x1b", "TRACE"}, {"\x1bOP", "BODY"}, {"\x06", "Take the body"}, {"\x1b", "BODY"},
			{"\x0c", "copy 1 of 1"}, {"17\r", "17 in"}, {"\x18", "What if"}, {"k", "saved"}, {"\x04", "Drill"}, {"\x1b", "BODY"},
		} {
			term.goes(step[0], step[1])
		}
		term.types("\x03")
		if status := term.ends(); status != 0 {
			t.Errorf("%q: status %d", p, status)
		}
		term.givenBack()
		return told(term.raw())
	}
	want := tour(" of the choir")
	if len(want) == 0 {
		t.Fatal("even the switch to the other screen is not seen")
	}
	for _, p := range []string{
		"\x1b]0;title\a\x1b]52;c;aGk=\a\x1b]8;;http://x\x1b\\", "\x1bP1$r0m\x1b\\\x1b_Ga=T\x1b\\\x1b^p\x1b\\\x1bXs\x1b\\", "\x1b[?1000h\x1b[?1049l\x1bc\x1b[6n\u009b2J\u009d0;t\a", "\u202e\u2066\u200b\u2028\ufeff\r\n\b",
	} {
		if got := tour(p); !slices.Equal(got, want) {
			t.Errorf("%q: the terminal is told\n%q\nand else\n%q", p, got, want)
		}
	}
}

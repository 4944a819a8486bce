//go:build linux

package program

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"capscye/ui/internal/props"
)

// Told is what a stream of bytes tells a terminal besides text, moving the cursor,
// erasing and styling, in order: modes, titles, clipboards, anything.
func Told(stream string) (list []string) {
	add := func(format string, args ...any) { list = append(list, fmt.Sprintf(format, args...)) }
	p := ansi.NewParser()
	p.SetDataSize(1 << 20)
	text := func(kind string) func([]byte) { return func(data []byte) { add("%s %q", kind, data) } }
	p.SetHandler(ansi.Handler{
		Print: func(r rune) {
			if props.Acts(string(r)) {
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

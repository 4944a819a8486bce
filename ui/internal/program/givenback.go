//go:build linux

package program

import (
	"regexp"
	"strings"
	"testing"
	"time"

	"golang.org/x/sys/unix"
)

// Modes are what a terminal was told to be in the end: the private modes that
// were set or reset at all.
func Modes(raw string) map[string]bool {
	list := map[string]bool{}
	for _, m := range regexp.MustCompile(`\x1b\[\?([0-9;]+)([hl])`).FindAllStringSubmatch(raw, -1) {
		for _, mode := range strings.Split(m[1], ";") {
			list[mode] = m[2] == "h"
		}
	}
	return list
}

// GivenBack fails unless the terminal is as a shell wants it: the first screen,
// the cursor to be seen, no bracketed paste or mouse, and the line discipline that
// echoes and edits.
func (m *Terminal) GivenBack() {
	m.T.Helper()
	for mode, on := range Modes(m.Raw()) {
		if on != (mode == "25") { // 25 is the cursor
			m.T.Errorf("mode %s is left on %v", mode, on)
		}
	}
	if state, err := unix.IoctlGetTermios(int(m.File.Fd()), unix.TCGETS); err == nil { // gone with its last user on some systems
		if want := uint32(unix.ICANON | unix.ECHO | unix.ISIG); state.Lflag&want != want {
			m.T.Errorf("the line discipline is left at %#x", state.Lflag)
		}
	}
}

// Await waits until something is so.
func Await(t *testing.T, what string, so func() bool) {
	t.Helper()
	for deadline := time.Now().Add(10 * time.Second); time.Now().Before(deadline); time.Sleep(2 * time.Millisecond) {
		if so() {
			return
		}
	}
	t.Fatalf("waited in vain for %s", what)
}

//go:build linux

package ui_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
)

// What could not be saved is not thrown away by whoever leaves: the program says in one
// line, whole in 80 columns, what ctrl+c does, says at the end where the answers are, and
// offers them at the next start.
func TestWhatCouldNotBeSavedIsKeptAside(t *testing.T) {
	t.Parallel()
	folder, term := program.Sewing(t, false)
	path := filepath.Join(folder, "blouse.toml")
	source := props.Read(t, path)
	os.Remove(path)
	if err := os.Mkdir(path, 0o755); err != nil { // which no file can take the place of
		t.Fatal(err)
	}
	term.Goes("14 1/8\r", "^s tries again, ^c keeps it aside.")
	for _, line := range strings.Split(term.Raw(), "\n") {
		if line = ansi.Strip(line); strings.Contains(line, "Not saved") && (strings.Contains(line, "toml") || strings.Contains(line, "...")) {
			t.Errorf("it names a file, or is cut: %q", line)
		}
	}
	term.Goes("\x03", "^c again keeps it aside.")
	term.Types("\x03")
	if status := term.Ends(); status != 1 {
		t.Errorf("status %d", status)
	}
	_, told, _ := strings.Cut(term.Raw(), "\x1b[?1049l")
	place := regexp.MustCompile(`Your answers are safe in (\S+);`).FindStringSubmatch(strings.ReplaceAll(told, "\r\n", ""))
	if place == nil || !strings.Contains(props.Read(t, place[1]), "14 1/8") {
		t.Fatalf("it does not say where they are: %q", told)
	}
	os.Remove(path)
	os.WriteFile(path, []byte(source), 0o644)
	again := program.Start(t, folder, []string{"XDG_STATE_HOME=" + filepath.Dir(folder)}, "blouse.toml")
	again.Await("14 1/8 in")
	again.Await("Unsaved work of ")
}

// Where nothing can be kept aside either, that is said before it is lost.
func TestWhatCannotBeKeptAsideIsSaid(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	path := filepath.Join(folder, "blouse.toml")
	props.LayAt(t, path, "choir-blouse")
	term := program.Start(t, folder, []string{"XDG_STATE_HOME=/dev/null/nowhere"}, "blouse.toml")
	term.Await("Sleeve needs 2 1/2 in")
	os.Remove(path)
	os.Mkdir(path, 0o755)
	term.Types("14 1/8\r")
	term.Await("[not saved]")
	term.Await("A crash would lose what is not saved") // or it comes behind the next and covers it
	term.Goes("\x13", "^c loses it.")
}

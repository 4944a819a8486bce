package disktest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Write lays a file, and returns its path.
func Write(t testing.TB, path, content string) string {
	t.Helper()
	if err := os.WriteFile(path, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// OnDisk checks what a file holds, and that no draft is beside it.
func OnDisk(t testing.TB, path, want string) {
	t.Helper()
	if got, err := os.ReadFile(path); string(got) != want || err != nil {
		t.Errorf("%q holds %.600q of %d bytes, want %.600q: %v", filepath.Base(path), got, len(got), want, err)
	}
	for _, name := range Names(t, filepath.Dir(path)) {
		if strings.Contains(name, ".capscye-tmp") {
			t.Errorf("left behind: %q", name)
		}
	}
}

// Names are those of what lies in a folder.
func Names(t testing.TB, folder string) (found []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		found = append(found, e.Name())
	}
	return found
}

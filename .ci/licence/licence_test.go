package licence

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// files makes a folder of a module.
func files(t *testing.T, contents map[string]string) string {
	t.Helper()
	folder := t.TempDir()
	for name, words := range contents {
		path := filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(words), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

const mit = "Permission is hereby granted, free of\n  charge, to any person obtaining a copy"

// What cannot be handed out with good reason is refused, and named.
func TestAModuleWithoutALicenceIsNamed(t *testing.T) {
	for _, c := range []struct {
		what     string
		path     string
		contents map[string]string
		want     string
	}{
		{"nothing", "example.org/bare", map[string]string{"bare.go": ""}, "example.org/bare v0.0.1 has no licence file"},
		{"only patents", "example.org/bare", map[string]string{"PATENTS": mit}, "example.org/bare v0.0.1 has no licence file"},
		{"a licence of a package alone", "example.org/bare", map[string]string{"sub/LICENSE": mit}, "has no licence file"},
		{"unknown words", "example.org/odd", map[string]string{"LICENSE": "Ask me."}, "example.org/odd v0.0.1: its LICENSE is no licence that is known"},
		{"a README that says so, unseen", "example.org/bare", map[string]string{"README.md": "## License\n\nMIT"}, "has no licence file"},
		{"a README that no longer says so", "github.com/mattn/go-localereader", map[string]string{"README.md": "Hello."}, "its README.md names no licence"},
	} {
		m := Module{Path: c.path, Version: "v0.0.1", Folder: files(t, c.contents)}
		m.Linked = []string{m.Folder}
		name, _, err := m.Licence()
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %q, %v; want %q", c.what, name, err, c.want)
		}
	}
}

// A README is believed at the version that somebody looked at, and at no other.
func TestAnotherVersionIsLookedAtAgain(t *testing.T) {
	folder := files(t, map[string]string{"README.md": "# x\n\n## License\n\nMIT\n"})
	for version, ok := range map[string]bool{"v0.0.1": true, "v0.0.2": false} {
		m := Module{Path: "github.com/mattn/go-localereader", Version: version, Folder: folder}
		name, texts, err := m.Licence()
		if (err == nil) != ok || ok && (name != "MIT" || len(texts) != 1 || !m.StatedOnly()) {
			t.Errorf("%s: %q, %v, %v", version, name, texts, err)
		}
	}
}

// The licence's name comes from the module's own file; the texts are all that lie
// in its folder and on the way to what is linked, and no other.
func TestTextsOfAllThatIsLinked(t *testing.T) {
	folder := files(t, map[string]string{
		"COPYING": mit, "NOTICE.txt": "n", "LICENSE-type": "t", "license.go": "", "THIRD_PARTY_LICENSES/Sum-LICENSE": "s",
		"linked/LICENSE": "l", "linked/deep/deep.go": "", "else/LICENSE": "e", "README.md": "",
	})
	m := Module{Path: "example.org/many", Version: "v1.0.0", Folder: folder, Linked: []string{folder, filepath.Join(folder, "linked", "deep")}}
	name, texts, err := m.Licence()
	var names []string
	for _, text := range texts {
		names = append(names, text.File)
	}
	const want = "COPYING LICENSE-type NOTICE.txt THIRD_PARTY_LICENSES/Sum-LICENSE linked/LICENSE"
	if got := strings.Join(names, " "); name != "MIT" || err != nil || got != want {
		t.Errorf("%q, %v: %s\nwant %s", name, err, got, want)
	}
}

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// calls runs .ci/release of a clone, and gives its exit status and what it says.
func calls(t *testing.T, clone string, env []string, args ...string) (int, string) {
	t.Helper()
	if _, err := exec.LookPath("bash"); err != nil {
		t.Skip("no bash")
	}
	c := exec.Command("bash", append([]string{filepath.Join(clone, ".ci", "release")}, args...)...)
	c.Env = append(os.Environ(), env...)
	b, err := c.CombinedOutput()
	if c.ProcessState == nil {
		t.Fatal(err)
	}
	return c.ProcessState.ExitCode(), string(b)
}

// cloned is a repository with the script in it, and nothing else; nothing is
// changed in it.
func cloned(t *testing.T) string {
	t.Helper()
	clone := t.TempDir()
	script, err := os.ReadFile(filepath.Join("..", "release"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(clone, ".ci"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(clone, ".ci", "release"), script, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"init", "-q"}, {"add", "."}, {"-c", "user.name=x", "-c", "user.email=x@example.org", "-c", "commit.gpgsign=false", "commit", "-qm", "x"}} {
		git := exec.Command("git", args...)
		git.Dir = clone
		if b, err := git.CombinedOutput(); err != nil {
			t.Fatalf("git %s: %v\n%s", args, err, b)
		}
	}
	return clone
}

// A call that is wrong is told so in a sentence, with status 2, before anything is built.
func TestWrongCallsOfRelease(t *testing.T) {
	clean, dirty, nowhere := cloned(t), cloned(t), cloned(t)
	if err := os.WriteFile(filepath.Join(dirty, "stray.go"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.RemoveAll(filepath.Join(nowhere, ".git")); err != nil {
		t.Fatal(err)
	}
	noVersion := func(v string) string { return `"` + v + `" is no version; one looks like 1.2.3, v1.2.3 or 1.2.3-rc.1.` }
	env := []string{"ALLOW_DIRTY=", "SOURCE_DATE_EPOCH=", "GIT_CEILING_DIRECTORIES=" + filepath.Dir(nowhere)}
	for _, c := range []struct {
		clone string
		env   string
		args  []string
		want  string
	}{
		{clean, "", nil, "a version is needed"},
		{clean, "", []string{"1.2.3", "a", "b"}, "a version is needed"},
		{clean, "", []string{""}, noVersion("")},
		{clean, "", []string{"1.2"}, noVersion("1.2")},
		{clean, "", []string{"1.2.3.4"}, noVersion("1.2.3.4")},
		{clean, "", []string{"V1.2.3"}, noVersion("V1.2.3")},
		{clean, "", []string{"01.2.3"}, noVersion("01.2.3")},
		{clean, "", []string{"1.2.3-"}, noVersion("1.2.3-")},
		{clean, "", []string{"1.2.3-01"}, noVersion("1.2.3-01")},
		{clean, "", []string{"1.2.3-a..b"}, noVersion("1.2.3-a..b")},
		{clean, "", []string{"1.2.3+b"}, noVersion("1.2.3+b")},
		{clean, "", []string{"1.2.3\n"}, noVersion("1.2.3\n")},
		{clean, "", []string{"--help"}, noVersion("--help")},
		{clean, "", []string{"1.2.3", ""}, "the folder to write to has no name."},
		{dirty, "", []string{"1.2.3"}, "stray.go"},
		{nowhere, "", []string{"1.2.3"}, "git cannot tell"},
		{nowhere, "ALLOW_DIRTY=1", []string{"1.2.3"}, "git knows no commit here"},
		{clean, "SOURCE_DATE_EPOCH=yesterday", []string{"1.2.3"}, `SOURCE_DATE_EPOCH is "yesterday"`},
		{clean, "SOURCE_DATE_EPOCH=315532799", []string{"1.2.3"}, `SOURCE_DATE_EPOCH is "315532799"`},
	} {
		status, said := calls(t, c.clone, append(env, c.env), c.args...)
		if status != 2 || !strings.Contains(said, ".ci/release: ") || !strings.Contains(said, c.want) {
			t.Errorf("%q %q: status %d, %q; want %q", c.env, c.args, status, said, c.want)
		}
	}
	// What is well gets as far as building, and there is no module here to build.
	for _, version := range []string{"1.2.3", "v10.0.0", "1.2.3-rc.1", "v1.2.3-0.a-b.7c"} {
		if status, said := calls(t, clean, env, version); status != 1 || strings.Contains(said, ".ci/release: ") {
			t.Errorf("%s: status %d, %q", version, status, said)
		}
	}
}

package console

import (
	"os/exec"
	"testing"
)

// A path that a command is printed with is the same once a shell has read it; one that
// cannot be shown is not printed.
func TestAShellReadsThePathThatIsPrinted(t *testing.T) {
	shell, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("no sh here")
	}
	for path, want := range map[string]string{
		"smock.toml": "smock.toml", "club/smock-2.toml": "club/smock-2.toml", "Müşür.toml": "Müşür.toml", "my smock.toml": `"my smock.toml"`,
		"-x.toml": "./-x.toml", "odile's.toml": `"odile's.toml"`, "a$HOME.toml": "'a$HOME.toml'", "it's $5 `now`\\.toml": "", "a;b&c|d.toml": "", "tab\t.toml": "none", "\xff.toml": "none",
	} {
		got := ForShell(path)
		if want == "none" {
			if got != "" {
				t.Errorf("%q is printed as %s", path, got)
			}
			continue
		}
		if want != "" && got != want {
			t.Errorf("%q is printed as %s, want %s", path, got, want)
		}
		read, err := exec.Command(shell, "-c", "printf %s "+got).Output()
		if back := string(read); err != nil || back != path && back != "./"+path {
			t.Errorf("%q, printed as %s, is read as %q: %v", path, got, back, err)
		}
	}
}

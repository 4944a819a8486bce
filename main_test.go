package main

import (
	"os/exec"
	"strings"
	"testing"
)

// The packages form a diamond: units knows nobody, calc and worksheets know
// units and not each other, ui joins them, main knows ui.
//
//	units <- calc <--------+
//	  ^                    +-- ui <- main
//	  +---- worksheets <---+
func TestImportsFormADiamond(t *testing.T) {
	allowed := map[string][]string{
		"capscye":               {"capscye/ui"},
		"capscye/units":         {},
		"capscye/calc":          {"capscye/units"},
		"capscye/worksheets":    {"capscye/units"},
		"capscye/ui":            {"capscye/units", "capscye/calc", "capscye/worksheets", "capscye/ui/background"},
		"capscye/ui/background": {},
	}
	// What a layer may use of others' code, where that is limited.
	outside := map[string][]string{
		"capscye/units":         {},
		"capscye/calc":          {"gonum.org/v1/gonum/integrate/quad"},
		"capscye/worksheets":    {"github.com/BurntSushi/toml", "github.com/pelletier/go-toml/v2/unstable", "github.com/gofrs/flock"},
		"capscye/ui/background": {"github.com/charmbracelet/lipgloss"},
	}
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "./...").Output()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		words := strings.Fields(line)
		mine, ok := allowed[words[0]]
		if !ok {
			t.Errorf("%s is a new package: give it a place in the diamond", words[0])
			continue
		}
		seen++
		for _, imported := range words[1:] {
			switch others, limited := outside[words[0]]; {
			case strings.HasPrefix(imported, "capscye/"):
				if !has(mine, imported) {
					t.Errorf("%s must not import %s", words[0], imported)
				}
			case limited && strings.Contains(imported, ".") && !has(others, imported):
				t.Errorf("%s must not import %s", words[0], imported)
			}
		}
	}
	if seen != len(allowed) {
		t.Errorf("%d packages of %d seen", seen, len(allowed))
	}
}

func has(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}

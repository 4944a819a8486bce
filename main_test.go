package main

import (
	"debug/elf"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"capscye/.ci/licence"
)

// floors are the packages, the lowest first: a package imports from floors below its
// own, and knows nobody beside it. The lowest are a diamond of their own: units knows
// nobody, calc and worksheets know units and not each other, and the rooms of ui join
// them.
var floors = [][]string{
	{"units", "worksheets/disk"},
	{"calc", "worksheets"},
	{"calc/drill", "calc/remedy", "calc/trace", "ui/background", "ui/forms", "ui/typeset"},
	{"ui/console", "ui/terminal", "ui/wording"},
	{"ui/parts", "ui/report"},
	{"ui/compare", "ui/picture", "ui/tracing"},
	{"ui/desk", "ui/show"},
	{"ui/ask", "ui/paper", "ui/roster", "ui/sizes", "ui/try"},
	{"ui/drill"},
	{"ui/screen"},
	{"ui/manual"},
	{"ui"},
	{""}, // main
}

// testSupport is what tests lay out and press; no product code imports it.
var testSupport = []string{"calc/internal/byhand", "ui/internal/program", "ui/internal/props", "ui/internal/robot", "worksheets/disk/disktest"}

// narrow are the packages that may use few libraries, and which; what is not named
// may use any.
var narrow = map[string][]string{
	"units":           {},
	"calc":            {"gonum.org/v1/gonum/integrate/quad"},
	"calc/drill":      {},
	"calc/remedy":     {},
	"calc/trace":      {},
	"worksheets":      {"github.com/BurntSushi/toml", "github.com/pelletier/go-toml/v2/unstable", "github.com/gofrs/flock"},
	"worksheets/disk": {},
	"ui/background":   {"github.com/charmbracelet/lipgloss"},
	"ui/forms":        {},
	"ui/typeset":      {"github.com/charmbracelet/x/ansi", "github.com/mattn/go-runewidth"},
	"ui/wording":      {},
	"ui/report":       {},
	"ui/compare":      {},
	"ui/desk":         {"github.com/charmbracelet/bubbletea"},
	"ui/picture":      {},
	"ui/tracing":      {},
}

// owned are the libraries that few packages may use, and which.
var owned = map[string][]string{
	"github.com/charmbracelet/bubbletea": {"ui/desk", "ui/parts", "ui/screen", "ui/terminal"},
	"github.com/spf13/cobra":             {"ui", "ui/ask", "ui/console", "ui/drill", "ui/manual", "ui/paper", "ui/roster", "ui/show", "ui/sizes", "ui/try"}, // those with a command
	"codeberg.org/go-pdf/fpdf":           {"ui/paper"},
}

func TestImportsFormADiamond(t *testing.T) {
	floorOf := map[string]int{}
	for n, floor := range floors {
		for _, p := range floor {
			floorOf[p] = n
		}
	}
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "./...").Output()
	if err != nil {
		t.Fatal(err)
	}
	// ours is the path of a package within the module.
	ours := func(path string) (p string, ok bool) {
		if path == "capscye" {
			return "", true
		}
		return strings.CutPrefix(path, "capscye/")
	}
	seen := 0
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		words := strings.Fields(line)
		p, _ := ours(words[0])
		floor, known := floorOf[p]
		support := slices.Contains(testSupport, p)
		if !known && !support {
			t.Errorf("%s is a new package: give it a floor", p)
			continue
		}
		seen++
		libraries, limited := narrow[p]
		for _, imported := range words[1:] {
			switch other, inside := ours(imported); {
			case support:
			case inside && slices.Contains(testSupport, other):
				t.Errorf("%s must not import %s, which is for tests", p, other)
			case inside && floorOf[other] >= floor:
				t.Errorf("%s must not import %s, which is on no floor below", p, other)
			case !inside && owned[imported] != nil && !slices.Contains(owned[imported], p):
				t.Errorf("%s must not import %s", p, imported)
			case !inside && limited && strings.Contains(imported, ".") && !slices.Contains(libraries, imported):
				t.Errorf("%s must not import %s", p, imported)
			}
		}
	}
	if seen != len(floorOf)+len(testSupport) {
		t.Errorf("%d packages of %d seen", seen, len(floorOf)+len(testSupport))
	}
}

// The map of DEVELOPERS.md has every package on its floor, and no other.
func TestMapHasEveryPackageOnItsFloor(t *testing.T) {
	developers, err := os.ReadFile("DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, table, _ := strings.Cut(string(developers), "\n## The map\n")
	table, _, _ = strings.Cut(table, "\n\nA package imports")
	found := map[string]string{}
	for _, row := range regexp.MustCompile(`(?m)^\| (\d+) \| ([^|]+) \|`).FindAllStringSubmatch(table, -1) {
		for _, p := range strings.Split(row[2], ", ") {
			found[strings.Trim(p, "`")] = row[1]
		}
	}
	listed := 0
	for n, floor := range floors {
		for _, p := range floor {
			if p == "" { // main, above all of them
				continue
			}
			listed++
			if want := strconv.Itoa(n + 1); found[p] != want {
				t.Errorf("%s is on floor %s, the map says %q", p, want, found[p])
			}
		}
	}
	if len(found) != listed {
		t.Errorf("the map has %d packages of %d: %v", len(found), listed, found)
	}
}

// linked is everything that is linked into the program for a system: a line for each
// package, with what it imports and the module that it comes from, if that is another. It is
// listed once, for all who ask.
func linked(t *testing.T, system string) (lines [][]string) {
	t.Helper()
	if listed[system] == "" {
		list := exec.Command("go", "list", "-deps", "-f", `{{.ImportPath}};{{join .Imports " "}};{{with .Module}}{{if not .Main}}{{.Path}}{{"\t"}}{{.Version}}{{"\t"}}{{.Dir}}{{end}}{{end}}`, ".")
		list.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		listed[system] = string(out)
	}
	for line := range strings.Lines(listed[system]) {
		lines = append(lines, strings.SplitN(strings.TrimSuffix(line, "\n"), ";", 3))
	}
	return lines
}

var listed = map[string]string{} // by system

// required are the modules that go.mod asks for itself, those of the tests too.
func required(t *testing.T) []string {
	t.Helper()
	file, err := os.ReadFile("go.mod")
	if err != nil {
		t.Fatal(err)
	}
	args := []string{"list", "-m", "-f", "{{.Path}}\t{{.Version}}\t{{.Dir}}"}
	for _, line := range regexp.MustCompile(`(?m)^\t(\S+) v\S+$`).FindAllStringSubmatch(string(file), -1) {
		args = append(args, line[1])
	}
	out, err := exec.Command("go", args...).Output()
	if err != nil {
		t.Fatal(err)
	}
	return slices.Collect(strings.Lines(string(out)))
}

// Every module that is linked into the program, on any system, and every one that go.mod
// asks for itself stands in the table of DEVELOPERS.md with the licence that lies in the
// module itself.
func TestEveryModuleIsListedWithItsLicence(t *testing.T) {
	table, err := os.ReadFile("DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	asked := required(t)
	modules := slices.Clone(asked)
	for _, system := range []string{"linux", "darwin", "windows"} {
		var there []string
		for _, p := range linked(t, system) {
			there = append(there, p[2])
		}
		slices.Sort(there)
		modules = append(modules, slices.Compact(there)...)
	}
	seen := 0
	for _, line := range modules {
		words := strings.Split(strings.TrimSpace(line), "\t")
		if len(words) != 3 {
			continue
		}
		seen++
		path := words[0]
		row := regexp.MustCompile(`(?m)^\| [^|]*\b` + regexp.QuoteMeta(path) + `[ ,|].*$`).FindString(string(table))
		if row == "" {
			t.Errorf("%s has no row", path)
			continue
		}
		name, _, err := licence.Module{Path: path, Version: words[1], Folder: words[2]}.Licence()
		switch {
		case path == "pgregory.net/rapid": // of tests alone, under a licence that nothing linked has
		case err != nil:
			t.Error(err)
		case !strings.Contains(row, "| "+name+" |") && !strings.Contains(row, "| "+name+";"):
			t.Errorf("%s is under %q; its row is %s", path, name, row)
		}
	}
	if len(asked) < 20 || seen-len(asked) < 60 {
		t.Errorf("only %d modules were seen on three systems, and %d in go.mod", seen-len(asked), len(asked))
	}
}

// The program talks to nobody: no package of a network protocol is linked, and of
// net, which the reader of flags brings along for a kind of flag that is not used
// here (and on Windows x/sys, for a kind of address), nothing that opens a connection.
func TestNothingOfANetworkIsLinked(t *testing.T) {
	for _, system := range []string{"linux", "darwin", "windows"} {
		for _, p := range linked(t, system) {
			path, imports := p[0], p[1]
			switch path {
			case "net/netip", "net/url": // addresses as text
			case "net":
			default:
				if strings.HasPrefix(path, "net/") || strings.HasPrefix(path, "crypto/tls") || strings.HasPrefix(path, "golang.org/x/net") {
					t.Errorf("%s links %s", system, path)
				}
			}
			if slices.Contains(strings.Fields(imports), "net") && path != "github.com/spf13/pflag" && path != "golang.org/x/sys/windows" {
				t.Errorf("%s: %s imports net", system, path)
			}
		}
	}
	program := filepath.Join(t.TempDir(), "capscye")
	build := exec.Command("go", "build", "-ldflags=-w", "-o", program, ".") // names, and no more
	build.Env = append(os.Environ(), "GOOS=linux", "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	file, err := elf.Open(program)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	symbols, err := file.Symbols()
	if err != nil {
		t.Fatal(err)
	}
	opens := regexp.MustCompile(`^(net\.\S*(Dial|Listen|Lookup|Resolve|[sS]ocket)|syscall\.([cC]onnect|[sS]ocket|[bB]ind)$)`)
	ofNet := 0
	for _, s := range symbols {
		if elf.ST_TYPE(s.Info) != elf.STT_FUNC {
			continue
		}
		if strings.HasPrefix(s.Name, "net.") {
			ofNet++
		}
		if opens.MatchString(s.Name) {
			t.Errorf("linked: %s", s.Name)
		}
	}
	if ofNet == 0 { // else this sees nothing
		t.Error("nothing of net is linked any more: say so in DEVELOPERS.md")
	}
}

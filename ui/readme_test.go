package ui_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/report"
	"capscye/worksheets"
)

func TestWithoutATerminalTheExampleIsPrinted(t *testing.T) {
	status, out, _ := run("")
	_, shown, _ := run("", "show", props.Example("choir-blouse"))
	if status != 0 || out != shown {
		t.Errorf("status %d\n%s", status, out)
	}
	if _, out, _ := run("", props.Example("archive-coat")); !strings.Contains(out, "Work coat for the archive") {
		t.Errorf("capscye FILE without a terminal:\n%s", out)
	}
}

// The README lists every code of a finding and every key of the file, and its
// picture is the screen as it is.
func TestReadmeIsTrue(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(props.SourceFolder, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	source, err := os.ReadFile(filepath.Join(props.SourceFolder, "calc", "finding.go"))
	if err != nil {
		t.Fatal(err)
	}
	var codes []string
	for _, l := range strings.Split(string(source), "\n") {
		if _, rest, ok := strings.Cut(l, `Code = "`); ok {
			code, _, _ := strings.Cut(rest, `"`)
			codes = append(codes, code)
		}
	}
	codes = append(codes, string(report.ValueUnreadable), string(report.UnknownKey), string(report.NotWritten), string(report.BodyChanged), string(report.PatternChanged))
	for _, name := range []string{"screen/testdata/TestStepsAsSeen/80x24/4-Split", "picture/testdata/TestPicturesAsSeen/44x12/short-sleeve", "screen/testdata/TestTableView/80x24",
		"screen/testdata/TestWhatIfCostsThreeKeysAndRisksNothing/80x24"} {
		picture, err := os.ReadFile(filepath.Join(props.SourceFolder, "ui", name+".golden"))
		if err != nil || !strings.Contains(string(readme), string(picture)) {
			t.Errorf("the README shows another %s than there is: %v", name, err)
		}
	}
	if len(codes) < 15 {
		t.Fatalf("only %d codes found", len(codes))
	}
	for _, c := range codes {
		if !strings.Contains(string(readme), "`"+c+"`") {
			t.Errorf("%s is not in the README", c)
		}
	}
	for _, k := range worksheets.Keys() {
		table, name, _ := strings.Cut(k.Path(), ".")
		_, section, _ := strings.Cut(string(readme), "\n["+table+"]")
		section, _, _ = strings.Cut(section, "\n[")
		if !regexp.MustCompile(`(?m)^` + name + ` += `).MatchString(section) {
			t.Errorf("the key %s is not in the README", k)
		}
	}
}

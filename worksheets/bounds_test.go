package worksheets_test

import (
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"capscye/worksheets"
)

// allocated is the memory that a call asks for, whatever it gives back.
func allocated(call func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	call()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// most is what refusing a hostile file may ask for.
const most = 16 << 20

// repeated is a pattern as often as it fits into so many bytes.
func repeated(pattern string, size int) string { return strings.Repeat(pattern, size/len(pattern)) }

func TestABombIsRefusedBeforeItTakesMemory(t *testing.T) {
	const small, large = 40_000, 700_000
	deep := repeated("[", large)
	for name, source := range map[string]string{
		"a dotted key":                              repeated("a.", small) + "a = 1\n",
		"a dotted key, spaced and quoted":           repeated(`"a.b" . 'c' .`, small) + "a = 1\n",
		"a dotted key in an array of inline tables": "x = [\n{a = 1},\n{" + repeated("a.", small) + "a = 1}]\n",
		"a header":                                 "[" + repeated("a.", small) + "a]\n",
		"a header of many tables":                  "[[" + repeated("a.", small) + "a]]\n",
		"inline tables":                            "x = " + repeated("{a=", small) + "1" + repeated("}", small/3) + "\n",
		"inline tables with dotted keys":           "x = " + repeated("{a.b=", small) + "1\n",
		"inline tables over many lines":            "x = " + repeated("{\na = ", small) + "1\n",
		"arrays":                                   "x = " + deep + "\n",
		"arrays that close":                        "x = " + repeated("[", large/2) + repeated("]", large/2) + "\n",
		"arrays and inline tables":                 "x = " + repeated("[{a=", large) + "\n",
		"arrays behind siblings":                   "x = " + repeated("[1, [], ", large) + "\n",
		"arrays behind strings":                    "x = " + repeated(`["]", ']', `, large) + "\n",
		"arrays behind comments":                   "x = " + repeated("[ # ]\n", large) + "\n",
		"arrays behind comments of quotes":         "x = " + repeated("[ # \"\n", large) + "\n",
		"arrays behind long strings":               "x = " + repeated("[\"\"\"]\n]\"\"\", '''\n]''', ", large) + "\n",
		"arrays behind a backslash that is none":   `x = ['\', ` + deep + "\n",
		"arrays behind an escaped quote":           `x = ["\"", "\\", ` + deep + "\n",
		"arrays behind a long string with quotes":  "x = [\"\"\"\"a\"\"\"\"\", '''''b''''', \"\"\"\\\"\"\"\", " + deep + "\n",
		"arrays behind an empty string":            `x = ["", '', """""", '''''', ` + deep + "\n",
		"arrays behind a return in a comment":      "x = [ # \r" + deep + "\n",
		"arrays behind an escaped line end":        "x = [ \"\\\n" + deep + "\n",
		"arrays behind brackets that close":        "y = 1 ]]]]]]]]]]]]]]]]\nx = " + deep + "\n",
		"an unclosed string":                       `x = "` + deep,
		"an unclosed string before a line of more": `x = "` + deep + "\ny = " + deep[:large/40] + "\n",
		"an unclosed long string":                  `x = """` + deep,
		"an unclosed long string of one quote":     "x = '''\n" + deep,
		"an unclosed string behind a backslash":    `x = "\`,
		"an unclosed key":                          `"` + deep,
		"a nest without a key":                     deep,
		"a nest behind a byte order mark":          "\ufeff" + deep,
	} {
		if len(source) > worksheets.MaxBytes {
			t.Fatalf("%s: %d bytes would be refused for their number", name, len(source))
		}
		var fault *worksheets.FileError
		taken := allocated(func() { fault = refused(t, []byte(source)) })
		if taken > most {
			t.Errorf("%s: refusing %d bytes asked for %d bytes of memory", name, len(source), taken)
		}
		if len(fault.Error()) > 500 {
			t.Errorf("%s: a message of %d bytes", name, len(fault.Error()))
		}
	}
}

func TestAFileFullOfSmallTablesTakesLittleMemory(t *testing.T) {
	for _, size := range []int{40_000, worksheets.MaxBytes - 10} {
		for _, tables := range []string{"{a.b.c.d.e=1},", "{a=1},"} {
			source := []byte("x=[" + repeated(tables, size) + "]\n")
			if taken := allocated(func() { worksheets.Decode("blouse.toml", source) }); taken > most {
				t.Errorf("%d bytes of %s asked for %d bytes of memory", size, tables, taken)
			}
		}
	}
}

func TestTheRefusalNamesTheLineOfTheNest(t *testing.T) {
	why := fmt.Sprintf(": keys, arrays or tables are nested too deeply. At most %d levels of brackets, or parts of a key, are read", levels(t))
	deep := strings.Repeat("[", 5000)
	for source, want := range map[string]string{
		"version = 1\n\nx = " + deep:                         "blouse.toml, line 3" + why,
		"x = \"\"\"\n[[[[\n\"\"\"\ny = " + deep:              "blouse.toml, line 4" + why,
		"\ufeff# [[[\r\nx = \"[\" # [\r\ny = " + deep:        "blouse.toml, line 3" + why,
		"version = 1\n" + strings.Repeat("a.", 5000) + "a=1": "blouse.toml, line 2" + why,
	} {
		if got := refused(t, []byte(source)).Error(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
}

// levels is how deep a file may be nested, as a refusal says.
func levels(t *testing.T) (n int) {
	t.Helper()
	fault := refused(t, []byte("x = "+strings.Repeat("[", 1000)))
	if _, err := fmt.Sscanf(fault.Want, "At most %d levels of brackets, or parts of a key, are read", &n); err != nil || n < 4 {
		t.Fatalf("%d levels are allowed: %v", n, fault)
	}
	return n
}

func TestAsManyLevelsAreReadAsTheRefusalSays(t *testing.T) {
	most := levels(t)
	for _, nest := range []func(levels int) string{
		func(n int) string { return "x = " + strings.Repeat("[", n) + strings.Repeat("]", n) },
		func(n int) string { return "x = " + strings.Repeat("{a=", n) + "1" + strings.Repeat("}", n) },
		func(n int) string { return "x = " + strings.Repeat("[\n'', ", n) + strings.Repeat("],\n", n-1) + "]" },
	} {
		decode(t, file(nest(most)))
		refused(t, []byte(file(nest(most+1))))
	}
	decode(t, file(strings.Repeat("a.", most-1)+"a = 1"))
	refused(t, []byte(file(strings.Repeat("a.", most)+"a = 1")))
}

func TestBracketsAndPointsThatNestNothingAreNotCounted(t *testing.T) {
	brackets, points := strings.Repeat("[{", 1000), strings.Repeat("a.", 1000)
	for name, source := range map[string]string{
		"in a string":                          `notes = "` + brackets + points + `"`,
		"in a string of single quotes":         `notes = '` + brackets + points + `\'`,
		"in a long string":                     "notes = \"\"\"\n\"" + brackets + "\n\\\"\"\"" + points + "\n\"\"\"",
		"in a long string of single quotes":    "notes = '''\n''" + brackets + "\\\n" + points + "'''",
		"in a long string that ends in quotes": `notes = """` + brackets + `"""""` + "\nbicep = '''" + points + "'''''",
		"behind an escaped quote":              `notes = "\"` + brackets + `\\"`,
		"in a comment":                         "# " + brackets + points + "\n  # \"" + brackets,
		"in a comment behind a value":          `notes = "" # it's ` + brackets + points,
		"in a quoted key":                      `"` + brackets + points + `" = 1`,
		"side by side":                         "x = [" + strings.Repeat("[1.5], {a.b = 2.5}, ", 300) + "]",
		"one line after another":               strings.Repeat("[[x.y]]\na.b.c = [1.5]\n", 300),
		"in many numbers":                      "x = [" + strings.Repeat("1.5, ", 300) + "]",
	} {
		d, err := worksheets.Decode("blouse.toml", []byte(source+"\n[body]\nbust = \"39\"\n"))
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if d.Sheet.Text(worksheets.Bust) != "39" {
			t.Errorf("%s: bust is %q", name, d.Sheet.Text(worksheets.Bust))
		}
	}
}

func TestAFileOverTheLimitIsRefusedAndOneAtTheLimitIsNot(t *testing.T) {
	line := "[body]\nbust = \"39\"\n#"
	fits := line + strings.Repeat("x", worksheets.MaxBytes-len(line))
	if d := decode(t, fits); d.Sheet.Text(worksheets.Bust) != "39" {
		t.Errorf("bust is %q", d.Sheet.Text(worksheets.Bust))
	}
	taken := allocated(func() {
		want := "blouse.toml: the file is too large. A worksheet has at most 786432 bytes"
		if got := refused(t, []byte(fits+"x")).Error(); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	})
	if taken > most {
		t.Errorf("refusing it asked for %d bytes of memory", taken)
	}
}

// endless never stops giving comment.
type endless struct{ given int }

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	e.given += len(p)
	return len(p), nil
}

func TestAStreamWithoutEndIsRefused(t *testing.T) {
	var from endless
	taken := allocated(func() {
		var fault *worksheets.FileError
		if _, err := worksheets.Read("standard input", &from); !errors.As(err, &fault) {
			t.Errorf("error %v, want a *FileError", err)
		}
	})
	if from.given > worksheets.MaxBytes+1 || taken > most {
		t.Errorf("%d bytes were taken from it, and %d bytes of memory", from.given, taken)
	}
}

func TestAStreamThatFailsIsAnErrorWithItsName(t *testing.T) {
	from := io.MultiReader(strings.NewReader("[body]\n"), failing{})
	if _, err := worksheets.Read("standard input", from); err == nil || err.Error() != "standard input: the line was cut" {
		t.Errorf("error %v", err)
	}
	d, err := worksheets.Read("standard input", strings.NewReader("[body]\nbust = \"39\"\n"))
	if err != nil || d.Sheet.Text(worksheets.Bust) != "39" {
		t.Errorf("a whole stream: %v", err)
	}
}

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errors.New("the line was cut") }

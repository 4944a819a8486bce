package drill

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/exp/golden"
	"github.com/ledongthuc/pdf"

	"capscye/ui/internal/props"
	"capscye/ui/paper"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// A seed gives the same problems on every machine and in every version: a class
// can be told a seed. A change here breaks that promise.
func TestDrillAsPrinted(t *testing.T) {
	for level := 1; level <= Levels; level++ {
		for seed := uint64(1); seed <= 3; seed++ {
			t.Run(fmt.Sprintf("level-%d-seed-%d", level, seed), func(t *testing.T) {
				out := text(NewLesson(seed, level, 2))
				for _, l := range strings.Split(out, "\n") {
					if len([]rune(l)) > typeset.PrintWidth {
						t.Errorf("%d columns: %q", len([]rune(l)), l)
					}
				}
				golden.RequireEqual(t, out)
			})
		}
	}
}

// drillSays gives lines to a drill, and what it says.
func drillSays(t *testing.T, args string, lines ...string) string {
	t.Helper()
	in := strings.Join(lines, "\n")
	if in != "" {
		in += "\n"
	}
	status, out, errs := run(in, append([]string{"drill"}, strings.Fields(args)...)...)
	if status != 0 || errs != "" {
		t.Errorf("drill %s: status %d, %q", args, status, errs)
	}
	return out
}

// The front of seed 3 is 11 3/8 between cut edges, with a centre seam, allowances
// of 1/2 and a dart of 1/4: 11 3/8 - 1 - 1/4 = 10 1/8. The back is 11 1/2 with a
// pleat of 5/8: 9 7/8. Around it is 2 x 20 = 40.
const drillOfThree = "--seed 3 --level 1 --count 1"

// A length is right in any way of writing it.
func TestDrillTakesAnyWayOfWriting(t *testing.T) {
	for _, text := range []string{
		"10 1/8", "10-1/8", "10⅛", "10.125", "10,125", ` 10 1/8" `, "10 2/16 in", "25.7175 cm", "257,175mm",
	} {
		props.Says(t, drillSays(t, drillOfThree, text), "Right: 10 1/8 in.", "- Bust back width", "flat widths                        1            0      0")
	}
}

// A wrong answer is told apart by what it looks like; one that looks like nothing
// gives nothing away.
func TestDrillRecognisesSlips(t *testing.T) {
	out := drillSays(t, drillOfThree, "11 1/8", "10 5/8", "4", "10.2", "10 1/8", "9 7/8", "20", "40")
	props.Says(t, out,
		"Bust front width", "Not right. It looks as if the allowances were left on.", // 11 3/8 - 1/4
		"Bust front width", "Not right. It looks as if the allowance was taken off once instead of twice", // 11 3/8 - 1/2 - 1/4
		"Bust front width", "Not right. Once more; ? shows the working.",
		"Bust front width", "Not right. Once more; ? shows the working.", "Right: 10 1/8 in.",
		"Bust back width", "Right: 9 7/8 in.",
		"Bust flat width", "It looks as if front + back was not doubled", "Right: 40 in.",
		"Score, level 1, seed 3: 3 of 3 steps done.", "flat widths                        1            2      0",
		"once     the allowances were left on", "once     the allowance was taken off once", "once     front + back was not doubled")
	if before, _, _ := strings.Cut(out, "Right:"); strings.Contains(before, "10 1/8") {
		t.Errorf("the right answer is given away:\n%s", before)
	}
}

// Where two slips give the same, both are named. In seed 2 of level 4 the sleeve side
// needs 1 7/16 with a limit of 1, the bodice side 7/16 with a limit of 1/2: who slides
// nothing ignored the limit, or looked at the bodice only.
func TestDrillNamesBothSlips(t *testing.T) {
	props.Says(t, drillSays(t, "--seed 2 --level 4 --count 1", "?", "?", "?", "?", "?", "?", "?", "0", "0", "7/16"),
		"Front and back slide, the least?",
		"as if the limit was ignored, and everything pivoted; or as\nif only the bodice was matched", "Right: 7/16 in.",
		"2  times the limit was ignored", "2  times only the bodice was matched")
}

// The working is shown when asked for, by ? or an empty line, and the step counts
// as shown.
func TestDrillShowsTheWorking(t *testing.T) {
	for _, ask := range []string{"?", "", "  ", " ? "} {
		props.Says(t, drillSays(t, drillOfThree, "4", ask, "quit"),
			"bust front width\n      = bodice front width 11 3/8 - 2 x seam allowance of the bodice 1/2 - take-\n        off of the front 1/4 = 10 1/8 in",
			"- Bust back width", "1 of 3 steps done", "flat widths                        0            0      1")
	}
}

// A drill in which anything was answered, right or wrong, has begun; what cannot be read
// is no answer.
func TestDrillHasBegun(t *testing.T) {
	for text, want := range map[string]bool{"10 1/8": true, "4": true, "?": true, "ten": false} {
		l := NewLesson(3, 1, 1)
		if l.Answer(text); l.Begun() != want {
			t.Errorf("after %q begun is %v", text, !want)
		}
	}
}

// What reads as no length is explained, asked again, and counts for nothing.
func TestDrillExplainsWhatItCannotRead(t *testing.T) {
	props.Says(t, drillSays(t, drillOfThree, "ten", "10 1/8 1/8", "10 1/8"),
		`Cannot read "ten" at character 1, 't': a digit is wanted here`, "This does not count as an answer.",
		"- Bust front width", "a second number", "Right: 10 1/8 in.", "flat widths                        1            0      0")
}

// quit and the end of the input both end with the score.
func TestDrillEnds(t *testing.T) {
	for _, lines := range [][]string{{"quit"}, {" Quit "}, {}, {"10 1/8"}, {"10 1/8", "QUIT", "9 7/8"}} {
		out := drillSays(t, drillOfThree, lines...)
		want := min(len(lines), 1)
		if strings.EqualFold(strings.TrimSpace(strings.Join(lines, "")), "quit") {
			want = 0
		}
		props.Says(t, out, fmt.Sprintf("Score, level 1, seed 3: %d of 3 steps done.", want))
	}
	if _, out, _ := run("10 1/8", "drill", "--seed", "3", "--count", "1"); !strings.Contains(out, "1 of 3 steps") {
		t.Errorf("a last line without its end is lost:\n%s", out)
	}
}

// Without a seed one is drawn from the clock, and said.
func TestDrillFlags(t *testing.T) {
	props.Says(t, drillSays(t, ""), fmt.Sprintf("Drill, level 1, seed %d, 5 problems\n", ClockSeed(props.SomeDay)))
	props.Says(t, drillSays(t, "--count 1 --seed 18446744073709551615"), "seed 18446744073709551615, 1 problem\n")
	for args, want := range map[string]string{
		"--level 6":        `--level "6" is not taken; a whole number from 1 to 5 is`,
		"--level easy":     `--level "easy" is not taken; a whole number from 1 to 5 is`,
		"--count 0":        `--count "0" is not taken; a whole number from 1 to 100 is`,
		"--count 101":      `--count "101" is not taken`,
		"--seed -1":        `--seed "-1" is no seed; a whole number from 0 to 18446744073709551615 is`,
		"blouse.toml":      `drill takes no file, and "blouse.toml" was named`,
		"--paper a.doc":    `a sheet of problems is written as .pdf or .txt, and not as ".doc"`,
		"--paper no/a.txt": "no/a.txt: there is no such folder",
	} {
		if status, out, errs := run("", append([]string{"drill"}, strings.Fields(args)...)...); status != 2 || out != "" || !strings.Contains(errs, want) {
			t.Errorf("drill %s: status %d, %q, %q", args, status, out, errs)
		}
	}
}

// Everything that can be drawn or go wrong has its words.
func TestDrillHasWords(t *testing.T) {
	seen := map[string]bool{}
	for _, words := range [][]string{misstepWords[:], wearers[:], garments[:], stepKindWords[:], outcomeWords[:]} {
		for i, w := range words {
			if w == "" || seen[w] {
				t.Errorf("%d: %q is empty or stands twice", i, w)
			}
			seen[w] = true
		}
	}
}

func TestDrillOnPaper(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, name := range []string{"class.pdf", "class.txt", "class.PDF"} {
		for range 2 { // the second time it is a sheet of problems of ours
			if status, out, errs := run("", "drill", "--paper", name); status != 0 || out != name+" is written.\n" || errs != "" {
				t.Errorf("%s: status %d, %q, %q", name, status, out, errs)
			}
		}
	}
	for _, name := range []string{"notes.txt", "bought.pdf"} {
		os.WriteFile(name, []byte("not ours"), 0o644)
		status, _, errs := run("", "drill", "--paper", name)
		if status != 2 || !strings.Contains(errs, name+" is there already, and is no sheet of problems; nothing was written over it") || props.Read(t, name) != "not ours" {
			t.Errorf("%s: status %d, %q", name, status, errs)
		}
	}
	if out := props.Read(t, "class.txt"); strings.Count(out, "\f") != 1 || !strings.Contains(out, wording.Cautions[0]) {
		t.Errorf("class.txt:\n%s", out)
	}
}

// The PDF is read back: who repeats it finds seed and level, every question has its
// line to write on, the answers are on pages of their own, and nothing lies off
// the paper.
func TestDrillPDF(t *testing.T) {
	for level := 1; level <= Levels; level++ {
		l := NewLesson(11, level, 5)
		out, err := content("class.pdf", l, props.SomeDay)
		if err != nil {
			t.Fatal(err)
		}
		reader, err := pdf.NewReader(bytes.NewReader(out), int64(len(out)))
		if err != nil {
			t.Fatal(err)
		}
		problems, key, inKey := "", "", false
		for i := 1; i <= reader.NumPage(); i++ {
			page := reader.Page(i)
			box := props.MediaBox(page)
			width, height := box.Index(2).Float64(), box.Index(3).Float64()
			for _, text := range page.Content().Text {
				if text.X < paper.Margin/props.MillimetresPerPoint-1 || text.X+text.W > width-8/props.MillimetresPerPoint || text.Y < paper.Margin/props.MillimetresPerPoint-3 || text.Y > height {
					t.Fatalf("level %d, page %d: %q at %v, %v lies off the paper", level, i, text.S, text.X, text.Y)
				}
			}
			text := props.PageText(t, page)
			inKey = inKey || strings.Contains(text, "Answer key.")
			if inKey {
				key += text
			} else {
				problems += text
			}
		}
		again := fmt.Sprintf("capscye drill --level %d --seed 11 --count 5", level)
		for _, w := range []string{fmt.Sprintf("Drill, level %d, seed 11, 5 problems", level), "Name ____", again, wording.Cautions[0], "Problem 5 of 5."} {
			if !strings.Contains(problems, w) {
				t.Errorf("level %d: %q is not among the problems", level, w)
			}
		}
		for _, p := range l.problems {
			for _, q := range p.Questions {
				if !strings.Contains(problems, AskWords(q)) {
					t.Errorf("level %d: %q is not asked", level, AskWords(q))
				}
				line := wording.WorkingLine(q.Lines[len(q.Lines)-1], Scale(p))
				if !strings.Contains(props.Unspaced(key), props.Unspaced(line)) { // it may be broken into lines
					t.Errorf("level %d: %q is not in the key", level, line)
				}
				if strings.Contains(props.Unspaced(problems), props.Unspaced(line)) {
					t.Errorf("level %d: the problems give %q away", level, line)
				}
			}
		}
		if want := [2]float64{215.9, 279.4}; level < 5 {
			box := props.MediaBox(reader.Page(1))
			if w, h := box.Index(2).Float64()*props.MillimetresPerPoint, box.Index(3).Float64()*props.MillimetresPerPoint; math.Abs(w-want[0]) > 0.1 || math.Abs(h-want[1]) > 0.1 {
				t.Errorf("level %d is on paper of %v x %v mm", level, w, h)
			}
		}
	}
}

// FuzzDrill answers with anything: no panic, it ends with a score, and nothing that
// could steer a terminal comes out.
func FuzzDrill(f *testing.F) {
	f.Add([]byte("10 1/8\n?\nquit\n"), uint8(0), uint64(3))
	f.Add([]byte("\n\n\n\r\n 34,9 cm\n"), uint8(4), uint64(1))
	f.Add([]byte("\x1b[2J\n\x00\x07\n\xff\xfe\n\u202e13\n\u009b\n"), uint8(2), uint64(0))
	f.Add(bytes.Repeat([]byte("9"), 5000), uint8(3), uint64(1<<63))
	f.Add([]byte("QUIT"), uint8(1), uint64(2))
	f.Fuzz(func(t *testing.T, in []byte, level uint8, seed uint64) {
		if len(in) > 10_000 {
			in = in[:10_000]
		}
		status, out, errs := run(string(in), "drill", "--count", "2", "--seed", fmt.Sprint(seed), "--level", fmt.Sprint(level%Levels+1))
		if status != 0 || errs != "" || !utf8.ValidString(out) || !strings.Contains(out, "\nScore, level ") {
			t.Fatalf("status %d, %q\n%s", status, errs, out)
		}
		for _, r := range out {
			if r != '\n' && unicode.Is(unicode.C, r) {
				t.Fatalf("%q comes out", r)
			}
		}
	})
}

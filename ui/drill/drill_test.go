package drill

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/exp/golden"

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

// The sleeve of seed 3 is 15 7/8 between cut edges, with allowances of 1/2: 14 7/8. The
// front is 10 3/4, with an allowance of 5/8 and a dart of 1/2: 9 5/8. The back is
// 9 7/8 - 5/8 = 9 1/4. Around it is 2 x 18 7/8 = 37 3/4.
const drillOfThree = "--seed 3 --level 1 --count 1"

// A length is right in any way of writing it.
func TestDrillTakesAnyWayOfWriting(t *testing.T) {
	for _, text := range []string{
		"14 7/8", "14-7/8", "14⅞", "14.875", "14,875", ` 14 7/8" `, "14 14/16 in", "37.7825 cm", "377,825mm",
	} {
		props.Says(t, drillSays(t, drillOfThree, text), "Right: 14 7/8 in.\n- How wide is the front", "flat widths                        1            0      0")
	}
}

// A pocket calculator's decimal is right within half a mark of 1/8, and hears the fraction;
// half a mark off, or as a fraction, it is not. 14 7/8 and half of 1/8 are 14.9375.
func TestDrillTakesAPocketCalculator(t *testing.T) {
	for text, right := range map[string]bool{
		"14.9": true, "14,87": true, "14.88": true, "14.93": true, "14.82": true, "14.9 in": true, "14.9374": true, "14.9375": false, "14.8126": true, "14.8125": false,
		"14.94": false, "14.8": false, "14 9/10": false, "15": false, "14.": false,
	} {
		out := drillSays(t, drillOfThree, text)
		if said := strings.Contains(out, "Right: 14 7/8 in; "+text+" is close enough."); said != right {
			t.Errorf("%s: right is %v in\n%s", text, said, out)
		}
	}
	// In seed 2 of level 4 the slide is 5/16 and its mark 3/8: 0.3125 and 0.31 are the slide
	// that was not rounded, 0.38 is the mark.
	for text, want := range map[string]string{
		"0.31": "Not right. Try again", "0.3125": "you did not round to a mark", "0.38": "Right: 3/8 in; 0.38 is close enough.",
	} {
		props.Says(t, drillSays(t, "--seed 2 --level 4 --count 1", append(slices.Repeat([]string{"?"}, 10), text)...), want)
	}
	// Half a mark of 1/8 is 0.0625, and exactly that is off.
	for _, text := range []string{"14.9375", "14.8125"} {
		props.Says(t, drillSays(t, drillOfThree, text), "Not right.", "Level 1, seed 3: no step done.")
	}
	// In seed 27 of level 4 the slide is 1/16 and its mark 1/8: to one digit 0.1 is either,
	// and so is right; to two digits 0.06 is the slide that was not rounded.
	for text, want := range map[string]string{"0.1": "Right: 1/8 in", "0.06": "Not right.", "0.07": "Right: 1/8 in"} {
		props.Says(t, drillSays(t, "--seed 27 --level 4 --count 1", append(slices.Repeat([]string{"?"}, 9), text)...), "What slide do you mark", want)
	}
	// Centimetres are decimals already: the sleeve of seed 1 is 34 cm wide.
	props.Says(t, drillSays(t, "--seed 1 --level 5 --count 1", "34.1"), "Not right.")
}

// A wrong answer is told apart by what it looks like; one that looks like nothing
// gives nothing away.
func TestDrillRecognisesSlips(t *testing.T) {
	out := drillSays(t, drillOfThree, "15 7/8", "15 3/8", "4", "14 7/8", "10 1/8", "9 5/8", "9 1/4", "18 7/8", "37 3/4")
	props.Says(t, out,
		"How wide is the sleeve", "Not right. It looks as if you left the allowances on.",
		"How wide is the sleeve", "Not right. It looks as if you took off one allowance", // 15 7/8 - 1/2
		"How wide is the sleeve", "Not right. Try again, or type ? for the working.",
		"How wide is the sleeve", "Right: 14 7/8 in.",
		"How wide is the front", "It looks as if you left the dart or pleat in.", "Right: 9 5/8 in.", // 10 3/4 - 5/8
		"How wide is the back", "Right: 9 1/4 in.",
		"How wide is the bodice", "It looks as if you did not double", "Right: 37 3/4 in.",
		"Level 1, seed 3: 1 of 4 right, 3 after a try.", "flat widths                        1            3      0",
		"once     you left the allowances on", "once     you took off one allowance", "once     you left the dart", "once     you did not double")
	if before, _, _ := strings.Cut(out, "Right:"); strings.Contains(before, "14 7/8") {
		t.Errorf("the right answer is given away:\n%s", before)
	}
}

// Where two slips give the same, both are named. In seed 2 of level 4 the sleeve side
// needs 1 1/16 and the bodice side 13/16, with limits of 3/4: who slides 1/16 matched the
// bodice only.
func TestDrillNamesSlipsOfTheSlide(t *testing.T) {
	props.Says(t, drillSays(t, "--seed 2 --level 4 --count 1", append(slices.Repeat([]string{"?"}, 7), "0", "1/16", "5/16")...),
		"What is the least slide, front and back?",
		"as if you ignored the limit", "as if you matched only the bodice", "Right: 5/16 in.",
		"once     you ignored the limit", "once     you matched only the bodice")
}

// The working is shown for ?, and the step counts as shown. An empty line counts for
// nothing.
func TestDrillShowsTheWorking(t *testing.T) {
	for _, ask := range []string{"?", "??", " ? "} {
		props.Says(t, drillSays(t, drillOfThree, "4", ask, "quit"),
			"sleeve flat width\n      = sleeve width 15 7/8 - 2 x seam allowance of the sleeve 1/2 = 14 7/8 in",
			"- How wide is the front", "0 of 1 right, 1 shown.", "Still to do: 3 of 4.", "flat widths                        0            0      1")
	}
	for _, empty := range []string{"", "   ", "\t"} {
		props.Says(t, drillSays(t, drillOfThree, empty, "14 7/8"), "Type a length; ? shows the working.", "Right: 14 7/8 in.", "1 of 1 right.")
	}
}

// Who only hears has the problem again, with what is done.
func TestDrillSaysTheProblemAgain(t *testing.T) {
	out := drillSays(t, drillOfThree, "again", "14 7/8", " AGAIN ", "quit")
	if n := strings.Count(out, "The sleeve, laid flat, is 15 7/8 wide"); n != 3 {
		t.Errorf("the problem is said %d times, want 3:\n%s", n, out)
	}
	props.Says(t, out, "Done: sleeve flat width 14 7/8.", "1 of 1 right")
}

// A drill that is heard has no signs and no columns, from the problem to the score.
func TestDrillInSentences(t *testing.T) {
	out := drillSays(t, drillOfThree+" --sentences", "15 7/8", "14 7/8", "again", "x", "?", "quit")
	props.Heard(t, out)
	props.Says(t, out, "Problem 1 of ", "How wide is the sleeve, between seam lines?\nNot right.\n", "Right: 14 7/8 in.\n", "Done: sleeve flat width 14 7/8.\n", "The working.\nFront width between seam lines: bodice front width 10 3/4 minus seam allowance of the bodice 5/8 minus take-off of the front 1/2, that is 9 5/8 in.\n")
	_, score, _ := strings.Cut(out, "\nLevel 1")
	want := "Level 1, seed 3: 0 of 2 right, 1 after a try, 1 shown.\nStill to do: 2 of 4.\n" +
		"Flat widths: 0 of 2 right, 1 after a try, 1 shown.\nOnce it looked as if you left the allowances on.\n"
	if "Level 1"+score != want {
		t.Errorf("%q, want %q", "Level 1"+score, want)
	}
}

// Every working of every level can be heard.
func TestEveryWorkingCanBeHeard(t *testing.T) {
	for level := 1; level <= Levels; level++ {
		out := drillSays(t, fmt.Sprintf("--level %d --seed 15 --count 6 --sentences", level), slices.Repeat([]string{"?"}, 200)...)
		props.Heard(t, out)
		if strings.Contains(out, " x ") {
			t.Errorf("level %d: a sign is said:\n%s", level, out)
		}
	}
}

// A drill in which anything was answered, right or wrong, has begun; what cannot be read
// is no answer.
func TestDrillHasBegun(t *testing.T) {
	for text, want := range map[string]bool{"14 7/8": true, "4": true, "?": true, "ten": false, "": false} {
		l := NewLesson(3, 1, 1)
		if l.Answer(text); l.Begun() != want {
			t.Errorf("after %q begun is %v", text, !want)
		}
	}
}

// What reads as no length is explained, asked again, and counts for nothing.
func TestDrillExplainsWhatItCannotRead(t *testing.T) {
	props.Says(t, drillSays(t, drillOfThree, "ten", "14 7/8 1/8", "14 7/8"),
		`"ten"`, "This does not count as an answer.",
		"- How wide is the sleeve", "Right: 14 7/8 in.", "flat widths                        1            0      0")
	props.Says(t, drillSays(t, drillOfThree, strings.Repeat("9", 5000), "14 7/8"), "Too long: at most 2000 characters. This does not count as an answer.\n- How wide is the sleeve",
		"Right: 14 7/8 in.", "flat widths                        1            0      0")
}

// quit and the end of the input both end with the score.
func TestDrillEnds(t *testing.T) {
	for _, lines := range [][]string{{"quit"}, {" Quit "}, {}, {"14 7/8"}, {"14 7/8", "QUIT", "9 5/8"}} {
		out := drillSays(t, drillOfThree, lines...)
		want := "1 of 1 right.\nStill to do: 3 of 4."
		if len(lines) == 0 || strings.EqualFold(strings.TrimSpace(lines[0]), "quit") {
			want = "no step done.\nStill to do: 4 of 4."
		}
		props.Says(t, out, "Level 1, seed 3: "+want)
	}
	if _, out, _ := run("14 7/8", "drill", "--seed", "3", "--count", "1"); !strings.Contains(out, "1 of 1 right") {
		t.Errorf("a last line without its end is lost:\n%s", out)
	}
}

// Without a seed one is drawn from the clock, and said.
func TestDrillFlags(t *testing.T) {
	props.Says(t, drillSays(t, ""), fmt.Sprintf("Drill, level 1, 5 problems, seed %d\n", ClockSeed(props.SomeDay)))
	props.Says(t, drillSays(t, "--level 5"), "Drill, level 5, 2 problems, seed")
	props.Says(t, drillSays(t, "--count 1 --seed 18446744073709551615"), "1 problem, seed 18446744073709551615\n")
	for args, want := range map[string]string{
		"--level 7":                 `--level takes 1 to 6, not "7"`,
		"--level easy":              `--level takes 1 to 6, not "easy"`,
		"--count 0":                 `--count takes 1 to 100, not "0"`,
		"--count 101":               `--count takes 1 to 100, not "101"`,
		"--seed -1":                 `--seed takes a whole number, 0 or more, not "-1"`,
		"blouse.toml":               `drill takes no file, not "blouse.toml"; --paper NAME writes one`,
		"--replace":                 "--replace goes with --paper; add --paper NAME",
		"--sentences --paper a.txt": "choose --sentences or --paper, not both",
		"--paper a.doc":             `--paper takes a name that ends in .pdf or .txt, not ".doc"`,
		"--paper no/a.txt":          "no/a.txt: there is no such folder",
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

// Paper of the same drill is written again; that of another only if asked; what is no
// drill sheet never.
func TestDrillOnPaper(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, name := range []string{"class.pdf", "class.txt", "class.PDF"} {
		for range 2 {
			if status, out, errs := run("", "drill", "--paper", name, "--seed", "4", "--count", "5"); status != 0 || out != "Saved "+name+".\n" || errs != "" {
				t.Errorf("%s: status %d, %q, %q", name, status, out, errs)
			}
		}
		kept := props.Read(t, name)
		for _, other := range []string{"--seed 44 --count 5", "--seed 4 --count 50", "--seed 4 --level 2 --count 5"} {
			args := append([]string{"drill", "--paper", name}, strings.Fields(other)...)
			status, _, errs := run("", args...)
			if status != 2 || !strings.Contains(errs, name+" is another drill; name another file, or add --replace") || props.Read(t, name) != kept {
				t.Errorf("%s, %s: status %d, %q", name, other, status, errs)
			}
		}
		if status, _, errs := run("", "drill", "--paper", name, "--seed", "5", "--replace"); status != 0 || props.Read(t, name) == kept {
			t.Errorf("%s is not replaced: status %d, %q", name, status, errs)
		}
	}
	for _, name := range []string{"notes.txt", "bought.pdf"} {
		os.WriteFile(name, []byte("not ours"), 0o644)
		status, _, errs := run("", "drill", "--paper", name, "--replace")
		if status != 2 || !strings.Contains(errs, name+" exists and is not a drill sheet as capscye wrote it; left alone") || props.Read(t, name) != "not ours" {
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
	count := props.OfMany(3, 5) // most of them fill more than a page
	for level := 1; level <= Levels; level++ {
		l := NewLesson(11, level, count)
		out, err := content("class.pdf", l, props.SomeDay)
		if err != nil {
			t.Fatal(err)
		}
		reader := props.ReadPDF(t, out)
		problems, key, inKey := "", "", false
		for i := 1; i <= reader.NumPage(); i++ {
			page := reader.Page(i)
			box := props.MediaBox(page)
			width, height := box.Index(2).Float64(), box.Index(3).Float64()
			said := ""
			for _, text := range page.Content().Text {
				said += text.S
				if text.X < paper.Margin/props.MillimetresPerPoint-1 || text.X+text.W > width-8/props.MillimetresPerPoint || text.Y < paper.Margin/props.MillimetresPerPoint-3 || text.Y > height {
					t.Fatalf("level %d, page %d: %q at %v, %v lies off the paper", level, i, text.S, text.X, text.Y)
				}
			}
			inKey = inKey || strings.Contains(said, "Answer key.")
			if inKey {
				key += said
			} else {
				problems += said
			}
		}
		again := fmt.Sprintf("capscye drill --level %d --seed 11 --count %d.", level, count)
		if !strings.Contains(key, again) || strings.Contains(problems, "seed") {
			t.Errorf("level %d: the seed is on the problems, or not on the key", level)
		}
		for _, w := range []string{fmt.Sprintf("Drill, level %d, %d problems", level, count), "Name ____", wording.Cautions[0], fmt.Sprintf("Problem %d of %[1]d.", count)} {
			if !strings.Contains(problems, w) {
				t.Errorf("level %d: %q is not among the problems", level, w)
			}
		}
		n := 0
		for _, p := range l.problems {
			for _, q := range p.Questions {
				n++
				if !strings.Contains(props.Unspaced(problems), props.Unspaced(fmt.Sprintf("%d. %s", n, AskWords(q, p)))) {
					t.Errorf("level %d: %q is not asked", level, AskWords(q, p))
				}
				lines := workingLines(p, q)
				line := fmt.Sprintf("%d. %s", n, lines[len(lines)-1])
				if !strings.Contains(props.Unspaced(key), props.Unspaced(line)) { // it may be broken into lines
					t.Errorf("level %d: %q is not in the key", level, line)
				}
				if strings.Contains(props.Unspaced(problems), props.Unspaced(line)) {
					t.Errorf("level %d: the problems give %q away", level, line)
				}
			}
		}
		if want := [2]float64{215.9, 279.4}; level != 5 {
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
		if status != 0 || errs != "" || !utf8.ValidString(out) || !strings.Contains(out, "\nLevel ") {
			t.Fatalf("status %d, %q\n%s", status, errs, out)
		}
		for _, r := range out {
			if r != '\n' && unicode.Is(unicode.C, r) {
				t.Fatalf("%q comes out", r)
			}
		}
	})
}

package screen

import (
	rand "math/rand/v2"
	"os"
	"testing"

	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// anExampleInSizes looks at the sizes of a built-in example, in an empty folder.
func anExampleInSizes(t *testing.T) *robot.Robot {
	t.Helper()
	t.Chdir(t.TempDir())
	r := sit(t, nil, 80, 24)
	r.Tell(openingExample("market-smock", nil))
	return r.Press("f3", "ctrl+b").Sees("Sizes of the pattern")
}

// In an example every size can be taken in hand and typed into, as a what-if: it is asked
// once, the key that asked does then what it does, and in the copy nobody is asked again.
func TestTheSizesOfAnExampleAreTried(t *testing.T) {
	r := anExampleInSizes(t).Press("right", "enter").Sees("Your own worksheet?", "w      only try it here").DoesNotSee("You typed").Press("w")
	r.Sees("Sizes of the pattern, copy 1", "> Size                 [18 ", "> You are in a copy; the example stays as it is. Esc, then ^x drops the copy.").Fits()
	r.Press("down", "down", "down").Types("17").Press("down").DoesNotSee("Your own worksheet?").Sees("> Cap height", "17 in").Press("right", "up").Types("15").Press("down").Sees("15 in")
	d := rootOf(r).desk
	if d.Doc.Changed() || len(d.Copies) != 1 {
		t.Errorf("the example was changed, or has %d copies", len(d.Copies))
	}
	if now := d.Copies[0]; now.Text(worksheets.PatternSize) != "18" || now.Text(worksheets.SleeveWidth) != "17" || now.Sizes[0].Text(worksheets.SleeveWidth) != "15" {
		t.Errorf("the copy is %+v", now)
	}
	r.Press("ctrl+c").Sees("The copies are not saved.") // nobody drops it unasked

	r = anExampleInSizes(t).Press("right", "down", "down", "down").Types("17").Press("down")
	r.Sees("Your own worksheet?", "You typed sleeve width of size 18: 17.").Press("w").Sees("copy 1", "> Cap height", "17 in").Press("esc").Sees("[copy 1 of 1, not saved]")
	anExampleInSizes(t).Press("right", "ctrl+x").Sees("Your own worksheet?").Press("w").Sees("copy 1", "[16  ").Press("ctrl+z").Sees("Undone: size 18 removed.", "[18  ")
}

// Nothing that is typed at the sizes of an example is dropped: it stands in its cell behind
// the question, and can be the first answer of a worksheet of one's own.
func TestNothingTypedAtTheSizesOfAnExampleIsDropped(t *testing.T) {
	for _, key := range []string{"down", "enter", "f1", "ctrl+c", "ctrl+z", "ctrl+s"} {
		r := anExampleInSizes(t).Press("right", "down", "down", "down").Types("17").Press(key).Sees("Your own worksheet?", "with this answer").Press("esc")
		r.Sees("> Sleeve width", "[17  ").Press(key, "enter", "esc").Sees("[17  ")
		r.Press(key, "enter").Types("mine").Press("enter", "i", "enter").Sees("mine.toml")
		d, err := worksheets.Load("mine.toml")
		if err != nil {
			t.Fatal(err)
		}
		if z := d.Sheet.Sizes; len(z) != 1 || z[0].Name() != "18" || z[0].Text(worksheets.SleeveWidth) != "17" || d.Sheet.Text(worksheets.SleeveWidth) != "" {
			t.Errorf("after %s the sizes are %+v", key, z)
		}
	}
	r := anExampleInSizes(t).Press("right", "right", "right").Types("22 W").Press("down").Sees("You typed another size: 22 W.").Press("esc").Sees("[22 W").Press("down", "w").Sees("> Chart: bust", "22 W")
	r.Press("left", "left", "down", "down").Types("17 x").Press("down").Sees("the answer stays", "17 x?").DoesNotSee("Your own")

	r = anExampleInSizes(t).Press("right", "down", "down", "down").Types("17 x").Press("down").Sees("the answer stays", "17 x?").DoesNotSee("Your own")
	r.Press("up").Types("17").Press("down").Sees("Your own")
	if r.Tell(signalMsg{status: 143}); !r.Ended || len(rootOf(r).desk.Copies) != 1 || rootOf(r).desk.Copies[0].Sizes[0].Text(worksheets.SleeveWidth) != "17" {
		t.Errorf("ended: %v, with the copies %+v", r.Ended, rootOf(r).desk.Copies)
	}
}

// With three copies of an example nothing is typed away.
func TestAFourthCopyOfAnExampleIsRefused(t *testing.T) {
	r := anExampleInSizes(t).Press("esc", "ctrl+l", "ctrl+g", "ctrl+l", "ctrl+g", "ctrl+g", "ctrl+l", "ctrl+g", "ctrl+b", "right", "down", "down", "down").Types("17").Press("down", "w")
	r.Sees("has 3 copies: esc, then ^x drops one.", "> Sleeve width", "[17 ")
}

// After a question about saving, and behind the page of keys, the page is there again.
func TestThePageOfSizesComesBack(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, answer := range []string{"esc", "s"} {
		inline := "version = 1\nbody = { bust = \"46\" } # in one line\npattern = { size = \"20\" }\nsize = [{ name = \"18\" }]\n"
		if err := os.WriteFile("sheet.toml", []byte(inline), 0o644); err != nil {
			t.Fatal(err)
		}
		d, err := worksheets.Load("sheet.toml")
		if err != nil {
			t.Fatal(err)
		}
		r := sit(t, d, 80, 24).Press("f3", "ctrl+b", "right", "down").Types("44").Press("down").Sees("lose its comments").Press(answer)
		r.Sees("Sizes of the pattern", "44 in", "> Chart: high bust")
	}

	r := sizesOf(t, 80, 24).Press("right", "down", "down", "down").Types("17").Press("ctrl+k").Sees("Keys   of the sizes", "removes the size", "takes that size in hand").Fits().Press("esc").Sees("> Sleeve width", "[17 ")
	r.Press("ctrl+r").Sees("> ^r works in the steps; esc goes back there.", "[17 ").Press("esc", "?").Sees("Keys   of the sizes").Press("x").Sees("> Sleeve width")
	r.Types("17").Press("f1").Sees("[1 Body]")
	if now := smock(t); now.Sizes[0].Text(worksheets.SleeveWidth) != "17" {
		t.Errorf("the size is %+v", now.Sizes[0])
	}
	r.Press("f3", "ctrl+b", "esc").Sees("The pattern, laid flat").Press("ctrl+k", "esc").Sees("The pattern, laid flat")
}

// Whatever keys are pressed at the sizes, an example stays what it was, every size of a
// file can be read, and the page fits its window.
func TestAnyKeysAtTheSizes(t *testing.T) {
	keys := []string{"up", "down", "left", "right", "up", "down", "left", "right", "tab", "enter", "enter", "esc", "pgup", "pgdown", "1", "6", " ", "/", "2", "x", "w", "s", "?", "backspace", "delete", "home",
		"ctrl+u", "ctrl+a", "ctrl+b", "ctrl+b", "ctrl+g", "ctrl+k", "ctrl+l", "ctrl+r", "ctrl+s", "ctrl+t", "ctrl+x", "ctrl+y", "ctrl+z", "f1", "f3", "f3", "f4"}
	random := rand.New(rand.NewPCG(15, 2))
	for run := range 40 {
		r := sizesOf(t, 80, 24)
		if run%2 == 0 {
			r = anExampleInSizes(t)
		}
		var pressed []string
		for range 80 {
			pressed = append(pressed, keys[random.IntN(len(keys))])
			r.Press(pressed[len(pressed)-1]).Fits()
		}
		d := rootOf(r).desk
		if d.IsExample() {
			d.Doc.Sheet.Done = nil
			if d.Doc.Changed() {
				t.Fatalf("the example is changed by %q", pressed)
			}
			continue
		}
		if p := d.Doc.Problems(); len(p) > 0 {
			t.Fatalf("%v after %q", p, pressed)
		}
	}
}

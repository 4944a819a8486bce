package screen

import (
	"fmt"
	rand "math/rand/v2"
	"slices"
	"strings"
	"testing"

	"capscye/ui/internal/robot"
	"capscye/worksheets"
)

// Whatever keys are pressed, the file never loses an answer that reads, but where the
// field was emptied, by undo, redo or a copy that takes the sheet's place, or by an esc that
// brings back a field that was empty when the hands came; and it never gets one that does not read. The rounds that break it are counted.
func TestNoSlipOfTheHandCostsAnAnswer(t *testing.T) {
	const rounds = 40
	broken := 0
	for n := range rounds {
		if why := slip(t, uint64(n)); why != "" {
			broken++
			t.Errorf("round %d: %s", n, why)
		}
	}
	t.Logf("%d of %d rounds lost an answer", broken, rounds)
}

// slipKeys are what hands press in a form and around it, slips included. Words of
// several characters come at once, as from a paste.
var slipKeys = strings.Fields(`1 3 4 7 0 5 9 1 3 4 / . , - + d x e l k s n a c w space space 141/2 38 thirty 13-3/4 let
	backspace delete left right up down left right up down tab shift+tab enter enter esc home end ctrl+u
	pgdown pgup f1 f2 f3 f4 f6 ctrl+z ctrl+y ctrl+l ctrl+g ctrl+x+k ctrl+x+d ctrl+x+esc ctrl+t ctrl+s ctrl+k`)

// emptying are the keys that take something out of a field.
var emptying = []string{"backspace", "delete", "ctrl+u"}

// slip presses random keys on a sheet with a file, and tells what answer was lost, by
// which keys.
func slip(t *testing.T, seed uint64) (why string) {
	random := rand.New(rand.NewPCG(seed, 1280))
	examples := worksheets.Examples()
	r := sitWithFile(t, examples[random.IntN(len(examples))], 80, 24)
	r.Press(fmt.Sprintf("f%d", 1+random.IntN(4)))
	before, pressed := onDisk(t), []string{}
	emptied := map[worksheets.Key]bool{} // since the field was reached
	came := before
	for i := 0; i < 80 && !r.Ended; i++ {
		key := slipKeys[random.IntN(len(slipKeys))]
		if i == 79 {
			key = "ctrl+c"
		}
		at, inForm := rootOf(r).desk.Focused()
		if inForm && slices.Contains(emptying, key) {
			emptied[at] = true
		}
		press(r, key)
		pressed = append(pressed, key)
		now := onDisk(t)
		for _, k := range worksheets.Keys() {
			was, is := before.Text(k), now.Text(k)
			switch {
			case now.Check(k) != nil && before.Check(k) == nil:
				return fmt.Sprintf("%v was %q and is %q, which does not read, by %q", k, was, is, pressed)
			case was != "" && is == "" && !(k == at && emptied[k]) && !slices.Contains([]string{"ctrl+z", "ctrl+y", "ctrl+x+k"}, key):
				if strings.Contains(key, "esc") && k == at && came.Text(k) == "" {
					continue
				}
				return fmt.Sprintf("%v was %q and is empty, by %q", k, was, pressed)
			}
		}
		if to, _ := rootOf(r).desk.Focused(); to != at {
			clear(emptied)
			came = now
		}
		before = now
	}
	return ""
}

// press presses a key, several of them in one after the other, or pastes a text.
func press(r *robot.Robot, key string) {
	switch on, decision, two := strings.Cut(key, "+x+"); {
	case two:
		r.Press(on+"+x", decision)
	case key == "space":
		r.Press(" ")
	case len(key) > 1 && strings.Trim(key, "0123456789/-") == "" || key == "thirty" || key == "let":
		r.Tell(robot.Pasted(key))
	default:
		r.Press(key)
	}
}

func onDisk(t *testing.T) worksheets.Sheet {
	t.Helper()
	d, err := worksheets.Load("sheet.toml")
	if err != nil {
		t.Fatal(err)
	}
	return d.Sheet
}

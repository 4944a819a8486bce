//go:build linux

package screen

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	rand "math/rand/v2"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"capscye/calc"
	"capscye/ui/forms"
	"capscye/ui/internal/props"
	"capscye/ui/parts"
	"capscye/ui/report"
	"capscye/worksheets"
)

// TestMeasure prints what capscye costs beside the least that does anything on
// the same libraries, as the table of DEVELOPERS.md. It fails for nothing that is
// slow. It runs only when asked for:
//
//	CAPSCYE_MEASURE=1 go test ./ui/screen -count=1 -v -run TestMeasure
func TestMeasure(t *testing.T) {
	if os.Getenv("CAPSCYE_MEASURE") == "" {
		t.Skip("set CAPSCYE_MEASURE=1 to measure; it takes two or three minutes")
	}
	r := newRig(t)
	table := [][4]string{{"what", "capscye", "beside it", "bar"}}
	for _, rows := range []func() [][4]string{r.starts, r.keys, r.idles, r.runs, r.frames, r.sizes} {
		table = append(table, rows()...)
	}
	fmt.Printf("\nMeasured %s on %s, %s.\n\n", time.Now().Format(time.DateOnly), machine(), runtime.Version())
	for i, row := range table {
		fmt.Println("| " + strings.Join(row[:], " | ") + " |")
		if i == 0 {
			fmt.Println("|---|---|---|---|")
		}
	}
	fmt.Println()
}

// row sets two figures beside each other.
func row[T time.Duration | float64](what string, mine, other T, words func(T) string, bar string) [4]string {
	return [4]string{what, words(mine), fmt.Sprintf("%s (%.2f x)", words(other), float64(mine)/float64(other)), bar}
}

func milliseconds(d time.Duration) string { return fmt.Sprintf("%.1f ms", d.Seconds()*1e3) }

func megabytes(b float64) string { return fmt.Sprintf("%.1f MB", b/1e6) }

// starts measures the way from the start to the first whole frame.
func (r *rig) starts() [][4]string {
	var mine, bare []time.Duration
	for range 40 {
		w := r.launch(r.capscye, r.sheet)
		mine = append(mine, w.firstFrame())
		w.end()
		w = r.launch(r.bare)
		bare = append(bare, w.firstFrame())
		w.end()
	}
	return [][4]string{row("start to first frame, median of 40", quantile(mine, 0.5), quantile(bare, 0.5), milliseconds, "1.25 x")}
}

// keys measures the way from a key to its changed frame: typing in step 1, then
// pushing the slide in step 4, where every push is saved. The other program gets
// the very same keys; its cursor moves where the slide is pushed.
func (r *rig) keys() (rows [][4]string) {
	mine, bare := r.launch(r.capscye, r.sheet), r.launch(r.bare)
	defer r.layOut()
	mine.firstFrame()
	bare.firstFrame()
	const back, left, right = "\x7f", "\x1b[D", "\x1b[C"
	typing := []string{"1", "3", " ", "1", "/", back, back, back, back, back} // the keys are whole circles, and leave nothing
	pushing := slices.Concat(slices.Repeat([]string{left}, 5), slices.Repeat([]string{right}, 5))
	rows = append(rows, r.inTurns("typing", mine, bare, typing)...)
	mine.press("13 3/4\x1bOS") // the fourth step
	bare.press("13 3/4")
	mine.quiet(100 * time.Millisecond)
	for range 5 { // to where there is room to the left
		mine.frame(right)
		mine.quiet(50 * time.Millisecond)
	}
	rows = append(rows, r.inTurns("pushing the slide", mine, bare, pushing)...)
	mine.end()
	bare.end()
	return rows
}

// pressed is how many keys: a frame waits for the next tick of the screen, so the
// times are spread evenly over 8 ms, and the median of 200 would still stray by a
// twentieth.
const pressed = 600

// inTurns presses the keys, in a circle, first in the one program and then in the
// other, at moments that do not keep step with the frames.
func (r *rig) inTurns(what string, a, b *watched, circle []string) (rows [][4]string) {
	rng := rand.New(rand.NewPCG(1, 2))
	var mine, bare []time.Duration
	for i := range pressed {
		for w, times := range map[*watched]*[]time.Duration{a: &mine, b: &bare} {
			w.quiet(30 * time.Millisecond)
			time.Sleep(time.Duration(rng.IntN(9000)) * time.Microsecond)
			*times = append(*times, w.frame(circle[i%len(circle)]))
		}
	}
	for _, q := range []float64{0.5, 0.95, 0.99} {
		rows = append(rows, row(fmt.Sprintf("%s at 120 x 40: key to changed frame, p%.0f of %d", what, 100*q, pressed),
			quantile(mine, q), quantile(bare, q), milliseconds, "1.2 x"))
	}
	return rows
}

// idles measures what is used while nobody does anything, and the memory then.
func (r *rig) idles() [][4]string {
	const time20 = 20 * time.Second
	mine, bare := r.launch(r.capscye, r.sheet), r.launch(r.bare)
	mine.firstFrame()
	bare.firstFrame()
	time.Sleep(time.Second)
	written, writtenBare := mine.size(), bare.size()
	used, ok := mine.processorTime()
	usedBare, _ := bare.processorTime()
	time.Sleep(time20)
	after, _ := mine.processorTime()
	afterBare, _ := bare.processorTime()
	now, most, _ := mine.resident()
	nowBare, _, _ := bare.resident()
	rows := [][4]string{
		{"idle for 20 s: bytes written", fmt.Sprint(mine.size() - written), fmt.Sprint(bare.size() - writtenBare), "0"}}
	if ok {
		rows = append(rows, row("idle for 20 s: processor time", after-used, afterBare-usedBare, milliseconds, "1 x"),
			row("resident", float64(now)*1024, float64(nowBare)*1024, megabytes, "30 MB"),
			[4]string{"resident at most", megabytes(float64(most) * 1024), "", "30 MB"})
	}
	mine.end()
	bare.end()
	return rows
}

// runs measures the commands that print and end.
func (r *rig) runs() (rows [][4]string) {
	for _, args := range [][]string{{"--version"}, {"show", r.sheet}} {
		var mine, least []time.Duration
		for range 60 {
			mine = append(mine, r.wholeRun(r.capscye, args...))
			least = append(least, r.wholeRun(r.hello))
		}
		a, b := quantile(mine, 0.5), quantile(least, 0.5)
		rows = append(rows, [4]string{"`" + args[0] + "`, median of 60", milliseconds(a),
			fmt.Sprintf("%s for hello world (%+.1f ms)", milliseconds(b), (a-b).Seconds()*1e3), "+10 ms"})
	}
	return rows
}

// frames measures what is drawn and reckoned, within this process.
func (r *rig) frames() (rows [][4]string) {
	for _, s := range []forms.Step{forms.Body, forms.Split, forms.Match, forms.Trace} {
		m := lit(r.t, 120, 40)
		m.desk.StepNamed(fmt.Sprintf("f%d", s+1))
		took := testing.Benchmark(func(b *testing.B) {
			for b.Loop() {
				m.desk.Rep.Derived = m.desk.Rep.Derive() // as after a change: nothing is kept from the frame before
				m.View()
			}
		})
		rows = append(rows, [4]string{fmt.Sprintf("one frame at 120 x 40 of a changed sheet, step %d", s+1), fmt.Sprintf("%.2f ms", float64(took.NsPerOp())/1e6), "", "1 ms"})
	}
	in := report.Input(&lit(r.t, 120, 40).desk.Doc.Sheet, props.SomeDay)
	took := testing.Benchmark(func(b *testing.B) {
		for b.Loop() {
			calc.Compute(in)
		}
	})
	return append(rows, [4]string{"one plan", fmt.Sprintf("%.1f us", float64(took.NsPerOp())/1e3), "", "20 us"})
}

// lit is the screen with the example on it, in colour.
func lit(t testing.TB, width, height int) *root {
	d, err := worksheets.Example("choir-blouse")
	if err != nil {
		t.Fatal(err)
	}
	m := &root{styles: parts.NewStyles(os.Stdout, termenv.ANSI, true), today: props.SomeDay}
	m.opened(openedMsg{doc: d})
	m.resize(width, height)
	return m
}

// sizes measures the programs as they are built, and as one would hand them out.
func (r *rig) sizes() (rows [][4]string) {
	size := func(path string) float64 {
		info, err := os.Stat(path)
		if err != nil {
			r.t.Fatal(err)
		}
		return float64(info.Size())
	}
	return [][4]string{row("program, `go build`", size(r.capscye), size(r.bare), megabytes, "2 x"),
		row("program, `go build -trimpath -ldflags \"-s -w\"`", size(r.releaseCapscye), size(r.releaseBare), megabytes, "2 x")}
}

// quantile is the smallest value that a part of all does not exceed.
func quantile[T cmp.Ordered](all []T, q float64) T {
	sorted := slices.Sorted(slices.Values(all))
	return sorted[max(0, int(math.Ceil(q*float64(len(sorted))))-1)]
}

// machine is what was measured on, as far as it says.
func machine() string {
	model := "a processor that does not say its name"
	if info, err := os.ReadFile("/proc/cpuinfo"); err == nil {
		if _, rest, ok := bytes.Cut(info, []byte("model name\t: ")); ok {
			name, _, _ := bytes.Cut(rest, []byte("\n"))
			model = string(name)
		}
	}
	kernel, _ := exec.Command("uname", "-sr").Output()
	return fmt.Sprintf("%s, %d cores, %s/%s, %s", model, runtime.NumCPU(), runtime.GOOS, runtime.GOARCH, strings.TrimSpace(string(kernel)))
}

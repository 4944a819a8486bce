package roster

import (
	"io"
	"os"
	"runtime"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/BurntSushi/toml"

	"capscye/ui/console"
)

// What a large folder costs beside reading its files and nothing else, in turns, the median
// of each; and beside reading them with the library of TOML, which is what everybody else's
// programs do. CAPSCYE_MEASURE=1 prints the figures; they fail for nothing.
func TestMeasureALargeFolder(t *testing.T) {
	if os.Getenv("CAPSCYE_MEASURE") == "" {
		t.Skip("CAPSCYE_MEASURE=1 measures")
	}
	folder, paths := manySheets(t, 10_000)
	each := func(workers int, do func(path string)) func() {
		return func() {
			var wg sync.WaitGroup
			for w := range workers {
				wg.Go(func() {
					for i := w; i < len(paths); i += workers {
						do(paths[i])
					}
				})
			}
			wg.Wait()
		}
	}
	read := func(path string) { _, _ = os.ReadFile(path) }
	decode := func(path string) {
		source, _ := os.ReadFile(path)
		var tree map[string]any
		_, _ = toml.Decode(string(source), &tree)
	}
	command := func(args ...string) func() {
		return func() {
			if status := runWith(nil, io.Discard, io.Discard, args...); status != console.ExitWell {
				t.Fatalf("%.3s: status %d", args, status)
			}
		}
	}
	all := runtime.GOMAXPROCS(0)
	things := []struct {
		name string
		do   func()
		took []time.Duration
	}{
		{name: "reading, one at a time", do: each(1, read)}, {name: "reading, on every processor", do: each(all, read)},
		{name: "reading with the TOML library, on every processor", do: each(all, decode)},
		{name: "roster", do: command("roster", folder)}, {name: "roster --csv", do: command("roster", "--csv", folder)},
		{name: "roster --json", do: command("roster", "--json", folder)}, {name: "show --json", do: command(append([]string{"show", "--json"}, paths...)...)},
	}
	for range 7 {
		for i := range things {
			start := time.Now()
			things[i].do()
			things[i].took = append(things[i].took, time.Since(start))
		}
	}
	var alone, together time.Duration
	for i, thing := range things {
		slices.Sort(thing.took)
		median := thing.took[len(thing.took)/2]
		switch i {
		case 0:
			alone = median
		case 1:
			together = median
		}
		if i > 0 {
			t.Logf("%-50s %6.1f ms, %.2f x reading, %.2f x reading on %d processors", thing.name, median.Seconds()*1e3, float64(median)/float64(alone), float64(median)/float64(max(together, 1)), all)
		} else {
			t.Logf("%-50s %6.1f ms", thing.name, median.Seconds()*1e3)
		}
	}
}

//go:build linux

package ui_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// kills, in the environment, is how many programs are killed instead of the few of
// every run.
const kills = "CAPSCYE_TEST_KILLS"

// A program that is killed at any moment leaves a whole file with every field that
// was left 300 ms before, and nothing half written that the next save would not
// take away. It measures time, so no other test runs beside it.
func TestKilledAtAnyMoment(t *testing.T) {
	count := 12
	if props.Thorough() {
		count = 25
	}
	if n, err := strconv.Atoi(os.Getenv(kills)); err == nil {
		count = n
	}
	source, err := os.ReadFile(props.Example("choir-blouse"))
	if err != nil {
		t.Fatal(err)
	}
	source = bytes.Replace(source, []byte(`"short"`), []byte(`"long"`), 1) // every field can matter, and is not passed over
	if _, err := program.Binary(); err != nil {
		t.Fatal(err)
	}
	var wait sync.WaitGroup
	var sum tally
	places := make(chan struct{}, 8)
	late := make([][]string, count)
	for n := range count {
		places <- struct{}{}
		wait.Go(func() {
			defer func() { <-places }()
			t.Run(fmt.Sprint(n), func(t *testing.T) { late[n] = killOne(t, n, source, &sum) })
		})
	}
	wait.Wait()
	for n, fields := range late { // it may have been the machine: again, one at a time
		for try := 0; try < 3 && len(fields) > 0; try++ {
			t.Run(fmt.Sprint(n, " again"), func(t *testing.T) { fields = killOne(t, n, source, &sum) })
		}
		for _, field := range fields {
			t.Errorf("run %d, each time: %s", n, field)
		}
	}
	t.Logf("%d runs, %d fields typed; the oldest that was not on disk was left %v before the kill; %d new versions were left half written",
		count, sum.fields, sum.late, sum.half)
	if sum.fields < count {
		t.Errorf("%d programs, and %d fields were typed", count, sum.fields)
	}
}

// tally is what all the runs together showed.
type tally struct {
	sync.Mutex
	fields, half int
	late         time.Duration
}

// killOne types into a sheet, kills the program, and tells which fields were not on disk in
// time.
func killOne(t *testing.T, n int, source []byte, sum *tally) (late []string) {
	folder := t.TempDir()
	path := filepath.Join(folder, "blouse.toml")
	if err := os.WriteFile(path, source, 0o644); err != nil {
		t.Fatal(err)
	}
	if n%3 == 1 {
		if err := os.Link(path, path+".twin"); err != nil {
			t.Fatal(err)
		}
	}
	rnd := rand.New(rand.NewPCG(20261125, uint64(n)))
	term := program.Start(t, folder, []string{"XDG_STATE_HOME=" + folder}, "blouse.toml")
	term.Await("Sleeve needs")
	done := term.Typist(rnd, time.Now().Add(time.Duration(rnd.IntN(700))*time.Millisecond))
	if err := term.Cmd.Process.Kill(); err != nil {
		t.Error(err)
	}
	killed := time.Now()
	_ = term.Cmd.Wait()
	if strings.Contains(term.Raw(), "Not saved") {
		t.Error("it could not save")
	}
	d, err := worksheets.Load(path)
	if err != nil || len(d.Problems()) > 0 {
		t.Fatalf("the file does not read: %v", err)
	}
	sum.Lock()
	defer sum.Unlock()
	for _, c := range done {
		switch before := killed.Sub(c.At); {
		case d.Sheet.Text(c.Key) == c.Text:
		case before >= 300*time.Millisecond:
			late = append(late, fmt.Sprintf("%v was left %v before the kill, and the file has %q instead of %q", c.Key, before, d.Sheet.Text(c.Key), c.Text))
		default:
			sum.late = max(sum.late, before)
		}
	}
	left := halfWritten(folder)
	sum.fields, sum.half = sum.fields+len(done), sum.half+len(left)
	if len(left) > 1 {
		t.Errorf("left: %q", left)
	}
	d.Sheet.Set(worksheets.Notes, "after the kill")
	if _, err := d.Save(); err != nil {
		t.Error(err)
	}
	if left := halfWritten(folder); len(left) > 0 {
		t.Errorf("the next save leaves %q", left)
	}
	if n%3 == 1 && props.Read(t, path) != props.Read(t, path+".twin") {
		t.Error("the two names of the file have come apart")
	}
	return late
}

// halfWritten are the new versions of files that a killed save left in a folder.
func halfWritten(folder string) []string {
	left, _ := filepath.Glob(filepath.Join(folder, ".*.capscye-*"))
	return left
}

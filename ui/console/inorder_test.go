package console

import (
	"errors"
	"fmt"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

// gcPercent is what the collector is told.
func gcPercent() int {
	percent := debug.SetGCPercent(100)
	debug.SetGCPercent(percent)
	return percent
}

// Whatever takes how long, results come in the order of the items, once each; and the
// collector, which is told otherwise for many, is told in the end what it was told before.
func TestInOrderKeepsTheOrder(t *testing.T) {
	percent := gcPercent()
	defer func() {
		if now := gcPercent(); now != percent {
			t.Errorf("the collector is left at %d, and was at %d", now, percent)
		}
	}()
	for _, count := range []int{0, 1, 2, 7, 64, 500} {
		for _, workers := range []int{0, 1, 2, 3, 16} {
			items := make([]int, count)
			for i := range items {
				items[i] = i * 3
			}
			var got []int
			err := InOrder(items, workers, func(n int) int {
				if n%7 == 0 {
					time.Sleep(50 * time.Microsecond)
				}
				return -n
			}, func(i, n int) error {
				if i != len(got) {
					t.Errorf("item %d is taken as the %dth", i, len(got))
				}
				got = append(got, -n)
				return nil
			})
			if err != nil || !slices.Equal(got, items[:len(got)]) || len(got) != count {
				t.Errorf("%d items, %d workers: %v, %v", count, workers, got, err)
			}
		}
	}
}

// Work is begun for a few items ahead and no more, even while the first takes
// longest or nobody takes what is done.
func TestInOrderIsBounded(t *testing.T) {
	const workers, bound = 4, 4 * aheadOfEach
	var begun, most, atOnce atomic.Int64
	err := InOrder(make([]int, 1000), workers, func(int) int {
		if n := atOnce.Add(1); n > workers {
			t.Errorf("%d at once", n)
		}
		defer atOnce.Add(-1)
		begun.Add(1)
		return 0
	}, func(i, _ int) error {
		if i%100 == 0 {
			time.Sleep(2 * time.Millisecond) // the workers run ahead as far as they may
		}
		if ahead := begun.Load() - int64(i); ahead > most.Load() {
			most.Store(ahead)
		}
		return nil
	})
	if got := most.Load(); err != nil || got > bound || got < 2 || begun.Load() != 1000 {
		t.Errorf("at most %d of %d begun ahead, %d in all, %v", got, bound, begun.Load(), err)
	}
}

// Where the first item waits for later ones, they are at work meanwhile.
func TestInOrderWorksAtOnce(t *testing.T) {
	second := make(chan bool)
	err := InOrder([]int{0, 1}, 2, func(n int) bool {
		if n == 0 {
			select {
			case <-second:
				return true
			case <-time.After(10 * time.Second):
				return false
			}
		}
		close(second)
		return true
	}, func(i int, met bool) error {
		if !met {
			return errors.New("one after the other")
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
}

// An error in taking, a closed pipe say, ends it: what is not begun stays so,
// and no goroutine stays behind.
func TestInOrderEndsWithTheFirstError(t *testing.T) {
	const workers = 4
	before := runtime.NumGoroutine()
	closed := errors.New("closed")
	release := make(chan bool)
	var begun atomic.Int64
	items := make([]int, 1000)
	for i := range items {
		items[i] = i
	}
	err := InOrder(items, workers, func(n int) int {
		begun.Add(1)
		if n > 0 {
			<-release
		}
		return 0
	}, func(int, int) error {
		time.AfterFunc(50*time.Millisecond, func() { close(release) })
		return closed
	})
	after := begun.Load()
	if !errors.Is(err, closed) || after > workers+1 {
		t.Errorf("%v after %d were begun", err, after)
	}
	for range 100 { // a goroutine that has said goodbye takes a moment to go
		if runtime.NumGoroutine() <= before {
			break
		}
		time.Sleep(time.Millisecond)
	}
	if n := runtime.NumGoroutine(); n > before || begun.Load() != after {
		t.Errorf("%d goroutines, %d before; %d begun, %d when it ended", n, before, begun.Load(), after)
	}
}

// A panic in the work reaches the caller, who can give the terminal back, and
// says where it was, and not what was in it.
func TestInOrderPassesPanicsOn(t *testing.T) {
	taken := 0
	defer func() {
		if p := fmt.Sprint(recover()); strings.Contains(p, "item 3") || !strings.Contains(p, "inorder_test.go") || taken != 3 {
			t.Errorf("after %d: %s", taken, p)
		}
	}()
	_ = InOrder([]int{0, 1, 2, 3, 4}, 2, func(n int) int {
		if n == 3 {
			panic("item 3")
		}
		return n
	}, func(int, int) error { taken++; return nil })
	t.Error("nobody noticed")
}

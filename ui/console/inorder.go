package console

import (
	"runtime/debug"
	"sync"
)

// InOrder does the work on every item, several at a time, and takes the results
// one by one in the order of the items. However many items there are, no more
// than a few for each worker are begun and not yet taken, so memory stays flat.
// An error in taking ends it; no work goes on once it returns. A panic in the
// work becomes one of the caller, who may have a terminal to give back.
func InOrder[In, Out any](items []In, workers int, work func(In) Out, take func(int, Out) error) error {
	workers = max(1, min(workers, len(items)))
	if len(items) >= many {
		defer debug.SetGCPercent(debug.SetGCPercent(ofMany))
	}
	ahead := workers * aheadOfEach
	next, begun := make(chan int, ahead), 0
	results := make([]chan result[Out], ahead) // of item i in i modulo ahead
	for i := range results {
		results[i] = make(chan result[Out], 1)
	}
	var working sync.WaitGroup
	for range workers {
		working.Go(func() {
			for i := range next {
				results[i%ahead] <- guarded(work, items[i])
			}
		})
	}
	defer func() {
		close(next)
		for range next { // what nobody will take is not begun
		}
		working.Wait()
	}()
	for i := range items {
		for ; begun < len(items) && begun < i+ahead; begun++ {
			next <- begun
		}
		r := <-results[i%ahead]
		if r.panicked != nil {
			panic(r.panicked)
		}
		if err := take(i, r.out); err != nil {
			return err
		}
	}
	return nil
}

// Of many items each leaves garbage and little else, so what lives is a few megabytes
// however many there are: with twice as much beside it the collector works half
// as often, and memory stays below 30 MB.
const (
	many   = 500
	ofMany = 200
)

// aheadOfEach is how many items a worker may be ahead: enough that none waits
// while one item takes long.
const aheadOfEach = 8

// result is what came of the work on an item.
type result[Out any] struct {
	out      Out
	panicked any // the fault, with the place where it happened
}

func guarded[In, Out any](work func(In) Out, item In) (r result[Out]) {
	defer func() {
		if p := recover(); p != nil {
			r.panicked = NewFault(p)
		}
	}()
	r.out = work(item)
	return r
}

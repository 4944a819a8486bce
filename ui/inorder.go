package ui

import "sync"

// inOrder does the work on every item, several at a time, and takes the results
// one by one in the order of the items. However many items there are, no more
// than a few for each worker are begun and not yet taken, so memory stays flat.
// An error in taking ends it; no work goes on once it returns.
func inOrder[In, Out any](items []In, workers int, work func(In) Out, take func(int, Out) error) error {
	workers = max(1, min(workers, len(items)))
	ahead := workers * aheadOfEach
	next, begun := make(chan int, ahead), 0
	results := make([]chan Out, ahead) // of item i in i modulo ahead
	for i := range results {
		results[i] = make(chan Out, 1)
	}
	var working sync.WaitGroup
	for range workers {
		working.Go(func() {
			for i := range next {
				results[i%ahead] <- work(items[i])
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
		if err := take(i, <-results[i%ahead]); err != nil {
			return err
		}
	}
	return nil
}

// aheadOfEach is how many items a worker may be ahead: enough that none waits
// while one item takes long.
const aheadOfEach = 8

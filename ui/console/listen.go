package console

import (
	"bufio"
	"errors"
	"io"
	"os/signal"
	"strings"
	"syscall"
)

// heardMost is how much a line may hold; no answer is as long.
const heardMost = 8000

// Line is a line that somebody typed.
type Line struct {
	Text    string
	TooLong bool
}

// Listener hands out lines as they come, until they end or the system ends the
// program: reading alone would not see a signal before the next line.
type Listener struct {
	lines   chan Line
	signals chan int
	done    chan struct{}
	deafen  func()
	Status  int // that a signal ended it with, 0 for none
}

// Listen begins to read; the listener has to be stopped.
func Listen(in io.Reader) *Listener {
	l := &Listener{lines: make(chan Line), signals: make(chan int, 1), done: make(chan struct{})}
	signal.Ignore(syscall.SIGPIPE) // whoever reads may go away; what was answered has to be kept first
	l.deafen = OnSignals(func(status int) {
		select {
		case l.signals <- status:
		default: // the first one counts
		}
	})
	go l.read(bufio.NewReaderSize(in, heardMost))
	return l
}

// read takes one line after the other; what is longer than a line may be is
// passed over.
func (l *Listener) read(in *bufio.Reader) {
	defer close(l.lines)
	for {
		line, err := in.ReadSlice('\n')
		h := Line{Text: strings.TrimRight(string(line), "\r\n")}
		for errors.Is(err, bufio.ErrBufferFull) {
			h = Line{TooLong: true}
			_, err = in.ReadSlice('\n')
		}
		if err == nil || len(line) > 0 {
			select {
			case l.lines <- h:
			case <-l.done:
				return
			}
		}
		if err != nil {
			return
		}
	}
}

// Next waits for a line; ok is false when there are no more.
func (l *Listener) Next() (h Line, ok bool) {
	if l.Status != 0 {
		return Line{}, false
	}
	select {
	case l.Status = <-l.signals:
		return Line{}, false
	case h, ok = <-l.lines:
		return h, ok
	}
}

// Stop ends the listening: signals do again what they do of themselves.
func (l *Listener) Stop() {
	l.deafen()
	signal.Reset(syscall.SIGPIPE)
	close(l.done)
}

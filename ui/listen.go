package ui

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

// heard is a line that somebody typed.
type heard struct {
	text    string
	tooLong bool
}

// listener hands out lines as they come, until they end or the system ends the
// program: reading alone would not see a signal before the next line.
type listener struct {
	lines   chan heard
	signals chan int
	done    chan struct{}
	deafen  func()
	status  int // that a signal ended it with, 0 for none
}

func listen(in io.Reader) *listener {
	l := &listener{lines: make(chan heard), signals: make(chan int, 1), done: make(chan struct{})}
	signal.Ignore(syscall.SIGPIPE) // whoever reads may go away; what was answered has to be kept first
	l.deafen = onSignals(func(status int) {
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
func (l *listener) read(in *bufio.Reader) {
	defer close(l.lines)
	for {
		line, err := in.ReadSlice('\n')
		h := heard{text: strings.TrimRight(string(line), "\r\n")}
		for errors.Is(err, bufio.ErrBufferFull) {
			h = heard{tooLong: true}
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

// next waits for a line; ok is false when there are no more.
func (l *listener) next() (h heard, ok bool) {
	if l.status != 0 {
		return heard{}, false
	}
	select {
	case l.status = <-l.signals:
		return heard{}, false
	case h, ok = <-l.lines:
		return h, ok
	}
}

func (l *listener) stop() {
	l.deafen()
	signal.Reset(syscall.SIGPIPE)
	close(l.done)
}

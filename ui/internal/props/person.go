package props

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"
)

// Person talks with the program, a line at a time.
type Person struct {
	t      *testing.T
	in     *io.PipeWriter
	heard  chan string
	Errs   bytes.Buffer
	Status chan int
}

// Hears waits until a line with a text is said.
func (p *Person) Hears(text string) *Person {
	p.t.Helper()
	late := time.After(10 * time.Second)
	for {
		select {
		case line, ok := <-p.heard:
			if !ok {
				p.t.Fatalf("%q was not said", text)
			}
			if strings.Contains(line, text) {
				return p
			}
		case <-late:
			p.t.Fatalf("%q was not said in time", text)
		}
	}
}

// Says types a line.
func (p *Person) Says(line string) *Person {
	io.WriteString(p.in, line+"\n")
	return p
}

// Leaves ends the input, and is the exit status.
func (p *Person) Leaves() int {
	p.in.Close()
	return <-p.Status
}

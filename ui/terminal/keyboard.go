// Package terminal passes on what comes from the keyboard, less what no hand types, and
// gives the terminal back while the program is suspended. [WithoutTails] has the only
// clock of the screen.
package terminal

import (
	"bytes"
	"io"
	"os"
	"time"
	"unicode/utf8"

	"capscye/ui/forms"
)

// What a hand can type is read as it comes; a flood is not. The library looks at the
// whole of a long paste again with every 256 bytes that come, and draws the screen for
// every word of one that is not marked: a megabyte would take minutes.
const (
	mostAtOnce = 4096                    // bytes that are taken at once outside a paste
	eachSecond = 2048                    // ... and for every second that passes
	mostPasted = 5 * forms.LongestAnswer // bytes of a paste that are passed on: enough to be told that it is too long
)

const pasteBegin, pasteEnd = "\x1b[200~", "\x1b[201~"

// Keyboard reads what is typed at a terminal, and leaves out what no hand types and no
// answer takes.
type Keyboard struct {
	*os.File
	Tell func() // that something was left out
	Gone func() // the terminal is

	held     []byte // the beginning of a sign or a key, the rest of which is to come
	inPaste  bool
	pasted   int // bytes of the paste so far
	left     int // bytes that are taken now
	read     time.Time
	flooding bool // it was told
}

// Read is never full, for then the library waits for more and looks at all of it again.
func (k *Keyboard) Read(p []byte) (int, error) {
	room := p[:len(p)-1]
	n := copy(room, k.held)
	k.held = nil
	more, err := k.File.Read(room[n:])
	n += more
	if err != nil { // the library would end at once, without what is being typed
		k.Gone()
		return 0, io.EOF
	}
	out := k.take(room[:n], n == len(room), time.Now())
	return copy(p, out), nil
}

// take is what is passed on of what came; full tells that there is more to come.
func (k *Keyboard) take(b []byte, full bool, now time.Time) []byte {
	k.left = min(mostAtOnce, k.left+int(min(now.Sub(k.read), time.Minute)*eachSecond/time.Second))
	k.read = now
	out := make([]byte, 0, len(b))
	for {
		mark := pasteBegin
		if k.inPaste {
			mark = pasteEnd
		}
		part, rest, found := bytes.Cut(b, []byte(mark))
		if !found && (full || k.inPaste) {
			part, k.held = part[:len(part)-unfinished(part)], bytes.Clone(part[len(part)-unfinished(part):])
		}
		out = append(out, k.allowed(part)...)
		if !found {
			return out
		}
		out = append(out, mark...)
		k.inPaste, k.pasted = !k.inPaste, 0
		b = rest
	}
}

// allowed is as much of a part as may pass.
func (k *Keyboard) allowed(part []byte) []byte {
	var passes int
	if k.inPaste {
		passes = min(len(part), max(0, mostPasted-k.pasted))
		k.pasted += len(part)
	} else if len(part) <= k.left {
		passes = len(part)
		k.left -= len(part)
	}
	flood := !k.inPaste && passes < len(part) // of a paste the field says that it is too long
	if flood && !k.flooding {
		k.Tell()
	}
	k.flooding = flood
	return part[:passes]
}

// unfinished is how many bytes at the end begin a key or a sign that goes on.
func unfinished(b []byte) int {
	const longest = 16
	from := max(0, len(b)-longest)
	if i := bytes.LastIndexByte(b[from:], '\x1b'); i >= 0 {
		key := b[from+i:]
		if len(key) == 1 || (key[1] == '[' || key[1] == 'O') && !bytes.ContainsFunc(key[2:], func(r rune) bool { return 0x40 <= r && r <= 0x7e }) {
			return len(key)
		}
	}
	for n := 1; n < utf8.UTFMax && n <= len(b); n++ {
		if last := b[len(b)-n:]; utf8.RuneStart(last[0]) {
			if !utf8.FullRune(last) {
				return n
			}
			break
		}
	}
	return 0
}

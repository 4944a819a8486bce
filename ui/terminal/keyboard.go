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

const (
	pasteBegin, pasteEnd = "\x1b[200~", "\x1b[201~"
	interrupt            = "\x03" // ctrl+c
)

// Keyboard reads what is typed at a terminal, and leaves out what no hand types and no
// answer takes.
type Keyboard struct {
	*os.File
	Tell func() // that something was left out
	Gone func() // the terminal is

	held     []byte // the beginning of a sign or a key, the rest of which is to come
	escaped  bool   // what passed last was Esc alone; it may have been the beginning of a key
	inPaste  bool
	pasted   int // bytes of the paste so far
	left     int // bytes that are taken now
	read     time.Time
	flooding bool // it was told
}

// A line can be slow, or lose the end of what it carries.
const (
	aKeyIsWhole  = 50 * time.Millisecond // the parts of a key come closer together
	aKeyIsOver   = 2 * time.Second       // what is a part still will not be a key any more
	aPasteIsOver = time.Second           // a paste that has stopped for so long has lost its end
)

// Read is never full, for then the library waits for more and looks at all of it again.
func (k *Keyboard) Read(p []byte) (int, error) {
	room := p[:len(p)-1-len(pasteEnd)]
	if now := time.Now(); len(k.held) > 1 && k.held[0] == '\x1b' && now.Sub(k.read) > aKeyIsOver {
		k.held = nil
	}
	n := copy(room, k.held)
	k.held = nil
	for begun := false; ; begun = true {
		more, err := k.File.Read(room[n:])
		n += more
		if err != nil && !begun { // the library would end at once, without what is being typed
			k.Gone()
			return 0, io.EOF
		}
		if err != nil || n == len(room) || unfinished(room[:n]) == 0 || !k.comes(aKeyIsWhole) {
			break
		}
	}
	out := k.take(room[:n], n == len(room), time.Now())
	if k.inPaste && !k.comes(aPasteIsOver) { // or nothing would ever be a key again
		out = append(out, pasteEnd...)
		k.inPaste, k.held = false, nil
	}
	return copy(p, out), nil
}

// take is what is passed on of what came; full tells that there is more to come.
func (k *Keyboard) take(b []byte, full bool, now time.Time) []byte {
	k.left = min(mostAtOnce, k.left+int(min(now.Sub(k.read), time.Minute)*eachSecond/time.Second))
	k.read = now
	if k.inPaste && string(b) == interrupt { // pressed by somebody to whom nothing answers
		k.inPaste = false
		return append([]byte(pasteEnd), b...)
	}
	b = k.withoutRest(b)
	out := make([]byte, 0, len(b))
	for {
		mark := pasteBegin
		if k.inPaste {
			mark = pasteEnd
		}
		part, rest, found := bytes.Cut(b, []byte(mark))
		if begun := unfinished(part); !found && begun > 0 && (full || k.inPaste || begun > 1) {
			part, k.held = part[:len(part)-begun], bytes.Clone(part[len(part)-begun:])
		}
		out = append(out, k.allowed(part)...)
		if !found {
			k.escaped = !k.inPaste && bytes.HasSuffix(part, []byte{'\x1b'})
			return out
		}
		out = append(out, mark...)
		k.inPaste, k.pasted = !k.inPaste, 0
		b = rest
	}
}

// withoutRest leaves out the rest of a key whose beginning passed as Esc, so late came
// the rest; it would be typed as text. No hand types the whole of one at once.
func (k *Keyboard) withoutRest(b []byte) []byte {
	if !k.escaped || len(b) == 0 {
		return b
	}
	k.escaped = false
	key := append([]byte{'\x1b'}, b...)
	switch end := bytes.IndexFunc(key[min(2, len(key)):], endsKey); {
	case b[0] == '[' && end >= 0, b[0] == 'O' && end == 0:
		return b[1+end+1:]
	}
	return b
}

// endsKey tells the character that ends the sequence of a key.
func endsKey(r rune) bool { return 0x40 <= r && r <= 0x7e }

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
		if len(key) == 1 || (key[1] == '[' || key[1] == 'O') && !bytes.ContainsFunc(key[2:], endsKey) {
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

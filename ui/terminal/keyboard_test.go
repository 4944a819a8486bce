package terminal

import (
	"bytes"
	"strings"
	"testing"
	"time"

	"capscye/ui/internal/props"
)

// typedAt hands a stream to the keyboard in parts of a size, each full but the last, and
// returns what passes and how often it was said that something did not.
func typedAt(stream string, size int) (passed string, told int) {
	k := &Keyboard{Tell: func() { told++ }}
	now := props.SomeDay
	for len(stream) > 0 {
		n := min(size-len(k.held), len(stream))
		part := append(bytes.Clone(k.held), stream[:n]...)
		k.held, stream = nil, stream[n:]
		passed += string(k.take(part, len(part) == size, now))
	}
	return passed + string(k.held), told
}

// What hands type passes untouched, wherever it is cut: no key or sign is torn.
func TestWhatHandsTypePasses(t *testing.T) {
	stream := "13 ¾\r\x1b[A\x1bOP\x1b[15;2~é💩\x1b\x1ba\x1b[200~a paste é\x1b[31m\x1b[201~\x1b[Z⅛\x03\xff\xfe\x1b[200~\x1b[201~x"
	for size := 20; size < 300; size++ {
		for _, s := range []string{stream, strings.Repeat(stream, 20)} {
			if passed, told := typedAt(s, size); passed != s || told != 0 {
				t.Fatalf("in parts of %d, told %d:\n%q\n%q", size, told, passed, s)
			}
		}
	}
	k := &Keyboard{}
	k.left = mostAtOnce
	for _, part := range []string{"1", "\x1b", "\x1b[A", "a\x1b"} { // Esc by itself is a key, and does not wait
		if got := string(k.take([]byte(part), false, props.SomeDay)); got != part || k.held != nil {
			t.Errorf("%q passes as %q, held %q", part, got, k.held)
		}
	}
}

// A flood passes as far as a hand could type, a paste as far as the field needs to
// refuse it, and both are over when they end.
func TestAFloodIsLeftOut(t *testing.T) {
	passed, told := typedAt(strings.Repeat("a ", 1<<19), 255)
	if len(passed) > 5000 || told != 1 { // letters: more than hands are ahead of any program
		t.Errorf("%d bytes pass, told %d", len(passed), told)
	}
	passed, told = typedAt(pasteBegin+strings.Repeat("a", 1<<20)+pasteEnd+"13", 255)
	if want := pasteBegin + strings.Repeat("a", mostPasted) + pasteEnd + "13"; passed != want || told != 0 {
		t.Errorf("of a paste %d bytes pass, told %d", len(passed), told)
	}
	k := &Keyboard{Tell: func() {}}
	day := props.SomeDay
	k.take(bytes.Repeat([]byte("a"), mostAtOnce), true, day)
	for range 1000 { // a key that is held down, by the minute
		day = day.Add(time.Second / 30)
		if got := k.take([]byte("\x1b[B"), false, day); string(got) != "\x1b[B" {
			t.Fatalf("%q passes", got)
		}
	}
}

package ui

import (
	"bufio"
	"bytes"
	"io"
	"os"
	"strings"
	"testing"
	"time"
	"unicode"

	"capscye/worksheets"
)

// person talks with the program, a line at a time.
type person struct {
	t      *testing.T
	in     *io.PipeWriter
	heard  chan string
	errs   bytes.Buffer
	status chan int
}

func talk(t *testing.T, args ...string) *person {
	t.Helper()
	in, typed := io.Pipe()
	said, out := io.Pipe()
	p := &person{t: t, in: typed, heard: make(chan string, 1000), status: make(chan int, 1)}
	go func() {
		for lines := bufio.NewScanner(said); lines.Scan(); {
			p.heard <- lines.Text()
		}
		close(p.heard)
	}()
	go func() {
		p.status <- runWith(in, out, &p.errs, args...)
		out.Close()
	}()
	return p
}

func (p *person) hears(text string) *person {
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

func (p *person) says(line string) *person {
	io.WriteString(p.in, line+"\n")
	return p
}

func (p *person) leaves() int {
	p.in.Close()
	return <-p.status
}

// Every answer is on disk before the next question, and nothing else in the
// file has changed.
func TestEveryAnswerIsSavedAtOnce(t *testing.T) {
	lay(t, "choir-blouse")
	want := strings.Replace(read(t, "sheet.toml"), `"13 3/4"`, `"14"`, 1)
	p := talk(t, "ask", "sheet.toml").hears("Bicep,").says("14").hears("Other arm")
	if got := read(t, "sheet.toml"); got != want {
		t.Errorf("the file is\n%s", got)
	}
	p.says("empty").hears("Bust")
	if got := read(t, "sheet.toml"); strings.Contains(got, `"13 1/2"`) {
		t.Errorf("the file is\n%s", got)
	}
	if status := p.leaves(); status != 0 {
		t.Errorf("status %d", status)
	}
}

// A file that something else changed is left alone; the answers before and after
// are kept beside it.
func TestAskWhileTheFileIsChangedElsewhere(t *testing.T) {
	lay(t, "choir-blouse")
	theirs := "version = 1\n[body]\nbicep = \"15\"\n"
	p := talk(t, "ask", "sheet.toml").says("14").hears("Other arm")
	os.WriteFile("sheet.toml", []byte(theirs), 0o644)
	p.says("13").hears("sheet.toml was changed by another program").hears("Bust").says("41").hears("High bust").says("quit").hears("Kept in sheet.toml.mine-1.")
	if status := p.leaves(); status != 1 || read(t, "sheet.toml") != theirs {
		t.Errorf("status %d, the file is\n%s", status, read(t, "sheet.toml"))
	}
	for k, want := range map[worksheets.Key]string{worksheets.Bicep: "14", worksheets.BicepOther: "13", worksheets.Bust: "41"} {
		if got := answerIn(t, "sheet.toml.mine-1", k); got != want {
			t.Errorf("%s = %q", k, got)
		}
	}
}

// What cannot be saved is said once, and saved with a later answer.
func TestAskGoesOnWhileNothingCanBeSaved(t *testing.T) {
	lay(t, "choir-blouse")
	p := talk(t, "ask", "sheet.toml").hears("Bicep,")
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755) // a folder cannot be written as a file
	p.says("14").hears("Not saved: sheet.toml").hears("Other arm").says("13").hears("Bust")
	os.Remove("sheet.toml")
	p.says("41").hears("Saved now").hears("High bust")
	if answerIn(t, "sheet.toml", worksheets.Bicep) != "14" || answerIn(t, "sheet.toml", worksheets.BicepOther) != "13" {
		t.Errorf("the file is\n%s", read(t, "sheet.toml"))
	}
	if status := p.leaves(); status != 0 {
		t.Errorf("status %d", status)
	}
	p = talk(t, "ask", "sheet.toml").hears("Bicep,")
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755)
	p.says("15").hears("Not saved").says("16").says("quit").hears("Sleeve needs")
	if status := p.leaves(); status != 1 || !strings.Contains(p.errs.String(), "not saved: sheet.toml") {
		t.Errorf("status %d, %s", status, p.errs.String())
	}
}

// A file whose values cannot be changed singly is kept as it was.
func TestAskKeepsTheFileBeforeItsCommentsGo(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("sheet.toml", []byte(inlineSheet), 0o644)
	_, out, _ := answers(t, "14", "", "40")
	says(t, out, "made anew, without its comments", "What the file held before is kept in sheet.toml.before-1.", "Kept in sheet.toml.")
	if read(t, "sheet.toml.before-1") != inlineSheet || answerIn(t, "sheet.toml", worksheets.Bust) != "40" || strings.Count(out, "made anew") != 1 {
		t.Errorf("%s\n%s", out, read(t, "sheet.toml"))
	}
}

// Whatever is typed, it ends, says nothing but lines, and leaves a worksheet.
func FuzzAsk(f *testing.F) {
	f.Add([]byte("14\nback\n?\n? seam\nnext\nempty\n=back\nquit\n"), false)
	f.Add([]byte("c\n34,9\n\n\n90\nnext\nTitle \xc2\x9b31m \xe2\x80\xae\n\nin\n1/16\nk\n"), true)
	f.Add([]byte("\x1b[A\x00\xff\n\r\n\r13\r\n=\n==\n?\xff\n? \x1b]0;x\x07\n"), false)
	f.Add([]byte("next\nnext\nnext\nnext\nnext\nnext\nnext\nnext\nnext\ne\n-1/2\n0\n55 %\n9/7\nl\nkeep"), false)
	f.Add(append(bytes.Repeat([]byte("9"), 20000), "\n13\n"...), false)
	f.Fuzz(func(t *testing.T, typed []byte, fresh bool) {
		if lines := bytes.SplitAfterN(typed, []byte("\n"), 41); len(lines) > 40 { // each can be a save
			typed = bytes.Join(lines[:40], nil)
		}
		lay(t, "choir-blouse")
		name := "sheet.toml"
		if fresh {
			name = "new.toml"
		}
		status, out, errs := run(string(typed), "ask", name)
		for _, r := range out + errs {
			if r != '\n' && (unicode.IsControl(r) || r == unicode.ReplacementChar) {
				t.Fatalf("%U is said:\n%q", r, out+errs)
			}
		}
		if status != 0 && status != 1 {
			t.Fatalf("status %d: %s", status, errs)
		}
		if fresh && !exists(name) {
			return
		}
		d, err := worksheets.Load(name)
		if err != nil || len(d.Problems()) > 0 {
			t.Fatalf("%v, %v", err, d.Problems())
		}
	})
}

// A worksheet that had no name yet when the program was killed is offered, and
// taken up or not; what is not decided about stays.
func TestAskOffersWhatHadNoName(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	t.Chdir(t.TempDir())
	killed := func(titles ...string) {
		place := worksheets.OpenRecovery(unnamed)
		defer place.Close()
		var list []worksheets.Sheet
		for _, title := range titles {
			var s worksheets.Sheet
			s.Set(worksheets.Title, title)
			s.Set(worksheets.Unit, "in")
			s.Set(worksheets.Bicep, "14")
			list = append(list, s)
		}
		if err := place.Keep(worksheets.Leftover{At: someDay, Versions: list}); err != nil {
			t.Fatal(err)
		}
	}
	killed("Smock", "Apron")
	const offer = ", left without a name on"
	_, out, _ := run("drop\n?\ny\nquit\n\n", "ask")
	if strings.Count(out, offer) != 3 || !strings.Contains(out, "Smock, left without a name") || !strings.Contains(out, "Answer yes to go on with it") || !strings.Contains(out, "Kept in apron.toml.") {
		t.Errorf("it says\n%s", out)
	}
	if d, err := worksheets.Load("apron.toml"); err != nil || d.Sheet.Text(worksheets.Bicep) != "14" {
		t.Errorf("the file: %v, %v", d, err)
	}
	if _, out, _ = run("quit\n", "ask"); strings.Contains(out, offer) {
		t.Errorf("it is offered again:\n%s", out)
	}
	killed("Smock", "Apron")
	run("yes\nquit\n\n", "ask") // the second one is not decided about
	for range 2 {               // later, and then nothing is decided about it
		if _, out, _ = run("\n", "ask"); strings.Count(out, offer) != 1 {
			t.Errorf("it is not offered again:\n%s", out)
		}
	}
}

// Another program at the same sheet, and what it did not save, are said.
func TestAskSaysWhatElseIsKnownOfTheSheet(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	lay(t, "choir-blouse")
	other := worksheets.OpenRecovery("sheet.toml")
	if _, out, _ := run("quit\n", "ask", "sheet.toml"); !strings.Contains(out, openElsewhere) {
		t.Errorf("it says\n%s", out)
	}
	other.Keep(worksheets.Leftover{At: someDay, Versions: []worksheets.Sheet{{}}})
	other.Close()
	if _, out, _ := run("quit\n", "ask", "sheet.toml"); !strings.Contains(out, "is still kept: capscye with the name of this file") {
		t.Errorf("it says\n%s", out)
	}
}

package ask

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"unicode"

	"capscye/ui/console"
	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// Every answer is on disk before the next question, and nothing else in the
// file has changed.
func TestEveryAnswerIsSavedAtOnce(t *testing.T) {
	props.Lay(t, "choir-blouse")
	want := strings.Replace(props.Read(t, "sheet.toml"), `"13 3/4"`, `"14"`, 1)
	p := talk(t, "ask", "sheet.toml").Hears("Bicep,").Says("14").Hears("Ease at the bicep").Says("next").Hears("Other arm")
	if got := props.Read(t, "sheet.toml"); got != want {
		t.Errorf("the file is\n%s", got)
	}
	p.Says("empty").Hears("Bust")
	if got := props.Read(t, "sheet.toml"); strings.Contains(got, `"13 1/2"`) {
		t.Errorf("the file is\n%s", got)
	}
	if status := p.Leaves(); status != 0 {
		t.Errorf("status %d", status)
	}
}

// A file that something else changed is left alone; the answers before and after
// are kept beside it.
func TestAskWhileTheFileIsChangedElsewhere(t *testing.T) {
	props.Lay(t, "choir-blouse")
	theirs := "version = 1\n[body]\nbicep = \"15\"\n"
	p := talk(t, "ask", "sheet.toml").Says("14").Hears("Ease at the bicep").Says("next").Hears("Other arm")
	os.WriteFile("sheet.toml", []byte(theirs), 0o644)
	p.Says("13").Hears("Another program changed sheet.toml").Hears("Bust").Says("41").Hears("High bust").Says("quit").Hears("Saved in sheet.toml.mine-1.")
	if status := p.Leaves(); status != 1 || props.Read(t, "sheet.toml") != theirs {
		t.Errorf("status %d, the file is\n%s", status, props.Read(t, "sheet.toml"))
	}
	for k, want := range map[worksheets.Key]string{worksheets.Bicep: "14", worksheets.BicepOther: "13", worksheets.Bust: "41"} {
		if got := props.AnswerIn(t, "sheet.toml.mine-1", k); got != want {
			t.Errorf("%s = %q", k, got)
		}
	}
}

// What cannot be saved is said once, and saved with a later answer.
func TestAskGoesOnWhileNothingCanBeSaved(t *testing.T) {
	props.Lay(t, "choir-blouse")
	p := talk(t, "ask", "sheet.toml").Hears("Bicep,")
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755) // a folder cannot be written as a file
	p.Says("14").Hears("Not saved: sheet.toml").Hears("Ease at").Says("next").Hears("Other arm").Says("13").Hears("Bust")
	os.Remove("sheet.toml")
	p.Says("41").Hears("Saved now").Hears("High bust")
	if props.AnswerIn(t, "sheet.toml", worksheets.Bicep) != "14" || props.AnswerIn(t, "sheet.toml", worksheets.BicepOther) != "13" {
		t.Errorf("the file is\n%s", props.Read(t, "sheet.toml"))
	}
	if status := p.Leaves(); status != 0 {
		t.Errorf("status %d", status)
	}
	p = talk(t, "ask", "sheet.toml").Hears("Bicep,")
	os.Remove("sheet.toml")
	os.Mkdir("sheet.toml", 0o755)
	p.Says("15").Hears("Not saved").Says("16").Says("quit").Hears("Sleeve needs")
	if status := p.Leaves(); status != 1 || !strings.Contains(p.Errs.String(), "not saved: sheet.toml") {
		t.Errorf("status %d, %s", status, p.Errs.String())
	}
}

// A file whose values cannot be changed singly is kept as it was.
func TestAskKeepsTheFileBeforeItsCommentsGo(t *testing.T) {
	t.Chdir(t.TempDir())
	os.WriteFile("sheet.toml", []byte(props.InlineSheet), 0o644)
	_, out, _ := answers(t, "14", "next", "", "40")
	props.Says(t, out, "as a whole, without its comments", "The old file is saved as sheet.toml.before-1.", "Saved in sheet.toml.")
	if props.Read(t, "sheet.toml.before-1") != props.InlineSheet || props.AnswerIn(t, "sheet.toml", worksheets.Bust) != "40" || strings.Count(out, "as a whole, without") != 1 {
		t.Errorf("%s\n%s", out, props.Read(t, "sheet.toml"))
	}
}

// Whatever is typed, it ends, says nothing but lines, and leaves a worksheet.
func FuzzAsk(f *testing.F) {
	f.Add([]byte("14\nback\n?\n? seam\nnext\nempty\n=back\nquit\n"), false)
	f.Add([]byte("c\n34,9\n\n\n90\nnext\nTitle \xc2\x9b31m \xe2\x80\xae\n\nin\n1/16\nk\n"), true)
	f.Add([]byte("\x1b[A\x00\xff\n\r\n\r13\r\n=\n==\n?\xff\n? \x1b]0;x\x07\n"), false)
	f.Add([]byte("next\nnext\nnext\nnext\nnext\nnext\nnext\nnext\nnext\ne\n-1/2\n0\n55 %\n9/7\nl\nkeep"), false)
	f.Add([]byte("141/2\nyes\n365\nno\nyes\n111/16\nnext\n131/4\nback\nyes\nnext\nnext\nnext\nnext\nnext\nnext\nnext\nnext\nyes\n14\n351/2\nyes\n\n16\n400\nyes\n"), false)
	f.Add(append(bytes.Repeat([]byte("9"), 20000), "\n13\n"...), false)
	f.Fuzz(func(t *testing.T, typed []byte, fresh bool) {
		if lines := bytes.SplitAfterN(typed, []byte("\n"), 41); len(lines) > 40 { // each can be a save
			typed = bytes.Join(lines[:40], nil)
		}
		props.Lay(t, "choir-blouse")
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
		if fresh && !console.Exists(name) {
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
		if err := place.Keep(worksheets.Leftover{At: props.SomeDay, Versions: list}); err != nil {
			t.Fatal(err)
		}
	}
	killed("Smock", "Apron")
	const offer = ", left without a name on"
	_, out, _ := run("drop\n?\ny\nquit\n\n", "ask")
	if strings.Count(out, offer) != 3 || !strings.Contains(out, "Smock, left without a name") || !strings.Contains(out, "Answer yes to go on with it") || !strings.Contains(out, "Saved in apron.toml.") {
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
	props.Lay(t, "choir-blouse")
	other := worksheets.OpenRecovery("sheet.toml")
	if _, out, _ := run("quit\n", "ask", "sheet.toml"); !strings.Contains(out, console.OpenElsewhere) {
		t.Errorf("it says\n%s", out)
	}
	other.Keep(worksheets.Leftover{At: props.SomeDay, Versions: []worksheets.Sheet{{}}})
	other.Close()
	if _, out, _ := run("quit\n", "ask", "sheet.toml"); !strings.Contains(out, "is safe; open the file with capscye") {
		t.Errorf("it says\n%s", out)
	}
}

// What a screen left half typed is said, offered where it is asked, and gone once there is
// an answer; one that nobody answers waits on.
func TestAskOffersWhatTheScreenLeft(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	props.Lay(t, "choir-blouse")
	screen := worksheets.OpenRecovery("sheet.toml")
	left := worksheets.Drafts{Note: "too tight"}.With(worksheets.Bicep, "141/2").With(worksheets.BicepOther, "13 x")
	screen.Typed(left)
	screen.Keep(worksheets.Leftover{At: props.SomeDay})
	screen.Close()
	_, out, _ := answers(t, "yes", "next", "", "quit")
	props.Says(t, out, "Typed on the screen and not finished: bicep \"141/2\"; other arm \"13 x\".\nA note of a fitting is not finished",
		"Bicep, in inches? Now 13 3/4 in. Typed on the screen and not finished: \"141/2\". Did you mean 14 1/2 in? Answer yes, or type it again.\nBicep: 14 1/2 in.\n",
		"Other arm, in inches? Now 13 1/2 in. Typed on the screen and not finished: \"13 x\".\nBust,")
	if got := props.AnswerIn(t, "sheet.toml", worksheets.Bicep); got != "14 1/2" {
		t.Errorf("the bicep is %q", got)
	}
	screen = worksheets.OpenRecovery("sheet.toml")
	defer screen.Close()
	if l, _ := screen.Left(); !l.Drafts.Equal(left.With(worksheets.Bicep, "")) || len(l.Versions) > 0 {
		t.Errorf("left are %+v", l)
	}
}

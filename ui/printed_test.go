//go:build linux

package ui_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"capscye/ui/internal/props"
)

// printers are the commands that write a file that a person names, with the forms that
// they have.
var printers = []struct {
	command string
	endings []string
}{
	{"card sheet.toml -o", []string{".pdf", ".svg", ".txt"}},
	{"drill --seed 4 --count 3 --paper", []string{".pdf", ".txt"}},
}

// printed runs a command that writes a file here, which must come to an end.
func printed(t *testing.T, command, name string) (said string, status int) {
	t.Helper()
	type end struct {
		said   string
		status int
	}
	ended := make(chan end, 1)
	go func() {
		status, out, errs := run("", append(strings.Fields(command), name)...)
		ended <- end{out + errs, status}
	}()
	select {
	case e := <-ended:
		return e.said, e.status
	case <-time.After(20 * time.Second):
		t.Fatalf("%s %s does not end", command, name)
		return "", 0
	}
}

// Only what the program wrote and nobody changed is written over. Everything else that
// has the name stays, and so do all other pages.
func TestOnlyWhatWasPrintedHereIsPrintedOver(t *testing.T) {
	for _, p := range printers {
		for _, ending := range p.endings {
			folder := t.TempDir()
			t.Chdir(folder)
			in := func(name string) string { return filepath.Join(folder, name) }
			props.LayAt(t, in("sheet.toml"), "choir-blouse")
			props.LayAt(t, in("sheet"+ending), "choir-blouse") // a worksheet need not end in .toml
			theirs := map[string]string{
				"bought": "%PDF-1.4\n<< /Creator (another) >>\n%%EOF\n", "empty": "", "talks": "Replace my capscye card 0000000000000000, and the\ncapscye drill 0000000000000000 too\n",
			}
			for name, content := range theirs {
				if err := os.WriteFile(in(name+ending), []byte(content), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			out, status := printed(t, p.command, "noted"+ending)
			if status != 0 {
				t.Fatalf("%s: status %d, %s", p.command, status, out)
			}
			ours := props.Read(t, in("noted"+ending))
			at := strings.Index(ours, "e") // one letter is a change
			if err := errors.Join(os.WriteFile(in("noted"+ending), []byte(ours[:at]+"E"+ours[at+1:]), 0o644), os.WriteFile(in("longer"+ending), []byte(ours+"x"), 0o644),
				os.WriteFile(in("shorter"+ending), []byte(ours[:len(ours)-1]), 0o644), os.WriteFile(in("locked"+ending), []byte(ours), 0o444),
				os.Symlink("bought"+ending, in("link"+ending)), os.Symlink("link"+ending, in("links"+ending)), os.Symlink("ring"+ending, in("ring"+ending)),
				os.Mkdir(in("room"+ending), 0o755), syscall.Mkfifo(in("pipe"+ending), 0o644)); err != nil {
				t.Fatal(err)
			}
			before := everything(t, folder)
			for i, name := range []string{"sheet", "bought", "empty", "talks", "noted", "longer", "shorter", "locked", "link", "links", "ring", "room", "pipe"} {
				if ending != ".txt" && i%props.OfMany(3, 1) != 0 { // what is drawn takes longer to make, and is asked for in the same way
					continue
				}
				if out, status := printed(t, p.command, name+ending); status != 2 || strings.Contains(out, "Saved") {
					t.Errorf("%s %s: status %d, %s", p.command, name+ending, status, out)
				}
			}
			if after := everything(t, folder); after != before {
				t.Errorf("%s, %s: there was\n%.2000s\nthere is\n%.2000s", p.command, ending, before, after)
			}
			for range 2 { // made, and made anew; by a link too
				for _, name := range []string{"mine", "way"} {
					_ = os.Symlink("deep/mine"+ending, in("way"+ending))
					_ = os.Mkdir(in("deep"), 0o755)
					if out, status := printed(t, p.command, name+ending); status != 0 || !strings.Contains(out, "Saved "+name+ending) {
						t.Errorf("%s %s: status %d, %s", p.command, name+ending, status, out)
					}
				}
			}
		}
	}
}

// Of several pages none is written where one may not be.
func TestAllPagesOrNone(t *testing.T) {
	for _, n := range []string{"-2", "-3"} {
		folder := t.TempDir()
		t.Chdir(folder)
		props.LayAt(t, filepath.Join(folder, "sheet.toml"), "choir-blouse")
		if err := os.WriteFile(filepath.Join(folder, "card"+n+".svg"), []byte("<svg/>"), 0o644); err != nil {
			t.Fatal(err)
		}
		before := everything(t, folder)
		if out, status := printed(t, "card sheet.toml -o", "card.svg"); status != 2 || !strings.Contains(out, "card"+n+".svg exists and is not a card") {
			t.Errorf("page %s: status %d, %s", n, status, out)
		}
		if after := everything(t, folder); after != before {
			t.Errorf("page %s: there was\n%.500s\nthere is\n%.500s", n, before, after)
		}
	}
}

// everything is what lies in a folder, each with what it is and holds.
func everything(t *testing.T, folder string) string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for _, e := range entries {
		b.WriteString(e.Name() + " " + e.Type().String() + "\n")
		if e.Type().IsRegular() {
			b.WriteString(props.Read(t, filepath.Join(folder, e.Name())))
		}
	}
	return b.String()
}

package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"debug/buildinfo"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// released is a moment in a zone, which must not show: 2026-11-25 12:00:00 UTC.
var released = time.Date(2026, 11, 25, 17, 45, 0, 0, time.FixedZone("elsewhere", 5*3600+45*60))

// unpackedTar is what a reader of archives says of one: a line a file.
func unpackedTar(t *testing.T, b []byte) string {
	t.Helper()
	z, err := gzip.NewReader(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if z.Name != "" || !z.ModTime.IsZero() {
		t.Errorf("the header of gzip says %q, %v", z.Name, z.ModTime)
	}
	var s strings.Builder
	for r := tar.NewReader(z); ; {
		h, err := r.Next()
		if err == io.EOF {
			return s.String()
		}
		if err != nil {
			t.Fatal(err)
		}
		words, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&s, "%o %d/%d %s/%s %s %s %q\n", h.Mode, h.Uid, h.Gid, h.Uname, h.Gname, h.ModTime.UTC().Format(time.DateTime), h.Name, words)
	}
}

// unpackedZip is the same of the other kind.
func unpackedZip(t *testing.T, b []byte) string {
	t.Helper()
	r, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		t.Fatal(err)
	}
	var s strings.Builder
	for _, f := range r.File {
		c, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		words, err := io.ReadAll(c)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&s, "%o %s %s %q\n", f.Mode(), f.Modified.UTC().Format(time.DateTime), f.Name, words)
	}
	return s.String()
}

// An archive holds what was put in, in one order, with the modes, the owner and the
// time that were chosen.
func TestWhatAnArchiveHolds(t *testing.T) {
	files := []file{{"b.txt", []byte("two"), false}, {"program", []byte("runs"), true}, {"a/deep.txt", []byte("one"), false}}
	b, err := tarred("folder", files, released)
	if err != nil {
		t.Fatal(err)
	}
	const wantTar = `644 0/0 root/root 2026-11-25 12:00:00 folder/a/deep.txt "one"
644 0/0 root/root 2026-11-25 12:00:00 folder/b.txt "two"
755 0/0 root/root 2026-11-25 12:00:00 folder/program "runs"
`
	if got := unpackedTar(t, b); got != wantTar {
		t.Errorf("got\n%swant\n%s", got, wantTar)
	}
	if b, err = zipped("folder", files, released); err != nil {
		t.Fatal(err)
	}
	const wantZip = `644 2026-11-25 12:00:00 folder/a/deep.txt "one"
644 2026-11-25 12:00:00 folder/b.txt "two"
755 2026-11-25 12:00:00 folder/program "runs"
`
	if got := unpackedZip(t, b); got != wantZip {
		t.Errorf("got\n%swant\n%s", got, wantZip)
	}
}

// The same files give the same bytes, whatever their order, modes and times, and in whichever zone.
func TestTheSameFilesGiveTheSameBytes(t *testing.T) {
	packings := map[string]func(string, []file, time.Time) ([]byte, error){"tar": tarred, "zip": zipped}
	for kind, packed := range packings {
		var first []byte
		for i, names := range [][]string{{"a", "b/c", "d"}, {"d", "b/c", "a"}} {
			folder := t.TempDir()
			for _, name := range names {
				path := filepath.Join(folder, filepath.FromSlash(name))
				if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(path, []byte(name), []os.FileMode{0o644, 0o600}[i]); err != nil {
					t.Fatal(err)
				}
				at := time.Unix(int64(1e9*(i+1)), 0)
				if err := os.Chtimes(path, at, at); err != nil {
					t.Fatal(err)
				}
			}
			files, err := filesIn(folder)
			if err != nil {
				t.Fatal(err)
			}
			if i == 1 {
				files[0], files[2] = files[2], files[0]
			}
			b, err := packed("folder", files, []time.Time{released, released.UTC()}[i])
			if err != nil {
				t.Fatal(err)
			}
			if i == 0 {
				first = b
			} else if !bytes.Equal(first, b) {
				t.Errorf("%s: the bytes differ", kind)
			}
		}
	}
}

// From programs to archives: what the tool of Go says is linked stands in the list,
// with its version and a text, and the sums are those of the archives.
func TestFromProgramsToArchives(t *testing.T) {
	shared, out := t.TempDir(), t.TempDir()
	if err := os.WriteFile(filepath.Join(shared, "README.md"), []byte("read"), 0o644); err != nil {
		t.Fatal(err)
	}
	r := release{version: "1.2.3", time: released, shared: shared, out: out}
	if err := r.pack(nil); err == nil {
		t.Error("nothing was packed, and that is well")
	}
	var programs []string
	for _, system := range []string{"windows", "linux"} {
		program := filepath.Join(t.TempDir(), "capscye")
		build := exec.Command("go", "build", "-trimpath", "-o", program, "capscye")
		build.Env = append(os.Environ(), "GOOS="+system, "GOARCH=amd64", "CGO_ENABLED=0")
		if b, err := build.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, b)
		}
		programs = append(programs, program)
	}
	if err := r.pack(programs); err != nil {
		t.Fatal(err)
	}
	var sums string
	for _, name := range []string{"capscye-1.2.3-linux-amd64.tar.gz", "capscye-1.2.3-windows-amd64.zip"} {
		b, err := os.ReadFile(filepath.Join(out, name))
		if err != nil {
			t.Fatal(err)
		}
		sums += fmt.Sprintf("%x  %s\n", sha256.Sum256(b), name)
	}
	if got, err := os.ReadFile(filepath.Join(out, "SHA256SUMS")); err != nil || string(got) != sums {
		t.Errorf("%v, the sums are\n%swant\n%s", err, got, sums)
	}
	for i, inTheList := range []bool{true, false} { // on Windows alone
		said, err := exec.Command("go", "version", "-m", programs[i]).Output()
		if err != nil {
			t.Fatal(err)
		}
		info, err := buildinfo.ReadFile(programs[i])
		if err != nil {
			t.Fatal(err)
		}
		b, err := libraries(info, "x")
		if err != nil {
			t.Fatal(err)
		}
		list, seen := string(b), 0
		for line := range strings.Lines(string(said)) {
			if words := strings.Fields(line); words[0] == "dep" {
				seen++
				if !strings.Contains(list, "\n"+words[1]+" "+words[2]+": ") {
					t.Errorf("no text of %s %s", words[1], words[2])
				}
			}
		}
		if seen < 25 {
			t.Errorf("only %d libraries were seen", seen)
		}
		if got := strings.Contains(list, "\ngithub.com/mattn/go-localereader has no file of its licence"); got != inTheList {
			t.Errorf("%s: the library without a file of its licence is spoken of: %v", programs[i], got)
		}
		if !strings.Contains(list, "\nGo, standard library and runtime "+info.GoVersion+": LICENSE\n") {
			t.Error("no text of Go's own licence")
		}
		info.Deps[0].Version = "v9.9.9"
		if _, err := libraries(info, "x"); err == nil || !strings.Contains(err.Error(), "v9.9.9") {
			t.Errorf("a program of other libraries than here: %v", err)
		}
	}
}

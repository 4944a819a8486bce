//go:build linux

package disk_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"capscye/worksheets/disk"
	"capscye/worksheets/disk/disktest"
)

// A kill proves nothing about a loss of power, so the system calls are watched: a draft
// is on disk before it takes the name, and the name before the save is over; what is
// written in place has its copy on disk before, name and all, and is on disk before that goes.
// What replaces a file is for our eyes alone until it has the mode of that.
func TestTheOrderOfASave(t *testing.T) {
	if folder := os.Getenv("CAPSCYE_TEST_ORDER"); folder != "" { // the one that is watched
		saveInOrder(t, folder)
		return
	}
	watch, err := exec.LookPath("strace")
	if err != nil {
		t.Skip("nothing to watch system calls with here")
	}
	folder, calls := t.TempDir(), filepath.Join(t.TempDir(), "calls")
	cmd := exec.Command(watch, "-f", "-y", "-o", calls, "-e", "trace=openat,fsync,link,linkat,rename,renameat,renameat2,unlink,unlinkat", os.Args[0], "-test.run=^TestTheOrderOfASave$")
	cmd.Env = append(os.Environ(), "CAPSCYE_TEST_ORDER="+folder)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Skipf("it cannot be watched here: %v\n%s", err, out)
	}
	traced, err := os.ReadFile(calls)
	if err != nil {
		t.Fatal(err)
	}
	shortly := []struct{ call, words string }{
		{`openat\(.*\.capscye-tmp", O_WRONLY\|O_CREAT\|O_EXCL\S*, 0600\)`, "private draft"},
		{`openat\(.*\.capscye-tmp", O_WRONLY\|O_CREAT\|O_EXCL\S*, 0666\)`, "open draft"},
		{`fsync\(\d+<[^>]*/\.\w+\.toml\.[^>]*\.capscye-tmp>\)\s*= 0`, "draft synced"},
		{`rename\w*\(.*\.capscye-tmp", .*/blouse\.toml"[^"]*= 0`, "draft renamed"},
		{`fsync\(\d+<` + regexp.QuoteMeta(folder) + `>\)\s*= 0`, "folder synced"},
		{`rename\w*\(.*\.capscye-tmp", .*\.capscye-save"[^"]*= 0`, "journal named"},
		{`link\w*\(.*\.capscye-tmp", .*/new\.toml"[^"]*= 0`, "draft linked"},
		{`fsync\(\d+<[^>]*/(blouse|twin|new)\.toml>\)\s*= 0`, "file synced"},
		{`unlink\w*\(.*\.capscye-save".*= 0`, "journal removed"},
	}
	var got []string
	for _, line := range disktest.WholeCalls(string(traced)) {
		for _, s := range shortly {
			if regexp.MustCompile(s.call).MatchString(line) {
				got = append(got, s.words)
			}
		}
	}
	if want := []string{
		"private draft", "draft synced", "draft renamed", "folder synced", // replaced
		"open draft", "draft synced", "draft linked", "folder synced", // made
		"private draft", "draft synced", "journal named", "folder synced", "file synced", "journal removed", // written in place
	}; !slices.Equal(got, want) {
		t.Errorf("a save is\n%q, want\n%q:\n%s", got, want, traced)
	}
}

func saveInOrder(t *testing.T, folder string) {
	path := write(t, filepath.Join(folder, "blouse.toml"), "old")
	replace(t, path, "new")
	if err := disk.Create(filepath.Join(folder, "new.toml"), []byte("new")); err != nil {
		t.Fatal(err)
	}
	if err := os.Link(path, filepath.Join(folder, "twin.toml")); err != nil {
		t.Fatal(err)
	}
	replace(t, path, "newer")
}

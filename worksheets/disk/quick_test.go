package disk

import (
	"bytes"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"
)

// What is read quickly is what the library reads, and of a file that was touched, replaced
// or is too large nothing is.
func TestReadingQuicklyIsReading(t *testing.T) {
	rnd := rand.New(rand.NewPCG(20261126, 1))
	path := filepath.Join(t.TempDir(), "a")
	quick := 0
	for _, size := range []int{0, 1, 511, 512, 1161, 4096, 1<<14 - 1, 1 << 14, 1<<14 + 1, 70_000} {
		for _, most := range []int64{0, 1, 512, 1 << 14, wholeFile} {
			content := make([]byte, size)
			for i := range content {
				content[i] = byte(rnd.Uint32())
			}
			if err := os.WriteFile(path, content, 0o600); err != nil {
				t.Fatal(err)
			}
			f, err := os.Open(path)
			if err != nil {
				t.Fatal(err)
			}
			want, err := io.ReadAll(io.LimitReader(f, most))
			f.Close()
			got, _, _, err2 := readAsItIs(path, most)
			if err != nil || err2 != nil || !bytes.Equal(got, want) {
				t.Errorf("%d bytes, at most %d: %d, %v, %v", size, most, len(got), err, err2)
			}
			info, err := os.Lstat(path)
			if err != nil {
				t.Fatal(err)
			}
			got, ok := readQuickly(path, info, most)
			if ok && !bytes.Equal(got, want) {
				t.Errorf("%d bytes, at most %d: %d quickly", size, most, len(got))
			}
			if ok {
				quick++
			}
			if err := os.Chtimes(path, time.Time{}, time.Unix(1, 0)); err != nil {
				t.Fatal(err)
			}
			if _, ok := readQuickly(path, info, most); ok {
				t.Errorf("%d bytes, at most %d: read quickly after it was touched", size, most)
			}
		}
	}
	if quick == 0 && runtime.GOOS == "linux" {
		t.Error("nothing was read quickly")
	}
	folder, err := os.Lstat(filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := readQuickly(filepath.Dir(path), folder, wholeFile); ok {
		t.Error("a folder was read")
	}
}

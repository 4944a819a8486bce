package worksheets_test

import (
	"path/filepath"
	"strconv"
	"testing"

	"capscye/worksheets"
)

// What reading and saving a sheet costs. They print figures, and fail for none.

func BenchmarkDecode(b *testing.B) {
	source := []byte(exampleSource(b, "choir-blouse"))
	for _, reader := range []struct {
		name   string
		decode func(string, []byte) (*worksheets.Document, error)
	}{{"plain", worksheets.Decode}, {"any", worksheets.DecodeAny}} {
		b.Run(reader.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := reader.decode("blouse.toml", source); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkLoad(b *testing.B) {
	path := write(b, filepath.Join(b.TempDir(), "blouse.toml"), exampleSource(b, "choir-blouse"))
	b.ReportAllocs()
	for b.Loop() {
		load(b, path)
	}
}

// A save waits for the disk.
func BenchmarkSave(b *testing.B) {
	d := load(b, write(b, filepath.Join(b.TempDir(), "blouse.toml"), exampleSource(b, "choir-blouse")))
	for i := 0; b.Loop(); i++ {
		d.Sheet.Set(worksheets.Bicep, strconv.Itoa(13+i%2))
		if _, err := d.Save(); err != nil {
			b.Fatal(err)
		}
	}
}

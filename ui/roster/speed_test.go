package roster

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"capscye/ui/console"
	"capscye/ui/internal/props"
	"capscye/ui/report"
)

// manySheets are copies of an example in a folder of their own.
func manySheets(b testing.TB, count int) (folder string, paths []string) {
	b.Helper()
	source, err := os.ReadFile(props.Example("choir-blouse"))
	if err != nil {
		b.Fatal(err)
	}
	folder = b.TempDir()
	for i := range count {
		path := filepath.Join(folder, fmt.Sprintf("s%05d.toml", i))
		if err := os.WriteFile(path, source, 0o644); err != nil {
			b.Fatal(err)
		}
		paths = append(paths, path)
	}
	return folder, paths
}

// What a sheet costs among others: one row on one processor, and a thousand
// sheets in each way that they can be printed. They print figures, and fail for
// none.
func BenchmarkRosterRow(b *testing.B) {
	_, paths := manySheets(b, 1)
	b.ReportAllocs()
	for b.Loop() {
		if _, _, ok := RowOf(paths[0], report.Reckoner{Today: props.SomeDay, Brief: true}); !ok {
			b.Fatal("no sheet")
		}
	}
}

func BenchmarkThousandSheets(b *testing.B) {
	folder, paths := manySheets(b, 1000)
	for _, args := range [][]string{
		{"show"}, {"show", "--json"}, {"roster", folder}, {"roster", "--csv", folder}, {"roster", "--json", folder}, {"roster", "--sort=wearer", folder},
	} {
		name := strings.ReplaceAll(strings.TrimSuffix(strings.Join(args, " "), " "+folder), " ", "")
		if args[0] == "show" {
			args = append(args, paths...)
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if status := runWith(nil, io.Discard, io.Discard, args...); status != console.ExitWell {
					b.Fatalf("status %d", status)
				}
			}
		})
	}
}

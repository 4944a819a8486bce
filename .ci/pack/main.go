// Pack puts built programs into archives, one for each system and processor, with
// what goes along; .ci/release calls it. What is in an archive, and how, depends on
// nothing but the arguments and the files: not on the folder, the day, the person
// or the machine. It is a program and no script, because tar, zip and what sums
// are told apart by differ from system to system.
package main

import (
	"crypto/sha256"
	"debug/buildinfo"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

func main() {
	var r release
	var seconds int64
	flag.StringVar(&r.version, "version", "", "the version, as in 1.2.3")
	flag.Int64Var(&seconds, "time", 0, "the time that every file gets, in seconds since 1970")
	flag.StringVar(&r.shared, "shared", "", "the folder of what is in every archive")
	flag.StringVar(&r.out, "out", "", "the folder to write to, which exists")
	flag.Parse()
	r.time = time.Unix(seconds, 0).UTC()
	if err := r.pack(flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "pack:", err)
		os.Exit(1)
	}
}

// release is what the archives of a version have in common.
type release struct {
	version     string
	time        time.Time
	shared, out string
}

// pack writes an archive for each program, and their checksums.
func (r release) pack(programs []string) error {
	if len(programs) == 0 {
		return errors.New("no program to pack")
	}
	shared, err := filesIn(r.shared)
	if err != nil {
		return err
	}
	var sums []string
	for _, program := range programs {
		name, b, err := r.archive(program, shared)
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(r.out, name), b, 0o644); err != nil {
			return err
		}
		sums = append(sums, fmt.Sprintf("%x  %s\n", sha256.Sum256(b), name))
	}
	slices.SortFunc(sums, func(a, b string) int { return strings.Compare(a[64:], b[64:]) }) // by name
	return os.WriteFile(filepath.Join(r.out, "SHA256SUMS"), []byte(strings.Join(sums, "")), 0o644)
}

// archive is the archive of one program, and its name. What it is for, the program
// itself knows.
func (r release) archive(program string, shared []file) (name string, b []byte, err error) {
	info, err := buildinfo.ReadFile(program)
	if err != nil {
		return "", nil, err
	}
	system, processor := setting(info, "GOOS"), setting(info, "GOARCH")
	list, err := libraries(info, fmt.Sprintf("capscye %s for %s on %s", r.version, system, processor))
	if err != nil {
		return "", nil, err
	}
	binary, err := os.ReadFile(program)
	if err != nil {
		return "", nil, err
	}
	files := append(slices.Clone(shared), file{"LIBRARIES.txt", list, false})
	folder := fmt.Sprintf("capscye-%s-%s-%s", r.version, system, processor)
	if system == "windows" {
		b, err = zipped(folder, append(files, file{"capscye.exe", binary, true}), r.time)
		return folder + ".zip", b, err
	}
	b, err = tarred(folder, append(files, file{"capscye", binary, true}), r.time)
	return folder + ".tar.gz", b, err
}

// setting is how a program was built.
func setting(info *buildinfo.BuildInfo, key string) string {
	for _, s := range info.Settings {
		if s.Key == key {
			return s.Value
		}
	}
	return ""
}

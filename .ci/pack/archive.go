package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/flate"
	"compress/gzip"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// file is a file of an archive.
type file struct {
	name     string // with slashes
	contents []byte
	runs     bool // it is a program
}

// mode is what everybody may do with it, whatever the umask was.
func (f file) mode() fs.FileMode {
	if f.runs {
		return 0o755
	}
	return 0o644
}

// filesIn are the files below a folder.
func filesIn(folder string) ([]file, error) {
	var files []file
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, err := filepath.Rel(folder, path)
		if err != nil {
			return err
		}
		b, err := os.ReadFile(path)
		files = append(files, file{filepath.ToSlash(name), b, false})
		return err
	})
	return files, err
}

// byName are the files in the order in which they are packed.
func byName(files []file) []file {
	return slices.SortedFunc(slices.Values(files), func(a, b file) int { return strings.Compare(a.name, b.name) })
}

// tarred packs files below a folder, compressed with gzip, whose header has
// neither name nor time.
func tarred(folder string, files []file, at time.Time) ([]byte, error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	w := tar.NewWriter(z)
	for _, f := range byName(files) {
		err := w.WriteHeader(&tar.Header{
			Format: tar.FormatUSTAR, Typeflag: tar.TypeReg, Name: folder + "/" + f.name, Size: int64(len(f.contents)),
			Mode: int64(f.mode()), ModTime: at, Uname: "root", Gname: "root",
		})
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(f.contents); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	err = z.Close()
	return b.Bytes(), err
}

// zipped packs files below a folder.
func zipped(folder string, files []file, at time.Time) ([]byte, error) {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	w.RegisterCompressor(zip.Deflate, func(out io.Writer) (io.WriteCloser, error) {
		return flate.NewWriter(out, flate.BestCompression)
	})
	for _, f := range byName(files) {
		h := &zip.FileHeader{Name: folder + "/" + f.name, Method: zip.Deflate, Modified: at.UTC()} // another zone would show in it
		h.SetMode(f.mode())
		entry, err := w.CreateHeader(h)
		if err != nil {
			return nil, err
		}
		if _, err := entry.Write(f.contents); err != nil {
			return nil, err
		}
	}
	err := w.Close()
	return b.Bytes(), err
}

package paper

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"capscye/worksheets/disk"
)

// What is written for the wall or for a class is known again by a mark in it: who made it,
// and a sum over all of it. With the mark it may be written anew. Whatever else has the
// name stays: another's file, and one of ours that somebody wrote something into.

// Maker is what makes a file, and what it is called where it is left alone.
type Maker struct{ Name, Makes string }

// File is a file to be written.
type File struct {
	Name    string
	Content []byte                   // with the mark of its maker in it, last of all such
	Over    func(there []byte) error // why it may not take the place of something of its maker's; nil if it may
}

const sumDigits = 16

// unsigned is the mark before the sum is known.
func (m Maker) unsigned() string { return m.Name + " " + strings.Repeat("0", sumDigits) }

// Line is the mark for a text, with what a person should know of it.
func (m Maker) Line() string {
	return fmt.Sprintf("%s (%s that you change is never replaced)\n", m.unsigned(), m.Makes)
}

// sum is the sum over a content without the digits at a place.
func sum(content []byte, at int) string {
	s := sha256.New()
	s.Write(content[:at])
	s.Write(content[at+sumDigits:])
	return fmt.Sprintf("%x", s.Sum(nil))[:sumDigits]
}

// Signed is a content with the sum in its mark. One without a mark is not changed, and
// never known again.
func (m Maker) Signed(content []byte) []byte {
	if i := bytes.LastIndex(content, []byte(m.unsigned())); i >= 0 {
		at := i + len(m.Name) + 1
		copy(content[at:], sum(content, at))
	}
	return content
}

// Made tells that a content is what the maker made, and nobody changed since.
func (m Maker) Made(content []byte) bool {
	at := bytes.LastIndex(content, []byte(m.Name+" ")) + len(m.Name) + 1
	return at > len(m.Name) && at+sumDigits <= len(content) && string(content[at:at+sumDigits]) == sum(content, at)
}

// mostOfOurs is more than anything made here has, in bytes.
const mostOfOurs = 64 << 20

// MayReplace is what a name holds now that the maker may write to, nil for nothing; or
// why it may not.
func (m Maker) MayReplace(name string) ([]byte, error) {
	content, info, err := disk.Read(name, mostOfOurs)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case errors.As(err, new(*disk.KindError)) || err == nil && !m.Made(content):
		return nil, fmt.Errorf("%s exists and is not %s as capscye wrote it; left alone", name, m.Makes)
	case err == nil && disk.Protected(info):
		err = &fs.PathError{Op: "write", Path: name, Err: disk.ErrProtected}
	}
	return content, err
}

// Write writes files, none where one of them may not be. It returns the names of those
// that are written.
func (m Maker) Write(files ...File) (names []string, err error) {
	known := make([][]byte, len(files))
	for i, f := range files {
		if known[i], err = m.MayReplace(f.Name); err != nil {
			return nil, err
		}
		if known[i] != nil && f.Over != nil {
			if err = f.Over(known[i]); err != nil {
				return nil, err
			}
		}
	}
	for i, f := range files {
		if err := disk.ReplaceKnown(f.Name, known[i], f.Content, 0o666); err != nil {
			return names, err
		}
		names = append(names, f.Name)
	}
	return names, nil
}

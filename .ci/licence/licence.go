// Package licence finds under which licence a module stands, from the files that
// lie in it: nobody keeps a list that could fall behind.
package licence

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// Module is a module of which something is linked into the program.
type Module struct {
	Path, Version string
	Folder        string   // where it lies
	Linked        []string // the folders of its packages that are linked; they may have licences of their own
}

// Text is a file that says something about rights.
type Text struct {
	File  string // below the module's folder, with slashes
	Words string
}

// known licences, each told by a sentence of it.
var known = []struct{ name, sentence string }{
	{"MIT", "Permission is hereby granted, free of charge, to any person obtaining a copy"},
	{"BSD-3-Clause", "endorse or promote products derived from"},
	{"Apache-2.0", "Apache License Version 2.0, January 2004"},
}

// principal are the names under which a module has its licence.
var principal = []string{"LICENSE", "LICENSE.txt", "LICENSE.md", "LICENCE", "COPYING"}

// aboutRights are the names of files, and of folders of files, that go along.
var aboutRights = regexp.MustCompile(`(?i)licen[cs]e|copying|copyright|notice|patents`)

// stated are modules without a file of their licence, whose README names one.
// Somebody looked at just this version; another has to be looked at again.
var stated = map[string]string{
	"github.com/mattn/go-localereader@v0.0.1": "README.md",
}

// StatedOnly tells that the module has no file of its licence: that it stands
// under one is a line of its README.
func (m Module) StatedOnly() bool { return stated[m.Path+"@"+m.Version] != "" }

// Licence is the short name of the module's licence (an SPDX identifier), and
// every text about rights in the module and in the linked folders of it, by name.
// A module without such a file, or with one that is not known here, is an error
// that names it.
func (m Module) Licence() (name string, texts []Text, err error) {
	if readme := stated[m.Path+"@"+m.Version]; readme != "" {
		t, err := m.text(filepath.Join(m.Folder, readme))
		if err != nil {
			return "", nil, err
		}
		for _, l := range known {
			if strings.Contains(inOneLine(t.Words), "## License "+l.name) {
				return l.name, []Text{t}, nil
			}
		}
		return "", nil, fmt.Errorf("%s %s: its %s names no licence that is known here", m.Path, m.Version, readme)
	}
	if texts, err = m.texts(); err != nil {
		return "", nil, err
	}
	for _, p := range principal {
		i := slices.IndexFunc(texts, func(t Text) bool { return t.File == p })
		if i < 0 {
			continue
		}
		for _, l := range known {
			if strings.Contains(inOneLine(texts[i].Words), l.sentence) {
				return l.name, texts, nil
			}
		}
		return "", nil, fmt.Errorf("%s %s: its %s is no licence that is known here", m.Path, m.Version, p)
	}
	return "", nil, fmt.Errorf("%s %s has no licence file", m.Path, m.Version)
}

// texts are all files about rights, in the module's folder and on the way from
// there to each linked package.
func (m Module) texts() ([]Text, error) {
	folders := []string{m.Folder}
	for _, l := range m.Linked {
		for ; l != m.Folder && strings.HasPrefix(l, m.Folder); l = filepath.Dir(l) {
			folders = append(folders, l)
		}
	}
	slices.Sort(folders)
	var texts []Text
	for _, folder := range slices.Compact(folders) {
		entries, err := os.ReadDir(folder)
		if err != nil {
			return nil, err
		}
		for _, e := range entries {
			if !aboutRights.MatchString(e.Name()) || filepath.Ext(e.Name()) == ".go" {
				continue
			}
			err := filepath.WalkDir(filepath.Join(folder, e.Name()), func(path string, d fs.DirEntry, err error) error {
				if err != nil || d.IsDir() || filepath.Ext(path) == ".go" { // a package about notices is no notice
					return err
				}
				t, err := m.text(path)
				texts = append(texts, t)
				return err
			})
			if err != nil {
				return nil, err
			}
		}
	}
	slices.SortFunc(texts, func(a, b Text) int { return strings.Compare(a.File, b.File) })
	return texts, nil
}

func (m Module) text(path string) (Text, error) {
	b, err := os.ReadFile(path)
	if err != nil {
		return Text{}, err
	}
	name, err := filepath.Rel(m.Folder, path)
	return Text{filepath.ToSlash(name), string(b)}, err
}

// inOneLine joins lines, which every module breaks elsewhere.
func inOneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

package main

import (
	"bytes"
	"debug/buildinfo"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"text/tabwriter"

	"capscye/.ci/licence"
)

// libraries is the list of what is linked into a program, with versions and
// licences, and their texts. What is linked, the program itself says; the texts are
// those of the modules that it was built from.
func libraries(info *buildinfo.BuildInfo, program string) ([]byte, error) {
	modules, err := linked(info)
	if err != nil {
		return nil, err
	}
	var list, texts, remarks bytes.Buffer
	table := tabwriter.NewWriter(&list, 0, 0, 2, ' ', 0)
	fmt.Fprint(table, "library\tversion\tlicence\ttexts below\n")
	for _, m := range modules {
		name, files, err := m.Licence()
		if err != nil {
			return nil, err
		}
		if m.StatedOnly() {
			fmt.Fprintf(&remarks, "\n%s has no file of its licence. That it is %s is said in its %s, which stands below instead.\n", m.Path, name, files[0].File)
		}
		var names []string
		for _, f := range files {
			names = append(names, f.File)
			rule := strings.Repeat("=", 78)
			fmt.Fprintf(&texts, "\n%s\n%s %s: %s\n%s\n\n%s\n", rule, m.Path, m.Version, f.File, rule,
				strings.Trim(strings.ReplaceAll(f.Words, "\r\n", "\n"), "\n"))
		}
		fmt.Fprintf(table, "%s\t%s\t%s\t%s\n", m.Path, m.Version, name, strings.Join(names, ", "))
	}
	if err := table.Flush(); err != nil {
		return nil, err
	}
	return fmt.Appendf(nil, "Libraries in %s\n\nIts own licence is in LICENSE. These are linked into it, each under its own:\n\n%s%s%s",
		program, list.String(), remarks.String(), texts.String()), nil
}

// linked are the modules of a program, the standard library first.
func linked(info *buildinfo.BuildInfo) ([]licence.Module, error) {
	env := append(os.Environ(), "GOOS="+setting(info, "GOOS"), "GOARCH="+setting(info, "GOARCH"), "CGO_ENABLED="+setting(info, "CGO_ENABLED"))
	root, err := output(env, "go", "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	packages, err := output(env, "go", "list", "-deps", "-f", "{{with .Module}}{{.Path}}\t{{.Version}}\t{{.Dir}}\t{{$.Dir}}{{end}}", info.Path)
	if err != nil {
		return nil, err
	}
	found := map[string]*licence.Module{}
	for _, line := range strings.Split(packages, "\n") {
		words := strings.Split(line, "\t")
		if len(words) != 4 {
			continue // of the standard library
		}
		key := words[0] + " " + words[1]
		if found[key] == nil {
			found[key] = &licence.Module{Path: words[0], Version: words[1], Folder: words[2]}
		}
		found[key].Linked = append(found[key].Linked, words[3])
	}
	modules := []licence.Module{{Path: "Go, standard library and runtime", Version: info.GoVersion, Folder: root}}
	for _, d := range info.Deps {
		m := found[d.Path+" "+d.Version]
		if m == nil || d.Replace != nil {
			return nil, fmt.Errorf("%s %s is linked, and the modules here are others: was the program built from this tree?", d.Path, d.Version)
		}
		modules = append(modules, *m)
	}
	return modules, nil
}

// output is what a command prints, without the last line end.
func output(env []string, name string, args ...string) (string, error) {
	c := exec.Command(name, args...)
	c.Env, c.Stderr = env, os.Stderr
	b, err := c.Output()
	return strings.TrimSuffix(string(b), "\n"), err
}

package report_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"capscye/calc"
	"capscye/ui/internal/props"
	"capscye/ui/report"
)

// sources are the parsed files of a folder, without tests.
func sources(t *testing.T, folder string) (files []*ast.File) {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(props.SourceFolder, folder, "*.go"))
	if err != nil || len(paths) == 0 {
		t.Fatal(paths, err)
	}
	for _, path := range paths {
		if matched, _ := filepath.Match("*_test.go", filepath.Base(path)); matched {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	return files
}

// named is the last name of a constant, "Code" of calc.Code.
func named(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}

// A finding in a few words says something, whatever it is about; a code is no word.
func TestEveryCodeHasAFewWords(t *testing.T) {
	for _, c := range report.Codes {
		f := report.Finding{Code: c.Code, About: "sleeve"}
		if words := f.Short(); words == "" || words == "sleeve" || strings.Contains(words, string(c.Code)) {
			t.Errorf("%s in a few words is %q", c.Code, words)
		}
	}
}

// Every code that the sources declare is in the table once, nothing else is, and each
// has a sentence.
func TestEveryCodeIsTold(t *testing.T) {
	var declared, told []calc.Code
	for _, f := range slices.Concat(sources(t, "calc"), sources(t, "ui/report")) {
		ast.Inspect(f, func(n ast.Node) bool {
			if spec, ok := n.(*ast.ValueSpec); ok && spec.Type != nil && named(spec.Type) == "Code" {
				for _, v := range spec.Values {
					code, err := strconv.Unquote(v.(*ast.BasicLit).Value)
					if err != nil {
						t.Fatal(err)
					}
					declared = append(declared, calc.Code(code))
				}
			}
			return true
		})
	}
	for _, c := range report.Codes {
		told = append(told, c.Code)
		if !regexp.MustCompile(`^[A-Z].*[a-z)][.?]$`).MatchString(c.Says) || len(c.Levels) == 0 {
			t.Errorf("%s: levels %v, %q", c.Code, c.Levels, c.Says)
		}
		if calc.Urgency(c.Code) == 0 {
			t.Errorf("%s has no place among the others", c.Code)
		}
	}
	slices.Sort(declared)
	slices.Sort(told)
	if len(declared) < 40 || !slices.Equal(declared, told) {
		t.Errorf("declared\n%v\ntold\n%v", declared, told)
	}
}

// A finding that the sums make with a code and a level of its own makes it with one
// that is told. (The bodies of the survey say the same of those that are made in
// several steps.)
func TestLevelsAreTold(t *testing.T) {
	values := map[string]calc.Code{}
	levels := map[string]calc.Level{"": calc.Note, "Note": calc.Note, "Warn": calc.Warn, "Stop": calc.Stop}
	files := sources(t, "calc")
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			if spec, ok := n.(*ast.ValueSpec); ok && spec.Type != nil && named(spec.Type) == "Code" {
				code, _ := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
				values[spec.Names[0].Name] = calc.Code(code)
			}
			return true
		})
	}
	seen := map[calc.Code]bool{}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || named(call.Fun) != "find" || len(call.Args) != 1 {
				return true
			}
			made, ok := call.Args[0].(*ast.CompositeLit)
			if !ok || named(made.Type) != "Finding" {
				return true
			}
			parts := map[string]string{}
			for _, e := range made.Elts {
				pair := e.(*ast.KeyValueExpr)
				parts[named(pair.Key)] = named(pair.Value)
			}
			code, known := values[parts["Code"]]
			level, fixed := levels[parts["Level"]]
			if !known || !fixed {
				return true
			}
			seen[code] = true
			if !told(code, level) {
				t.Errorf("%s is made with level %v, which is not told", code, level)
			}
			return true
		})
	}
	if len(seen) < 25 {
		t.Errorf("only %d codes seen: %v", len(seen), seen)
	}
}

// told tells whether the table has a code with a level.
func told(code calc.Code, level calc.Level) bool {
	return slices.ContainsFunc(report.Codes, func(c report.CodeWords) bool { return c.Code == code && slices.Contains(c.Levels, level) })
}

package screen

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// wideStructs are the structs that may have more than a dozen fields, and why.
var wideStructs = map[string]string{
	"calc.Input":       "a table: every answer once",
	"calc.BodiceInput": "a table: every answer about the bodice once",
	"trace.Detail":     "a table: every detail that the words of a step can say once",
}

// A struct with more than a dozen fields is about more than one thing, unless it is a
// table or the shape of JSON. What is embedded counts as one.
func TestNoStructHasMoreThanADozenFields(t *testing.T) {
	seen, used := 0, map[string]bool{}
	err := filepath.WalkDir(props.SourceFolder, func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.TypeSpec)
			if !ok {
				return true
			}
			s, ok := spec.Type.(*ast.StructType)
			if !ok {
				return true
			}
			seen++
			if name := file.Name.Name + "." + spec.Name.Name; fieldsOf(s) > 12 {
				if used[name] = true; wideStructs[name] == "" {
					t.Errorf("%s has %d fields", name, fieldsOf(s))
				}
			}
			return true
		})
		return nil
	})
	for name, why := range wideStructs {
		if !used[name] {
			t.Errorf("%s is an exception that nothing needs (%s)", name, why)
		}
	}
	if err != nil || seen < 100 {
		t.Errorf("%d structs seen, %v", seen, err)
	}
}

// fieldsOf counts the fields of a struct but for those that JSON or TOML name.
func fieldsOf(s *ast.StructType) (n int) {
	for _, f := range s.Fields.List {
		if f.Tag == nil {
			n += max(1, len(f.Names))
		}
	}
	return n
}

package screen

import (
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"testing"
)

// Every wish of the worksheet and of the parts is granted by the root.
func TestEveryWishIsGranted(t *testing.T) {
	parse := func(path string) *ast.File {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		return file
	}
	var granted []string
	ast.Inspect(parse("wishes.go"), func(n ast.Node) bool {
		if c, ok := n.(*ast.CaseClause); ok {
			for _, e := range c.List {
				if s, ok := e.(*ast.SelectorExpr); ok {
					granted = append(granted, s.Sel.Name)
				}
			}
		}
		return true
	})
	wishes := 0
	for _, path := range []string{"../desk/wishes.go", "../parts/part.go"} {
		ast.Inspect(parse(path), func(n ast.Node) bool {
			spec, ok := n.(*ast.TypeSpec)
			if !ok {
				return true
			}
			if s, ok := spec.Type.(*ast.StructType); !ok || len(s.Fields.List) == 0 || !isWanted(s.Fields.List[0]) {
				return true
			}
			wishes++
			if !slices.Contains(granted, spec.Name.Name) {
				t.Errorf("nobody grants %s of %s", spec.Name.Name, path)
			}
			return true
		})
	}
	if wishes != len(granted) {
		t.Errorf("%d wishes, and %d are granted: %v", wishes, len(granted), granted)
	}
}

// isWanted tells a field that makes its struct a wish.
func isWanted(f *ast.Field) bool {
	if len(f.Names) > 0 {
		return false
	}
	switch of := f.Type.(type) {
	case *ast.Ident:
		return of.Name == "Wanted"
	case *ast.SelectorExpr:
		return of.Sel.Name == "Wanted"
	}
	return false
}

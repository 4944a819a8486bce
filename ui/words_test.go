package ui_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// One word for one thing: what must not be read anywhere, and the word that is used. Keys
// and values of the file and of the JSON are no words that people read; those that would
// be caught are among the exceptions.
var notOurWords = []struct{ pattern, better string }{
	{`reckon\w*`, "work out, or count"},
	{`unlocks?`, "shows"},
	{`bands?`, "range"},
	{`customs?`, "usual, or common practice"},
	{`not geometry|geometry[,;]`, "unusual; few books do this"},
	{`asked otherwise|share otherwise`, "divide differently"},
	{`unlike`, "different"},
	{`what stands`, "what is there"},
	{`left over`, "short by, or still short"},
	{`lack(s|ed|ing)?`, "has no, is missing, or is short by"},
	{`taken back|takes? (it|that|them|a letter) back`, "undo, undone"},
	{`done again|to do again|did again`, "redo, redone"},
	{`following piece|pieces? (that )?follows?|it follows the|follows the (sleeve|bodice|other)`, "matches"},
	{`(let|lets|letting) (it )?out`, "widen to match"},
	{`hold|holds|held|holding`, "keep its width; of a file: has"},
	{`kept bodice|bodice kept`, "keep the armhole"},
	{`warnings?`, "check"},
	{`documents?`, "worksheet"},
	{`sheets?`, "worksheet"},
	{`kept (in|under)|(be|is|are) kept\?|nothing is kept|not kept|keeps? the name`, "save, saved, or safe in"},
	{`(lay|lays|laid|lies) (it |them )?beside|beside the (worksheet|sheet)|lays a|copy laid|put away`, "make, have or drop a copy"},
	{`anew`, "again, or rewrite"},
	{`(under|in|of) which (name|unit|worksheet)`, "ask straight out: File name?"},
	{`is wanted|are wanted`, "type ..., or write it like ..."},
	{`read would be|would be read|read are`, "write it like"},
	{`as near to|as may be`, "the nearest"},
	{`grave|gravest`, "most urgent"},
	{`not taken|is not written`, "say what was done with it"},
	{`sums of the trade|words? of the trade`, "arithmetic; sewing words"},
	{`nothing was begun|would begin`, "no worksheet was made"},
	{`if it was measured|so, it stands`, "if you measured it so, keep it"},
}

// Where such a word is right all the same, by file and text, and why.
var rightWords = []struct{ file, text, why string }{
	{"calc/ways.go", "hold", "a way out as the JSON has it"},
	{"ui/report/", "hold", "an answer as the file has it"},
	{"ui/forms/options.go", "let out", "an answer as the file has it"},
	{"ui/forms/options.go", "hold", "an answer as the file has it"},
	{"worksheets/key.go", "let out", "an answer as the file has it"},
	{"worksheets/key.go", "hold", "an answer as the file has it"},
	{"ui/manual/prose.go", `in the file "let out"`, "the manual says what the file has"},
	{"ui/manual/prose.go", `in the file "hold"`, "the manual says what the file has"},
	{"ui/try/command.go", `method.follow="let out..hold"`, "a change is written as in the file"},
	{"ui/show/testdata/", "method.follow=hold", "a change is written as in the file"},
	{"ui/report/", "sheet", "what a finding is about, as the JSON has it"},
	{"ui/wording/working.go", "sheet", "what a line is about, as the JSON has it"},
	{"ui/drill/", "drill sheet", "a sheet of paper with problems; no worksheet"},
	{"ui/", "band or hem facing", "the strip of cloth at the end of a sleeve"},
}

// textsIn are the texts of a file of the program, whole: what is joined by + is one text, with
// %v where something else comes in. Import paths and tags of fields are none.
func textsIn(t *testing.T, path string) map[token.Position]string {
	t.Helper()
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, path, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	texts, passed := map[token.Position]string{}, map[ast.Node]bool{}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.Field:
			if n.Tag != nil {
				passed[n.Tag] = true
			}
		case ast.Expr:
			if text, ok := textOf(n); ok && !passed[n] {
				texts[set.Position(n.Pos())] = text
				ast.Inspect(n, func(inner ast.Node) bool {
					if lit, ok := inner.(*ast.BasicLit); ok {
						passed[lit] = true
					}
					if sum, ok := inner.(*ast.BinaryExpr); ok {
						passed[sum] = true
					}
					return true
				})
			}
		}
		return true
	})
	return texts
}

// textOf is a text that is written out, or joined of such and others; not ok where
// there is no text in it.
func textOf(n ast.Expr) (text string, ok bool) {
	switch n := n.(type) {
	case *ast.BasicLit:
		if n.Kind != token.STRING {
			return "", false
		}
		text, err := strconv.Unquote(n.Value)
		return text, err == nil
	case *ast.BinaryExpr:
		left, one := textOf(n.X)
		right, other := textOf(n.Y)
		if n.Op != token.ADD || !one && !other {
			return "", false
		}
		if !one {
			left = "%v"
		}
		if !other {
			right = "%v"
		}
		return left + right, true
	}
	return "", false
}

// filesOfTheProgram are its files in Go and the views that tests look at.
func filesOfTheProgram(t *testing.T) (sources, views []string) {
	t.Helper()
	err := filepath.WalkDir(".", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (strings.HasPrefix(d.Name(), ".") && path != "." || path == "testdata" || d.Name() == "internal" || d.Name() == "disktest"):
			return filepath.SkipDir
		case strings.HasSuffix(path, ".golden"):
			views = append(views, path)
		case strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go"):
			sources = append(sources, path)
		}
		return nil
	})
	if err != nil || len(sources) < 100 || len(views) < 10 {
		t.Fatalf("%d files, %d views, %v", len(sources), len(views), err)
	}
	return sources, views
}

// Every word that people read is the one word for its thing.
func TestOneWordForOneThing(t *testing.T) {
	t.Chdir("..") // where the product is
	sources, views := filesOfTheProgram(t)
	used := map[int]bool{}
	var forms []*regexp.Regexp
	patterns := ""
	for _, w := range notOurWords {
		forms = append(forms, regexp.MustCompile(`(?i)\b(?:`+w.pattern+`)(?:\b|$)`))
		patterns += "|" + w.pattern
	}
	any := regexp.MustCompile(`(?i)\b(?:` + patterns[1:] + `)(?:\b|$)`)
	look := func(file, where, text string) {
		if !any.MatchString(text) { // as hardly any has one of them
			return
		}
		for i, w := range notOurWords {
			for _, found := range forms[i].FindAllString(text, -1) {
				at := slices.IndexFunc(rightWords, func(r struct{ file, text, why string }) bool {
					return strings.HasPrefix(file, r.file) && strings.Contains(text, r.text) && strings.Contains(strings.ToLower(r.text), strings.ToLower(found))
				})
				if at < 0 {
					t.Errorf("%s: %q in %q; say: %s", where, found, text, w.better)
				} else {
					used[at] = true
				}
			}
		}
	}
	for _, path := range sources {
		texts := textsIn(t, path)
		for _, at := range slices.SortedFunc(maps.Keys(texts), func(a, b token.Position) int { return a.Offset - b.Offset }) {
			look(path, fmt.Sprintf("%s:%d", path, at.Line), texts[at])
		}
	}
	for _, path := range views {
		view, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for n, line := range strings.Split(string(view), "\n") {
			look(path, fmt.Sprintf("%s:%d", path, n+1), line)
		}
	}
	for i, r := range rightWords {
		if !used[i] {
			t.Errorf("%s: %q is an exception that nothing needs (%s)", r.file, r.text, r.why)
		}
	}
}

// verbs stand in the text of an error for what was read, and count as a word.
var verbs = regexp.MustCompile(`%[-+#0-9.\[\]]*[a-z]`)

// An error says what is wrong in at most 15 words, and then how to do it right.
func TestErrorsAreShort(t *testing.T) {
	t.Chdir("..") // where the product is
	sources, _ := filesOfTheProgram(t)
	seen := 0
	for _, path := range sources {
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			for _, e := range errorTexts(n) {
				text, ok := textOf(e)
				if !ok {
					continue
				}
				seen++
				text, _, _ = strings.Cut(verbs.ReplaceAllString(text, "X"), ", such as ")
				for _, sentence := range strings.Split(text, ". ") {
					if n := len(strings.Fields(sentence)); n > 15 {
						t.Errorf("%v: %d words: %q", set.Position(e.Pos()), n, sentence)
					}
				}
			}
			return true
		})
	}
	if seen < 60 {
		t.Errorf("only %d errors were found", seen)
	}
}

// errorTexts are the texts of an error that is made here.
func errorTexts(n ast.Node) []ast.Expr {
	switch n := n.(type) {
	case *ast.CallExpr:
		of, ok := n.Fun.(*ast.SelectorExpr)
		if !ok || len(n.Args) == 0 {
			return nil
		}
		if in, ok := of.X.(*ast.Ident); ok && (in.Name == "errors" && of.Sel.Name == "New" || in.Name == "fmt" && of.Sel.Name == "Errorf") {
			return n.Args[:1]
		}
	case *ast.CompositeLit:
		name := fmt.Sprint(n.Type)
		if of, ok := n.Type.(*ast.SelectorExpr); ok {
			name = of.Sel.Name
		}
		if !strings.HasSuffix(name, "Error") && !strings.HasSuffix(name, "Problem") {
			return nil
		}
		var texts []ast.Expr
		for _, e := range n.Elts {
			if pair, ok := e.(*ast.KeyValueExpr); ok {
				e = pair.Value
			}
			texts = append(texts, e)
		}
		return texts
	}
	return nil
}

package files_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// quirk is a message that the package notes, as a pattern, and where.
type quirk struct {
	said  *regexp.Regexp
	words string
	place string
}

// verb is a place in a message that a figure or a word comes into.
var verb = regexp.MustCompile(`%[.0-9]*[a-z%]`)

// quirksOf are the messages of a file of the package that stand in a call of noteQuirk and say something of their own.
func quirksOf(fset *token.FileSet, file *ast.File) (all []quirk) {
	const message = 3 // the argument
	ast.Inspect(file, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || len(call.Args) <= message {
			return true
		}
		name, _ := call.Fun.(*ast.SelectorExpr)
		literal, _ := call.Args[message].(*ast.BasicLit)
		if name == nil || name.Sel.Name != "noteQuirk" || literal == nil {
			return true
		}
		words, _ := strconv.Unquote(literal.Value)
		pieces := verb.Split(words, -1)
		for i := range pieces {
			pieces[i] = regexp.QuoteMeta(pieces[i])
		}
		if own := strings.Join(pieces, ""); own != "" {
			all = append(all, quirk{regexp.MustCompile(strings.Join(pieces, ".*")), words, fset.Position(literal.Pos()).String()})
		}
		return true
	})
	return all
}

// A quirk is noted with words that a test of this package expects: who adds one adds its case.
func TestEveryQuirkHasACase(t *testing.T) {
	fset := token.NewFileSet()
	paths, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	var noted []quirk
	var expected []string
	for _, path := range paths {
		file, err := parser.ParseFile(fset, path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.HasSuffix(path, "_test.go") {
			noted = append(noted, quirksOf(fset, file)...)
			continue
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
				text, _ := strconv.Unquote(l.Value)
				expected = append(expected, text)
			}
			return true
		})
	}
	all := strings.Join(expected, "\n")
	for _, q := range noted {
		if !q.said.MatchString(all) {
			t.Errorf("%s: no case expects %q", q.place, q.words)
		}
	}
	if len(noted) < 30 {
		t.Errorf("%d quirks are noted; noteQuirk has another name or another order of arguments", len(noted))
	}
}

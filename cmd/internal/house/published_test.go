package house

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scrimshaw/testdata/published"
)

// asked is what tests ask of a file of published values.
type asked struct {
	all    bool     // it is read whole
	labels []string // strings that stand beside its name
	parts  []string // strings that are put together with others
}

// holds says whether a row of the label is read: whole, by its name, or by a name that is put together.
func (a *asked) holds(label string) bool {
	return a.all || slices.Contains(a.labels, label) || slices.ContainsFunc(a.parts, func(s string) bool {
		return strings.TrimSpace(s) != "" && (strings.HasPrefix(label, s) || strings.HasSuffix(label, s))
	})
}

// literal is a string as it is written, and whether the expression is one.
func literal(e ast.Expr) (string, bool) {
	l, ok := e.(*ast.BasicLit)
	if !ok || l.Kind != token.STRING {
		return "", false
	}
	s, err := strconv.Unquote(l.Value)
	return s, err == nil
}

// note adds what a call asks of a file whose name is among its arguments.
func note(files map[string]*asked, call *ast.CallExpr) {
	for i, e := range call.Args {
		name, ok := literal(e)
		if !ok || !strings.HasSuffix(name, ".txt") {
			continue
		}
		a := files[name]
		if a == nil {
			a = &asked{}
			files[name] = a
		}
		rest := call.Args[i+1:]
		a.all = a.all || len(rest) == 0
		for _, label := range rest {
			if s, ok := literal(label); ok {
				a.labels = append(a.labels, s)
				continue
			}
			ast.Inspect(label, func(n ast.Node) bool {
				if e, ok := n.(ast.Expr); ok {
					if s, ok := literal(e); ok {
						a.parts = append(a.parts, s)
					}
				}
				return true
			})
		}
	}
}

// askedOf are the files of published values by their names, with what the tests below a folder ask of them.
func askedOf(t *testing.T, root string) map[string]*asked {
	files := map[string]*asked{}
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		for _, imported := range file.Imports {
			if imported.Path.Value != `"scrimshaw/testdata/published"` {
				continue
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if call, ok := n.(*ast.CallExpr); ok {
					note(files, call)
				}
				return true
			})
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// A published value that no test reads holds nothing.
func TestPublishedValuesAreRead(t *testing.T) {
	const root = "../../.."
	paths, err := filepath.Glob(root + "/testdata/published/*.txt")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no published values: %v", err)
	}
	files := askedOf(t, root)
	for _, path := range paths {
		name := filepath.Base(path)
		a := files[name]
		if a == nil {
			t.Errorf("no test reads %s", name)
			continue
		}
		unread := map[string]bool{}
		for _, row := range published.Read(t, name) {
			if !a.holds(row.Label) && !unread[row.Label] {
				unread[row.Label] = true
				t.Errorf("%s: no test reads the rows %q", name, row.Label)
			}
		}
	}
}

package house

import (
	"encoding/json"
	"errors"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// parsed is a package with its types.
type parsed struct {
	name  string
	fset  *token.FileSet
	files []*ast.File
	info  *types.Info
	pkg   *types.Package
}

// exported is what go list says of a package and of what it imports.
type exported struct {
	ImportPath, Dir, Export string
	GoFiles                 []string
}

// parseAll parses the packages of this module, and checks their types against what was compiled of
// their imports.
func parseAll(t *testing.T) []parsed {
	t.Helper()
	out, err := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles", "scrimshaw/...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	all := map[string]exported{}
	var names []string
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p exported
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		all[p.ImportPath] = p
		if name, own := strings.CutPrefix(p.ImportPath, "scrimshaw/"); own {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	fset := token.NewFileSet()
	from := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(all[path].Export) })
	var done []parsed
	for _, n := range names {
		done = append(done, parseOne(t, fset, from, n, all["scrimshaw/"+n]))
	}
	return done
}

func parseOne(t *testing.T, fset *token.FileSet, from types.Importer, name string, p exported) parsed {
	t.Helper()
	one := parsed{name: name, fset: fset, info: &types.Info{Uses: map[*ast.Ident]types.Object{}, Types: map[ast.Expr]types.TypeAndValue{}}}
	for _, f := range p.GoFiles {
		file, err := parser.ParseFile(fset, filepath.Join(p.Dir, f), nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		one.files = append(one.files, file)
	}
	config := types.Config{Importer: from}
	var err error
	if one.pkg, err = config.Check(p.ImportPath, fset, one.files, one.info); err != nil {
		t.Fatal(err)
	}
	return one
}

// file is the name of the file of a place, and line its line.
func (p *parsed) file(at token.Pos) string { return filepath.Base(p.fset.Position(at).Filename) }
func (p *parsed) line(at token.Pos) int    { return p.fset.Position(at).Line }

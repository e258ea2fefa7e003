package house

import (
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// ordered are the packages that keep to the measures below. Those that are not here are older than the measures: a
// package is added when it complies, and none leaves again.
var ordered = []string{
	"render/sheet", "render/sheet/box", "render/sheet/draw", "render/sheet/layout", "render/sheet/section",
	"render/sheet/internal/fixture",
}

// The measures of a package, by which a reader finds one thing without reading ten.
const (
	mostMutual  = 5   // pairs of files that lean on each other both ways
	mostMethods = 40  // of a type
	mostLines   = 50  // of a function
	usualLines  = 26  // that 95 of 100 functions have at most
	usualFile   = 260 // lines that 95 of 100 files have at most
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

// parseAll parses packages of this module and checks their types against what was compiled of their imports.
func parseAll(t *testing.T, names []string) []parsed {
	t.Helper()
	args := []string{"list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles"}
	for _, n := range names {
		args = append(args, "scrimshaw/"+n)
	}
	out, err := exec.Command("go", args...).Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	all := map[string]exported{}
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p exported
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		all[p.ImportPath] = p
	}
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
	one := parsed{name: name, fset: fset, info: &types.Info{Uses: map[*ast.Ident]types.Object{}}}
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

// mutual are the pairs of files each of which uses something that the other declares: a name of the package, a
// method or a field.
func (p *parsed) mutual() []string {
	leans := map[[2]string]bool{}
	for id, o := range p.info.Uses {
		field, isVar := o.(*types.Var)
		method := func() bool { f, ok := o.(*types.Func); return ok && f.Signature().Recv() != nil }
		if o.Pkg() == p.pkg && (o.Parent() == p.pkg.Scope() || isVar && field.IsField() || method()) {
			leans[[2]string{p.file(id.Pos()), p.file(o.Pos())}] = true
		}
	}
	var pairs []string
	for l := range leans {
		if l[0] < l[1] && leans[[2]string{l[1], l[0]}] {
			pairs = append(pairs, l[0]+" and "+l[1])
		}
	}
	slices.Sort(pairs)
	return pairs
}

func TestFilesLeanOneWay(t *testing.T) {
	for _, p := range parseAll(t, ordered) {
		if pairs := p.mutual(); len(pairs) > mostMutual {
			t.Errorf("%s: %d pairs of files lean on each other both ways, %d may:\n\t%s", p.name, len(pairs), mostMutual, strings.Join(pairs, "\n\t"))
		}
	}
}

func TestTypesAreSmall(t *testing.T) {
	for _, p := range parseAll(t, ordered) {
		for _, name := range p.pkg.Scope().Names() {
			n, ok := p.pkg.Scope().Lookup(name).Type().(*types.Named)
			if ok && n.NumMethods() > mostMethods {
				t.Errorf("%s.%s has %d methods, %d at most", p.name, name, n.NumMethods(), mostMethods)
			}
		}
	}
}

// usual is what 95 of 100 are at most.
func usual(all []int) int {
	slices.Sort(all)
	return all[max(0, (len(all)*95+99)/100-1)]
}

func TestFunctionsAndFilesAreShort(t *testing.T) {
	var functions, files []int
	for _, p := range parseAll(t, ordered) {
		for _, f := range p.files {
			files = append(files, p.line(f.FileEnd))
			for _, d := range f.Decls {
				if fn, ok := d.(*ast.FuncDecl); ok {
					n := p.line(fn.End()) - p.line(fn.Pos()) + 1
					functions = append(functions, n)
					if n > mostLines {
						t.Errorf("%s: %s has %d lines, %d at most", p.name, fn.Name.Name, n, mostLines)
					}
				}
			}
		}
	}
	if n := usual(functions); n > usualLines {
		t.Errorf("95 of 100 functions have up to %d lines, want %d", n, usualLines)
	}
	if n := usual(files); n > usualFile {
		t.Errorf("95 of 100 files have up to %d lines, want %d", n, usualFile)
	}
}

// unitWords are the words by which a name or a comment says a unit.
var unitWords = regexp.MustCompile(`\b(mm|m|[Mm]etres|degrees|lx|lux|K|s|W|[Ss]hares?|stops?|T-number|ratios?|CIE|CIELAB|IS[O])\b|°|%`)

// unitNames are the names of fields that say their unit themselves.
var unitNames = regexp.MustCompile(`(Lux|Kelvin|Degrees|Seconds|Metres|Watts|Stops?|MM)$`)

func TestFieldsSayTheirUnit(t *testing.T) {
	for _, p := range parseAll(t, ordered) {
		for _, f := range p.files {
			for _, d := range f.Decls {
				g, ok := d.(*ast.GenDecl)
				if !ok || g.Tok != token.TYPE {
					continue
				}
				for _, s := range g.Specs {
					for _, silent := range p.silent(g, s.(*ast.TypeSpec)) {
						t.Errorf("%s: nothing says what %s is measured in", p.name, silent)
					}
				}
			}
		}
	}
}

// silent are the exported fields of a type that hold a measure and do not say its unit.
func (p *parsed) silent(g *ast.GenDecl, s *ast.TypeSpec) (all []string) {
	st, ok := s.Type.(*ast.StructType)
	if !ok || unitWords.MatchString(g.Doc.Text()+s.Doc.Text()) {
		return nil
	}
	for _, f := range st.Fields.List {
		said := unitWords.MatchString(f.Doc.Text() + f.Comment.Text())
		for _, n := range f.Names {
			if n.IsExported() && measured(f.Type) && !said && !unitNames.MatchString(n.Name) {
				all = append(all, fmt.Sprintf("%s.%s", s.Name.Name, n.Name))
			}
		}
	}
	return all
}

// measured says whether a field of a type holds lengths or other measures.
func measured(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.Ident:
		return strings.HasPrefix(e.Name, "float")
	case *ast.ArrayType:
		return measured(e.Elt)
	case *ast.StarExpr:
		return measured(e.X)
	case *ast.SelectorExpr:
		x, ok := e.X.(*ast.Ident)
		return ok && (x.Name == "r2" || x.Name == "r3")
	}
	return false
}

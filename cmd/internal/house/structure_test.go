package house

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The measures of a package, by which a reader finds one thing without reading ten.
const (
	mostMutual  = 5   // pairs of files that lean on each other both ways
	mostMethods = 40  // of a type
	mostLines   = 50  // of a function
	usualLines  = 26  // that 95 of 100 functions have at most
	usualFile   = 260 // lines that 95 of 100 files have at most
	leastAlone  = 17  // lines of a function that is all that a file holds
	enough      = 20  // functions, or files, of which 95 of 100 are asked of a package by itself
)

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
	for _, p := range parseAll(t) {
		if pairs := p.mutual(); len(pairs) > mostMutual {
			t.Errorf("%s: %d pairs of files lean on each other both ways, %d may:\n\t%s", p.name, len(pairs), mostMutual, strings.Join(pairs, "\n\t"))
		}
	}
}

func TestTypesAreSmall(t *testing.T) {
	for _, p := range parseAll(t) {
		for _, name := range p.pkg.Scope().Names() {
			n, ok := p.pkg.Scope().Lookup(name).Type().(*types.Named)
			if ok && n.NumMethods() > mostMethods {
				t.Errorf("%s.%s has %d methods, %d at most", p.name, name, n.NumMethods(), mostMethods)
			}
		}
	}
}

// errorType is the interface that errors implement.
var errorType = types.Universe.Lookup("error").Type().Underlying().(*types.Interface)

// An error that crosses packages is a Diagnostic, with the fix and the place that whoever shows it wants to know, or says
// nothing but its words. No package exports a second type of error, or an error to compare with.
func TestDiagnosticIsTheOnlyErrorThatCrossesPackages(t *testing.T) {
	found := false
	for _, p := range parseAll(t) {
		for _, name := range p.pkg.Scope().Names() {
			o := p.pkg.Scope().Lookup(name)
			switch {
			case !o.Exported():
			case !types.Implements(o.Type(), errorType) && !types.Implements(types.NewPointer(o.Type()), errorType):
			case p.name == "plan/source" && name == "Diagnostic":
				found = true
			default:
				t.Errorf("%s.%s is an error that other packages see: return a *source.Diagnostic, or words alone", p.name, name)
			}
		}
	}
	if !found {
		t.Error("source.Diagnostic is no error")
	}
}

// clock are the names of package time that tell the hour or the place of the machine.
var clock = []string{"Now", "Since", "Until", "Tick", "After", "AfterFunc", "NewTimer", "NewTicker", "Sleep", "Local"}

// Results are the same on any day: nothing but the command looks at a clock.
func TestNothingLooksAtAClock(t *testing.T) {
	for _, p := range parseAll(t) {
		if strings.HasPrefix(p.name, "cmd/") {
			continue
		}
		for id, o := range p.info.Uses {
			if o.Pkg() != nil && o.Pkg().Path() == "time" && slices.Contains(clock, o.Name()) && o.Parent() == o.Pkg().Scope() {
				t.Errorf("%s: %s:%d uses time.%s", p.name, p.file(id.Pos()), p.line(id.Pos()), o.Name())
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
	for _, p := range parseAll(t) {
		fn, fl := p.lengths(t)
		if len(fn) >= enough {
			holds(t, p.name+": functions", fn, usualLines)
		}
		if len(fl) >= enough {
			holds(t, p.name+": files", fl, usualFile)
		}
		functions, files = append(functions, fn...), append(files, fl...)
	}
	holds(t, "functions of all packages", functions, usualLines)
	holds(t, "files of all packages", files, usualFile)
}

// holds fails where fewer than 95 of 100 are as short as they should be.
func holds(t *testing.T, what string, all []int, most int) {
	t.Helper()
	if n := usual(all); n > most {
		t.Errorf("%s: 95 of 100 have up to %d lines, want %d", what, n, most)
	}
}

// lengths are the lines of each function and of each file of a package. A function that is too long fails by itself.
func (p *parsed) lengths(t *testing.T) (functions, files []int) {
	t.Helper()
	for _, f := range p.files {
		files = append(files, p.line(f.FileEnd))
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			n := p.line(fn.End()) - p.line(fn.Pos()) + 1
			functions = append(functions, n)
			if n > mostLines {
				t.Errorf("%s: %s has %d lines, %d at most", p.name, fn.Name.Name, n, mostLines)
			}
		}
	}
	return functions, files
}

// tableLines are the lines inside the tables of cases and the texts of a function.
func tableLines(fset *token.FileSet, f ast.Node) (lines int) {
	within := func(n ast.Node) int { return fset.Position(n.End()).Line - fset.Position(n.Pos()).Line }
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CompositeLit:
			lines += max(0, within(n)-1)
			return false
		case *ast.BasicLit:
			lines += within(n)
		}
		return true
	})
	return lines
}

// A test is as short as what it tests, beside its cases.
func TestFunctionsOfTestsAreShort(t *testing.T) {
	read := 0
	err := filepath.WalkDir("../../..", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		fset := token.NewFileSet()
		file, err := parser.ParseFile(fset, path, nil, 0)
		if err != nil {
			return err
		}
		for _, d := range file.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok {
				read++
				n := fset.Position(fn.End()).Line - fset.Position(fn.Pos()).Line + 1 - tableLines(fset, fn)
				if n > mostLines {
					t.Errorf("%s: %s has %d lines beside its cases, %d at most", path, fn.Name.Name, n, mostLines)
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if read < 1000 {
		t.Errorf("only %d functions of tests were found", read)
	}
}

// What is read together stands together: a short function is no file, nor with a few constants beside it.
func TestNoFileIsOneShortFunction(t *testing.T) {
	for _, p := range parseAll(t) {
		for _, f := range p.files {
			var functions []string
			lines, types := 0, 0
			for _, d := range f.Decls {
				switch d := d.(type) {
				case *ast.GenDecl:
					if d.Tok == token.IMPORT {
						continue
					}
					if d.Tok == token.TYPE {
						types++
					}
				case *ast.FuncDecl:
					functions = append(functions, d.Name.Name)
				}
				lines += p.line(d.End()) - p.line(d.Pos()) + 1
			}
			if len(functions) == 1 && types == 0 && lines < leastAlone && f.Doc == nil {
				t.Errorf("%s: %s holds nothing but %s, which is short: put it where it is read", p.name, p.file(f.Pos()), functions[0])
			}
		}
	}
}

// unitWords are the words by which a name or a comment says a unit.
var unitWords = regexp.MustCompile(`\b(sr|mm|m|[Mm]etres|millimetres|kg|degrees|lx|lux|lm|lumens|cd|kelvins|K|s|minutes|W|amps|[Mm]ireds?|Duv|[Ss]hares?|stops?|` +
	`V|mA|Wh|VA|litres|hours|currency|T-number|ratios?|unit vectors?|pixels|CIE|CIELAB|IS[O])\b|°|%`)

// unitNames are the names of fields that say their unit themselves.
var unitNames = regexp.MustCompile(`(Lux|Footcandles|Lumens|Kelvin|Degrees|Seconds|Minutes|Metres|Watts|Volts|Amps|Stops?|MM)$`)

func TestFieldsSayTheirUnit(t *testing.T) {
	for _, p := range parseAll(t) {
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
	case *ast.IndexExpr: // a value that may be left out
		return measured(e.Index)
	case *ast.MapType:
		return measured(e.Value)
	case *ast.SelectorExpr:
		x, ok := e.X.(*ast.Ident)
		return ok && (x.Name == "r2" || x.Name == "r3")
	}
	return false
}

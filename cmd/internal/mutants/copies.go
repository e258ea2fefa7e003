package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"slices"
	"strings"
)

// chosen is the variable of a package with copies that says which of them runs, and the environment variable that sets it.
const chosen = "mutant__"

// choosing is the file that a package with copies has more than before.
const choosing = `package %s

import (
	"os"
	"strconv"
)

var ` + chosen + `, _ = strconv.Atoi(os.Getenv("` + chosen + `"))
`

// edit is text that stands in the place of other text.
type edit struct {
	from, to int // bytes from the beginning of the file
	text     string
}

// copied is the text of a file in which each function with changes has a copy for each, behind the rest: its beginning
// goes to the copy with the number that is chosen. So one build of a package tries many changes. What a compiler says of
// a copy has its number in the place of the file's name.
func copied(name string, text []byte, all []change) (string, error) {
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, name, text, 0)
	if err != nil {
		return "", err
	}
	offset := func(p token.Pos) int { return fset.Position(p).Offset }
	var edits []edit
	var behind strings.Builder
	for _, d := range file.Decls {
		fn, ok := d.(*ast.FuncDecl)
		if !ok || fn.Body == nil {
			continue
		}
		from, to, named := offset(fn.Pos()), offset(fn.End()), offset(fn.Name.End())
		call, names := calling(fn, offset)
		var goes string
		for i, c := range all {
			i++
			if c.file != name || c.at < from || c.at >= to {
				continue
			}
			goes += fmt.Sprintf(" if %s == %d { %s };", chosen, i, fmt.Sprintf(call, i))
			fmt.Fprintf(&behind, "\n//line mutant%d:1\n%s__%d%s", i, text[from:named], i, c.apply(text[:to])[named:])
		}
		if goes != "" {
			at := offset(fn.Body.Lbrace) + 1
			edits = append(append(edits, names...), edit{at, at, goes})
		}
	}
	return edited(string(text), edits) + behind.String(), nil
}

// calling is the statement by which a function goes to its copy, with the copy's number left open, and the edits that give
// names to what of its head has none.
func calling(fn *ast.FuncDecl, offset func(token.Pos) int) (call string, names []edit) {
	named := func(list *ast.FieldList) (all []string) {
		if list == nil {
			return nil
		}
		for _, f := range list.List {
			if len(f.Names) == 0 {
				name, at := fmt.Sprintf("unnamed%d__", offset(f.Type.Pos())), offset(f.Type.Pos())
				all, names = append(all, name), append(names, edit{at, at, name + " "})
			}
			for _, n := range f.Names {
				name := n.Name
				if name == "_" {
					name = fmt.Sprintf("unnamed%d__", offset(n.Pos()))
					names = append(names, edit{offset(n.Pos()), offset(n.End()), name})
				}
				if _, many := f.Type.(*ast.Ellipsis); many {
					name += "..."
				}
				all = append(all, name)
			}
		}
		return all
	}
	call = fn.Name.Name + "__%d"
	if owner := named(fn.Recv); owner != nil {
		call = owner[0] + "." + call
	}
	if kinds := named(fn.Type.TypeParams); kinds != nil {
		call += "[" + strings.Join(kinds, ", ") + "]"
	}
	call += "(" + strings.Join(named(fn.Type.Params), ", ") + ")"
	if fn.Type.Results == nil {
		return call + "; return", names
	}
	return "return " + call, names
}

// edited is a text with edits that do not overlap.
func edited(text string, edits []edit) string {
	slices.SortFunc(edits, func(a, b edit) int { return b.from - a.from })
	for _, e := range edits {
		text = text[:e.from] + e.text + text[e.to:]
	}
	return text
}

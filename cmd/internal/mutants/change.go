package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
)

// change is a slip that a tired hand could make in one place of a file.
type change struct {
	file     string
	line     int
	at       int // bytes from the beginning of the file
	from, to string
}

func (c change) String() string { return fmt.Sprintf("%s:%d: %s for %s", c.file, c.line, c.to, c.from) }

// apply is the text of the file with the slip in it.
func (c change) apply(text []byte) string {
	return string(text[:c.at]) + c.to + string(text[c.at+len(c.from):])
}

// slips are what may stand in the place of an operator or of a word.
var slips = map[token.Token][]string{
	token.LSS: {"<=", ">="}, token.LEQ: {"<", ">"}, token.GTR: {">=", "<="}, token.GEQ: {">", "<"}, token.EQL: {"!="}, token.NEQ: {"=="},
	token.ADD: {"-"}, token.SUB: {"+"}, token.MUL: {"/"}, token.QUO: {"*"}, token.REM: {"*"}, token.LAND: {"||"}, token.LOR: {"&&"},
	token.ADD_ASSIGN: {"-="}, token.SUB_ASSIGN: {"+="}, token.MUL_ASSIGN: {"/="}, token.QUO_ASSIGN: {"*="},
	token.INC: {"--"}, token.DEC: {"++"}, token.BREAK: {"continue"}, token.CONTINUE: {"break"},
}

// changes are the slips that the functions of a file have places for. Texts are not added up otherwise.
func changes(name string, text []byte) (all []change, err error) {
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, name, text, 0)
	if err != nil {
		return nil, err
	}
	for _, d := range file.Decls {
		fn, ok := d.(*ast.FuncDecl)
		if !ok || fn.Body == nil {
			continue
		}
		ast.Inspect(fn.Body, func(n ast.Node) bool {
			op, at := operator(n)
			for _, to := range slips[op] {
				p := fset.Position(at)
				all = append(all, change{name, p.Line, p.Offset, op.String(), to})
			}
			return true
		})
	}
	return all, nil
}

// operator is what of a node a slip may change, and where it stands.
func operator(n ast.Node) (token.Token, token.Pos) {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		if !isText(n.X) && !isText(n.Y) {
			return n.Op, n.OpPos
		}
	case *ast.AssignStmt:
		return n.Tok, n.TokPos
	case *ast.IncDecStmt:
		return n.Tok, n.TokPos
	case *ast.BranchStmt:
		if n.Label == nil {
			return n.Tok, n.TokPos
		}
	}
	return token.ILLEGAL, token.NoPos
}

func isText(e ast.Expr) bool {
	l, ok := e.(*ast.BasicLit)
	return ok && l.Kind == token.STRING
}

package house

import (
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"scrimshaw/plan/term"
	"scrimshaw/symbols"
)

// Every word that says how something looks on the plan has a symbol. What hangs from the ceiling takes no ground and is
// drawn without a mount; hand is drawn as a person's.
func TestEveryWordHasASymbol(t *testing.T) {
	catalogued := map[string]bool{}
	for _, e := range symbols.Catalogue() {
		catalogued[e.Key] = true
	}
	check := func(section string, words []string) {
		for _, w := range words {
			if !catalogued[section+":"+w] {
				t.Errorf("%q is a word of the language, and no symbol %s:%s is catalogued", w, section, w)
			}
		}
	}
	check("person", term.Words(term.Poses))
	check("opening", term.Words(term.Openings))
	check("grip", term.Words(term.Grips))
	check("furniture", term.Words(term.Furnitures))
	check("reading", term.Words(term.Meters))
	for _, m := range append(term.MappedMounts, term.PlainMounts...) {
		if m != term.Ceiling {
			check("mount", []string{string(m)})
		}
	}
	check("light", term.Words(term.Classes))
}

// named is the constant of another package of this module that a literal could be, such as term.Window for "window"; nil
// for none.
func (p *parsed) named(e ast.Expr) types.Object {
	literal, ok := e.(*ast.BasicLit)
	if !ok || literal.Kind != token.STRING {
		return nil
	}
	tv := p.info.Types[e]
	n, ok := tv.Type.(*types.Named)
	if !ok || n.Obj().Pkg() == p.pkg {
		return nil
	}
	for _, name := range n.Obj().Pkg().Scope().Names() {
		c, ok := n.Obj().Pkg().Scope().Lookup(name).(*types.Const)
		if ok && c.Exported() && types.Identical(c.Type(), n) && constant.Compare(c.Val(), token.EQL, tv.Value) {
			return c
		}
	}
	return nil
}

// A word that a package names is spelt there and nowhere else: others use its constant.
func TestWordsAreSpeltOnce(t *testing.T) {
	for _, p := range parseAll(t) {
		for e := range p.info.Types {
			if c := p.named(e); c != nil {
				t.Errorf("%s: %s:%d spells out %s.%s", p.name, p.file(e.Pos()), p.line(e.Pos()), c.Pkg().Name(), c.Name())
			}
		}
	}
}

// stilted are turns of phrase that a newcomer has to read twice. A sentence that needs one is turned round: it says who
// does what.
var stilted = regexp.MustCompile(`(?i)\b(` + strings.Join([]string{
	`(is|are|was|were|been|be) told( of)?`, `(has|have) told`, `told by`, `tells? of`, `had better`,
	`of what has none`, `(is|are) none`, `as it may`, `by way of`,
	`(is )?nothing for (it|them|that)`, `(is )?reckoned with`, `(is|are) said to`, `that there (is|are) not`,
	`there is not room`, `of no use`, `goes by`, `would \w+ (at )?its own place`,
}, "|") + `)\b`)

// plain are phrases that look like those and are plain: what can be told apart can be seen to differ.
var plain = regexp.MustCompile(`told apart|there (is|are) none`)

// said calls found with every piece of text of a Go file that somebody reads: each comment as a whole, each string.
func said(t *testing.T, path string, found func(line int, text string)) {
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, path, nil, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	for _, group := range file.Comments {
		found(fset.Position(group.Pos()).Line, strings.Join(strings.Fields(group.Text()), " "))
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
			text, err := strconv.Unquote(l.Value)
			if err != nil {
				t.Fatal(err)
			}
			found(fset.Position(l.Pos()).Line, text)
		}
		return true
	})
}

// Messages, help and comments are plain, in tests as well: subject, verb, object. README.md, that of the
// samples and DEVELOPERS.md are held to it too.
func TestWordsArePlain(t *testing.T) {
	const root = "../../.."
	read := 0
	check := func(path string, line int, text string) {
		read++
		if phrase := stilted.FindString(plain.ReplaceAllString(text, "")); phrase != "" {
			t.Errorf("%s:%d: %q: say who does what", path, line, phrase)
		}
	}
	err := filepath.WalkDir(root, func(full string, entry fs.DirEntry, err error) error {
		path := filepath.ToSlash(strings.TrimPrefix(full, root+string(filepath.Separator)))
		switch {
		case err != nil:
			return err
		case entry.IsDir():
			if strings.HasPrefix(path, ".git") {
				return fs.SkipDir
			}
		case path == "README.md" || path == "DEVELOPERS.md" || path == "samples/README.md":
			text, err := os.ReadFile(full)
			if err != nil {
				return err
			}
			check(path, 1, strings.Join(strings.Fields(string(text)), " "))
		case strings.HasSuffix(path, ".go") && path != "cmd/internal/house/words_test.go": // which lists the phrases
			said(t, full, func(line int, text string) { check(path, line, text) })
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if read < 5000 {
		t.Errorf("only %d pieces of text were found to read", read)
	}
}

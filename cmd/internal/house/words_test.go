package house

import (
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
	for _, m := range append(term.MappedMounts, term.PlainMounts...) {
		if m != term.Ceiling {
			check("mount", []string{string(m)})
		}
	}
	check("light", term.Words(term.Classes))
}

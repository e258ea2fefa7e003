package kit

import (
	"fmt"
	"strings"

	"scrimshaw/plan/photometry"
)

// spread is a distribution of light that has a word.
type spread struct {
	word  string
	light photometry.Distribution
	means string
}

// evenly is the spread of what nothing is said of.
var evenly = spread{"uniform", photometry.Uniform{}, "the same all round"}

// spreads are those that an output may have as its `shape`, and a unit without a modifier as its `spread`.
var spreads = []spread{
	evenly,
	{"cosine", photometry.Cosine{}, "a small Lambertian face"},
}

// spreadWords are the words of the spreads.
func spreadWords() (words []string) {
	for _, s := range spreads {
		words = append(words, s.word)
	}
	return words
}

// spreadNamed is the distribution that a word stands for; nil for none.
func spreadNamed(word string) photometry.Distribution {
	for _, s := range spreads {
		if s.word == word {
			return s.light
		}
	}
	return nil
}

// spreadDoc says what each word means.
func spreadDoc() string {
	var all []string
	for _, s := range spreads {
		all = append(all, fmt.Sprintf("`%s`: %s", s.word, s.means))
	}
	return strings.Join(all, "; ") + "."
}

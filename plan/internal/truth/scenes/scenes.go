// Package scenes makes random scenes, as text in the language of the tool, that its readings are held to the
// truth on. A kind and a seed always give the same scene.
package scenes

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// Kind says what a scene is about.
type Kind string

// The kinds.
const (
	Inside  Kind = "inside"  // rooms with lamps and furniture
	Window  Kind = "window"  // lamps outside a window, and readings that look away from it
	Doorway Kind = "doorway" // a dark room beside a lit one
	Clutter Kind = "clutter" // things close to lamps and to meters
	Cloth   Kind = "cloth"   // cloth before lamps, and projection spots on cards
)

// Kinds lists all kinds.
var Kinds = []Kind{Inside, Window, Doorway, Clutter, Cloth}

//go:embed measured
var measured embed.FS

// ownKit is what the scenes have instead of the catalogue's entries of the same names.
//
//go:embed kit.yaml
var ownKit []byte

// catalogue is the shipped one with the scenes' own kit over it.
func catalogue() (*kit.Catalogue, error) {
	shipped, err := kit.Shipped()
	if err != nil {
		return nil, err
	}
	log := &source.Log{}
	own := shipped.With([]*source.File{{Name: "kit.yaml", Text: ownKit}}, log)
	if log.Failed() {
		return nil, fmt.Errorf("the kit of the random scenes: %s", log.All()[0].Message)
	}
	return own, nil
}

// maxTries is how many scenes are tried for a seed before giving up.
const maxTries = 400

// refused are the codes of warnings that a scene may not have: its figures would mean little.
var refused = []string{fit.CodeInSolid, fit.CodeLightInSolid, fit.CodeOutside, fit.CodeOverCeiling, fit.CodeAllDark, resolve.CodeRoomsTouch,
	resolve.CodeNotOnTop, source.CodeLater}

// Make gives the scene of a kind and a seed: its text, and what it resolves to.
func Make(kind Kind, seed int) (text string, s *plan.Setup, err error) {
	write, ok := writers[kind]
	if !ok {
		return "", nil, fmt.Errorf("there is no kind of scene %q", kind)
	}
	held, err := catalogue()
	if err != nil {
		return "", nil, err
	}
	files, err := fs.Sub(measured, "measured")
	if err != nil {
		return "", nil, err
	}
	var last error
	for try := range maxTries {
		w := newWriter(truth.NewPCG(uint64(seed)<<20 | uint64(try)<<4 | uint64(slices.Index(Kinds, kind))))
		write(w)
		text = w.text(fmt.Sprintf("%s %d", kind, seed))
		if s, last = read(text, scene.Env{Kit: held, Files: files}); last == nil {
			return text, s, nil
		}
	}
	return "", nil, fmt.Errorf("no scene of %s %d loads: %w", kind, seed, last)
}

// read reads a text; the error is the first finding that makes it useless.
func read(text string, env scene.Env) (*plan.Setup, error) {
	log := &source.Log{}
	document := scene.Open(env, &source.File{Name: "random.yaml", Text: []byte(text)}, log)
	s := resolve.Resolve(document, document.Base(log), log)
	for _, d := range log.All() {
		if d.Severity == source.Error || slices.Contains(refused, d.Code) {
			return nil, errors.New(d.Message)
		}
	}
	return s, usable(s)
}

package scene

import (
	"io/fs"
	"time"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// Env is all that reading a scene may see of the outside: files below the scene's folder,
// the shipped catalogue and today's date.
type Env struct {
	Files fs.FS          // nil: none
	Kit   *kit.Catalogue // the shipped catalogue; a scene's own kit files are laid over it
	Today time.Time      // zero: no date is printed
}

// Document is a parsed scene file.
type Document struct {
	Root   *source.Node // nil where the text could not be understood
	Setups []string     // names in the order of the file
	Env    Env
	Kit    *kit.Catalogue // shipped and own

	base   *layer
	layers map[string]*layer // by set-up; those that could be merged
	feet   bool              // what bare lengths mean
}

// Open parses a scene file, loads its kit and lays out its set-ups. What is wrong with the file
// as a whole goes to log; what is wrong with the scene or one of its set-ups is told by Base and
// Scene. The Document is never nil.
func Open(env Env, f *source.File, log *source.Log) *Document {
	d := &Document{Env: env, Kit: env.Kit, layers: map[string]*layer{}}
	if d.Kit == nil {
		d.Kit = &kit.Catalogue{}
	}
	d.Root = source.Parse(f, log)
	if d.Root == nil || !speaks(d.Root, log) {
		d.Root = nil
		return d
	}
	if units := d.Root.Get("units"); units != nil {
		d.feet = units.Text == "ft"
	}
	d.base = d.decoded("", d.Root, nil)
	d.loadKit(log)
	d.mergeSetups(log)
	return d
}

// speaks refuses a scene in another version of the language, of which nothing more can be said.
func speaks(root *source.Node, log *source.Log) bool {
	n := root.Get("scrimshaw")
	if n == nil || n.Kind == source.Null {
		return true // that the key is missing is told with all else
	}
	_, ok := versionKind.Read(n, &source.Context{Log: log, Path: []string{"scrimshaw"}})
	return ok
}

// Base returns the scene itself, without any set-up, or nil where the file could not be read.
// Its faults go to log; after an error it holds what could be read.
func (d *Document) Base(log *source.Log) *Scene { return d.base.tell(log) }

// Scene returns the scene of one set-up, merged; the scene itself where setup is "". It is nil
// where the set-up is unknown or could not be merged. Faults go to log, those of the scene as
// the scene's; after an error it holds what could be read.
func (d *Document) Scene(setup string, log *source.Log) *Scene {
	if setup == "" || d.Root == nil {
		return d.Base(log)
	}
	if l, ok := d.layers[setup]; ok {
		return l.tell(log)
	}
	key := d.Root.Key("setups")
	switch {
	case key == nil:
		log.Errorf(d.Root.Span, CodeUnknownSetup, "leave the set-up out", "the scene has no set-ups, and so none called %q", setup)
	case key.Value.Get(setup) == nil:
		hint := source.DidYouMean(setup, d.Setups)
		if hint == "" {
			hint = "there are " + orList(d.Setups)
		}
		log.Errorf(key.Span, CodeUnknownSetup, hint, "the scene has no set-up called %q", setup)
	}
	return nil // else its own fault was told by Open
}

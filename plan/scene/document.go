package scene

import (
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// Document is a parsed scene file.
type Document struct {
	Root   *source.Node // nil where the text could not be understood
	Setups []string     // names in the order of the file
	Env    Env
	Kit    *kit.Catalogue // shipped and own
	Prices *kit.Prices    // of the scene's price file; nil: it names none

	// KitLacks says that a kit file of the scene has faults or could not be read: a name that Kit does not hold
	// may be fine.
	KitLacks bool

	files     *photometricFiles
	base      *layer
	layers    map[string]*layer // by set-up; nil for one whose chain is broken
	sequences map[string]string // by set-up: the one that it is in
}

// Open parses a scene file, loads its kit and lays out its set-ups. What is wrong with the file
// as a whole goes to log; Base and Scene report what is wrong with the scene or one of its set-ups.
// The Document is never nil.
func Open(env Env, f *source.File, log *source.Log) *Document {
	d := &Document{Env: env, Kit: env.Kit, layers: map[string]*layer{}}
	if d.Kit == nil {
		d.Kit = &kit.Catalogue{}
	}
	d.Root = source.Parse(f, log)
	if d.Root == nil || !checkVersion(d.Root, log) {
		d.Root = nil
		return d
	}
	d.files = newPhotometricFiles(env, d.Root.Span.File)
	d.loadKit(log)
	d.loadPrices(log)
	d.base = &layer{tree: d.Root, kit: d.Kit, kitLacks: d.KitLacks, files: d.files}
	if units := d.Root.Get("units"); units != nil {
		d.base.feet = units.Text == "ft"
	}
	d.base.read()
	d.mergeSetups(log)
	return d
}

// checkVersion refuses a scene in another version of the language, of which nothing more can be said.
func checkVersion(root *source.Node, log *source.Log) bool {
	n := root.Get("scrimshaw")
	if n == nil || n.Kind == source.Null {
		return true // the missing key is reported with all else
	}
	_, ok := versionKind.Read(n, &source.Context{Log: log, Path: []string{"scrimshaw"}})
	return ok
}

// Base returns the scene itself, without any set-up, or nil where the file could not be read.
// Its faults go to log; after an error it holds what could be read. It is shared by all who ask,
// and not to be changed.
func (d *Document) Base(log *source.Log) *Scene { return d.base.reportFaults(log) }

// Scene returns the scene of one set-up, merged, on the terms of Base; the scene itself where
// setup is "". It is nil where the set-up is unknown, or waits for one that is. A fault that lies
// in the scene is reported as the scene's, one of an earlier set-up as that one's.
func (d *Document) Scene(setup string, log *source.Log) *Scene {
	if setup == "" || d.Root == nil {
		return d.Base(log)
	}
	l, listed := d.layers[setup]
	if !listed {
		d.base.reportFaults(log) // what is wrong with the list may be why
		d.unknownSetup(setup, log)
	}
	return l.reportFaults(log)
}

// Release lets go of the scene of a set-up: whoever asks for it again gets it read again, the same. The scene without
// any set-up stays.
func (d *Document) Release(setup string) {
	if l := d.layers[setup]; l != nil {
		l.release()
	}
}

// unknownSetup offers the set-ups that there are.
func (d *Document) unknownSetup(name string, log *source.Log) {
	key := d.Root.Key("setups")
	if key == nil {
		log.Errorf(d.Root.Span, CodeUnknownSetup, "leave the set-up out",
			"the scene has no set-ups, so it has no set-up called %q", name)
		return
	}
	hint := source.DidYouMean(name, d.Setups)
	if hint == "" && len(d.Setups) > 0 {
		hint = "write " + orList(d.Setups)
	}
	log.Errorf(key.Span, CodeUnknownSetup, hint, "the scene has no set-up called %q", name)
}

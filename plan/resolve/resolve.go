package resolve

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// Resolve lays a scene out in metres. doc is the file it came from: it gives the catalogue, the
// tags that lights keep all day and, where things stay, the set-up before. A nil doc has none of
// these, and a scene that names a unit of the kit is at fault with it. All faults go to log; after an error the set-up holds what could be resolved, which is
// good for a picture beside the errors and for nothing else. It is nil where s is.
func Resolve(doc *scene.Document, s *scene.Scene, log *source.Log) *plan.Setup {
	return ResolveAfter(doc, s, nil, log)
}

// ResolveAfter is Resolve for a caller who has the set-up before; nil leaves it to be found.
func ResolveAfter(doc *scene.Document, s *scene.Scene, before *plan.Setup, log *source.Log) *plan.Setup {
	if s == nil {
		return nil
	}
	if before == nil {
		before = setupBefore(doc, s, nil)
	}
	return resolve(doc, s, before, log)
}

func resolve(doc *scene.Document, s *scene.Scene, before *plan.Setup, log *source.Log) *plan.Setup {
	own := &source.Log{}
	out := layOut(doc, s, before, own)
	for _, d := range own.All() {
		if d.Severity == source.Warning {
			out.Warnings = append(out.Warnings, d)
		}
	}
	passOn(doc, s, before, own, log)
	return out
}

// layOut takes the stations of the resolver in order.
func layOut(doc *scene.Document, s *scene.Scene, before *plan.Setup, log *source.Log) *plan.Setup {
	r := newResolver(doc, s, before, log)
	r.levels()
	r.rooms()
	r.openings()
	r.shell()
	r.furnish()
	r.populate()
	r.placeCameras()
	r.hangLights()
	r.rigGrip()
	r.expose()
	r.placeMeters()
	r.check()
	r.finish()
	return r.out
}

// resolver is one run of Resolve.
type resolver struct {
	doc    *scene.Document
	kit    *kit.Catalogue
	s      *scene.Scene
	before *plan.Setup
	log    *source.Log
	out    *plan.Setup

	path   string // of the thing at hand, for faults
	things map[string]thing
	names  []string // of things, in the order of the file
	nextID solid.ID

	stock   [][][]block // of each room and wall, the wall before it is cut at openings
	holes   []hole      // of each opening of out
	asking  []question
	asked   map[question]bool
	spots   map[string]answer[plan.Spot]
	noses   map[string]answer[float64]
	shapes  map[string]answer[*plan.Furniture]
	assumed map[string]bool // what scene-wide assumptions have been made
	frozen  map[string]bool // things that stay
	boxes   []r3.Box        // of the prisms and the sheets of the set, once it stands
	bare    bool            // it has been told that there is no catalogue

	uncomputed []scene.Uncomputed // keys that are not computed yet, and that the loader cannot know of
}

func newResolver(doc *scene.Document, s *scene.Scene, before *plan.Setup, log *source.Log) *resolver {
	r := &resolver{
		doc: doc, s: singles(s), before: before, log: log, kit: &kit.Catalogue{},
		asked: map[question]bool{}, spots: map[string]answer[plan.Spot]{}, noses: map[string]answer[float64]{},
		shapes: map[string]answer[*plan.Furniture]{}, assumed: map[string]bool{},
		nextID: 1,
	}
	if doc != nil && doc.Kit != nil {
		r.kit = doc.Kit
	}
	r.out = &plan.Setup{
		Name: s.Setup, Title: s.Title.V, Scene: s, Kit: r.kit, Feet: s.Feet,
		Names: map[solid.ID]string{}, Spots: map[string]plan.Spot{},
	}
	r.index()
	r.freeze()
	return r
}

// id gives out the next solid's identity under the name of what it belongs to.
func (r *resolver) id(name string) solid.ID {
	id := r.nextID
	r.nextID++
	r.out.Names[id] = name
	return id
}

// levels takes what the site says.
func (r *resolver) levels() {
	if r.s.Site == nil {
		return
	}
	r.out.Ground = r.s.Site.Ground.V
	r.out.North = r.s.Site.North.V
}

// about names the thing at hand until the function it returns is called.
func (r *resolver) about(path string) (leave func()) {
	outer := r.path
	r.path = path
	return func() { r.path = outer }
}

func (r *resolver) diagnostic(s source.Severity, span source.Span, code, hint, format string, args ...any) source.Diagnostic {
	return source.Diagnostic{Severity: s, Code: code, Span: span, Path: r.path, Setup: r.s.Setup,
		Message: fmt.Sprintf(format, args...), Hint: hint}
}

func (r *resolver) errorf(span source.Span, code, hint, format string, args ...any) {
	r.log.Add(r.diagnostic(source.Error, span, code, hint, format, args...))
}

// lacks logs what a thing does not say. The loader has told that of a file: only the maker of a
// Scene by hand hears it from here.
func (r *resolver) lacks(span source.Span, hint, format string, args ...any) {
	if r.doc == nil {
		r.errorf(span, source.CodeMissingKey, hint, format, args...)
	}
}

func (r *resolver) warnf(span source.Span, code, hint, format string, args ...any) {
	r.log.Add(r.diagnostic(source.Warning, span, code, hint, format, args...))
}

func (r *resolver) infof(span source.Span, code, hint, format string, args ...any) {
	r.log.Add(r.diagnostic(source.Info, span, code, hint, format, args...))
}

// length prints metres in the units of the file.
func (r *resolver) length(metres float64) string { return unit.FormatLength(metres, r.s.Feet) }

// coordinate prints a coordinate as the file would write it, a bare number.
func (r *resolver) coordinate(metres float64) string {
	if r.s.Feet {
		metres /= unit.Foot
	}
	return unit.FormatNumber(metres)
}

// xy prints a place as the file would write it.
func (r *resolver) xy(p r2.Vec) string {
	return "[" + r.coordinate(p.X) + ", " + r.coordinate(p.Y) + "]"
}

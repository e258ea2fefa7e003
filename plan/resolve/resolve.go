package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
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

// layOut takes the passes in order. Each puts what it makes into the set-up, and later ones read it there.
func layOut(doc *scene.Document, s *scene.Scene, before *plan.Setup, log *source.Log) *plan.Setup {
	known := newCatalogue(doc, s, log)
	aims := &aimer{newPlacer(newHistory(known, before))}
	hold := &holder{aims}
	known.levels()
	(&roomPass{known}).rooms()
	walls := &wallPass{catalogue: known}
	walls.openings()
	walls.shell()
	(&furniturePass{aims.placer}).furnish()
	(&peoplePass{aims}).populate()
	(&cameraPass{aims}).placeCameras()
	(&lightPass{hold}).hangLights()
	(&gripPass{hold}).rigGrip()
	(&exposurePass{known.draft}).expose()
	(&meterPass{aims}).placeMeters()
	aims.keepSpots()
	fit.Check(doc, known.out, log)
	(&finisher{aims.placer}).finish()
	return known.out
}

// id gives out the next solid's identity under the name of what it belongs to.
func (r *draft) id(name string) solid.ID {
	id := r.nextID
	r.nextID++
	r.out.Names[id] = name
	return id
}

// levels takes what the site says.
func (r *draft) levels() {
	if r.s.Site == nil {
		return
	}
	r.out.Ground = r.s.Site.Ground.V
	r.out.North = r.s.Site.North.V
}

// lacks logs what a thing does not say. The loader has told that of a file: only the maker of a
// Scene by hand hears it from here.
func (r *register) lacks(span source.Span, hint, format string, args ...any) {
	if r.doc == nil {
		r.Errorf(span, source.CodeMissingKey, hint, format, args...)
	}
}

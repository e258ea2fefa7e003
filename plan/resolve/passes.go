package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
)

func newCatalogue(doc *scene.Document, s *scene.Scene, log *source.Log) *catalogue {
	c := &catalogue{kit: &kit.Catalogue{}}
	if doc != nil && doc.Kit != nil {
		c.kit = doc.Kit
	}
	names := &register{Reporter: &report.Reporter{Log: log, Setup: s.Setup, Feet: s.Feet}, doc: doc, s: singles(s)}
	names.index()
	c.draft = &draft{register: names, nextID: 1, assumed: map[string]bool{}, out: &plan.Setup{
		Name: s.Setup, Title: s.Title.V, Scene: s, Kit: c.kit, Feet: s.Feet,
		Names: map[solid.ID]string{}, Spots: map[string]plan.Spot{},
	}}
	return c
}

func newHistory(c *catalogue, before *plan.Setup) *history {
	h := &history{catalogue: c, before: before}
	h.freeze()
	return h
}

func newPlacer(h *history) *placer {
	return &placer{history: h, asked: map[question]bool{}, spots: map[string]answer[plan.Spot]{},
		noses: map[string]answer[float64]{}, shapes: map[string]answer[*plan.Furniture]{}}
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

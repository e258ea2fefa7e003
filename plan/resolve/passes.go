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
	var prices *kit.Prices
	if doc != nil {
		prices = doc.Prices
	}
	names := &register{Reporter: &report.Reporter{Log: log, Setup: s.Setup, Feet: s.Feet}, doc: doc, s: withUniqueNames(s)}
	names.index()
	c.draft = &draft{register: names, nextID: 1, assumed: map[string]bool{}, out: &plan.Setup{
		Name: s.Setup, Sequence: s.Sequence, Title: s.Title.Value, Scene: s, Kit: c.kit, Prices: prices, Feet: s.Feet,
		Names: map[solid.ID]string{}, Spots: map[string]plan.Spot{},
	}}
	return c
}

func newCarryOver(c *catalogue, before *plan.Setup) *carryOver {
	h := &carryOver{catalogue: c, previous: before}
	h.findKept()
	return h
}

func newPlacer(h *carryOver) *placer {
	return &placer{carryOver: h, onStack: map[dependency]bool{}, spots: map[string]result[plan.Spot]{},
		facings: map[string]result[float64]{}, shapes: map[string]result[*plan.Furniture]{}}
}

// layOut takes the passes in order. Each puts what it makes into the set-up, and later ones read it there.
func layOut(doc *scene.Document, s *scene.Scene, before *plan.Setup, log *source.Log) *plan.Setup {
	known := newCatalogue(doc, s, log)
	aims := &aimer{newPlacer(newCarryOver(known, before))}
	hold := &holder{aims}
	known.levels()
	(&roomPass{known}).rooms()
	walls := &wallPass{catalogue: known}
	walls.openings()
	walls.shell()
	(&furniturePass{aims.placer}).furnish()
	(&peoplePass{aims}).populate()
	(&linePass{known.draft}).drawLine()
	(&cameraPass{aims}).placeCameras()
	(&circuitPass{aims.placer}).feed()
	(&lightPass{hold}).hangLights()
	(&cuePass{&lightPass{hold}}).cue()
	(&gripPass{hold}).rigGrip()
	(&gatePass{known}).setGates()
	(&cablePass{draft: known.draft}).lay()
	(&exposurePass{known.draft}).expose()
	(&meterPass{aims}).placeMeters()
	aims.keepSpots()
	fit.Check(doc, known.out, log)
	(&finisher{aims.placer}).finish()
	return known.out
}

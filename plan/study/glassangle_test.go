package study_test

import (
	"math"
	"testing"

	"scrimshaw/plan/study"
)

// Light through glass from aside, held to the path tracer: clear, double, wired, tinted and frosted, straight and back off walls.
func TestTracedGlass(t *testing.T) {
	for _, glass := range []string{"glass", "glass-double", "glass-wired", "glass-tinted", "glass-frosted"} {
		t.Run(glass, func(t *testing.T) {
			heldToTruth(t, glass, `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5}, n: {at: [4.15, 0], size: [2, 3.4], height: 2.5}},
			openings: {w: {window: k.left, width: 1.4, glass: `+glass+`}, d: {door: k.right, along: centre, glass: glass}},
			lights: {s: {output: {lumens: 40000, face: [0.8, 0.6]}, at: [-1.2, 3.6], height: 2.2, aim: w}, p: {output: {lumens: 9000, beam: 30, field: 60}, at: [-0.9, -0.6], height: 1.2, aim: w}},
			meters: {near: {flat: [0.6, 1.0, 1.2], facing: 300}, floor: {flat: [1, 1.4, 0.02], facing: up}, next: {flat: [5, 1.7, 1.2], facing: 270}}}`, 0.01)
		})
	}
}

// Straight ahead glass of the catalogue passes what it always has; from aside less, in maps as in readings.
func TestMapsThroughGlass(t *testing.T) {
	lit := func(form string) *study.Study {
		return run(t, laidOut(t, `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5, walls: black, floor: black, ceiling: black}},
			openings: {w: {`+form+`: k.left, width: 1.4, sill: 0.3, head: 2.1}},
			lights: {s: {output: {lumens: 40000, face: [0.4, 0.4]}, at: [-0.8, 3.2], height: 1.6, aim: w}},
			meters: {a: {flat: [0.5, 1.2, 0.001], facing: up}, b: {flat: [1.0, 1.0, 0.001], facing: up}, c: {flat: [0.4, 0.9, 0.001], facing: up}}}`), study.Options{Step: 0.05})
	}
	glazed, open := lit("window"), lit("gap")
	for i := range glazed.Readings.Readings {
		r, at := &glazed.Readings.Readings[i], glazed.Requests[i].Receptor.At
		want := *r.Lux / *open.Readings.Readings[i].Lux
		if got := float64(nearest(glazed.Floor(), at.X, at.Y) / nearest(open.Floor(), at.X, at.Y)); !(math.Abs(got/want-1) <= 0.01) {
			t.Errorf("%s: through the glass comes %.4f of the light on the map, and %.4f of the reading", r.Name, got, want)
		}
		if want > 0.895 || want < 0.3 {
			t.Errorf("%s: the glass passes %.4f from aside", r.Name, want)
		}
	}
	ahead := func(glass string) float64 {
		text := `{scrimshaw: 1, rooms: {k: {size: [4, 3.4], height: 2.5, walls: black, floor: black, ceiling: black}},
			openings: {w: {` + glass + `: k.left, width: 1.4, along: centre, sill: 0.9, head: 2.1}},
			lights: {s: {output: {candela: 1000, shape: uniform}, at: [-3, 1.7], height: 1.5, aim: w}}, meters: {m: {flat: [2, 1.7, 1.5], facing: 270}}}`
		return *run(t, laidOut(t, text), study.Options{ReadingsOnly: true}).Readings.Readings[0].Lux
	}
	if share := ahead("window") / ahead("gap"); !(math.Abs(share-0.90) <= 1e-5) {
		t.Errorf("from straight ahead clear glass passes %.9f, not 0.90", share)
	}
}

// nearest is the value of a map at the point nearest to a place.
func nearest(f *study.Field, x, y float64) float32 {
	corner, step := f.Corner()
	i, j := int(math.Round((x-corner.X)/step)), int(math.Round((y-corner.Y)/step))
	return f.Lux[j*f.Lattice.NU+i]
}

package truth_test

import (
	"math"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// laidOut reads a scene.
func laidOut(t testing.TB, text string) *plan.Setup {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "scene.yaml", Text: []byte(text)}, log)
	s := resolve.Resolve(document, document.Base(log), log)
	if log.Failed() {
		t.Fatalf("%+v", log.All())
	}
	return s
}

// meters are the flat and dome meters of a scene as receptors.
func meters(s *plan.Setup) (all []truth.Receptor) {
	for _, m := range s.Meters {
		r := truth.Receptor{At: m.At, Axis: m.Facing}
		if m.Kind == term.DomeMeter {
			r.Response = truth.Dome
		}
		all = append(all, r)
	}
	return all
}

// held says whether an estimate is within so many standard errors of the truth, and close to it.
func held(t *testing.T, what string, got truth.Part, want float64) {
	t.Helper()
	off := math.Abs(got.Y - want)
	t.Logf("%s: %.5f ± %.5f, want %.5f", what, got.Y, got.YSE, want)
	if off > 4*got.YSE+1e-6*want || got.YSE > 0.01*want {
		t.Errorf("%s: %.6f ± %.6f, want %.6f", what, got.Y, got.YSE, want)
	}
}

// Two readings that a tracer of another make gives to 0.2 %: a room filled through a window by a face outside
// that is larger than it, and a plane before a white box under a face.
func TestAgainstAnotherTracer(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
rooms: {k: {size: [4, 3.4], height: 2.5}}
openings: {w: {window: k.left, width: 0.8}}
lights: {fr: {output: {lumens: 20000, face: [2.4, 2.4]}, at: [-1.35, 1.7], height: 1.5, aim: 90}}
meters: {fill: {flat: [2.4, 1.7, 1.5], facing: 90}, side: {flat: [1.4, 0.6, 1.4], facing: 180}}
`)
	for i := range s.Set.Sheets { // the other tracer's glass passes as much from everywhere
		s.Set.Sheets[i].Front.Glass, s.Set.Sheets[i].Back.Glass = nil, nil
	}
	v := truth.Trace(s, meters(s), truth.Options{Error: 2.5e-3})
	near := func(what string, got truth.Part, want float64) {
		t.Logf("%s: %.4f ± %.4f", what, got.Y, got.YSE)
		if !(math.Abs(got.Y/want-1) <= 0.008) {
			t.Errorf("%s: %.3f ± %.3f, want %.3f", what, got.Y, got.YSE, want)
		}
	}
	near("fill", v[0].Reflected, 28.91)
	near("side", v[1].Reflected, 19.95)
	s = laidOut(t, `scrimshaw: 1
furniture: {bx: {box: [1, 1, .75], at: [0, 0], material: white}}
lights: {top: {output: {lumens: 8000, face: [1.5, 1.5]}, at: [0, -.5], height: 2.2, aim: down}}
meters: {side: {flat: [0, -.9, .5], facing: 0}}
`)
	near("box", truth.Trace(s, meters(s), truth.Options{Error: 2.5e-3})[0].Reflected, 30.56)
}

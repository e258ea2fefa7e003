package inhand

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// leastSoft is how large an opening is at least whose light is soft, m: about a face (common practice).
const leastSoft = 0.2

// nearer says how near a soft source that can be moved could come to the face that it is aimed at, and what that gains with nothing in the way; nil of any other
// light. Cloth on a head hangs in the set, and is not moved; of a plain source nobody knows how large the body is.
func (s *Lit) nearer(l *plan.Light, empty *light.World) *meter.Nearer {
	o := l.Head.Source.Opening
	moves := l.Mount.Kind == "" || l.Mount.Kind.OnLegs() || l.Mount.Kind == term.Hand
	if l.Choice.Unit == "" || o.Form == photometry.Point || o.Largest() < leastSoft || l.Head.Class == term.Practical || !moves || len(l.Diffusion) > 0 || s.Setup.AimsAtThing(l) {
		return nil
	}
	to := s.best(l)
	way, ok := frame.Nearest(s.Setup, l)
	if to == nil || !ok {
		return nil
	}
	given := func(by r3.Vec) float64 {
		moved := *l
		moved.Frame.At = r3.Add(l.Frame.At, by)
		return empty.Evaluator(light.Emitters(&plan.Setup{Lights: []plan.Light{moved}}), s.Levels)(to.Receptor)
	}
	now := given(r3.Vec{})
	if !(now > 0) {
		return nil
	}
	n := &meter.Nearer{Metres: way.Metres, Person: to.Person, Camera: way.Camera, Why: way.Why}
	if then := given(way.By); then > 0 {
		n.Stops = math.Log2(then / now)
	}
	return n
}

// best is the side of a face that gets most straight from a light: of who it is aimed at, else of anybody; nil where nobody gets anything.
func (s *Lit) best(l *plan.Light) *meter.Request {
	var found *meter.Request
	most, aimed := 0.0, false
	for i := range s.Requests {
		r := &s.Requests[i]
		if !strings.HasSuffix(r.Name, ".left") && !strings.HasSuffix(r.Name, ".right") || r.Person == "" {
			continue
		}
		const same = 0.05 // m
		given, at := straight(s.Readings.Named(r.Name), l.Name), r3.Norm(r3.Sub(r.Receptor.At, l.AimPoint)) < same
		if given > 0 && (at && !aimed || at == aimed && given > most) {
			found, most, aimed = r, given, at
		}
	}
	return found
}

// straight is what a light gives a reading that no surface sends back, lx.
func straight(r *meter.Reading, name string) (sum float64) {
	if r == nil {
		return 0
	}
	for i := range r.Shares {
		if share := &r.Shares[i]; share.Light == name && share.Path != light.Reflected.String() {
			sum += share.Lux
		}
	}
	return sum
}

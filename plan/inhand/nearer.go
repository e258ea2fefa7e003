package inhand

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// leastSoft is how large an opening is at least whose light is soft, m: about a face (common practice).
const leastSoft = 0.2

// nearer says how near a soft source that can be moved could come to the face that it is aimed at, with the cloth that hangs on it, and what that gains
// with nothing in the way; nil of any other light. Of a plain source nobody knows how large the body is.
func (s *Lit) nearer(ctx context.Context, l *plan.Light, empty *light.World) (*meter.Nearer, error) {
	moves := l.Mount.Kind == "" || l.Mount.Kind.OnLegs() || l.Mount.Kind == term.Hand
	if l.Choice.Unit == "" || !s.soft(l) || l.Head.Class == term.Practical || !moves || s.Setup.AimsAtThing(l) {
		return nil, nil
	}
	to := s.best(l)
	way, ok := frame.Nearest(s.Setup, l)
	if to == nil || !ok {
		return nil, nil
	}
	now, err := s.given(ctx, l, r3.Vec{}, to, empty)
	if err != nil || !(now > 0) {
		return nil, err
	}
	n := &meter.Nearer{Metres: way.Metres, Person: to.Person, Camera: way.Camera, Why: way.Why}
	then, err := s.given(ctx, l, way.By, to, empty)
	if then > 0 {
		n.Stops = lens.Stops(then / now)
	}
	return n, err
}

// soft says whether the light of a lamp is soft by what it leaves by: its opening, or the cloth on it.
func (s *Lit) soft(l *plan.Light) bool {
	for _, sheet := range s.clothOn(l) {
		c := sheet.Corners
		if max(r3.Norm(r3.Sub(c[1], c[0])), r3.Norm(r3.Sub(c[2], c[1]))) >= leastSoft {
			return true
		}
	}
	o := l.Head.Source.Opening
	return o.Form != photometry.Point && o.Largest() >= leastSoft
}

// clothOn are the sheets that hang on a light.
func (s *Lit) clothOn(l *plan.Light) (all []solid.Sheet) {
	if len(l.Diffusion) == 0 {
		return nil
	}
	for _, sheet := range s.Setup.Set.Sheets {
		if strings.HasPrefix(sheet.Name, l.Name+".") {
			all = append(all, sheet)
		}
	}
	return all
}

// given is what a light, moved with its cloth, gives a reading with nothing in the way, lx.
func (s *Lit) given(ctx context.Context, l *plan.Light, by r3.Vec, to *meter.Request, empty *light.World) (float64, error) {
	moved := *l
	moved.Frame.At = r3.Add(l.Frame.At, by)
	emitters := light.Emitters(&plan.Setup{Lights: []plan.Light{moved}})
	cloth := s.clothOn(l)
	if len(cloth) == 0 {
		return empty.Evaluator(emitters, s.Levels)(to.Receptor), nil
	}
	for i := range cloth {
		cloth[i].Corners = slices.Clone(cloth[i].Corners)
		for k := range cloth[i].Corners {
			cloth[i].Corners[k] = r3.Add(cloth[i].Corners[k], by)
		}
	}
	world, err := light.Build(ctx, &solid.Set{Sheets: cloth}, light.Options{})
	if err != nil {
		return 0, fmt.Errorf("%s brought nearer: %w", l.Name, err)
	}
	basis, err := world.Basis(ctx, emitters, light.Targets{Points: []light.Receptor{to.Receptor}})
	if err != nil {
		return 0, fmt.Errorf("%s brought nearer: %w", l.Name, err)
	}
	total, _ := basis.Point(0, s.Levels)
	return total.Y(), nil
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

package resolve

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
)

// setGates focuses projection spots and puts cuts and patterns into their gates, once all stands that a cut may end at.
func (r *gatePass) setGates() {
	for i := range r.s.Lights {
		written := &r.s.Lights[i]
		if l := r.out.LightNamed(written.Name); l != nil {
			leave := r.About(written.Path)
			r.setGate(written, l)
			leave()
		}
	}
}

// setGate is of one light. A gate that leaves it no light is a mistake.
func (r *gatePass) setGate(written *scene.Light, l *plan.Light) {
	filled := len(written.Cuts) > 0 || written.Breakup != nil
	switch {
	case !filled && l.Head.Edge == nil:
		return
	case !l.Head.Projects():
		r.noGate(written, l)
		return
	case !filled && !l.Head.TakesEdge():
		r.Warnf(report.Either(written.Edge.Set, written.Edge.Span, written.Focus.Span), kit.CodeNoZoom, "leave it out: measured light has the edge that it was measured with",
			"the focus of %s changes nothing: its light is measured, and its gate is empty", l.Name)
		l.Head.Edge = nil
		return
	}
	var cuts []photometry.Cut
	for i := range written.Cuts {
		if c, ok := r.cutOf(&written.Cuts[i], l); ok {
			cuts = append(cuts, c)
		}
	}
	var pattern *photometry.Breakup
	if b := written.Breakup; b != nil {
		pattern = &photometry.Breakup{Open: b.Open, Grain: b.Grain.Or(scene.DefaultGrain), Seed: uint64(b.Seed.Or(scene.DefaultSeed))}
		if !b.Grain.Set {
			r.assume(written.Path, "grain of its breakup", unit.FormatPercent(pattern.Grain))
		}
	}
	if filled && l.Head.Edge == nil {
		r.assume(written.Path, "focus", "edges as soft as its field's")
	}
	if l.Head.SetGate(cuts, pattern) < leastThroughGate {
		r.cutAway(written, l)
	}
}

// cutAway says that what is in a gate leaves no light.
func (r *gatePass) cutAway(written *scene.Light, l *plan.Light) {
	if len(written.Cuts) == 0 {
		r.Errorf(written.Breakup.Span, CodeCutAway, "open more of it, or give it a finer grain", "the breakup leaves %s no light", l.Name)
		return
	}
	r.Errorf(written.Cuts[0].Span, CodeCutAway, "make them shallower: two that face each other cover less than 100 % together", "the cuts leave %s no light", l.Name)
}

// leastThroughGate is the least share of its light that a gate may leave.
const leastThroughGate = 1e-3

// noGate says that a head throws no image.
func (r *gatePass) noGate(written *scene.Light, l *plan.Light) {
	what, span := "cuts", written.Span
	if written.Breakup != nil {
		what, span = "breakup", written.Breakup.Span
	}
	if len(written.Cuts) > 0 {
		what, span = "cuts", written.Cuts[0].Span
	}
	r.Errorf(span, CodeNoGate, "take a projection spot, such as a profile head or a point source with modifier: projection-30, or shape its light with a flag before it",
		"%s throws no image of a gate, so that there is no place for %s in it", l.Name, what)
}

// cutOf is a cut by its depth, or where a thing ends.
func (r *gatePass) cutOf(c *scene.Cut, l *plan.Light) (photometry.Cut, bool) {
	if c.To.Name == "" {
		return photometry.Cut{Angle: c.Angle, Depth: c.Depth.Value}, true
	}
	corners, ok := r.cornersOf(c.To, l.Frame.At)
	if !ok {
		return photometry.Cut{}, false
	}
	edge, before := imageEdge(corners, l, c.Angle)
	depth := (1 - edge) / 2
	switch {
	case !before:
		r.Errorf(c.To.Span, CodeNotBefore, "aim "+l.Name+" at it, or give the cut a depth", "%s is not before %s, so that no cut can end at it", c.To.Name, l.Name)
		return photometry.Cut{}, false
	case depth >= 1:
		r.Errorf(c.To.Span, CodeCutAway, "turn its angle by 180, or aim "+l.Name+" at it", "%s lies beside the image of %s: a cut from %s up to it would take all light",
			c.To.Name, l.Name, sideInWords(c.Angle))
		return photometry.Cut{}, false
	case depth <= 0:
		r.Warnf(c.Span, CodeCutIdle, "leave it out, or name something that ends within the image", "a cut of %s does nothing: %s goes on past the image at %s",
			l.Name, c.To.Name, sideInWords(c.Angle))
		return photometry.Cut{}, false
	}
	return photometry.Cut{Angle: c.Angle, Depth: depth}, true
}

// sideInWords is the side that a cut comes from.
func sideInWords(angle float64) string {
	if word := kit.SideWord(angle); !strings.HasSuffix(word, "°") {
		return "the " + word
	}
	return kit.SideWord(angle)
}

// imageEdge is how far a thing reaches in the image of a light toward the side of a cut, in radii of the image; before is not
// true where none of it is before the lamp.
func imageEdge(corners []r3.Vec, l *plan.Light, angle float64) (edge float64, before bool) {
	sin, cos := plane.Sincos(angle)
	radius := l.Head.ImageRadius()
	edge = math.Inf(-1)
	for _, p := range corners {
		way := r3.Sub(p, l.Frame.At)
		ahead, across := r3.Dot(way, l.Frame.Axis), sin*r3.Dot(way, l.Frame.Right)+cos*r3.Dot(way, l.Frame.Up())
		switch {
		case ahead > plane.Grain:
			before = true
			edge = max(edge, across/(ahead*radius))
		case across > 0: // it goes on beside the lamp
			edge = math.Inf(1)
		}
	}
	return edge, before
}

// cornersOf are those of what a cut ends at: of an opening the face of the wall that looks at the lamp.
func (r *gatePass) cornersOf(ref scene.Ref, from r3.Vec) ([]r3.Vec, bool) {
	t, ok := r.named(ref, openingKind, gripKind, furnitureKind)
	if !ok {
		return nil, false
	}
	switch t.kind {
	case openingKind:
		if o := r.out.OpeningNamed(ref.Name); o != nil {
			return openingFace(o, plan.InPlan(from)), true
		}
	case gripKind:
		if g := r.out.GripNamed(ref.Name); g != nil {
			return g.Corners(), true
		}
	default:
		if f := r.out.PieceNamed(ref.Name); f != nil {
			return furnitureCorners(f), true
		}
	}
	return nil, false // it has an error of its own
}

// openingFace are the corners of an opening in the face of the wall that looks at a place.
func openingFace(o *plan.Opening, from r2.Vec) []r3.Vec {
	out := report.Either(r2.Dot(r2.Sub(from, o.Left), o.Outward) > 0, o.Depth, 0)
	shift := r2.Scale(out, o.Outward)
	return upright(r2.Add(o.Left, shift), r2.Add(o.Right, shift), o.Sill, o.Head)
}

func furnitureCorners(f *plan.Furniture) (all []r3.Vec) {
	for _, part := range f.Parts {
		for _, p := range part.Outline {
			all = append(all, plan.AtHeight(p, part.Z0), plan.AtHeight(p, part.Z1))
		}
	}
	return all
}

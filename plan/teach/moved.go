package teach

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/unit"
)

// How far back a stand is moved, m: half a metre, or two feet.
const (
	stepBack     = 0.5
	stepBackFeet = 24 * unit.Inch
)

// move is what comes of moving the key straight back from the face at its height, with the same aim.
type move struct {
	by      float64 // m
	wall    string  // what stands in the way; "" nothing
	room    float64 // m to there
	up      bool    // it hangs over the face, and is lifted
	farther float64 // m from the face that it is then
	lost    float64 // stops that it gives the key side less
	asPoint float64 // stops that the inverse square of the distances says
}

// moveKey lights the key anew from farther off. A key whose light comes off a surface is not moved: what it lights would move
// with it.
func (t *teacher) moveKey(ctx context.Context) error {
	key := &t.lesson.Lights[0]
	if key.By != "" || key.At == nil || key.Key <= 0 {
		return nil
	}
	l := t.study.Setup.LightNamed(key.Light)
	m := &move{by: stepBack}
	if t.feet {
		m.by = stepBackFeet
	}
	way := awayFrom(t.person.Face.At, l.Frame.At)
	if hit, met := t.study.World.BVH().FirstOpaque(l.Frame.At, way, t.carried(l)); met && hit.T < m.by {
		m.wall, m.room = t.study.Setup.Names[hit.ID], hit.T
		t.moved = m
		return nil
	}
	off := r3.Scale(m.by, way)
	there, err := t.litFrom(ctx, l, off)
	if err != nil {
		return err
	}
	here, err := t.litFrom(ctx, l, r3.Vec{})
	if err != nil {
		return err
	}
	if !(here > 0) || !(there > 0) {
		return nil
	}
	m.lost = lens.Stops(here / there)
	m.up, m.farther = way.Z > 0, r3.Norm(r3.Sub(r3.Add(*key.At, off), t.person.Face.At))
	m.asPoint = 2 * lens.Stops(m.farther/key.Distance)
	t.moved = m
	return nil
}

// awayFrom is the level direction from a face to a lamp; up, where that hangs over it.
func awayFrom(face, lamp r3.Vec) r3.Vec {
	flat := plan.InPlan(r3.Sub(lamp, face))
	if r2.Norm(flat) < overhead {
		return r3.Vec{Z: 1}
	}
	flat = r2.Unit(flat)
	return r3.Vec{X: flat.X, Y: flat.Y}
}

// carried are the sheets that a light carries: diffusion clipped to it.
func (t *teacher) carried(l *plan.Light) []solid.ID { return t.carriedBy(l, "") }

// carriedBy are those of them that have a name; "" stands for any.
func (t *teacher) carriedBy(l *plan.Light, name string) (ids []solid.ID) {
	for i := range t.study.Setup.Set.Sheets {
		s := &t.study.Setup.Set.Sheets[i]
		if len(l.Diffusion) > 0 && strings.HasPrefix(s.Name, l.Name+".") && (name == "" || name == s.Name) {
			ids = append(ids, s.ID)
		}
	}
	return ids
}

// litFrom is what a light alone gives the key side with it moved so far, lx at its level. It is followed as a draft is: what
// is printed of it are tenths of a stop.
func (t *teacher) litFrom(ctx context.Context, l *plan.Light, off r3.Vec) (float64, error) {
	s := t.study.Setup
	set := solid.Set{Prisms: s.Set.Prisms, Sheets: slices.Clone(s.Set.Sheets)}
	carried := t.carried(l)
	for i := range set.Sheets {
		if sheet := &set.Sheets[i]; slices.Contains(carried, sheet.ID) {
			sheet.Corners = shifted(sheet.Corners, off)
		}
	}
	world, err := light.Build(ctx, &set, light.Options{Quality: light.Draft, Bodies: &s.Bodies, Slender: s.Bars()})
	if err != nil {
		return 0, fmt.Errorf("the key of %q moved: %w", s.Title, err)
	}
	moved := *l
	moved.Frame = reaimed(l, off)
	alone := *s
	alone.Lights = []plan.Light{moved}
	key := t.reading("key")
	at := light.Receptor{At: key.At, Axis: key.Facing, Response: light.Cosine, Skip: t.person.Own}
	basis, err := world.Basis(ctx, light.Emitters(&alone), light.Targets{Points: []light.Receptor{at}})
	if err != nil {
		return 0, fmt.Errorf("the key of %q moved: %w", s.Title, err)
	}
	total, _ := basis.Point(0, light.LevelsOf(alone.Lights))
	return total.Y(), nil
}

// shifted are points moved.
func shifted(points []r3.Vec, off r3.Vec) []r3.Vec {
	out := make([]r3.Vec, len(points))
	for i, p := range points {
		out[i] = r3.Add(p, off)
	}
	return out
}

// reaimed is the frame of a light that is moved and still aims at the same place; one that carries cloth, or has no place that
// it aims at, keeps its direction.
func reaimed(l *plan.Light, off r3.Vec) plan.Frame {
	f := l.Frame
	f.At = r3.Add(f.At, off)
	way := r3.Sub(l.AimPoint, f.At)
	if l.Throw == 0 || len(l.Diffusion) > 0 || r3.Norm(way) == 0 || off == (r3.Vec{}) {
		return f
	}
	axis := r3.Unit(way)
	right := r3.Sub(f.Right, r3.Scale(r3.Dot(f.Right, axis), axis))
	if r3.Norm(right) < math.Sqrt2/2 {
		return f // it is moved past its aim
	}
	f.Axis, f.Right = axis, r3.Unit(right)
	return f
}

// without is a reading less what some lights give to it, lx.
func without(r *meter.Reading, lights []string) float64 {
	left := *r.Lux
	for _, name := range lights {
		left -= given(r, name)
	}
	return math.Max(0, left)
}

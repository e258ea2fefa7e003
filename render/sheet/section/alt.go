package section

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
)

// OpeningAlt says an opening in a sentence.
func (c Report) OpeningAlt(o *plan.Opening) string {
	s := fmt.Sprintf("%s %s, %s wide", o.Kind, o.Name, c.Length(r2.Norm(r2.Sub(o.Right, o.Left))))
	if o.Kind == term.Window {
		s += fmt.Sprintf(", sill %s, head %s", c.Length(o.Sill-floorOf(c.In.Setup, o.Room)), c.Length(o.Head-floorOf(c.In.Setup, o.Room)))
	}
	if o.Ajar > 0 {
		s += ", open " + unit.FormatAngle(o.Ajar)
	}
	return s + "."
}

// floorOf is the height of a room's floor, m.
func floorOf(s *plan.Setup, room string) float64 {
	for i := range s.Rooms {
		if r := &s.Rooms[i]; r.Name == room {
			return r.Base
		}
	}
	return 0
}

// OwnerPrefix is the name of whose face it is, where there are several.
func (c Report) OwnerPrefix(f *Face) string {
	if len(c.In.Faces) < 2 {
		return ""
	}
	return f.Person
}

// ReadingAlt says a reading in a sentence.
func (c Report) ReadingAlt(r *meter.Reading) string {
	if r.Kind == term.SpotMeter {
		return fmt.Sprintf("Spot reading %s: %s, %s stops over mid grey.", r.Name, c.Metered(r), over(r.Over)) + alsoStruck(r)
	}
	return fmt.Sprintf("Reading %s, %s, %s: %s, %s, %s stops from the working stop.",
		r.Name, r.Kind, c.aboveWords(r), c.Metered(r), Stop(r.Stop), over(r.Over)) + alsoStruck(r)
}

// aboveWords say how high a reading is taken: at a face, above what its owner stands on.
func (c Report) aboveWords(r *meter.Reading) string {
	for i := range c.In.Setup.People {
		p := &c.In.Setup.People[i]
		if rise := r.At.Z - p.Base; p.Name == r.Person && c.Length(rise) != c.Length(above(c.In.Setup, r.At)) {
			return c.Length(rise) + " above what " + p.Name + " stands on"
		}
	}
	return c.Length(above(c.In.Setup, r.At)) + " above the floor"
}

// above is the height of a point over the floor of its room, or over the ground.
func above(s *plan.Setup, p r3.Vec) float64 {
	for i := range s.Rooms {
		if r := &s.Rooms[i]; box.InRing(r.Inside, plan.InPlan(p)) {
			return p.Z - r.Base
		}
	}
	return p.Z - s.Ground
}

// LightAlt says a light in a sentence.
func (c Units) LightAlt(l *plan.Light) string {
	s := fmt.Sprintf("Light %s, %s: %s, %s, %s high", l.Tag, c.LightLabel(l), LightColour(l), LightLevel(l), c.Length(l.Height))
	if l.Throw > 0 {
		s += ", throw " + c.Length(l.Throw)
	}
	return s + "."
}

package section

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
	"scrimshaw/symbols"
)

// aimWords say what a light is aimed at, and by how much it is tilted; nothing of one that shines all
// round and was not turned.
func (c Report) aimWords(l *plan.Light) string {
	aim := writtenAim(c.In.Setup, l)
	if l.Frame.Axis == (r3.Vec{}) || aim == nil && allRound(l) {
		return ""
	}
	tilted := Joined(", ", tiltWords(l.Frame.Axis), panWords(l.Frame.Axis))
	if at := aimedAt(c.In.Setup, l, aim); at != "" {
		return "at " + at + ", " + tilted
	}
	return "aimed " + tilted
}

// allRound says whether a light shines to all sides as it stands or hangs, so that nobody aims it.
func allRound(l *plan.Light) bool {
	return symbols.Class(l.Head.Class) == symbols.Lantern || symbols.Class(l.Head.Class) == symbols.Practical
}

// bounceWords say how far light that is sent to a surface goes on from there: "0.75 on to ruth".
func (c Report) bounceWords(l *plan.Light) string {
	b := c.In.BounceOf(l.Name)
	if b == nil {
		return ""
	}
	return "off " + b.Off + " " + c.Bare(b.On) + " on to " + b.To
}

// tiltWords say an axis against the horizontal.
func tiltWords(axis r3.Vec) string {
	t := math.Round(Tilt(axis))
	switch {
	case t == 0:
		return "level"
	case t <= -89:
		return "straight down"
	case t >= 89:
		return "straight up"
	case t < 0:
		return unit.FormatAngle(-t) + " down"
	}
	return unit.FormatAngle(t) + " up"
}

// panWords say which way an axis turns, clockwise from the plan's up; nothing of one that is nearly upright.
func panWords(axis r3.Vec) string {
	if math.Abs(Tilt(axis)) >= steepest {
		return ""
	}
	return "pan " + unit.FormatAngle(pan(axis))
}

// pan is which way an axis turns, clockwise from the plan's up, in whole degrees.
func pan(axis r3.Vec) float64 {
	return math.Mod(math.Round(plane.Bearing(plan.InPlan(axis)))+360, 360)
}

// steepest is the tilt from which on an axis has no pan worth saying, degrees.
const steepest = 85.0

// aimedAt names what a light is aimed at: the face at its aim, or else what the scene says.
func aimedAt(s *plan.Setup, l *plan.Light, aim *scene.Aim) string {
	const same = 0.05 // m
	if !(l.Throw > 0) {
		return ""
	}
	for _, p := range s.Posts() {
		if r3.Norm(r3.Sub(p.Face.At, l.AimPoint)) < same {
			return p.Name
		}
	}
	switch {
	case aim == nil:
	case aim.MeansOpening():
		return aim.Place.Thing.Name
	case aim.Form == scene.AtThing:
		return aim.Thing.Name
	case aim.Form == scene.AimCeiling, aim.Form == scene.AimFloor:
		return "the " + aim.Thing.Name
	}
	return ""
}

// writtenAim is the aim that the scene gives a light, nil for none.
func writtenAim(s *plan.Setup, l *plan.Light) *scene.Aim {
	if s.Scene == nil {
		return nil
	}
	for i := range s.Scene.Lights {
		if w := &s.Scene.Lights[i]; w.Name == l.Name && w.Aim.Set {
			return &w.Aim.Value
		}
	}
	return nil
}

// roleWords say what a light is for: "key", "key of tom, edge of mara".
func roleWords(roles []scene.Role) string {
	var all []string
	for _, r := range roles {
		all = append(all, Joined(" of ", string(r.Role), r.Person.Name))
	}
	return Joined(", ", all...)
}

// powerWords are the watts of a light, where its name does not say them.
func powerWords(l *plan.Light) string {
	watts := unit.FormatPower(l.Head.Watts)
	if !(l.Head.Watts > 0) || strings.Contains(l.Head.UnitLabel, watts) {
		return ""
	}
	return "draws " + watts
}

// Tilt is the angle of a direction above the horizontal, degrees.
func Tilt(d r3.Vec) float64 { return math.Atan2(d.Z, math.Hypot(d.X, d.Y)) * 180 / math.Pi }

package section

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
)

// Below these nobody moves or turns a thing.
const (
	unmoved  = 0.01 // m
	unturned = 0.5  // degrees
)

// set says a value that was changed, with what it was; nothing where it reads the same.
func set(what, now, was string) string {
	if now == was {
		return ""
	}
	return Joined(" ", what, cmp.Or(now, "none")) + ", was " + cmp.Or(was, "none")
}

// moved says how far a thing went on the floor.
func (c Units) moved(was, is r2.Vec) string {
	if far := r2.Norm(r2.Sub(is, was)); far >= unmoved {
		return "moved " + c.Length(far)
	}
	return ""
}

// height says a height that was changed.
func (c Units) height(now, was float64) string { return set("height", c.Length(now), c.Length(was)) }

// lightChanges say how a light differs: the list of lights has its new place and aim in full.
func (c Report) lightChanges(was, is *plan.Light) []string {
	aim := ""
	if turned(was.Frame.Axis, is.Frame.Axis) {
		aim = c.aimWords(is)
	}
	return NonEmpty(
		set("", c.UnitLabel(is), c.UnitLabel(was)),
		set("", c.sized(is.Head.ModifierLabel), c.sized(was.Head.ModifierLabel)), set("", bulb(&is.Head), bulb(&was.Head)),
		set("", is.Head.FocusWord(), was.Head.FocusWord()),
		set("", scrims(&is.Head), scrims(&was.Head)), set("", doors(is.Head.Doors), doors(was.Head.Doors)),
		set("edge", is.Head.EdgeWord(), was.Head.EdgeWord()), set("", cuts(&is.Head), cuts(&was.Head)), set("", breakup(&is.Head), breakup(&was.Head)),
		c.moved(plan.InPlan(was.Frame.At), plan.InPlan(is.Frame.At)),
		c.height(is.Height, was.Height), aim,
		set("level", LightLevel(is), LightLevel(was)),
		set("circuit", is.Circuit, was.Circuit),
		set("", LightColour(is), LightColour(was)),
		set("gels", strings.Join(is.Gels, " + "), strings.Join(was.Gels, " + ")),
		set("diffusion", strings.Join(is.Diffusion, " + "), strings.Join(was.Diffusion, " + ")),
		set("on", string(is.Mount.Kind), string(was.Mount.Kind)))
}

// turned says whether an axis points elsewhere.
func turned(was, is r3.Vec) bool {
	return was != is && math.Acos(math.Min(1, r3.Dot(r3.Unit(was), r3.Unit(is))))*180/math.Pi >= unturned
}

// gripChanges say how a piece of grip differs.
func (c Report) gripChanges(was, is *plan.Grip) []string {
	size := func(g *plan.Grip) string { return c.GripSize(g, c.Length) }
	facing := ""
	if turned(was.Frame.Axis, is.Frame.Axis) {
		facing = "faces " + cmp.Or(strings.TrimPrefix(panWords(is.Frame.Axis), "pan "), tiltWords(is.Frame.Axis))
	}
	return NonEmpty(
		set("", string(is.Kind), string(was.Kind)), set("", size(is), size(was)),
		set("", is.Cloth, was.Cloth), set("", is.Surface, was.Surface),
		c.moved(plan.InPlan(was.Frame.At), plan.InPlan(is.Frame.At)), c.height(is.Height, was.Height), facing,
		set("on", string(is.Mount.Kind), string(was.Mount.Kind)))
}

// cameraChanges say how a camera differs.
func (c Report) cameraChanges(was, is *plan.Camera) []string {
	looks := ""
	if turned(was.Frame.Axis, is.Frame.Axis) {
		looks = "looks " + Joined(", ", tiltWords(is.Frame.Axis), panWords(is.Frame.Axis))
	}
	return NonEmpty(
		c.moved(plan.InPlan(was.Frame.At), plan.InPlan(is.Frame.At)), c.height(is.Height, was.Height), looks, c.tracked(was.Track, is.Track),
		set("", is.LensWords(), was.LensWords()), filterChange(was.Filters.Names, is.Filters.Names),
		set("", unit.FormatAspect(is.Aspect), unit.FormatAspect(was.Aspect)))
}

// tracked says that the track of a camera differs.
func (c Report) tracked(was, is *plan.Track) string {
	same := func(a, b r2.Vec) bool { return r2.Norm(r2.Sub(a, b)) < unmoved }
	switch {
	case was == nil && is == nil:
		return ""
	case was == nil:
		return "on a track of " + c.Length(is.Length())
	case is == nil:
		return "off its track"
	case !slices.EqualFunc(was.Corners, is.Corners, same):
		return "another track, of " + c.Length(is.Length())
	}
	return ""
}

// personChanges say how a person differs.
func (c Report) personChanges(was, is *plan.Person) []string {
	return NonEmpty(c.moved(was.At, is.At), set("", string(is.Pose), string(was.Pose)), rotated("faces", was.Faces, is.Faces), rerouted(was.Walk, is.Walk))
}

// rerouted says that somebody's walk differs.
func rerouted(was, is *plan.Walk) string {
	switch {
	case was == nil && is == nil:
		return ""
	case was == nil:
		return "walks"
	case is == nil:
		return "walks no more"
	case !slices.EqualFunc(was.Corners, is.Corners, func(a, b r2.Vec) bool { return r2.Norm(r2.Sub(a, b)) < unmoved }):
		return "walks another way"
	}
	return ""
}

// pieceChanges say how a piece of furniture differs.
func (c Report) pieceChanges(was, is *plan.Furniture) []string {
	return NonEmpty(c.moved(was.At, is.At), rotated("turned to", was.Turn, is.Turn), c.height(is.Z1-is.Base, was.Z1-was.Base))
}

// openingChanges say how an opening differs: what of it a crew can change in a room that stands.
func (c Report) openingChanges(was, is *plan.Opening) []string {
	ajar := func(o *plan.Opening) string {
		if o.Ajar > 0 {
			return unit.FormatAngle(o.Ajar)
		}
		return "shut"
	}
	gels := func(o *plan.Opening) string { return strings.Join(o.Gels, " + ") }
	return NonEmpty(set("", ajar(is), ajar(was)), set("glass", is.Glass, was.Glass), set("gels", gels(is), gels(was)),
		set("", c.dressed(is), c.dressed(was)))
}

// dressed is what hangs in an opening, from the room outward, each as wide as it is drawn.
func (c Report) dressed(o *plan.Opening) string {
	var all []string
	for i := range o.Dressing {
		d := &o.Dressing[i]
		all = append(all, DressingWords(d)+" "+c.Length(r2.Norm(r2.Sub(d.B, d.A))))
	}
	return strings.Join(all, "; ")
}

// rotated says a bearing that was changed.
func rotated(verb string, was, is float64) string {
	if math.Abs(math.Remainder(is-was, 360)) < unturned {
		return ""
	}
	return fmt.Sprintf("%s %s", verb, unit.FormatAngle(math.Mod(math.Round(is)+360, 360)))
}

// exposureChanges say what all cameras are set to otherwise.
func exposureChanges(was, is *plan.Exposure) string {
	if is.Stop.N == 0 || was.Stop.N == 0 {
		return ""
	}
	number := unit.FormatNumber
	return Joined("; ",
		set("T", number(is.Stop.Written), number(was.Stop.Written)), set("ISO", number(is.ISO), number(was.ISO)),
		set("fps", number(is.FPS), number(was.FPS)), set("white", unit.FormatKelvin(is.SetTo().Kelvin), unit.FormatKelvin(was.SetTo().Kelvin)), strings.Join(When(is.Range != was.Range, rangeWords(is)), ""))
}

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
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/unit"
)

// told puts the lines of a list into words.
type told struct {
	Report
	before *plan.Setup
}

// set says a value that was changed, with what it was; nothing where it reads the same.
func set(what, now, was string) string {
	if now == was {
		return ""
	}
	return Joined(" ", what, cmp.Or(now, "none")) + ", was " + cmp.Or(was, "none")
}

// moved says how far a thing went on the floor.
func (c Units) moved(was, is r2.Vec) string {
	if far := r2.Norm(r2.Sub(is, was)); far >= change.Unmoved {
		return "moved " + c.Length(far)
	}
	return ""
}

// height says a height that was changed.
func (c Units) height(now, was float64) string { return set("height", c.Length(now), c.Length(was)) }

// placeChange says how far a thing went on the floor, and its new height. Of one of which only the foot moves, that.
func (c told) placeChange(was, is r3.Vec, low, high float64) string {
	return cmp.Or(Joined("; ", c.moved(plan.InPlan(was), plan.InPlan(is)), c.height(high, low)), "its foot moved")
}

// turned says whether an axis points elsewhere.
func turned(was, is r3.Vec) bool {
	return change.AngleBetween(was, is) >= change.Unturned
}

// cameraPart says one aspect of a camera that differs.
func (c told) cameraPart(was, is *plan.Camera, a change.Aspect) string {
	switch a {
	case change.Place:
		return c.placeChange(was.Frame.At, is.Frame.At, was.Height, is.Height)
	case change.Aim:
		return "looks " + Joined(", ", tiltWords(is.Frame.Axis), panWords(is.Frame.Axis))
	case change.Lens:
		return Joined("; ", set("", is.LensWords(), was.LensWords()), filterChange(was.Filters.Names, is.Filters.Names))
	case change.Format:
		return Joined("; ", set("", is.Sensor, was.Sensor), set("", unit.FormatAspect(is.Aspect), unit.FormatAspect(was.Aspect)))
	case change.Track:
		return c.tracked(was.Track, is.Track)
	}
	return cmp.Or(exposureChanges(&was.Exposure, &is.Exposure), "set by itself")
}

// tracked says that the track of a camera differs.
func (c told) tracked(was, is *plan.Track) string {
	same := func(a, b r2.Vec) bool { return r2.Norm(r2.Sub(a, b)) < change.Unmoved }
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

// personPart says one aspect of somebody, or of a mark, that differs.
func (c told) personPart(was, is *plan.Person, a change.Aspect) string {
	switch a {
	case change.Place:
		return c.placeChange(plan.AtHeight(was.At, was.Base), plan.AtHeight(is.At, is.Base), was.Base, is.Base)
	case change.Pose:
		return set("", string(is.Pose), string(was.Pose))
	case change.Turn:
		return rotated("faces", was.Faces, is.Faces)
	case change.Walk:
		return rerouted(was.Walk, is.Walk)
	}
	return "wears what returns " + unit.FormatPercent(is.Clothes) + ", was " + unit.FormatPercent(was.Clothes)
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
	case !slices.EqualFunc(was.Corners, is.Corners, func(a, b r2.Vec) bool { return r2.Norm(r2.Sub(a, b)) < change.Unmoved }):
		return "walks another way"
	}
	return ""
}

// piecePart says one aspect of a piece of furniture that differs.
func (c told) piecePart(was, is *plan.Furniture, a change.Aspect) string {
	size := func(f *plan.Furniture) string {
		return string(f.Kind) + " " + Joined(" × ", c.Length(f.Size[0]), c.Length(f.Size[1]), c.Length(f.Size[2]))
	}
	switch a {
	case change.Piece:
		seat := func(f *plan.Furniture) string { return strings.Join(When(f.Seat() > 0, c.Length(f.Seat())), "") }
		steps := func(f *plan.Furniture) string { return strings.Join(When(f.Steps() > 0, Count(f.Steps(), "step")), "") }
		return Joined("; ", set("", size(is), size(was)), set("seat", seat(is), seat(was)), set("", steps(is), steps(was)))
	case change.Surface:
		return set("", is.Material, was.Material)
	case change.Place:
		return cmp.Or(Joined("; ", c.moved(was.At, is.At), c.height(is.Z1-is.Base, was.Z1-was.Base)), "on another level")
	}
	return rotated("turned to", was.Turn, is.Turn)
}

// openingPart says one aspect of an opening that differs: what of it a crew can change in a room that stands.
func (c told) openingPart(was, is *plan.Opening, a change.Aspect) string {
	ajar := func(o *plan.Opening) string {
		if o.Ajar > 0 {
			return unit.FormatAngle(o.Ajar)
		}
		return "shut"
	}
	switch a {
	case change.Leaf:
		return set("", ajar(is), ajar(was))
	case change.Glass:
		return set("glass", is.Glass, was.Glass)
	case change.Gels:
		return set("gels", strings.Join(is.Gels, " + "), strings.Join(was.Gels, " + "))
	}
	return cmp.Or(set("", c.dressed(is), c.dressed(was)), "dressing drawn otherwise")
}

// dressed is what hangs in an opening, from the room outward, each as wide as it is drawn.
func (c told) dressed(o *plan.Opening) string {
	var all []string
	for i := range o.Dressing {
		d := &o.Dressing[i]
		all = append(all, DressingWords(d)+" "+c.Length(r2.Norm(r2.Sub(d.B, d.A))))
	}
	return strings.Join(all, "; ")
}

// rotated says a bearing that was changed.
func rotated(verb string, was, is float64) string {
	if math.Abs(math.Remainder(is-was, 360)) < change.Unturned {
		return ""
	}
	return fmt.Sprintf("%s %s", verb, unit.FormatAngle(math.Mod(math.Round(is)+360, 360)))
}

// shutterWords say how long a camera exposes, by its shutter angle where it has one.
func shutterWords(x *plan.Exposure) string {
	if x.Degrees > 0 {
		return unit.FormatAngle(x.Degrees)
	}
	return unit.FormatShutter(unit.Shutter{Seconds: x.Seconds})
}

// exposureChanges say what all cameras are set to otherwise.
func exposureChanges(was, is *plan.Exposure) string {
	if is.Stop.N == 0 || was.Stop.N == 0 {
		return ""
	}
	number := unit.FormatNumber
	return Joined("; ",
		set("T", number(is.Stop.Written), number(was.Stop.Written)), set("ISO", number(is.ISO), number(was.ISO)),
		set("fps", number(is.FPS), number(was.FPS)), set("shutter", shutterWords(is), shutterWords(was)), set("white", unit.FormatKelvin(is.SetTo().Kelvin), unit.FormatKelvin(was.SetTo().Kelvin)), strings.Join(When(is.Range != was.Range, rangeWords(is)), ""))
}

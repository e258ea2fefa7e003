package light

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// newLamp prepares an emitter; faces and tubes are how many points are traced, bundle is how many of them
// are taken together.
func newLamp(e *Emitter, faces, tubes, bundle int) *lamp {
	l := &lamp{
		at: e.Frame.At, axis: e.Frame.Axis, right: e.Frame.Right, up: e.Frame.Up(),
		flux: e.Source.Flux, shape: e.Source.Distribution, opening: e.Source.Opening, profile: e.Profile,
	}
	if l.shape == nil {
		l.shape, l.flux = photometry.Uniform{}, 0
	}
	l.normalise()
	face := l.opening.Form == photometry.Rectangle || l.opening.Form == photometry.Disc
	l.onesided = face && !photometry.Behind(l.shape)
	l.lambertian = l.opening.Form != photometry.Point && l.shape == photometry.Lambertian(l.opening.Form) && l.profile == nil
	own, points := l.openingPoints(faces, tubes)
	l.points = points
	l.order, l.begins = inBundles(own, bundle)
	if _, axial := l.shape.(photometry.Axial); l.onesided && !axial && !l.lambertian {
		l.creases = newCreases(l.shape)
	}
	l.placeCorners()
	l.shade = newShadeLamp(l)
	l.placeScreens(e.Screens)
	return l
}

// newLamp prepares an emitter for the set, with what stops its light.
func (w *World) newLamp(e *Emitter) *lamp {
	l := newStraightLamp(w, e)
	w.addImages(l, e)
	w.addBoards(l)
	return l
}

// newStraightLamp prepares an emitter for the set, without what mirrors and boards make of it.
func newStraightLamp(w *World, e *Emitter) *lamp {
	l := newLamp(e, w.faces, w.tubes, w.bundle)
	w.addScreens(l)
	return l
}

// addScreens makes the set with the lamp's own screens in it.
func (w *World) addScreens(l *lamp) {
	if len(l.screens) == 0 {
		return
	}
	set := solid.Set{Prisms: w.set.Prisms, Sheets: slices.Clone(w.set.Sheets)}
	for i := range l.screens {
		set.Sheets = append(set.Sheets, *l.screens[i].sheet)
	}
	l.screened = solid.NewBVH(&set)
}

// placeCorners finds the corners of the opening.
func (l *lamp) placeCorners() {
	w, h := r3.Scale(l.opening.Width/2, l.right), r3.Scale(l.opening.Height/2, l.up)
	if l.opening.Form == photometry.Disc {
		h = r3.Scale(l.opening.Width/2, l.up)
		disc := l.discCircle()
		l.ring, l.coarseRing = disc.polygon(roundSides), disc.polygon(fewSides)
	}
	low, high := r3.Sub(l.at, h), r3.Add(l.at, h)
	l.corners = [4]r3.Vec{r3.Sub(low, w), r3.Sub(high, w), r3.Add(high, w), r3.Add(low, w)}
	l.ends = [2]r3.Vec{r3.Sub(l.at, w), r3.Add(l.at, w)}
}

// normalise makes points of openings without size. What is round from everywhere has no profile.
func (l *lamp) normalise() {
	o := &l.opening
	if !(o.Width > 0) || o.Form == photometry.Rectangle && !(o.Height > 0) {
		*o = photometry.Opening{}
	}
	if o.Form == photometry.Point || o.Form == photometry.Sphere {
		l.profile = nil
	}
}

// addImages finds the mirrors before which the lamp shines.
func (w *World) addImages(l *lamp, e *Emitter) {
	for i := range w.mirrors {
		m := &w.mirrors[i]
		if !m.isReached(l) {
			continue
		}
		v := m.w.newLamp(e)
		if low, _ := over(l, &m.Mirror); low < 0 {
			v.before = &solid.Plane{N: r3.Scale(-1, m.Plane.N), C: -m.Plane.C}
		}
		l.images = append(l.images, image{m, v})
	}
}

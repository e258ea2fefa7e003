package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// Sightline is what one looks at along a ray.
type Sightline struct {
	Parts []Sighted  // what its luminance adds up from: cloth on the way, nearest first, then what it ends on
	Met   []solid.ID // the sheets and mirrors on the way, from the eye on
	Ends  bool       // on a surface; else there is nothing
	Last  solid.ID   // that surface
	At    r3.Vec     // where, m; without one the eye, or the mirror that shows nothing

	seen Receptor   // on that surface
	gain colour.RGB // of what it reflects
}

// Sighted is a place that is read, and the factor from its light to the luminance that one sees of it.
type Sighted struct {
	Receptor Receptor
	Gain     colour.RGB
}

// surface finds what a spot meter looks at: a flat receptor on the first surface along the axis, behind clear sheets and in
// mirrors, and the factor from its illuminance to the luminance seen, Reflect/pi times what sheets and mirrors leave. Where
// there is no surface the spot meter itself reads what the environment sends, 1/pi of its exitance. A silver board counts as
// if it scattered all that it returns.
func (w *World) surface(r *Receptor) (Receptor, colour.RGB) {
	line := Sight(w, r)
	return line.seen, line.gain
}

// Sight follows the axis of a receptor in a world to the first surface, past clear sheets and in mirrors. What a cloth or frosted glass on the way
// scatters of the light on its two sides is a part of its own: with both faces Lambertian it is (near × reflect + far × diffuse) / pi.
func Sight(w *World, r *Receptor) Sightline {
	line := Sightline{gain: colour.RGB{1, 1, 1}, seen: *r}
	for range mostSpotMirrors {
		hit, ok := w.firstSeen(&line.seen)
		line.At = line.seen.At
		if !ok {
			line.past(w, math.Inf(1), r.Skip)
			line.gain = line.gain.Scale(1 / math.Pi)
			return line
		}
		at := r3.Add(line.seen.At, r3.Scale(hit.T, line.seen.Axis))
		line.past(w, hit.T, append(slices.Clone(r.Skip), hit.ID))
		if hit.Skin.Mirror < 1 || hit.Skin.Lobe > 0 || hit.Skin.Clear() {
			line.Ends, line.Last, line.At = true, hit.ID, at
			line.scattered(w, hit.ID, at, hit.Normal)
			line.seen, line.gain = Receptor{At: at, Axis: hit.Normal, Skip: r.Skip}, line.gain.Times(hit.Skin.Reflect).Scale(1/math.Pi)
			line.Parts = append(line.Parts, Sighted{line.seen, line.gain})
			return line
		}
		line.gain = line.gain.Times(hit.Skin.Reflect)
		line.Met = append(line.Met, hit.ID)
		line.seen.At, line.seen.Axis = at, solid.Mirrored(line.seen.Axis, hit.Normal)
	}
	line.gain = colour.RGB{}
	return line
}

// past takes the clear sheets up to a distance along the line, m: what they leave of the light behind them, and what they scatter.
func (line *Sightline) past(w *World, distance float64, skip []solid.ID) {
	end := r3.Add(line.seen.At, r3.Scale(math.Min(distance, beyondAll), line.seen.Axis))
	panes, _ := w.bvh.Segment(line.seen.At, end, skip, nil)
	before := line.gain
	for i := range panes {
		p := &panes[i]
		line.Met = append(line.Met, p.ID)
		at := r3.Add(line.seen.At, r3.Scale(p.T, line.seen.Axis))
		line.gain = before.Times(passed(panes[:i]))
		line.lit(w, p.ID, at, line.seen.Axis)
	}
	line.gain = before.Times(passed(panes))
}

// beyondAll is farther than anything stands, m.
const beyondAll = 1e6

// lit adds both sides of a sheet that is passed in a direction, where it scatters.
func (line *Sightline) lit(w *World, id solid.ID, at, along r3.Vec) {
	skin, n := sideOf(w.set, id, along)
	if skin == nil || !w.scattering[id] {
		return
	}
	line.Parts = append(line.Parts, Sighted{Receptor{At: at, Axis: n, Skip: line.seen.Skip}, line.gain.Times(skin.Reflect).Scale(1 / math.Pi)})
	line.scattered(w, id, at, n)
}

// scattered adds the light that falls on the far side of a sheet whose near side faces along n, by what comes through scattered.
func (line *Sightline) scattered(w *World, id solid.ID, at, n r3.Vec) {
	if far, _ := sideOf(w.set, id, n); w.scattering[id] && far != nil {
		line.Parts = append(line.Parts, Sighted{Receptor{At: at, Axis: r3.Scale(-1, n), Skip: line.seen.Skip}, line.gain.Times(far.Diffuse).Scale(1 / math.Pi)})
	}
}

// sideOf is the side of a sheet that light meets which goes along a direction, and which way it faces; nil of what is no sheet.
func sideOf(set *solid.Set, id solid.ID, along r3.Vec) (*solid.Skin, r3.Vec) {
	for i := range set.Sheets {
		s := &set.Sheets[i]
		if s.ID != id || len(s.Corners) < 3 {
			continue
		}
		n := r3.Unit(r3.Cross(r3.Sub(s.Corners[1], s.Corners[0]), r3.Sub(s.Corners[2], s.Corners[1])))
		if r3.Dot(n, along) > 0 {
			return &s.Back, r3.Scale(-1, n)
		}
		return &s.Front, n
	}
	return nil, r3.Vec{}
}

// mostSpotMirrors is in how many mirrors, one after the other, a spot meter looks.
const mostSpotMirrors = 8

// firstSeen is the first surface along the axis of a spot meter.
func (w *World) firstSeen(r *Receptor) (solid.Hit, bool) {
	hit, ok := w.bvh.FirstOpaque(r.At, r.Axis, r.Skip)
	if body, seen := w.bodies.FirstOpaque(r.At, r.Axis, r.Skip); seen && (!ok || body.T < hit.T) {
		return body, true
	}
	return hit, ok
}

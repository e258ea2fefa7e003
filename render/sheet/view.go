package sheet

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/symbols/ink"
)

// view takes metres in plan to millimetres on paper.
type view struct {
	scale float64 // mm of paper for 1 m
	shift r2.Vec
	panel r2.Box // mm: nothing of the plan is drawn outside
	// covered are the corners of the panel that are given to text.
	covered []r2.Box
}

// viewOf puts the middle of an extent in the middle of a panel.
func viewOf(extent, panel r2.Box, times float64) view {
	v := view{scale: 1000 / times, panel: panel}
	centre := r2.Scale(v.scale/2, r2.Add(extent.Min, extent.Max))
	v.shift = r2.Sub(r2.Scale(0.5, r2.Add(panel.Min, panel.Max)), centre)
	return v
}

// mm is where a point of the set lies on paper.
func (v view) mm(p r2.Vec) r2.Vec { return r2.Add(r2.Scale(v.scale, p), v.shift) }

// metres is the point of the set under a point on paper.
func (v view) metres(p r2.Vec) r2.Vec { return r2.Scale(1/v.scale, r2.Sub(p, v.shift)) }

// flat drops the height of a point and takes it to paper.
func (v view) flat(p r3.Vec) r2.Vec { return v.mm(plain(p)) }

// all takes a list of points to paper.
func (v view) all(points []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = v.mm(p)
	}
	return out
}

// seen is what is drawn of a line, given in metres: its parts within the panel, up to where it first
// runs under a corner of text, for what comes out again behind one belongs to nothing. A ring is
// cut to the panel only.
func (v view) seen(points []r2.Vec) [][]r2.Vec {
	parts := ink.ClipPolyline(v.all(points), corners(v.panel))
	if n := len(points); n == 0 || points[0] == points[n-1] {
		return parts
	}
	for i, part := range parts {
		for _, b := range v.covered {
			part = until(part, b)
		}
		if cut := len(part) == 0 || part[len(part)-1] != parts[i][len(parts[i])-1]; cut {
			if parts = parts[:i]; len(part) > 1 {
				parts = append(parts, part)
			}
			break
		}
	}
	return parts
}

// until is a line up to where it enters a box.
func until(line []r2.Vec, b r2.Box) []r2.Vec {
	for i := 1; i < len(line); i++ {
		if within := ink.ClipPolyline(line[i-1:i+1], corners(b)); len(within) > 0 {
			if i == 1 && within[0][0] == line[0] {
				return nil // it begins there
			}
			return append(slices.Clone(line[:i]), within[0][0])
		}
	}
	return line
}

func plain(p r3.Vec) r2.Vec { return r2.Vec{X: p.X, Y: p.Y} }

// onPaper takes a box of the set to paper.
func onPaper(v view, b r2.Box) r2.Box { return r2.Box{Min: v.mm(b.Min), Max: v.mm(b.Max)} }

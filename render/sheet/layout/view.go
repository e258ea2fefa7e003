package layout

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols/ink"
)

// View takes metres in plan to millimetres on paper.
type View struct {
	Scale float64 // mm of paper for 1 m
	Shift r2.Vec
	Panel r2.Box // mm: nothing of the plan is drawn outside
	// Covered are the corners of the panel that are given to text.
	Covered []r2.Box
}

// ViewOf puts the middle of an extent in the middle of a panel.
func ViewOf(extent, panel r2.Box, times float64) View {
	v := View{Scale: 1000 / times, Panel: panel}
	centre := r2.Scale(v.Scale/2, r2.Add(extent.Min, extent.Max))
	v.Shift = r2.Sub(r2.Scale(0.5, r2.Add(panel.Min, panel.Max)), centre)
	return v
}

// Paper is where a point of the set lies on paper.
func (v View) Paper(p r2.Vec) r2.Vec { return r2.Add(r2.Scale(v.Scale, p), v.Shift) }

// Metres is the point of the set under a point on paper.
func (v View) Metres(p r2.Vec) r2.Vec { return r2.Scale(1/v.Scale, r2.Sub(p, v.Shift)) }

// Flat drops the height of a point and takes it to paper.
func (v View) Flat(p r3.Vec) r2.Vec { return v.Paper(r2.Vec{X: p.X, Y: p.Y}) }

// All takes a list of points to paper.
func (v View) All(points []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = v.Paper(p)
	}
	return out
}

// Seen is what is drawn of a line, given in metres: its parts within the panel, up to where it first
// runs under a corner of text, for what comes out again behind one belongs to nothing. A ring is
// cut to the panel only.
func (v View) Seen(points []r2.Vec) [][]r2.Vec {
	parts := ink.ClipPolyline(v.All(points), box.Corners(v.Panel))
	if n := len(points); n == 0 || points[0] == points[n-1] {
		return parts
	}
	for i, part := range parts {
		for _, b := range v.Covered {
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
		if within := ink.ClipPolyline(line[i-1:i+1], box.Corners(b)); len(within) > 0 {
			if i == 1 && within[0][0] == line[0] {
				return nil // it begins there
			}
			return append(slices.Clone(line[:i]), within[0][0])
		}
	}
	return line
}

// Box takes a box of the set to paper.
func (v View) Box(b r2.Box) r2.Box { return r2.Box{Min: v.Paper(b.Min), Max: v.Paper(b.Max)} }

package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// A copier keeps no grey: where a look has none, a screen of dots takes the place of tints. The dots lie on one lattice
// all over the paper, in rows half a pitch apart, and grow by the stop under the brightest light that has any.
const (
	dotPitch   = 2.2  // mm from dot to dot in a row
	rowPitch   = 1.1  // mm from row to row, every other half a pitch aside
	dotless    = 2.5  // stops over the working stop, from where the paper is bare
	dotSmall   = 0.16 // mm across, the smallest
	dotLarge   = 0.56 // that of the middle of the darkest band
	darkestDot = -4.5
	dash       = 0.01 // mm: a dash so short is a dot of its round ends
)

// dotAcross is the diameter of the dots for light so many stops from the working stop, mm; 0 for none. The paper that they
// cover grows evenly.
func dotAcross(stop float64) float64 {
	if stop >= dotless {
		return 0
	}
	share := math.Min((dotless-stop-1)/(dotless-darkestDot-1), 1)
	return math.Sqrt(dotSmall*dotSmall + share*(dotLarge*dotLarge-dotSmall*dotSmall))
}

// bandStop is the middle of band i, stops from the working stop.
func (r *relief) bandStop(i int) float64 {
	if len(r.levels) == 0 {
		return 0
	}
	return float64(r.levels[0].Stop+i) - 0.5
}

// drawScreen draws the bands as a screen of dots.
func (r *relief) drawScreen(p Pad, v layout.View) {
	for i := range r.steps {
		rings := r.seenRings(i, v)
		if i+1 < len(r.steps) {
			rings = append(rings, r.seenRings(i+1, v)...) // which lies inside: what is between them is the band
		}
		p.dots(dotAcross(r.bandStop(i)), rings)
	}
}

// seenRings are the rings of a step on paper, as far as the panel shows them.
func (r *relief) seenRings(i int, v layout.View) [][]r2.Vec {
	var rings [][]r2.Vec
	for _, ring := range r.steps[i].Rings {
		if q := ink.ClipPolygon(v.All(ring), box.Corners(v.Panel)); len(q) >= 3 {
			rings = append(rings, q)
		}
	}
	return rings
}

// dots fills rings, by the even-odd rule, with dots so wide. Each row is one dashed line.
func (p Pad) dots(across float64, rings [][]r2.Vec) {
	if across == 0 {
		return
	}
	var rows ink.Path
	for _, run := range ink.Hatch(rings, rowPitch, 90) {
		from, to := math.Min(run[0].X, run[1].X), math.Max(run[0].X, run[1].X)
		shift := dotPitch / 2 * math.Mod(math.Abs(math.Round(run[0].Y/rowPitch)), 2)
		first, last := math.Ceil((from-shift)/dotPitch)*dotPitch+shift, math.Floor((to-shift)/dotPitch)*dotPitch+shift
		if first <= last {
			rows = rows.MoveTo(box.At(first, run[0].Y)).LineTo(box.At(last+dash, run[0].Y))
		}
	}
	p.canvas.DrawPlaced(ink.Pen{Colour: p.Look.Ink, Width: across, Dash: []float64{dash, dotPitch - dash}, Round: true}, rows)
}

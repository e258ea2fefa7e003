package draw

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// A band counts as seen where so many of the points of a lattice on paper, so far apart, mm, show it.
const (
	seenEvery = 0.5
	seenLeast = 6
)

// noteBands notes from which band to which the maps reach that were drawn. The extremes of a field may lie in specks that no map draws, under a wall
// or under a table.
func (c maps) noteBands(v layout.View, reliefs []relief) {
	c.shown.bands = nil
	if len(reliefs) == 0 || c.Tiles.Parts() > 1 {
		return // the key of a plan in parts is that of all of them
	}
	cover := c.covers(v)
	seen := func(i int) bool {
		return slices.ContainsFunc(reliefs, func(r relief) bool { return r.shows(i, v, cover) })
	}
	low, high := 0, len(reliefs[0].levels)
	for low < high && !seen(low) {
		low++
	}
	for high > low && !seen(high) {
		high--
	}
	if low < high {
		c.shown.bands = &[2]int{low, high}
	}
}

// covers are what hides the ground of a map, on paper.
func (c maps) covers(v layout.View) [][]r2.Vec {
	cover := wallPieces(c.In.Setup, v)
	for i := range c.In.Setup.Furniture {
		if f := &c.In.Setup.Furniture[i]; !mappedOver(c.In, f) {
			cover = append(cover, c.furniture[i].Body)
		}
	}
	return cover
}

// shows says whether a band of a map is seen.
func (r *relief) shows(band int, v layout.View, cover [][]r2.Vec) bool {
	if band >= len(r.steps) {
		return false
	}
	rings := r.seenRings(band, v)
	if band+1 < len(r.steps) {
		rings = append(rings, r.seenRings(band+1, v)...) // which lies inside: what is between them is the band
	}
	seen := 0
	for _, run := range ink.Hatch(rings, seenEvery, 90) {
		for x := min(run[0].X, run[1].X) + seenEvery/2; x < max(run[0].X, run[1].X); x += seenEvery {
			at := r2.Vec{X: x, Y: run[0].Y}
			if slices.ContainsFunc(cover, func(ring []r2.Vec) bool { return box.InRing(ring, at) }) {
				continue
			}
			if seen++; seen == seenLeast {
				return true
			}
		}
	}
	return false
}

// onTheMap is a key with the bands alone that the map reaches where one was drawn.
func (c maps) onTheMap(k section.Key) section.Key {
	if b := c.shown.bands; b != nil {
		if from, to := max(k.From, b[0]), min(k.To, b[1]); from < to {
			k.From, k.To = from, to
		}
	}
	return k
}

package body

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
)

// rimWidth is how wide the tubes of an empty frame are, m: common practice.
const rimWidth = 0.025

// SheetsOf are the sheet of a piece of grip, or the sides of a frame that nothing hangs in.
func SheetsOf(g *plan.Grip) []Piece {
	if g.Kind != term.Frame || g.Cloth != "" || g.Round() {
		return []Piece{Flat(Sheet, g.Corners())}
	}
	outer := g.Rectangle()
	inner := *g
	inner.Size = [2]float64{max(0, g.Size[0]-2*rimWidth), max(0, g.Size[1]-2*rimWidth)}
	hole := inner.Rectangle()
	var all []Piece
	for i := range outer {
		k := (i + 1) % len(outer)
		all = append(all, Flat(Sheet, []r3.Vec{outer[i], outer[k], hole[k], hole[i]}))
	}
	return all
}

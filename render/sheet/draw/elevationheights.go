package draw

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// heightMark is a height at the side of a wall: z, m, and whose it is.
type heightMark struct {
	z     float64
	words string
}

// heights are those that a wall says at its side, the lowest first: the floor and the ceiling, sills and heads, lamps and
// eyes.
func (c Wall) heights(f WallFace) (all []heightMark) {
	s := c.In.Setup
	all = append(all, heightMark{f.room.Base, "floor"}, heightMark{f.right, "ceiling"})
	all = append(all, c.holeHeights(f)...)
	for i := range s.People {
		if who := &s.People[i]; f.inRoom(who.At) {
			all = append(all, heightMark{who.Eyes, who.Name + " eyes"})
		}
	}
	for i := range s.Lights {
		if l := &s.Lights[i]; f.inRoom(plan.InPlan(l.Frame.At)) {
			all = append(all, heightMark{l.Frame.At.Z, l.Numbered()})
		}
	}
	for i := range s.Grip {
		if g := &s.Grip[i]; f.inRoom(plan.InPlan(g.Frame.At)) {
			all = append(all, heightMark{g.Frame.At.Z, g.Numbered()})
		}
	}
	slices.SortStableFunc(all, func(a, b heightMark) int { return cmp.Compare(a.z, b.z) })
	return merged(all)
}

// holeHeights are those of the openings of a wall.
func (c Wall) holeHeights(f WallFace) (all []heightMark) {
	for i := range c.In.Setup.Openings {
		o := &c.In.Setup.Openings[i]
		cut, ok := f.hole(o)
		if !ok {
			continue
		}
		if cut.Min.Y > f.room.Base+onFace {
			all = append(all, heightMark{cut.Min.Y, o.Name + " sill"})
		}
		all = append(all, heightMark{cut.Max.Y, o.Name + " head"})
	}
	return all
}

// merged are heights of which those that are one stand together.
func merged(all []heightMark) (out []heightMark) {
	for _, m := range all {
		if n := len(out); n > 0 && m.z-out[n-1].z < onFace/2 {
			out[n-1].words += ", " + m.words
			continue
		}
		out = append(out, m)
	}
	return out
}

// Where the heights stand at the right of a wall, mm.
const (
	heightOff   = 2.0 // from the wall beside it, or its dimension line
	heightTick  = 2.0
	heightLeads = 3.0 // from there to the lettering
	heightPitch = 3.3
	heightLeast = 12.0 // room for its words
)

// drawHeights letters the heights at the right of the wall, each at its height or as near to that as the others let it.
func (c Wall) drawHeights(p Pad, v layout.View, f WallFace, from float64) []carto.Obstacle {
	st, all := p.Small(), c.heights(f)
	x := from + heightOff
	left := x + heightTick + heightLeads
	room := roomBeside(v, v.Box(f.box()), left)
	if room < heightLeast {
		return nil
	}
	var taken []carto.Obstacle
	for i, y := range spread(all, v) {
		m := all[i]
		at := v.Paper(box.At(0, m.z)).Y
		q := p.of("height:"+m.words, "")
		q.Line(Hair, p.Look.Ink, box.At(x, at), box.At(x+heightTick, at), box.At(left-0.8, y))
		words := c.Bare(m.z-f.room.Base) + "  " + m.words
		if st.Width(words) > room {
			words = st.Ellipsis(words, room)
		}
		q.Text(box.At(left, y-st.Cap/2), words, st, ink.Left)
		size := st.boxOf(words)
		taken = append(taken, carto.Obstacle{Outline: ink.TurnedBox(box.At(left+size.X/2, y), size, 0)})
	}
	c.used("height")
	return taken
}

// roomBeside is the clear paper at the right of a place beside a box, mm.
func roomBeside(v layout.View, b r2.Box, left float64) float64 {
	const clear = 2.0 // mm
	room := v.Panel.Max.X - clear - left
	for _, list := range v.Covered {
		if list.Max.X > left && list.Min.Y < b.Max.Y && list.Max.Y > b.Min.Y {
			room = math.Min(room, list.Min.X-clear-left)
		}
	}
	return room
}

// spread is where the lettering of heights stands, mm: no two closer than lines of a table.
func spread(all []heightMark, v layout.View) []float64 {
	ys := make([]float64, len(all))
	for i, m := range all {
		ys[i] = v.Paper(r2.Vec{Y: m.z}).Y
	}
	for range len(all) * 4 { // what is too close moves apart, both by half
		moved := false
		for i := 1; i < len(ys); i++ {
			if short := heightPitch - (ys[i] - ys[i-1]); short > 1e-6 {
				ys[i-1], ys[i], moved = ys[i-1]-short/2, ys[i]+short/2, true
			}
		}
		if !moved {
			break
		}
	}
	return ys
}

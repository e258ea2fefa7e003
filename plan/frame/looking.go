package frame

import (
	"slices"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/body"
	"scrimshaw/plan/solid"
)

// looking is one camera that looks into one mirror: it sees the images of things, through the mirror as through a hole, past what
// lies before the mirror and past the image of that.
type looking struct {
	viewing
	mirror *solid.Mirror
	p      picture
	within []solid.Plane // of the picture, and through the edges of the mirror
}

// beyond makes a set ready as one sees it past and in a mirror, once for the looks from all places, when one is first taken.
func beyond(m *solid.Mirror, hides *solid.Set) func() *solid.BVH {
	return sync.OnceValue(func() *solid.BVH { return solid.NewBVH(m.Through(hides)) })
}

// newLooking prepares a look into a mirror, past what is beyond it; not ok where the mirror shows its back, or lies outside the picture.
func newLooking(m *solid.Mirror, p picture, past func() *solid.BVH) (g looking, ok bool) {
	if m.Plane.Over(p.At) <= nearest {
		return g, false
	}
	sides := p.sides()
	if clipped(m.Corners, sides[:]) == nil {
		return g, false
	}
	g = looking{mirror: m, p: p, within: slices.Clone(sides[:])}
	for i, a := range m.Corners {
		b := m.Corners[(i+1)%len(m.Corners)]
		if n := r3.Cross(r3.Sub(a, p.At), r3.Sub(b, p.At)); r3.Norm(n) > 0 { // outward, for the corners run counter-clockwise
			n = r3.Unit(n)
			g.within = append(g.within, solid.Plane{N: n, C: r3.Dot(n, p.At)})
		}
	}
	g.set = past()
	g.viewer = solid.Viewer{BVH: g.set}
	return g, true
}

// mayShow says whether something of a ball may show in the mirror.
func (g *looking) mayShow(middle r3.Vec, radius float64) bool {
	at := g.mirror.Image(middle)
	for i := range g.within {
		if g.within[i].Over(at) > radius {
			return false
		}
	}
	return g.mirror.Plane.Over(middle) > -radius
}

// seen lists what shows of some pieces in the mirror, within the picture.
func (g *looking) seen(all []body.Piece) (seen []seenPart) {
	for i := range all {
		image, ok := all[i].Image(g.mirror)
		if !ok {
			continue
		}
		g.figures(&image, g.p.At, func(figure []r3.Vec) bool {
			within := clipped(figure, g.within)
			if within == nil || g.p.share(within) <= leastShare/mostFigures {
				return true
			}
			return g.visible(g.p.At, within, func(part []r3.Vec) bool {
				seen = append(seen, seenPart{image.Part, slices.Clone(part)})
				return true
			})
		})
	}
	return seen
}

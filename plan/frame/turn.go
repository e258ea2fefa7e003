package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// Turn is the least turn of a mirror, to half a degree, after which a camera does not see a thing in it. One of a board is about
// the middle of that; one of a mirror that hangs about the edge that stays on its wall.
type Turn struct {
	Way     Turning
	Degrees float64
}

// Turning is which way a mirror is turned.
type Turning string

// The ways: from above, or by its face.
const (
	Clockwise        Turning = "clockwise"
	Counterclockwise Turning = "counter-clockwise"
	Down             Turning = "down"
	Upward           Turning = "up"
)

// The farthest that a mirror is turned, and by which steps, degrees: what is behind a hung one then still hides.
const (
	mostTurn = 10.0
	turnStep = 0.5
)

// leastTurn is the least turn of a mirror that takes a thing out of it, all along the track; nil where none does.
func (g *glances) leastTurn(t *thing) *Turn {
	ways := g.turnings(g.in)
	for step := turnStep; step <= mostTurn; step += turnStep {
		for _, way := range ways {
			turned := g.in.turned(way.about, way.along, step)
			if g.clearOf(t, &turned) {
				return &Turn{Way: way.way, Degrees: step}
			}
		}
	}
	return nil
}

// clearOf says whether nothing of a thing shows in a mirror that is turned. Where the camera comes behind it, its other side may mirror too.
func (g *glances) clearOf(t *thing, turned *reflector) bool {
	past := beyond(&turned.mirror, g.hides)
	return !g.anywhere(func(i int) bool {
		from := &g.from[i]
		if turned.mirror.Plane.Over(from.At) <= nearest {
			return g.in.mirror.Plane.Over(from.At) > nearest // it was not behind it before
		}
		look, ok := newLooking(&turned.mirror, from.picture, past)
		return ok && g.showsIn(&look, t, r3.Vec{}, from)
	})
}

// turning is one way to turn a mirror: about a line through a place, counter-clockwise as seen from where the line leads.
type turning struct {
	way          Turning
	about, along r3.Vec
}

// turnings are the ways to turn a mirror. One that lies level can be tilted no way that has a name.
func (v *viewing) turnings(r *reflector) []turning {
	n := r.mirror.Plane.N
	up := r3.Vec{Z: 1}
	across := r3.Cross(up, n) // to the right, as seen from before the mirror
	hung := v.setup.GripNamed(r.name) == nil
	all := []turning{{way: Counterclockwise, along: up}, {way: Clockwise, along: r3.Scale(-1, up)}}
	if r3.Norm(across) > upright {
		across = r3.Unit(across)
		all = append(all, turning{way: Down, along: across}, turning{way: Upward, along: r3.Scale(-1, across)})
	}
	for i := range all {
		all[i].about = solid.Centre(r.mirror.Corners)
		if hung {
			all[i].about = hinge(r.mirror.Corners, n, all[i].along)
		}
	}
	return all
}

// hinge is the corner of a mirror about which all of it comes forward when it is turned.
func hinge(corners []r3.Vec, n, along r3.Vec) (at r3.Vec) {
	least := math.Inf(1)
	for _, c := range corners {
		// A place moves by along × c when the mirror is turned a little: forward by what of that goes along the normal.
		if forward := r3.Dot(r3.Cross(along, c), n); forward < least-upright {
			least, at = forward, c
		}
	}
	return at
}

// rotated is a vector turned about an axis by degrees, counter-clockwise as seen from where that leads (O. Rodrigues, 1840).
func rotated(v, axis r3.Vec, degrees float64) r3.Vec {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return r3.Add(r3.Add(r3.Scale(cos, v), r3.Scale(sin, r3.Cross(axis, v))), r3.Scale((1-cos)*r3.Dot(axis, v), axis))
}

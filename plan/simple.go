package plan

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// simple reports whether a traced room can be one: enough corners, no side without length, no
// sides that meet or turn back on each other. It logs what is wrong.
func (r *resolver) simple(room *scene.Room, t tracing) bool {
	if n := len(t.corners); n < 3 || n > mostCorners {
		r.errorf(room.FormSpan, CodeOutlineCorners, "make two rooms of it, or leave corners out", "%s has %d corners; a room has 3 to %d", room.Name, n, mostCorners)
		return false
	}
	if !r.everySideLong(room, t) {
		return false
	}
	if i, k, at, found := firstMeeting(t.corners); found {
		how := either(neighbours(i, k, len(t.corners)), "fold over each other", "meet")
		d := r.diagnostic(source.Error, t.spans[k], CodeOutlineCrosses,
			"list the corners in the order of a walk round the room",
			"the outline of %s crosses itself: walls %s and %s %s at %s", room.Name, t.walls[i], t.walls[k], how, r.xy(at))
		d.Related = []source.Related{{Span: t.spans[i], Message: "wall " + t.walls[i] + " begins here"}}
		r.log.Add(d)
		return false
	}
	if math.Abs(area(t.corners)) < leastFloor {
		r.errorf(room.FormSpan, CodeRoomSmall, "check its lengths and their units", "%s has no floor to stand on: it is %s m²",
			room.Name, unit.FormatNumber(math.Abs(area(t.corners))))
		return false
	}
	return true
}

// leastFloor is the least floor of a room, m².
const leastFloor = 0.01

func (r *resolver) everySideLong(room *scene.Room, t tracing) bool {
	long := true
	for i, a := range t.corners {
		b := t.corners[(i+1)%len(t.corners)]
		if same(a, b) {
			r.errorf(t.spans[i], CodeWallLength, "leave one of its two corners out",
				"wall %s.%s has no length", room.Name, t.walls[i])
			long = false
		}
	}
	return long
}

// firstMeeting finds the first two sides of a ring that touch where they should not: sides that
// are not neighbours at all, neighbours in more than their common corner.
func firstMeeting(ring []r2.Vec) (i, k int, at r2.Vec, found bool) {
	n := len(ring)
	for k = range n {
		for i = range k {
			a, b, c, d := ring[i], ring[(i+1)%n], ring[k], ring[(k+1)%n]
			switch {
			case k == i+1:
				at, found = b, turnsBack(a, b, d)
			case i == 0 && k == n-1:
				at, found = a, turnsBack(c, a, b)
			default:
				at, found = touch(a, b, c, d)
			}
			if found {
				return i, k, at, true
			}
		}
	}
	return 0, 0, r2.Vec{}, false
}

// neighbours reports whether sides i < k of a ring of n follow each other.
func neighbours(i, k, n int) bool { return k == i+1 || i == 0 && k == n-1 }

// turnsBack reports whether the way a, b, c returns on itself at b.
func turnsBack(a, b, c r2.Vec) bool {
	in, out := r2.Sub(b, a), r2.Sub(c, b)
	return r2.Dot(in, out) < 0 && math.Abs(r2.Cross(in, out)) <= grain*max(r2.Norm(in), r2.Norm(out))
}

// touch finds a point that the segments a-b and c-d share, to the grain.
func touch(a, b, c, d r2.Vec) (at r2.Vec, ok bool) {
	p, q := lineThrough(a, b), lineThrough(c, d)
	if side(p, c)*side(p, d) < 0 && side(q, a)*side(q, b) < 0 {
		return crossing(p, c, d), true
	}
	for _, end := range []struct{ p, a, b r2.Vec }{{a, c, d}, {b, c, d}, {c, a, b}, {d, a, b}} {
		if on, _ := nearestOn(end.p, end.a, end.b); same(on, end.p) {
			return end.p, true
		}
	}
	return r2.Vec{}, false
}

package resolve

import (
	"math"

	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// simple reports whether a traced room can be one: enough corners, no side without length, no
// sides that meet or turn back on each other. It logs what is wrong.
func (r *roomPass) simple(room *scene.Room, t tracing) bool {
	if n := len(t.corners); n < 3 || n > mostCorners {
		r.Errorf(room.FormSpan, CodeOutlineCorners, "make two rooms of it, or leave corners out", "%s has %d corners; a room has 3 to %d", room.Name, n, mostCorners)
		return false
	}
	if !r.everySideLong(room, t) {
		return false
	}
	if i, k, at, found := plane.FirstMeeting(t.corners); found {
		how := report.Either(plane.Neighbours(i, k, len(t.corners)), "fold over each other", "meet")
		d := r.Diagnostic(source.Error, t.spans[k], CodeOutlineCrosses,
			"list the corners in the order of a walk round the room",
			"the outline of %s crosses itself: walls %s and %s %s at %s", room.Name, t.walls[i], t.walls[k], how, r.XY(at))
		d.Related = []source.Related{{Span: t.spans[i], Message: "wall " + t.walls[i] + " begins here"}}
		r.Log.Add(d)
		return false
	}
	if math.Abs(plane.Area(t.corners)) < leastFloor {
		r.Errorf(room.FormSpan, CodeRoomSmall, "check its lengths and their units", "%s has no floor to stand on: it is %s m²",
			room.Name, unit.FormatNumber(math.Abs(plane.Area(t.corners))))
		return false
	}
	return true
}

// leastFloor is the least floor of a room, m².
const leastFloor = 0.01

func (r *roomPass) everySideLong(room *scene.Room, t tracing) bool {
	long := true
	for i, a := range t.corners {
		b := t.corners[(i+1)%len(t.corners)]
		if plane.Same(a, b) {
			r.Errorf(t.spans[i], CodeWallLength, "leave one of its two corners out",
				"wall %s.%s has no length", room.Name, t.walls[i])
			long = false
		}
	}
	return long
}

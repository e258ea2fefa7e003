package resolve

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// maxWalls bounds the walls of a scene: every pair of them is looked at. A large house has 100.
const maxWalls = 2000

// rooms lays out every room, and refuses interiors that share space.
func (r *roomPass) rooms() {
	walls := 0
	for i := range r.s.Rooms {
		room := &r.s.Rooms[i]
		leave := r.About(room.Path)
		if resolved, ok := r.roomOf(room); ok {
			walls += len(resolved.Walls)
			r.out.Rooms = append(r.out.Rooms, resolved)
		}
		if walls > maxWalls {
			r.Errorf(room.Span, scene.CodeTooMany, "draw a part of the set", "the scene has too many walls: it may have %d", maxWalls)
			r.out.Rooms = nil
			leave()
			return
		}
		leave()
	}
	r.checkOverlaps()
}

func (r *roomPass) roomOf(room *scene.Room) (plan.Room, bool) {
	if r.doc != nil && !room.FormSpan.Valid() {
		return plan.Room{}, false // the loader has reported that its form is missing or wrong
	}
	t, ok := r.traced(room)
	if !ok || !r.simple(room, t) {
		return plan.Room{}, false
	}
	t.turnLeft()
	thickness := room.Wall.Or(scene.DefaultWallThickness)
	if !room.Wall.Set {
		r.assume(room.Path, "wall", r.Length(thickness))
	}
	resolved := plan.Room{
		Name: room.Name, Inside: t.corners, Parts: plane.ConvexParts(t.corners),
		Base: room.Base.Value, Span: room.Span,
	}
	for i, right := range t.corners {
		left := t.corners[(i+1)%len(t.corners)]
		along := r2.Unit(r2.Sub(left, right))
		resolved.Walls = append(resolved.Walls, plan.Wall{
			Name: t.walls[i], Left: left, Right: right,
			Outward: r2.Vec{X: along.Y, Y: -along.X}, Thickness: thickness,
		})
	}
	r.checkSize(room, &resolved)
	r.checkWidth(room, &resolved)
	return resolved, r.setCeiling(room, &resolved)
}

// longestWall is how long a wall may be before something else than metres or feet must be meant,
// m: beyond the largest stages.
const longestWall = 150

// checkSize warns of a room that is larger than any stage: it is likely written in centimetres.
func (r *roomPass) checkSize(room *scene.Room, to *plan.Room) {
	for i := range to.Walls {
		if long := to.Walls[i].Length(); long > longestWall {
			r.Warnf(room.FormSpan, CodeRoomLarge, "bare numbers are "+report.Either(r.s.Feet, "feet; write 400 in for inches", "metres; write 400 cm for centimetres"),
				"%s.%s is %s long", to.Name, to.Walls[i].Name, r.Length(long))
			return
		}
	}
}

// turnLeft makes the walk round the room counter-clockwise. Walls keep their names.
func (t *insideOutline) turnLeft() {
	if plane.Area(t.corners) > 0 {
		return
	}
	slices.Reverse(t.corners)
	slices.Reverse(t.walls)
	slices.Reverse(t.spans)
	// The wall that began at a corner now ends there: it belongs to the corner before.
	t.walls = append(t.walls[1:], t.walls[0])
	t.spans = append(t.spans[1:], t.spans[0])
}

// setCeiling gives a room its ceiling: level, or rising from low, at the point of the floor farthest
// from the wall it rises toward, to high, at the point farthest to that side.
func (r *roomPass) setCeiling(room *scene.Room, to *plan.Room) bool {
	if room.Slope == nil {
		if !room.Height.Set {
			r.assume(room.Path, "height", r.Length(scene.DefaultRoomHeight))
		}
		to.Top = to.Base + room.Height.Or(scene.DefaultRoomHeight)
		to.CeilingLow = to.Top
		return true
	}
	wall, ok := r.slopeWall(room, to)
	if !ok {
		return false
	}
	low, high := room.Slope.Low, room.Slope.High
	from, run := -plane.Support(to.Inside, r2.Scale(-1, wall.Outward)), plane.Support(to.Inside, wall.Outward)
	to.CeilingRise = r2.Scale((high-low)/(run-from), wall.Outward)
	to.CeilingLow = to.Base + low - from*(high-low)/(run-from)
	to.Top = to.Base + max(low, high)
	return true
}

// slopeWall finds the wall that a ceiling rises toward, by its name with or without the room's.
func (r *roomPass) slopeWall(room *scene.Room, to *plan.Room) (*plan.Wall, bool) {
	ref := room.Slope.Toward
	name := strings.TrimPrefix(ref.Name, room.Name+".")
	for i := range to.Walls {
		if to.Walls[i].Name == name {
			return &to.Walls[i], true
		}
	}
	r.noSuchWall(ref, to)
	return nil, false
}

// checkOverlaps refuses rooms whose interiors share space, and warns of rooms that touch: between
// them there is no wall.
func (r *roomPass) checkOverlaps() {
	for i := range r.out.Rooms {
		for k := range i {
			a, b := &r.out.Rooms[k], &r.out.Rooms[i]
			if !plane.Overlap(a.Base, a.Top, b.Base, b.Top) {
				continue
			}
			leave := r.About(r.things[b.Name].path)
			if at, wide := overlap(a, b); wide > plane.Grain {
				r.Log.Add(r.sharedFault(source.Error, CodeRoomsOverlap, a, b,
					"the insides of %s and %s overlap by %s at %s", a.Name, b.Name, r.Length(wide), r.XY(at)))
			} else if at, long := plan.LongestSharedFace(a, b); long > plane.Grain {
				r.Log.Add(r.sharedFault(source.Warning, CodeRoomsTouch, a, b,
					"%s and %s touch for %s at %s: no wall stands between them", a.Name, b.Name, r.Length(long), r.XY(at)))
			}
			leave()
		}
	}
}

// sharedFault is a fault that two rooms share.
func (r *roomPass) sharedFault(s source.Severity, code string, a, b *plan.Room, format string, args ...any) source.Diagnostic {
	d := r.Diagnostic(s, b.Span, code, "size and corners measure the clear inside: leave room for the wall between the two rooms", format, args...)
	d.Related = []source.Related{{Span: a.Span, Message: a.Name + " is here"}}
	return d
}

// overlap finds the fattest piece that two rooms share, its middle and its width.
func overlap(a, b *plan.Room) (at r2.Vec, wide float64) {
	for _, p := range a.Parts {
		for _, q := range b.Parts {
			if shared := plane.Intersection(p, q); shared != nil {
				if w := plane.Width(shared); w > wide {
					at, wide = plane.Centroid(shared), w
				}
			}
		}
	}
	return at, wide
}

// minRoom is how wide a room is at least that somebody stands in, m: less is likely another unit.
const minRoom = 0.3

// checkWidth warns of a room that is too narrow for anybody to stand in.
func (r *roomPass) checkWidth(room *scene.Room, to *plan.Room) {
	wide := 0.0
	for _, part := range to.Parts {
		wide = max(wide, plane.Width(part))
	}
	if wide < minRoom {
		r.Warnf(room.FormSpan, CodeRoomNarrow, "bare numbers are "+report.Either(r.s.Feet, "feet; write 3 m for metres", "metres; write 12 ft for feet"),
			"%s is %s wide", to.Name, r.Length(wide))
	}
}

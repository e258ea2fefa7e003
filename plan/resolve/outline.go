package resolve

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// maxCorners bounds the corners of a room: its convex parts are found in cubic time.
const maxCorners = 200

// sharedClosingError is the closing error of a taped outline that is shared out without asking, m. A steel
// tape read by two people round a room is rarely better.
const sharedClosingError = 0.02

// insideOutline is the inside of a room as it was written: corners in the order of the file, and the
// wall that goes from each of them to the next.
type insideOutline struct {
	corners []r2.Vec
	walls   []string
	spans   []source.Span // of what each wall was written by
}

// traced reads the inside of a room from its size, its corners or its outline.
func (r *roomPass) traced(room *scene.Room) (insideOutline, bool) {
	at := plane.Vec(room.At.Value)
	switch room.Form {
	case scene.ByCorners:
		return byCorners(room, at), true
	case scene.ByOutline:
		return r.byOutline(room, at)
	}
	return bySize(room, at), true
}

func bySize(room *scene.Room, at r2.Vec) insideOutline {
	w, h := room.Size[0], room.Size[1]
	t := insideOutline{walls: term.Walls()}
	for _, d := range []r2.Vec{{}, {X: w}, {X: w, Y: h}, {Y: h}} {
		t.corners = append(t.corners, r2.Add(at, d))
		t.spans = append(t.spans, room.FormSpan)
	}
	return t
}

func byCorners(room *scene.Room, at r2.Vec) insideOutline {
	var t insideOutline
	for i, c := range room.Corners {
		next := room.Corners[(i+1)%len(room.Corners)]
		t.corners = append(t.corners, r2.Add(at, plane.Vec(c.At)))
		t.walls = append(t.walls, c.Name+"-"+next.Name)
		t.spans = append(t.spans, c.Span)
	}
	return t
}

// byOutline walks the tape round the room from its corner at. What the walk misses its start by
// is shared out among the steps, along and across the sheet apart, each by its length.
func (r *roomPass) byOutline(room *scene.Room, at r2.Vec) (insideOutline, bool) {
	var miss, taped r2.Vec
	for _, s := range room.Outline {
		step := stepOf(s)
		miss = r2.Add(miss, step)
		taped = r2.Add(taped, r2.Vec{X: math.Abs(step.X), Y: math.Abs(step.Y)})
	}
	if !r.closes(room, miss) {
		return insideOutline{}, false
	}
	var t insideOutline
	for i, s := range room.Outline {
		step := stepOf(s)
		step.X -= share(miss.X, step.X, taped.X)
		step.Y -= share(miss.Y, step.Y, taped.Y)
		t.corners = append(t.corners, r2.Vec{X: plane.Snap(at.X), Y: plane.Snap(at.Y)}) // sides stay square to each other
		t.walls = append(t.walls, fmt.Sprintf("w%d", i+1))
		t.spans = append(t.spans, s.Span)
		at = r2.Add(at, step)
	}
	return t, true
}

// share is the part of a closing error that one step takes over.
func share(miss, step, taped float64) float64 {
	if taped == 0 {
		return 0
	}
	return miss * math.Abs(step) / taped
}

func stepOf(s scene.OutlineStep) r2.Vec {
	switch s.Direction {
	case "right":
		return r2.Vec{X: s.Length}
	case "left":
		return r2.Vec{X: -s.Length}
	case "up":
		return r2.Vec{Y: s.Length}
	}
	return r2.Vec{Y: -s.Length}
}

// closes says by how much an outline misses its start, and refuses more than a tape's error.
func (r *roomPass) closes(room *scene.Room, miss r2.Vec) bool {
	switch off := r2.Norm(miss); {
	case off <= plane.Grain:
		return true
	case off <= sharedClosingError:
		r.Infof(room.FormSpan, CodeOutlineOff, "",
			"the outline of %s ends %.0f mm (%s) from where it began; the error is shared out among its sides", room.Name, 1000*off, r.offset(miss))
		return true
	}
	r.Errorf(room.FormSpan, CodeOutlineOpen, r.backHint(miss),
		"the outline of %s does not close: it ends %s of where it began", room.Name, r.offset(miss))
	return false
}

// backHint is the step that would close an outline, where one step does.
func (r *roomPass) backHint(miss r2.Vec) string {
	switch {
	case math.Abs(miss.Y) <= plane.Grain:
		return "is " + r.step(-miss.X, "right", "left") + " missing?"
	case math.Abs(miss.X) <= plane.Grain:
		return "is " + r.step(-miss.Y, "up", "down") + " missing?"
	}
	return "measure again: the steps right and left must be equal in all, and so must those up and down"
}

// step is one step of an outline as it would be written.
func (r *roomPass) step(d float64, forward, back string) string {
	if d < 0 {
		return back + " " + r.Length(-d)
	}
	return forward + " " + r.Length(d)
}

// offset says where one point lies from another: "0.30 m right and 0.05 m up".
func (r *roomPass) offset(d r2.Vec) string {
	var words []string
	if math.Abs(d.X) > plane.Grain {
		words = append(words, r.Length(math.Abs(d.X))+report.Either(d.X > 0, " right", " left"))
	}
	if math.Abs(d.Y) > plane.Grain {
		words = append(words, r.Length(math.Abs(d.Y))+report.Either(d.Y > 0, " up", " down"))
	}
	return strings.Join(words, " and ")
}

// simple reports whether a traced room can be one: enough corners, no side without length, no
// sides that meet or turn back on each other. It logs what is wrong.
func (r *roomPass) simple(room *scene.Room, t insideOutline) bool {
	if n := len(t.corners); n < 3 || n > maxCorners {
		r.Errorf(room.FormSpan, CodeOutlineCorners, "make two rooms of it, or leave corners out", "%s has %d corners; a room has 3 to %d", room.Name, n, maxCorners)
		return false
	}
	if !r.checkSideLengths(room, t) {
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
	if math.Abs(plane.Area(t.corners)) < minFloor {
		r.Errorf(room.FormSpan, CodeRoomSmall, "check its lengths and their units", "%s has no floor to stand on: it is %s m²",
			room.Name, unit.FormatNumber(math.Abs(plane.Area(t.corners))))
		return false
	}
	return true
}

// minFloor is the least floor of a room, m².
const minFloor = 0.01

func (r *roomPass) checkSideLengths(room *scene.Room, t insideOutline) bool {
	long := true
	for i, a := range t.corners {
		b := t.corners[(i+1)%len(t.corners)]
		if plane.SamePoint(a, b) {
			r.Errorf(t.spans[i], CodeWallLength, "leave one of its two corners out",
				"wall %s.%s has no length", room.Name, t.walls[i])
			long = false
		}
	}
	return long
}

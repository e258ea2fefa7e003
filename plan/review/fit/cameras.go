package fit

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// cameraFree refuses a lens inside a solid, over the ceiling or under the floor, and warns of one that sees nobody.
func (r *checker) cameraFree(c *plan.Camera) bool {
	if name := r.solidAt(c.Frame.At); name != "" {
		r.tell(c.Name, body.Head, "")
		r.Errorf(r.things[c.Name].at, CodeInSolid, "move the camera, or change its height", "the lens of %s is inside %s", c.Name, name)
	} else if r.inStorey(c.Name, "the lens of "+c.Name, c.Frame.At, c.Height, c.Span) {
		r.checkInsideRooms(c.Name, plan.InPlan(c.Frame.At), r.things[c.Name].at)
		r.checkCameraBody(c)
		r.checkCameraView(c)
		r.checkCameraTurned(c)
		r.cameraAtEnd(c)
	}
	return true
}

// cameraAtEnd looks at a camera that moves as it is at the end of its track.
func (r *checker) cameraAtEnd(c *plan.Camera) {
	if c.Track == nil {
		return
	}
	if end := r.out.CameraPost(c.AtEnd()); r.solidAt(end.Frame.At) == "" {
		r.checkCameraBody(end)
		r.checkCameraView(end)
		r.checkCameraTurned(end)
	}
}

// seenBy are the people whom a camera should see.
func (r *checker) seenBy(c *plan.Camera) (all []*plan.Person) {
	for i := range r.out.People {
		if p := &r.out.People[i]; p.SeenBy(c.Name) {
			all = append(all, p)
		}
	}
	return all
}

// checkCameraView warns of a camera that has a wall before everybody it could look at.
func (r *checker) checkCameraView(c *plan.Camera) {
	var walls []string
	people := r.seenBy(c)
	for _, p := range people {
		wall := r.wallBetween(c.Frame.At, p.Face.At)
		if wall == "" {
			return
		}
		if !slices.Contains(walls, wall) {
			walls = append(walls, wall)
		}
	}
	if len(walls) == 0 {
		return
	}
	whom := report.Either(len(people) == 1, people[0].Name, "anybody")
	r.Warnf(r.placeOf(c), CodeCameraBlocked, "move the camera to where it sees a person, or open a door or a gap on the way",
		"%s cannot see %s: %s between", postWords(c), whom, strings.Join(walls, " and ")+report.Either(len(walls) == 1, " stands", " stand"))
}

// What even the smallest camera takes behind the entrance of its lens, m (common practice): so long, and so far to each side of the axis.
const (
	shortestCamera = 0.20
	slimmestCamera = 0.03
)

// checkCameraBody refuses a camera that has a wall, a shut leaf or a pane where even the smallest has its body, and warns of one whose body goes into a wall
// if it is as long as usual.
func (r *checker) checkCameraBody(c *plan.Camera) {
	back := r3.Sub(c.Frame.At, r3.Scale(plan.CameraLength, c.Frame.Axis))
	wall, first := r.firstWall(outlineRay{c.Frame.At, back})
	if wall != "" {
		r.tell(c.Name, body.Head, wall)
		r.tell(c.Name, body.Stand, wall)
		deep := r.Length((1 - first) * plan.CameraLength)
		words := []any{postWords(c), deep, wall, r.Length(plan.CameraLength)}
		mend := "move the camera " + deep + " along its axis, with a shorter lens; or shoot through a gap"
		if first*plan.CameraLength > shortestCamera {
			r.Warnf(r.placeOf(c), CodeInSolid, mend, "the body of %s goes %s into %s, if it is %s long", words...)
		} else {
			r.Errorf(r.placeOf(c), CodeInSolid, mend, "the body of %s goes %s into %s, if it is %s long, and none has room there", words...)
		}
		return
	}
	if found, mend := r.reachInto(smallestCamera(r, c)); found != "" {
		r.Errorf(r.placeOf(c), CodeInSolid, mend+", or shoot through a gap", "%s, and none is so small that it has room there", found)
	}
}

// smallestCamera is what even the smallest camera takes behind its lens, by its corners.
func smallestCamera(r *checker, c *plan.Camera) *extent {
	var corners []r3.Vec
	for _, behind := range [...]float64{0, -shortestCamera} {
		for _, side := range [...][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
			corners = append(corners, c.Frame.Place(r3.Vec{X: side[0] * slimmestCamera, Y: side[1] * slimmestCamera, Z: behind}))
		}
	}
	return &extent{name: "the body of " + postWords(c), of: c.Name, part: body.Head,
		rays:  func(moved r3.Vec) []outlineRay { return movedBy(moved, raysFrom(c.Frame.At, corners)) },
		meets: func(name string, id solid.ID) bool { return !r.things[name].movable() && !r.isGrip(id) }}
}

// checkCameraTurned refuses a camera that has everybody behind it whom it should see, all along its track, though it was not pointed at a thing; one that
// was pointed at a place in space, has them behind it at one end alone, or a mirror ahead that may show them, it warns of.
func (r *checker) checkCameraTurned(c *plan.Camera) {
	looks, people := r.camera(plan.CameraOf(c.Name)).Looks, r.seenBy(c)
	pointed := looks.Set && (looks.Value.Form == scene.AtThing || looks.Value.Form == scene.AtPlace)
	if pointed && c.Looks == "" || len(people) == 0 || seesAny(c, people) {
		return
	}
	who := report.Either(c.Looks != "", c.Looks, people[0].Name)
	everybody := report.Either(len(people) == 1, who+" is", "everybody is")
	severity, mend := source.Error, "turn it: looks: "+who+"; or write seen: false for who is not in the picture"
	if looks.Set && looks.Value.Form == scene.AtXYZ || mayTurnUp(r.out, c, people) {
		severity, mend = source.Warning, "turn it: looks: "+who
	}
	r.Log.Add(r.Diagnostic(severity, report.Either(looks.Set, looks.Span, r.placeOf(c)), CodeCameraTurned, mend, "%s behind %s", everybody, postWords(c)))
}

// seesAny says whether some people are ahead of a camera: where they are, at a mark or on a walk.
func seesAny(c *plan.Camera, people []*plan.Person) bool {
	ahead := func(at r3.Vec) bool { return r3.Dot(c.Frame.Axis, r3.Sub(at, c.Frame.At)) > 0 }
	return slices.ContainsFunc(people, func(p *plan.Person) bool {
		return ahead(p.Face.At) || slices.ContainsFunc(p.Marks, func(m plan.Mark) bool { return ahead(m.Face.At) }) ||
			p.Walk != nil && slices.ContainsFunc(p.Walk.Points, func(w plan.WalkPoint) bool { return ahead(w.Face.At) })
	})
}

// mayTurnUp says whether people behind a camera may yet be in its picture: from elsewhere on its track, or in a mirror.
func mayTurnUp(s *plan.Setup, c *plan.Camera, people []*plan.Person) bool {
	if whole := s.CameraNamed(plan.CameraOf(c.Name)); whole.Track != nil {
		for i := range whole.Track.Corners {
			at := whole.OnTrack(plane.PathLength(whole.Track.Corners[:i+1]))
			if seesAny(&at, people) {
				return true
			}
		}
	}
	return slices.ContainsFunc(s.Set.Sheets, func(one solid.Sheet) bool {
		return one.Front.Specular().Y() > 0 && slices.ContainsFunc(one.Corners, func(at r3.Vec) bool { return r3.Dot(c.Frame.Axis, r3.Sub(at, c.Frame.At)) > 0 })
	})
}

// postWords name a camera where it is looked at: "A", of one that moves "A at the start" or "A at the end".
func postWords(c *plan.Camera) string {
	if c.Track != nil {
		return c.Name + " at the start"
	}
	return plan.CameraWords(c.Name)
}

// placeOf is where the place of a camera is written.
func (r *checker) placeOf(c *plan.Camera) source.Span { return r.things[plan.CameraOf(c.Name)].at }

// widestView is the angle over which no lens draws straight lines straight, degrees (common practice: the widest see some 127).
const widestView = 130

// lensFits warns of a lens that sees more than any does: a figure that has lost its nought.
func (r *checker) lensFits(c *plan.Camera) bool {
	if c.HAOV > widestView {
		r.Warnf(r.camera(c.Name).Lens.Span, CodeLensWide, "did you mean "+unit.FormatLens(10*c.Lens)+"? The widest for this gate is about "+unit.FormatLens(math.Ceil(c.Lens*math.Tan(c.HAOV/2*math.Pi/180)/math.Tan(widestView/2*math.Pi/180))),
			"%s sees %s across with a lens of %s, and no lens does", c.Name, unit.FormatAngle(math.Round(c.HAOV)), unit.FormatLens(c.Lens))
	}
	return true
}

// camera is a camera as it was written.
func (r *contactFinder) camera(name string) *scene.Camera {
	for i := range r.out.Scene.Cameras {
		if c := &r.out.Scene.Cameras[i]; c.Name == name {
			return c
		}
	}
	return &scene.Camera{}
}

// wallBetween is the first wall, or shut leaf, on the straight way from one point to another; "" where
// it is free. Furniture and people do not count: they are moved.
func (r *contactFinder) wallBetween(from, to r3.Vec) string {
	name, _ := r.firstWall(outlineRay{from, to})
	return name
}

// firstWall is the first wall, or shut leaf, that a way meets, and after which share of it.
func (r *contactFinder) firstWall(way outlineRay) (name string, first float64) {
	first = math.Inf(1)
	for i := range r.out.Set.Prisms {
		p := &r.out.Set.Prisms[i]
		if r.things[p.Name].movable() {
			continue
		}
		if at, enters := way.entry(p); enters && at < first {
			name, first = p.Name, at
		}
	}
	return name, first
}

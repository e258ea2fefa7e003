package fit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/clash"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// railsFree is the room between the legs of a stand and the rails of a camera, m: common practice.
const railsFree = 0.05

// takesLensThrough says whether the lens itself goes through a wall or a leaf on the track, and not only what rolls beside or under it.
func (t *tracked) takesLensThrough(name string) bool {
	if t.things[name].movable() {
		return false
	}
	c := t.camera
	for i := range c.Track.Corners[1:] {
		way := outlineRay{plan.AtHeight(c.Track.Corners[i], c.Frame.At.Z), plan.AtHeight(c.Track.Corners[i+1], c.Frame.At.Z)}
		if slices.ContainsFunc(t.out.Set.Prisms, func(p solid.Prism) bool { return p.Name == name && way.entersPrism(&p) }) {
			return true
		}
	}
	return false
}

// trackFree looks along the track of a camera: what it leads through, what stands on it, who crosses it, where the floor changes its
// level under it, and which leaves it stops.
func (r *checker) trackFree(c *plan.Camera) bool {
	if c.Track == nil {
		return true
	}
	t := tracked{r, c}
	through := t.through()
	for _, on := range through {
		r.tell(c.AtEnd(), body.Head, on.Name)
		r.tell(c.AtEnd(), body.Stand, on.Name)
		r.Log.Add(r.Diagnostic(report.Either(t.takesLensThrough(on.Name), source.Error, source.Warning), c.Track.Span, CodeTrackThrough, r.roundabout(on.Name),
			"the track of %s leads through %s, from %s to %s along it", c.Name, on.Name, r.Length(on.From), r.Length(on.To)))
	}
	t.stands()
	for i := range r.out.People {
		t.walk(&r.out.People[i])
	}
	t.level()
	t.leaves(through)
	t.ends(through)
	return true
}

// tracked is a camera on a track.
type tracked struct {
	*checker
	camera *plan.Camera
}

// platformHalf is half of how long what rolls on rails is, m, which is so much beyond the camera at either end of its way: from memory, the shortest platforms
// are a metre long.
const platformHalf = 0.5

// ends note what the platform under the camera would be in at the ends of its track: it reaches farther than the camera. What the track leads through
// is said of that.
func (r tracked) ends(through []plan.Through) {
	at := r.camera.Track.Corners
	last := len(at) - 1
	for _, end := range [2]struct {
		from, to r2.Vec
		words    string
	}{{at[1], at[0], "start"}, {at[last-1], at[last], "end"}} {
		way := r2.Unit(r2.Sub(end.to, end.from))
		for _, in := range r.beyond(end.to, way) {
			if !slices.ContainsFunc(through, func(on plan.Through) bool { return on.Name == in.name }) {
				r.Infof(r.camera.Track.Span, CodeStandTight, "end the track "+r.Length(r.RoundUp(in.depth))+" sooner, or take a shorter platform",
					"the platform of %s at the %s of its track, %s long as the shortest are, reaches %s into %s", r.camera.Name, end.words, r.Length(2*platformHalf), r.Length(in.depth), in.name)
			}
		}
	}
}

// beyond is what a platform reaches into beyond an end of its rails, and how far.
func (r tracked) beyond(end, way r2.Vec) (all []contact) {
	bed := plane.Strip(end, r2.Add(end, r2.Scale(platformHalf, way)), plan.RailGauge+plan.RailWidth)
	for k := range r.out.Set.Prisms {
		p := &r.out.Set.Prisms[k]
		if !plane.Overlap(p.Z0, p.Z1, r.camera.Base+body.LegStep, r.camera.Frame.At.Z+body.OverLens) || !plane.BoxesOverlap(bed, p.Base) || r.out.OpeningNamed(p.Name) != nil {
			continue // what swings is looked at by itself
		}
		shared := plane.Intersection(bed, p.Base)
		if shared == nil || plane.Width(shared) <= contactTolerance {
			continue
		}
		near := math.Inf(1)
		for _, q := range shared {
			near = min(near, r2.Dot(r2.Sub(q, end), way))
		}
		all = withContact(all, contact{name: p.Name, depth: platformHalf - near}, func(other, c contact) bool { return other.name == c.name })
	}
	return all
}

// through are the stretches of the track on which the rails, or the camera over them, would be in something. Two stretches of one
// thing that lie on each other are one.
func (r tracked) through() (all []plan.Through) {
	c := r.camera
	from := 0.0
	for i := 1; i < len(c.Track.Corners); i++ {
		a, b := c.Track.Corners[i-1], c.Track.Corners[i]
		way := r2.Unit(r2.Sub(b, a))
		bed := c.Track.Bed(i - 1)
		for k := range r.out.Set.Prisms {
			p := &r.out.Set.Prisms[k]
			if !plane.Overlap(p.Z0, p.Z1, c.Base+body.LegStep, c.Frame.At.Z+body.OverLens) || !plane.BoxesOverlap(bed, p.Base) {
				continue
			}
			shared := plane.Intersection(bed, p.Base)
			if shared == nil || plane.Width(shared) <= contactTolerance {
				continue
			}
			near, far := math.Inf(1), math.Inf(-1)
			for _, q := range shared {
				d := r2.Dot(r2.Sub(q, a), way)
				near, far = min(near, d), max(far, d)
			}
			all = withStretch(all, plan.Through{Name: p.Name, From: from + near, To: from + far})
		}
		from += r2.Norm(r2.Sub(b, a))
	}
	return all
}

// leaves tells which doors and windows the rails, or the camera over them, keep from swinging, but for those that the track leads through. That
// says enough of the camera too.
func (r tracked) leaves(through []plan.Through) {
	c := r.camera
	for i := range r.out.Openings {
		o := &r.out.Openings[i]
		if o.Leaf == nil || slices.ContainsFunc(through, func(on plan.Through) bool { return on.Name == o.Name }) {
			continue
		}
		stop, stopped := clash.StopOnTrack(c, o)
		if !stopped {
			continue
		}
		r.tell(c.Name, body.Rail, o.Name)
		hint := "lead the track clear of the leaf, or keep " + o.Name + " as it is while the rails lie"
		if o.Escape {
			hint = "lead the track clear of the leaf: it is a way out"
		}
		severity := report.Either(o.Escape, source.Warning, source.Info)
		r.Log.Add(r.Diagnostic(severity, c.Track.Span, CodeInSwing, hint, "the track of %s is in the way of the leaf of %s%s", c.Name, o.Name, stopWords(o, stop)))
	}
}

// stopWords say how far a leaf swings yet.
func stopWords(o *plan.Opening, stop clash.Stop) string {
	if o.Ajar > 0 && stop.Shuts > 0 {
		return ", which does not shut: it stops at " + unit.FormatAngle(stop.Shuts)
	}
	return ", which opens no farther than " + unit.FormatAngle(stop.Opens)
}

// withStretch adds a stretch, to those of the same thing where it lies on one or ends at it.
func withStretch(all []plan.Through, t plan.Through) []plan.Through {
	i := slices.IndexFunc(all, func(o plan.Through) bool {
		return o.Name == t.Name && o.From <= t.To+contactTolerance && t.From <= o.To+contactTolerance
	})
	if i < 0 {
		return append(all, t)
	}
	all[i].From, all[i].To = min(all[i].From, t.From), max(all[i].To, t.To)
	return all
}

// stands looks at all that stands on legs.
func (r tracked) stands() {
	for i := range r.out.Lights {
		l := &r.out.Lights[i]
		r.stand("the stand of "+l.Numbered(), r.things[l.Name], &l.Mount)
	}
	for i := range r.out.Grip {
		g := &r.out.Grip[i]
		r.stand("the stand of "+g.Numbered(), r.things[g.Name], &g.Mount)
	}
	for i := range r.out.Cameras {
		if o := &r.out.Cameras[i]; o.Track == nil {
			r.stand(o.Name, r.things[o.Name], body.LegsOfCamera(o))
		}
	}
}

// stand warns of a stand whose legs take the ground of the rails.
func (r tracked) stand(what string, w written, m *plan.Mount) {
	if !m.Kind.OnLegs() {
		return
	}
	c := r.camera
	away, along := c.Track.Nearest(m.Base)
	if into := (plan.RailGauge+plan.RailWidth+m.Foot)/2 - away; into > contactTolerance {
		r.Warnf(report.Either(w.at.Line > 0, w.at, c.Track.Span), CodeOnTrack, "move it "+r.Length(r.RoundUp(into+railsFree))+" away from the rails, or hang it",
			"%s stands on the track of %s, %s along it: %s into the ground that the rails take", what, c.Name, r.Length(along), r.Length(into))
	}
}

// walk notes a walk that crosses the track: rails are stepped over, and a camera may be in the way.
func (r tracked) walk(p *plan.Person) {
	c := r.camera
	if p.Walk == nil {
		return
	}
	if on, along, crosses := plane.PathsCross(p.Walk.Corners, c.Track.Corners); crosses {
		r.Infof(p.Walk.Span, CodeWalkTrack, "time the two, or lead one of them round", "the walk of %s crosses the track of %s, %s along the walk and %s along the track",
			p.Name, c.Name, r.Length(on), r.Length(along))
		return
	}
	r.walkNear(p)
}

// walkNear notes a walk beside the track, where a camera that comes along is in the way of a shoulder.
func (r tracked) walkNear(p *plan.Person) {
	c := r.camera
	for _, s := range p.Walk.Legs() {
		for i := range len(c.Track.Corners) - 1 {
			shared := plane.Intersection(plane.Strip(s.A, s.B, plan.BodyWidth), c.Track.Bed(i))
			if shared == nil || plane.Width(shared) <= clash.Slack || !plane.Overlap(s.Base+plan.StepOver, s.Base+p.Walk.Crown, c.Base, c.Frame.At.Z+body.OverLens) {
				continue
			}
			along := math.Inf(1)
			for _, q := range shared {
				along = min(along, r2.Dot(r2.Sub(q, s.A), r2.Unit(r2.Sub(s.B, s.A))))
			}
			into := r.Length(r.RoundUp(plane.Width(shared)))
			r.Infof(p.Walk.Span, CodeWalkTrack, "time the two, or lead one of them "+into+" farther from the other", "a body on the walk of %s reaches %s into the room that %s takes along its track, from %s along the walk on",
				p.Name, into, c.Name, r.Length(s.From+along))
			return
		}
	}
}

// level warns where the floor changes its level under the rails.
func (r tracked) level() {
	c := r.camera
	const step = 0.1 // m
	for _, along := range plane.AlongSteps(c.Track.Corners, step) {
		at, _ := plane.OnPath(c.Track.Corners, along)
		floor := r.out.Ground
		if room := r.out.RoomUnder(at, r.out.Spots[c.Name].Room); room != nil {
			floor = room.Base
		}
		if start := c.Frame.At.Z - c.Height; math.Abs(floor-start) > body.LegStep {
			r.Warnf(c.Track.Span, CodeTrackUneven, "build the rails up, or end the track before it", "the floor under the track of %s lies %s %s from about %s along it",
				c.Name, r.Length(math.Abs(floor-start)), report.Either(floor > start, "higher", "lower"), unit.FormatLength(along, r.Feet))
			return
		}
	}
}

package meter

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/pending"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// Walk is the light along somebody's walk, without the body that walks it.
type Walk struct {
	Person  string
	Length  float64 // m
	Feet    bool    // lengths print in feet
	Points  []WalkPoint
	Courses []Course // one a camera, in the order of the set-up; without cameras one of the key side
}

// WalkPoint is what is read at one place of a walk, by a face that looks along it.
type WalkPoint struct {
	Along    float64 // m from the start, on the plan
	At       r3.Vec  // of the face, m
	Facing   r3.Vec  // unit: the way on
	In       string  // what a body would be in there, and it is not judged; "" it is free
	Side     string  // of the key, the walker's own: "left" or "right"; "" where both are dark
	Contrast *Contrast
	Left     Reading // of the two planes at 45 degrees from the way
	Right    Reading
	Domes    []Reading // toward the cameras
}

// Course is how a walk keeps to the working stop, as one camera judges it.
type Course struct {
	Camera  string     // "": the scene's exposure judges the key side, as there is no camera
	Over    []*float64 // stops over the working stop by point; nil of no light
	Working float64    // the stop that they are counted from, N
	Best    *int       // the point that is nearest to it; nil where none is lit and free
	Worst   *int       // the point that is farthest from it; nil where none is free
	Off     []OffStop
}

// OffStop is a stretch of a walk that is more than LeaveStops over the working stop, or under it, at each of its points.
type OffStop struct {
	From, To float64  // m along the walk
	Over     *float64 // where it is farthest; nil where there is no light
}

// LeaveStops is how far from the working stop a walk has left it.
const LeaveStops = 1.0

// WalkRequests lists what is read along the walks of a set-up, person by person and place by place: the two sides of a face
// that looks along the walk, then a dome toward each camera. The body of who walks is left out, as where a place is metered
// before somebody steps in; it would have to stand in each of them.
func WalkRequests(s *plan.Setup) []Request {
	var requests []Request
	for i := range s.People {
		if p := &s.People[i]; p.Walk != nil {
			for k := range p.Walk.Points {
				requests = append(requests, pointRequests(s, p, &p.Walk.Points[k].Face)...)
			}
		}
	}
	return requests
}

// pointRequests are those of one place of a walk.
func pointRequests(s *plan.Setup, p *plan.Person, face *plan.Frame) []Request {
	name := p.Name + ".walk"
	var all []Request
	for _, turn := range [...]float64{-45, 45} {
		all = append(all, Request{Name: name, Person: p.Name, Kind: term.FlatMeter, Exposure: s.Exposure,
			Receptor: light.Receptor{At: face.At, Axis: turned(face, turn, 0), Response: light.Cosine, Skip: p.Own}})
	}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		toward := r3.Sub(c.Frame.At, face.At)
		if r3.Norm(toward) <= plane.Grain {
			toward = face.Axis // in the lens itself a dome looks on along the walk
		}
		all = append(all, Request{Name: name, Person: p.Name, Kind: term.DomeMeter, Exposure: c.Exposure, Camera: c.Name,
			Receptor: light.Receptor{At: face.At, Axis: r3.Unit(toward), Response: light.Dome, Skip: p.Own}})
	}
	return all
}

// ReadWalks takes what WalkRequests ordered from a basis whose points from the first on are its receptors.
func ReadWalks(s *plan.Setup, requests []Request, first int, b *light.Basis, levels light.Levels) (walks []Walk) {
	r := reader{namer: NamerOf(s), basis: b, levels: levels, figures: pending.Of(s, levels)}
	each := 2 + len(s.Cameras)
	for i := range s.People {
		p := &s.People[i]
		if p.Walk == nil {
			continue
		}
		w := Walk{Person: p.Name, Length: p.Walk.Length(), Feet: s.Feet}
		for k := range p.Walk.Points {
			var readings []Reading
			for n := range requests[:each] {
				readings = append(readings, r.read(first+n, &requests[n]))
			}
			w.Points = append(w.Points, pointOf(&p.Walk.Points[k], readings))
			requests, first = requests[each:], first+each
		}
		w.judge(s)
		walks = append(walks, w)
	}
	return walks
}

// pointOf is a place of a walk by its readings.
func pointOf(at *plan.WalkPoint, readings []Reading) WalkPoint {
	p := WalkPoint{Along: at.Along, At: at.Face.At, Facing: at.Face.Axis, In: at.In, Left: readings[0], Right: readings[1], Domes: readings[2:]}
	key, fill := &p.Left, &p.Right
	p.Side = "left"
	if *fill.Lux > *key.Lux*(1+tieRatio) {
		key, fill = fill, key
		p.Side = "right"
	}
	if *key.Lux <= 0 {
		p.Side = ""
		return p
	}
	p.Contrast = contrastOf(*key.Lux, *fill.Lux)
	return p
}

// Key is the reading of the brighter side.
func (p *WalkPoint) Key() *Reading {
	if p.Side == "right" {
		return &p.Right
	}
	return &p.Left
}

// judge follows the walk for each camera.
func (w *Walk) judge(s *plan.Setup) {
	if len(s.Cameras) == 0 {
		w.Courses = []Course{w.course("", s.Exposure.Stop.N, func(p *WalkPoint) *Reading { return p.Key() })}
	}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		w.Courses = append(w.Courses, w.course(c.Name, c.Exposure.Stop.N, func(p *WalkPoint) *Reading { return &p.Domes[i] }))
	}
}

// course follows the walk by one reading of each place.
func (w *Walk) course(camera string, working float64, of func(p *WalkPoint) *Reading) Course {
	c := Course{Camera: camera, Working: working}
	for i := range w.Points {
		c.Over = append(c.Over, of(&w.Points[i]).Over)
	}
	for i := range w.Points {
		if w.Points[i].In != "" {
			continue
		}
		off := distanceFrom(c.Over[i])
		if c.Worst == nil || off > distanceFrom(c.Over[*c.Worst]) {
			c.Worst = &i
		}
		if !math.IsInf(off, 1) && (c.Best == nil || off < distanceFrom(c.Over[*c.Best])) {
			c.Best = &i
		}
	}
	c.Off = w.offStops(c.Over)
	return c
}

// distanceFrom is how far from the working stop a reading is, stops; no light is farther than any.
func distanceFrom(over *float64) float64 {
	if over == nil {
		return math.Inf(1)
	}
	return math.Abs(*over)
}

// offStops are the stretches that have left the working stop. What is not judged ends one, and so does a change from over
// to under.
func (w *Walk) offStops(over []*float64) (all []OffStop) {
	open := false
	for i, v := range over {
		if w.Points[i].In != "" || distanceFrom(v) <= LeaveStops {
			open = false
			continue
		}
		along := w.Points[i].Along
		if open && isOver(v) == isOver(all[len(all)-1].Over) {
			last := &all[len(all)-1]
			last.To = along
			if distanceFrom(v) > distanceFrom(last.Over) {
				last.Over = v
			}
			continue
		}
		all, open = append(all, OffStop{From: along, To: along, Over: v}), true
	}
	return all
}

func isOver(v *float64) bool { return v != nil && *v > 0 }

// WalkOf returns somebody's walk, or nil.
func (s *Set) WalkOf(person string) *Walk {
	for i := range s.Walks {
		if s.Walks[i].Person == person {
			return &s.Walks[i]
		}
	}
	return nil
}

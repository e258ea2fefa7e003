package meter

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/pending"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// WalkRequests lists what is read along the walks of a set-up, person by person and place by place: the two sides of a face
// that looks along the walk, then a dome toward each camera, from both ends of a track. The body of who walks is left out, as where a place is metered
// before somebody steps in; it would have to stand in each of them.
func WalkRequests(s *plan.Setup) []Request {
	var requests []Request
	for i := range s.People {
		if p := &s.People[i]; p.Walk != nil {
			for k := range p.Walk.Points {
				requests = append(requests, pointRequests(s, p, &p.Walk.Points[k])...)
			}
		}
	}
	return requests
}

// pointRequests are those of one place of a walk: "lena.walk.2.00.left" is read 2 m from its start, whatever unit the scene has.
func pointRequests(s *plan.Setup, p *plan.Person, at *plan.WalkPoint) []Request {
	face := &at.Face
	name := fmt.Sprintf("%s.walk.%.2f.", p.Name, at.Along)
	var all []Request
	for k, turn := range [...]float64{-45, 45} {
		all = append(all, Request{Name: name + [...]string{"left", "right"}[k], Person: p.Name, Kind: term.FlatMeter, Exposure: s.Exposure,
			Receptor: light.Receptor{At: face.At, Axis: turned(face, turn, 0), Response: light.Cosine, Skip: p.Own}})
	}
	posts := s.CameraPosts()
	for i := range posts {
		c := &posts[i]
		toward := r3.Sub(c.Frame.At, face.At)
		if r3.Norm(toward) <= plane.Grain {
			toward = face.Axis // in the lens itself a dome looks on along the walk
		}
		all = append(all, Request{Name: name + "dome." + c.Name, Person: p.Name, Kind: term.DomeMeter, Exposure: c.Exposure, Camera: plan.CameraOf(c.Name),
			Receptor: light.Receptor{At: face.At, Axis: r3.Unit(toward), Response: light.Dome, Skip: p.Own}})
	}
	return all
}

// ReadWalks takes what WalkRequests ordered from a basis whose points from the first on are its receptors.
func ReadWalks(s *plan.Setup, requests []Request, first int, b *light.Basis, levels light.Levels) (walks []Walk) {
	r := reader{namer: NamerOf(s), basis: b, levels: levels, figures: pending.Of(s, levels)}
	each := 2 + len(s.CameraPosts())
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

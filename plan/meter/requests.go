package meter

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// Request is a reading to take: its name, the receptor that takes it, and the exposure that it is
// judged by.
type Request struct {
	Name, Person string
	Kind         term.Meter
	Receptor     light.Receptor
	Exposure     plan.Exposure
	Camera       string // whose exposure that is; "" for the scene's
	Seen         r3.Vec // of a spot: the point that it is pointed at, m
}

// positions are where the light of a reading is: of a spot, all along its way.
func (o *Request) positions() []r3.Vec {
	if o.Kind == term.SpotMeter {
		return []r3.Vec{o.Receptor.At, o.Seen}
	}
	return []r3.Vec{o.Receptor.At}
}

// Requests lists every reading of a set-up: each person's face in the order of the scene, where they are and then at their
// marks, then the scene's own meters. Key and fill are not among them: Read finds them from left and right.
func Requests(s *plan.Setup) []Request {
	var requests []Request
	posts := s.Posts()
	for i := range posts {
		requests = append(requests, faceRequests(s, &posts[i])...)
	}
	for i := range s.Meters {
		requests = append(requests, meterRequest(s, &s.Meters[i]))
	}
	return requests
}

// facePlanes are the planes of a face: turn clockwise from the nose, as the person's own right
// goes, and tilt up from there toward the crown, degrees. One's own left lies anticlockwise. `edge` is
// the brighter of the two planes at 135 degrees; both are ordered, and Read keeps one.
var facePlanes = [...]struct {
	name       string
	turn, tilt float64
}{
	{"left", -45, 0},
	{"right", 45, 0},
	{"front", 0, 0},
	{"top", 0, 90},
	{"back", 180, 0},
	{edgeLeft, -135, 0},
	{edgeRight, 135, 0},
	{"hair", 180, 45},
}

// The two planes of which Read keeps the brighter as "edge".
const (
	edgeLeft  = "edge-left"
	edgeRight = "edge-right"
)

// faceRequests are the planes of a face and a dome toward each camera. One's own head and body do
// not shade them; at a mark, too, the body is left out that stands in its own place.
func faceRequests(s *plan.Setup, p *plan.Person) []Request {
	var requests []Request
	add := func(name string, kind term.Meter, axis r3.Vec, weight light.Response, x plan.Exposure, camera string) {
		requests = append(requests, Request{Name: p.Name + "." + name, Person: p.Name, Kind: kind, Exposure: x, Camera: camera,
			Receptor: light.Receptor{At: p.Face.At, Axis: axis, Response: weight, Skip: p.Own}})
	}
	for _, f := range facePlanes {
		add(f.name, term.FlatMeter, turned(&p.Face, f.turn, f.tilt), light.Cosine, s.Exposure, "")
	}
	posts := s.CameraPosts()
	for i := range posts {
		c := &posts[i]
		if toward := r3.Sub(c.Frame.At, p.Face.At); r3.Norm(toward) > 0 {
			add("dome."+c.Name, term.DomeMeter, r3.Unit(toward), light.Dome, c.Exposure, plan.CameraOf(c.Name))
		}
	}
	return requests
}

// turned is a direction of a face: turn from the nose toward the person's right, and tilt toward
// the crown, degrees. Quarter turns are exact, so that a vertical plane reads nothing of what
// lies in it.
func turned(face *plan.Frame, turn, tilt float64) r3.Vec {
	sinA, cosA := plane.Sincos(turn)
	sinT, cosT := plane.Sincos(tilt)
	level := r3.Add(r3.Scale(cosA, face.Axis), r3.Scale(sinA, face.Right))
	return r3.Add(r3.Scale(cosT, level), r3.Scale(sinT, face.Up()))
}

// meterRequest is one of the scene's own meters. A spot meter is judged by its camera's exposure.
func meterRequest(s *plan.Setup, m *plan.Meter) Request {
	o := Request{Name: m.Name, Kind: m.Kind, Exposure: s.Exposure,
		Receptor: light.Receptor{At: m.At, Axis: m.Facing, Response: light.Cosine}}
	switch m.Kind {
	case term.DomeMeter:
		o.Receptor.Response = light.Dome
	case term.SpotMeter:
		o.Receptor.At, o.Receptor.Response, o.Seen = m.Lens, light.Radiance, m.At
		for i := range s.Cameras {
			if s.Cameras[i].Name == m.From {
				o.Exposure, o.Camera = s.Cameras[i].Exposure, m.From
			}
		}
	}
	return o
}

// Receptors returns the receptors of the requests, in their order.
func Receptors(requests []Request) []light.Receptor {
	all := make([]light.Receptor, len(requests))
	for i := range requests {
		all[i] = requests[i].Receptor
	}
	return all
}

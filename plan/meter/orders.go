package meter

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
)

// Order is a reading to take: its name and the receptor that takes it.
type Order struct {
	Name, Person, Kind string
	At, Facing         r3.Vec // as printed
	Receptor           light.Receptor
}

// Orders lists every reading of a set-up: each person's face in the order of the scene, then the
// scene's own meters. Key and fill are not among them: Read finds them from left and right.
func Orders(s *plan.Setup) []Order {
	var orders []Order
	for i := range s.People {
		orders = append(orders, faceOrders(s, &s.People[i])...)
	}
	for i := range s.Meters {
		orders = append(orders, meterOrder(s, &s.Meters[i]))
	}
	return orders
}

// facePlanes are the planes of a face: turn clockwise from the nose and tilt above the
// horizontal, degrees. One's own left lies anticlockwise. `edge` is the brighter of the two
// planes at 135 degrees; both are ordered, and Read keeps one.
var facePlanes = []struct {
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

func faceOrders(s *plan.Setup, p *plan.Person) []Order {
	var orders []Order
	add := func(name, kind string, axis r3.Vec, weight light.Weight) {
		orders = append(orders, Order{Name: p.Name + "." + name, Person: p.Name, Kind: kind, At: p.Face.At, Facing: axis,
			Receptor: light.Receptor{At: p.Face.At, Axis: axis, Weight: weight, Skip: p.Own}})
	}
	for _, f := range facePlanes {
		add(f.name, "flat", turned(p.Faces+f.turn, f.tilt), light.Flat)
	}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		if toward := r3.Sub(c.Frame.At, p.Face.At); r3.Norm(toward) > 0 {
			add("dome."+c.Name, "dome", r3.Unit(toward), light.Dome)
		}
	}
	return orders
}

// turned is the direction of a bearing, degrees clockwise from the sheet's up, and a tilt above
// the horizontal. Quarter turns are exact, so that a vertical plane reads nothing of what lies in it.
func turned(bearing, tilt float64) r3.Vec {
	sinB, cosB := sinCos(bearing)
	sinT, cosT := sinCos(tilt)
	return r3.Vec{X: sinB * cosT, Y: cosB * cosT, Z: sinT}
}

func sinCos(degrees float64) (sin, cos float64) {
	switch math.Mod(degrees+3600, 360) {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}

func meterOrder(s *plan.Setup, m *plan.Meter) Order {
	o := Order{Name: m.Name, Kind: m.Kind, At: m.At, Facing: m.Facing,
		Receptor: light.Receptor{At: m.At, Axis: m.Facing, Weight: light.Flat}}
	switch m.Kind {
	case "dome":
		o.Receptor.Weight = light.Dome
	case "spot":
		o.Receptor.Weight = light.Radiance
		if c := cameraNamed(s, m.From); c != nil {
			o.Receptor.At = c.Frame.At
			if along := r3.Sub(m.At, c.Frame.At); r3.Norm(along) > 0 {
				o.Receptor.Axis = r3.Unit(along)
			}
			o.Facing = o.Receptor.Axis
		}
	}
	return o
}

func cameraNamed(s *plan.Setup, name string) *plan.Camera {
	for i := range s.Cameras {
		if s.Cameras[i].Name == name {
			return &s.Cameras[i]
		}
	}
	return nil
}

// Receptors returns the receptors of the orders, in their order.
func Receptors(orders []Order) []light.Receptor {
	all := make([]light.Receptor, len(orders))
	for i := range orders {
		all[i] = orders[i].Receptor
	}
	return all
}

package frame

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Kind is what a thing is.
type Kind uint8

// The kinds of things that a picture should not show.
const (
	Light Kind = iota
	Grip
	Camera
	Rails
	Cable // to a light or a circuit, by its name
	Person
)

// thing is one piece of equipment, or somebody out of the picture: what it is made of where it stands moved by a vector, m.
type thing struct {
	kind       Kind
	name       string
	path       string
	span       source.Span
	seen       plan.Seen // of a light
	foot       r2.Vec    // where it stands, m
	base       float64   // z of what it stands on, m
	most       float64   // z over which its stand does not lift it, m; 0: nothing says it
	at         func(by r3.Vec) [][]body.Piece
	marks      []string       // of somebody, by the stance that they are at; "" where they are
	stances    [][]body.Piece // where it stands: one after the other, where it moves or somebody has marks
	middle     r3.Vec
	radius     float64 // of a ball about its middle that holds it, m
	ownHeight  float64 // z of what the stand holds, m
	standsOnIt bool    // whether it stands on legs
}

// movable says whether the thing can be moved out of a picture or a mirror of a camera: one that the camera turns with stays where it is in that.
func (t *thing) movable(c *plan.Camera) bool {
	return t.kind != Rails && t.kind != Cable && t.name != c.Name && t.name != c.Follows
}

// measure finds the ball that holds the thing where it stands.
func (t *thing) measure() {
	t.stances = t.at(r3.Vec{})
	var all []r3.Vec
	for _, pieces := range t.stances {
		for i := range pieces {
			all = append(all, pieces[i].Corners()...)
		}
	}
	for _, p := range all {
		t.middle = r3.Add(t.middle, r3.Scale(1/float64(len(all)), p))
	}
	for _, p := range all {
		t.radius = max(t.radius, r3.Norm(r3.Sub(p, t.middle)))
	}
}

// meant says whether a part of the thing is meant to be in the picture of a camera. What a scene does not say of a lamp of the
// set holds for the lamp, and not for the stand that it was put on.
func (t *thing) meant(camera string, p body.Part) bool {
	return t.seen.For(camera) && (t.seen.Written || !p.Holds())
}

// meantPieces are those that are meant to be in the picture of a camera.
func (t *thing) meantPieces(camera string) (some []body.Piece) {
	for _, pieces := range t.stances {
		for i := range pieces {
			if t.meant(camera, pieces[i].Part) {
				some = append(some, pieces[i])
			}
		}
	}
	return some
}

// unmeant are the pieces of a thing that a camera should not see.
func (t *thing) unmeant(camera string, all []body.Piece) []body.Piece {
	var some []body.Piece
	for i := range all {
		if !t.meant(camera, all[i].Part) {
			some = append(some, all[i])
		}
	}
	return some
}

// liftOf is the z that a stand lifts its load to; 0 where nothing says it.
func liftOf(m *plan.Mount, base float64) float64 {
	if m.Kind != term.Stand || m.Stand == nil {
		return 0
	}
	return base + m.Stand.Highest
}

// gripAt are the pieces of a piece of grip that is moved, and turned to what it faces.
func (v *viewing) gripAt(g *plan.Grip, by r3.Vec) []body.Piece {
	m := *g
	m.Mount = body.MovedMount(&g.Mount, by)
	if g.Target != nil && !v.setup.Spots[g.Name].Stays {
		m.Frame = turned(g.Frame, by, *g.Target)
	} else {
		m.Frame.At = r3.Add(g.Frame.At, by)
	}
	return append(body.SheetsOf(&m), body.HoldersOf(&m.Mount, m.Frame, m.Base)...)
}

package study

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/solid"
)

// Plane asks for a field: on a wall by its name, on an upright rectangle, or on a level plane above
// every floor.
type Plane struct {
	Wall    string   // "kitchen.left", its inside face; "" for another plane
	Upright *Upright // nil for another plane
	Height  float64  // m above the floors
}

// Upright is an upright rectangle anywhere: Left and Right are the ends of its foot as seen by who looks
// at the side that is lit, Foot is its z and Height how high it is, m.
type Upright struct {
	Left, Right  r2.Vec
	Foot, Height float64
}

// written is the plane that a scene asks for with sheet.plane.
func written(s *plan.Setup) []Plane {
	if s.Scene == nil || !s.Scene.Sheet.Plane.Set {
		return nil
	}
	return []Plane{{Height: s.Scene.Sheet.Plane.V}}
}

// The tests of what a place on a wall is: solid behind it, and air before it, m.
const (
	behindWall = 2e-3
	beforeWall = 2e-3
)

// fields are the fields of a plane.
func (p *Plane) fields(s *plan.Setup, step float64) ([]Field, error) {
	switch {
	case p.Upright != nil:
		f := Field{Kind: OnWall, Z: p.Upright.Foot}
		f.stand(p.Upright, step)
		return []Field{f}, nil
	case p.Wall != "":
		f, err := wallField(s, p.Wall, step)
		return []Field{f}, err
	}
	var all []Field
	for _, g := range grounds(s) {
		f := Field{Kind: OnPlane, Z: g.base + p.Height}
		f.lay(s, step, f.Z, g, r3.Vec{Z: 1}, light.Flat)
		all = append(all, f)
	}
	return all, nil
}

// wallField lies on the inside face of a wall. Openings, what stands against the wall, and what lies over
// a sloping ceiling have no data.
func wallField(s *plan.Setup, name string, step float64) (Field, error) {
	room, wall := findWall(s, name)
	if wall == nil {
		return Field{}, fmt.Errorf("there is no wall %q", name)
	}
	f := Field{Kind: OnWall, Name: name, Z: room.Base}
	f.stand(&Upright{Left: wall.Left, Right: wall.Right, Foot: room.Base, Height: room.Top - room.Base}, step)
	bvh := solid.NewBVH(&s.Set)
	l := &f.Lattice
	for n := range l.NU * l.NV {
		at := l.At(n%l.NU, n/l.NU)
		_, material := bvh.Inside(r3.Sub(at, r3.Scale(behindWall, l.Normal)))
		_, covered := bvh.Inside(r3.Add(at, r3.Scale(beforeWall, l.Normal)))
		if !material || covered || at.Z > room.CeilingAt(r2.Vec{X: at.X, Y: at.Y}) {
			l.Mask[n>>6] |= 1 << (n & 63)
		}
	}
	return f, nil
}

func findWall(s *plan.Setup, name string) (*plan.Room, *plan.Wall) {
	for i := range s.Rooms {
		room := &s.Rooms[i]
		for k := range room.Walls {
			if room.Name+"."+room.Walls[k].Name == name {
				return room, &room.Walls[k]
			}
		}
	}
	return nil, nil
}

// stand spreads the lattice over an upright rectangle.
func (f *Field) stand(u *Upright, step float64) {
	width := r2.Norm(r2.Sub(u.Right, u.Left))
	if many := width * u.Height / (step * step); many > mostPoints {
		step *= math.Sqrt(many / mostPoints)
	}
	nu, nv := int(math.Ceil((width-offGrid)/step)), int(math.Ceil((u.Height-offGrid)/step))
	if nu < 2 || nv < 2 {
		return
	}
	along := r2.Scale(1/width, r2.Sub(u.Right, u.Left))
	f.origin = r3.Vec{X: u.Left.X, Y: u.Left.Y}
	f.right, f.up = r3.Vec{X: along.X, Y: along.Y}, r3.Vec{Z: 1}
	f.Lattice = light.Lattice{
		Origin: f.At(r2.Vec{X: offGrid, Y: u.Foot + offGrid}), U: r3.Scale(step, f.right), V: r3.Scale(step, f.up),
		Normal: r3.Cross(f.right, f.up), NU: nu, NV: nv, Weight: light.Flat, Mask: make([]uint64, (nu*nv+63)/64),
	}
	f.Lux = make([]float32, nu*nv)
}

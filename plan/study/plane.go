package study

import (
	"fmt"

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

// scenePlane is the plane that a scene asks for with sheet.plane.
func scenePlane(s *plan.Setup) []Plane {
	if s.Scene == nil || !s.Scene.Sheet.Plane.Set {
		return nil
	}
	return []Plane{{Height: s.Scene.Sheet.Plane.Value}}
}

// The tests of what a place on a wall is: solid behind it, and air before it, m.
const (
	behindWall = 2e-3
	beforeWall = 2e-3
)

// plots are the fields of a plane.
func (p *Plane) plots(s *plan.Setup) ([]plot, error) {
	switch {
	case p.Upright != nil:
		return []plot{uprightField(p.Upright, Field{Kind: OnWall})}, nil
	case p.Wall != "":
		on, err := wallPlot(s, p.Wall)
		return []plot{on}, err
	}
	var all []plot
	for _, g := range grounds(s) {
		all = append(all, level(s, Field{Kind: OnPlane, Z: g.base + p.Height}, g, r3.Vec{Z: 1}, light.Cosine))
	}
	return all, nil
}

// wallPlot lies on the inside face of a wall. Openings, what stands against the wall, and what lies over
// a sloping ceiling have no data.
func wallPlot(s *plan.Setup, name string) (plot, error) {
	room, wall := findWall(s, name)
	if wall == nil {
		return plot{}, fmt.Errorf("there is no wall %q", name)
	}
	on := uprightField(&Upright{Left: wall.Left, Right: wall.Right, Foot: room.Base, Height: room.Top - room.Base}, Field{Kind: OnWall, Name: name})
	bvh, normal := solid.NewBVH(&s.Set), on.Lattice.Normal
	on.data = func(at r3.Vec) bool {
		_, material := bvh.Inside(r3.Sub(at, r3.Scale(behindWall, normal)))
		_, covered := bvh.Inside(r3.Add(at, r3.Scale(beforeWall, normal)))
		return material && !covered && at.Z <= room.CeilingAt(r2.Vec{X: at.X, Y: at.Y})
	}
	return on, nil
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

// uprightField is a field on an upright rectangle.
func uprightField(u *Upright, f Field) plot {
	width := r2.Norm(r2.Sub(u.Right, u.Left))
	along := r2.Scale(1/width, r2.Sub(u.Right, u.Left))
	f.Z = u.Foot
	f.origin = r3.Vec{X: u.Left.X, Y: u.Left.Y}
	f.right, f.up = r3.Vec{X: along.X, Y: along.Y}, r3.Vec{Z: 1}
	f.Lattice.Normal, f.Lattice.Response = r3.Cross(f.right, f.up), light.Cosine
	return plot{
		Field: f,
		first: r2.Vec{X: offGrid, Y: u.Foot + offGrid},
		size:  r2.Vec{X: width - offGrid, Y: u.Height - offGrid},
	}
}

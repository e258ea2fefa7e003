package study

import (
	"cmp"
	"math/bits"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
)

// Kind says what a field is of.
type Kind uint8

// The kinds of field.
const (
	OnFloor Kind = iota // illuminance on a floor
	AtFace              // the incident dome at the height of the faces, at each point turned toward the first camera
	OnPlane             // illuminance on a level plane above a floor
	OnWall              // illuminance on the inside face of a wall, or on an upright plane
)

// Field is light over a part of a plane. Lux[j*NU+i] is point (i, j) of the lattice.
//
// Two distances give a place on the plane, m: on level planes x and y of the plan, on walls
// the distance along from the left end, as seen from inside, and z.
type Field struct {
	Kind    Kind
	Name    string  // of a wall: "kitchen.left"
	Z       float64 // m; of a wall that of its floor
	Base    float64 // z of the floor that a level field lies over, m
	Toward  string  // the camera that domes are turned to
	Coarse  bool    // whether points are farther apart than was asked, for there would be too many
	Lattice light.Lattice
	Lux     []float32

	Uncomputed []plan.Uncomputed // keys that could change it and that nothing computes yet, or the stops that it is read in

	origin, right, up r3.Vec // of the distances
}

// At is the place of two distances.
func (f *Field) At(p r2.Vec) r3.Vec {
	return r3.Add(f.origin, r3.Add(r3.Scale(p.X, f.right), r3.Scale(p.Y, f.up)))
}

// Corner is the first point of the lattice by its two distances; Step is the spacing of the points, the
// same along and across, m.
func (f *Field) Corner() (p r2.Vec, step float64) {
	way := r3.Sub(f.Lattice.Origin, f.origin)
	return r2.Vec{X: r3.Dot(way, f.right), Y: r3.Dot(way, f.up)}, r3.Norm(f.Lattice.U)
}

// The bounds of a lattice, m.
const (
	openGround = 3.0    // around things that stand on open ground (a scene without rooms)
	offGrid    = 0.0137 // keeps lattice points off walls and edges at round coordinates
	sameLevel  = 0.001  // between floors that count as one
)

// points is how many points of a field have data.
func (f *Field) points() int {
	n := f.Lattice.NU * f.Lattice.NV
	for _, word := range f.Lattice.Mask {
		n -= bits.OnesCount64(word)
	}
	return n
}

// fields lists the lattices of a set-up: one for each level of floor, then likewise the faces', then those of the
// planes asked for. Where there would be too many points they are farther apart than step.
func fields(s *plan.Setup, step float64, planes []Plane) ([]Field, error) {
	var plots []plot
	for _, g := range grounds(s) {
		plots = append(plots, level(s, Field{Kind: OnFloor, Z: g.base}, g, r3.Vec{Z: 1}, light.Cosine))
	}
	if HasFace(s) {
		plots = append(plots, facePlots(s)...)
	}
	// What nobody asked for is left out where it has no room for points.
	plots = slices.DeleteFunc(plots, func(p plot) bool { return !p.holds(step) })
	for i := range planes {
		on, err := planes[i].plots(s)
		if err != nil {
			return nil, err
		}
		some := slices.DeleteFunc(slices.Clone(on), func(p plot) bool { return !p.holds(step) })
		if len(some) == 0 {
			return nil, on[0].tooSmall(step, s.Feet)
		}
		plots = append(plots, some...)
	}
	wide := spacing(plots, step, len(s.Lights))
	all := make([]Field, len(plots))
	for i := range plots {
		all[i] = plots[i].spread(step, wide)
	}
	return all, nil
}

// grounds lists the floors by their heights, lowest first; open ground where there is no room.
func grounds(s *plan.Setup) []ground {
	if len(s.Rooms) == 0 {
		return []ground{{base: s.Ground, open: true}}
	}
	var levels []ground
	for i := range s.Rooms {
		levels = append(levels, ground{base: s.Rooms[i].Base})
	}
	slices.SortFunc(levels, func(a, b ground) int { return cmp.Compare(a.base, b.base) })
	return slices.CompactFunc(levels, ground.level)
}

// level is a level field over a ground, at the height that f says.
func level(s *plan.Setup, f Field, g ground, axis r3.Vec, weight light.Response) plot {
	f.origin, f.right, f.up, f.Base = r3.Vec{Z: f.Z}, r3.Vec{X: 1}, r3.Vec{Y: 1}, g.base
	f.Lattice.Normal, f.Lattice.Response = axis, weight
	a := newArea(s, f.Z, g)
	return plot{
		Field: f,
		first: r2.Add(a.box.Min, r2.Vec{X: offGrid, Y: offGrid}),
		size:  r2.Sub(a.box.Max, a.box.Min),
		data:  func(at r3.Vec) bool { return a.holds(r2.Vec{X: at.X, Y: at.Y}) },
	}
}

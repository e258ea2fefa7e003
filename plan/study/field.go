package study

import (
	"cmp"
	"fmt"
	"math"
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
	AtFace              // the incident dome at the height of the faces, toward the first camera
	OnPlane             // illuminance on a level plane above a floor
	OnWall              // illuminance on the inside face of a wall, or on an upright plane
)

// Field is light over a part of a plane. Lux[j*NU+i] is point (i, j) of the lattice.
//
// A place on the plane is told by two distances, m: on level planes x and y of the plan, on walls
// the distance along from the left end, as seen from inside, and z.
type Field struct {
	Kind    Kind
	Name    string  // of a wall: "kitchen.left"
	Z       float64 // m; of a wall that of its floor
	Toward  string  // the camera a dome looks toward
	Lattice light.Lattice
	Lux     []float32

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

// The bounds of a lattice.
const (
	openGround = 3.0       // m around things that stand on open ground (a scene without rooms)
	offGrid    = 0.0137    // m, keeps lattice points off walls and edges at round coordinates
	mostPoints = 2_000_000 // of one lattice; a wider spacing is taken beyond it
	sameLevel  = 0.001     // m between floors that count as one
)

// fields lists the lattices of a set-up: one for each level of floor, then the faces', then those of the
// planes asked for.
func fields(s *plan.Setup, step float64, planes []Plane) ([]Field, error) {
	var all []Field
	for _, g := range grounds(s) {
		f := Field{Kind: OnFloor, Z: g.base}
		f.lay(s, step, g.base, g, r3.Vec{Z: 1}, light.Flat)
		all = append(all, f)
	}
	if f, ok := faceField(s, step); ok {
		all = append(all, f)
	}
	// What nobody asked for is left out where it has no room for points.
	all = slices.DeleteFunc(all, func(f Field) bool { return f.empty() })
	for i := range planes {
		on, err := planes[i].fields(s, step)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(on, func(f Field) bool { return f.empty() }) {
			return nil, fmt.Errorf("nothing stands in the scene: give it a room, a person or a light")
		}
		all = append(all, on...)
	}
	return all, nil
}

// empty says whether a field has no points to draw between.
func (f *Field) empty() bool { return f.Lattice.NU < 2 || f.Lattice.NV < 2 }

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
	return slices.CompactFunc(levels, func(a, b ground) bool { return math.Abs(b.base-a.base) < sameLevel })
}

// HasFace says whether a set-up has a field at face height: a person, and a camera to turn the dome to.
func HasFace(s *plan.Setup) bool {
	return len(s.People) > 0 && len(s.Cameras) > 0 && s.People[0].Face.At != s.Cameras[0].Frame.At
}

// faceField is the dome at the height of the set-up's faces toward its first camera.
func faceField(s *plan.Setup, step float64) (Field, bool) {
	if !HasFace(s) {
		return Field{}, false
	}
	p, c := &s.People[0], &s.Cameras[0]
	toward := r3.Unit(r3.Sub(c.Frame.At, p.Face.At))
	f := Field{Kind: AtFace, Z: p.Face.At.Z, Toward: c.Name}
	f.lay(s, step, p.Face.At.Z, groundUnder(s, p), toward, light.Dome)
	for i := range s.People {
		f.Lattice.Skip = append(f.Lattice.Skip, s.People[i].Own...)
	}
	return f, true
}

// lay spreads the lattice over a ground, at height z.
func (f *Field) lay(s *plan.Setup, step, z float64, g ground, axis r3.Vec, weight light.Weight) {
	area := newArea(s, z, g)
	size := r2.Sub(area.box.Max, area.box.Min)
	if many := size.X * size.Y / (step * step); many > mostPoints {
		step *= math.Sqrt(many / mostPoints)
	}
	nu, nv := int(math.Ceil(size.X/step)), int(math.Ceil(size.Y/step))
	if nu < 2 || nv < 2 {
		return
	}
	origin := r2.Add(area.box.Min, r2.Vec{X: offGrid, Y: offGrid})
	l := light.Lattice{Origin: r3.Vec{X: origin.X, Y: origin.Y, Z: z}, U: r3.Vec{X: step}, V: r3.Vec{Y: step},
		Normal: axis, NU: nu, NV: nv, Weight: weight, Mask: make([]uint64, (nu*nv+63)/64)}
	for n := range nu * nv {
		p := r2.Vec{X: origin.X + step*float64(n%nu), Y: origin.Y + step*float64(n/nu)}
		if !area.holds(p) {
			l.Mask[n>>6] |= 1 << (n & 63)
		}
	}
	f.Lattice, f.Lux = l, make([]float32, nu*nv)
	f.origin, f.right, f.up = r3.Vec{Z: z}, r3.Vec{X: 1}, r3.Vec{Y: 1}
}

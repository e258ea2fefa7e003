package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// view is a lattice seen along one direction at a time.
type view struct {
	origin, u, v r3.Vec
	nu, nv       int
}

// at is point n.
func (v *view) at(n int) r3.Vec {
	return r3.Add(v.origin, r3.Add(r3.Scale(float64(n%v.nu), v.u), r3.Scale(float64(n/v.nu), v.v)))
}

// corners are the outermost points.
func (v *view) corners() []r3.Vec {
	last := v.nu*v.nv - 1
	return []r3.Vec{v.at(0), v.at(v.nu - 1), v.at(last), v.at(last - v.nu + 1)}
}

// projection takes places to a lattice along a direction: to the point x u + y v whose ray meets the place
// after t metres. Each is the product with a vector, less its value at the origin.
type projection struct{ x, y, t plane }

// plane is a figure that is linear in space.
type plane struct {
	n r3.Vec
	c float64
}

func (p *plane) at(q r3.Vec) float64 { return p.n.X*q.X + p.n.Y*q.Y + p.n.Z*q.Z - p.c }

// project is that of a direction; not ok where it runs along the lattice.
func (v *view) project(d r3.Vec) (projection, bool) {
	det := r3.Dot(v.u, r3.Cross(v.v, d))
	if math.Abs(det) < 1e-9*r3.Norm(v.u)*r3.Norm(v.v) {
		return projection{}, false
	}
	made := func(a, b r3.Vec) plane {
		n := r3.Scale(1/det, r3.Cross(a, b))
		return plane{n, r3.Dot(n, v.origin)}
	}
	return projection{x: made(v.v, d), y: made(d, v.u), t: made(v.u, v.v)}, true
}

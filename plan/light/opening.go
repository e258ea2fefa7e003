package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// golden is 1/phi, the step of the Fibonacci lattice; plastic is 1/rho, rho^3 = rho + 1, whose
// powers step a lattice of two dimensions.
const (
	golden  = 0.6180339887498949
	plastic = 0.7548776662466927
)

// openingPoints are the points of the opening that are traced where it is seen in part: a lattice
// that is even in every direction, shared by all receptors; own are the same in the lamp's frame. Nil
// for a point source.
func (l *lamp) openingPoints(faces, tubes int) (own, points []r3.Vec) {
	n, local := faces, l.facePoint
	switch l.opening.Form {
	case photometry.Point, photometry.Lampshade:
		return nil, nil
	case photometry.Disc:
		local = l.discPoint
	case photometry.Tube:
		n, local = tubes, l.tubePoint
	case photometry.Sphere:
		local = l.ballPoint
	}
	// The lattice covers the right half and is mirrored into the left one: a mirrored scene has
	// mirrored light, to the last bits.
	half := (n + 1) / 2
	own = make([]r3.Vec, 0, 2*half)
	for i := range half {
		p := local(i, (float64(i)+0.5)/float64(half))
		own = append(own, p, r3.Vec{X: -p.X, Y: p.Y, Z: p.Z})
	}
	for _, p := range own {
		points = append(points, l.world(p))
	}
	return own, points
}

// world places a point of the lamp's frame: along right, along up, and behind the axis.
func (l *lamp) world(p r3.Vec) r3.Vec {
	return r3.Vec{
		X: l.at.X + p.X*l.right.X + p.Y*l.up.X - p.Z*l.axis.X,
		Y: l.at.Y + p.X*l.right.Y + p.Y*l.up.Y - p.Z*l.axis.Y,
		Z: l.at.Z + p.X*l.right.Z + p.Y*l.up.Z - p.Z*l.axis.Z,
	}
}

// fractionalStep is the i-th step of an additive lattice, 0 to 1.
func fractionalStep(i int, step float64) float64 {
	_, f := math.Modf((float64(i) + 0.5) * step)
	return f
}

func (l *lamp) facePoint(i int, u float64) r3.Vec {
	return r3.Vec{X: u / 2 * l.opening.Width, Y: (fractionalStep(i, golden) - 0.5) * l.opening.Height}
}

func (l *lamp) discPoint(i int, u float64) r3.Vec {
	r := math.Sqrt(u) * l.opening.Width / 2
	sin, cos := math.Sincos(math.Pi * (fractionalStep(i, golden) - 0.5))
	return r3.Vec{X: r * cos, Y: r * sin}
}

func (l *lamp) tubePoint(_ int, u float64) r3.Vec {
	return r3.Vec{X: u / 2 * l.opening.Width}
}

// ballPoint spreads points in the ball so that they look like an evenly bright disc from every
// side, as a Lambertian sphere does: the density at a distance r from the centre goes as
// 1/sqrt(R² - r²) (Abel's transform of an even disc).
func (l *lamp) ballPoint(i int, u float64) r3.Vec {
	r := l.opening.Width / 2 * math.Sin(ballAngle(u))
	z := 1 - 2*fractionalStep(i, plastic)
	sin, cos := math.Sincos(math.Pi * (fractionalStep(i, plastic*plastic) - 0.5))
	ring := math.Sqrt(1 - z*z)
	return r3.Vec{X: r * ring * cos, Y: r * ring * sin, Z: r * z}
}

// ballAngle solves (2a - sin 2a)/pi = u for a, 0 to pi/2: the share of the points within R sin a.
func ballAngle(u float64) float64 {
	low, high := 0.0, math.Pi/2
	for range 40 {
		a := (low + high) / 2
		if 2*a-math.Sin(2*a) < math.Pi*u {
			low = a
		} else {
			high = a
		}
	}
	return low
}

// node is a point of a quadrature rule over the opening. The weights of a rule add up to 1.
type node struct {
	at     r3.Vec
	weight float64
}

// rule is the Gauss-Legendre rule over the opening that serves at a distance from it; on a disc, along
// the radius and evenly round it.
func (l *lamp) rule(distance float64, to *precision) []node {
	order := func(side float64) int { return to.order(distance, side) + l.extraOrder() }
	w, h := l.opening.Width, l.opening.Height
	switch l.opening.Form {
	case photometry.Rectangle:
		return l.productRule(order(w), order(h))
	case photometry.Disc:
		return l.discRule(order(w))
	case photometry.Tube:
		return l.productRule(order(w), 1)
	}
	return []node{{l.at, 1}}
}

// productRule is the product of two rules, along the width and along the height.
func (l *lamp) productRule(nx, ny int) []node {
	x, wx := legendre(nx, -0.5, 0.5)
	y, wy := legendre(ny, -0.5, 0.5)
	all := make([]node, 0, nx*ny)
	for i := range x {
		for j := range y {
			p := r3.Vec{X: x[i] * l.opening.Width, Y: y[j] * l.opening.Height}
			all = append(all, node{l.world(p), wx[i] * wy[j]})
		}
	}
	return all
}

// discRule is the rule on a disc.
func (l *lamp) discRule(n int) []node {
	radius := l.opening.Width / 2
	r, w := legendre(n, 0, 1)
	round := 2*n + 2
	all := make([]node, 0, n*round)
	for i := range r {
		for k := range round {
			sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.5*float64(i%2)) / float64(round))
			p := r3.Vec{X: radius * r[i] * cos, Y: radius * r[i] * sin}
			all = append(all, node{l.world(p), 2 * r[i] * w[i] / float64(round)})
		}
	}
	return all
}

// level is a rule that serves at distances from the opening of at least sqrt(beyond).
type level struct {
	beyond float64 // m²
	nodes  []node
}

// fieldRules are those of the fields, from afar to close by. Closer than the last, full is asked.
func (l *lamp) fieldRules(w Response) []level {
	a := l.opening.Largest() / 2
	centre := []node{{l.at, 1}}
	switch {
	case l.opening.Form == photometry.Sphere && l.lambertian && w == Dome:
		return []level{{2500 * a * a, centre}} // the cap's solid angle, to 1e-4
	case l.opening.Form == photometry.Sphere && l.lambertian:
		return []level{{a * a, centre}} // a sphere lights a plane as its centre would
	case l.opening.Form == photometry.Point || l.opening.Form == photometry.Sphere:
		return []level{{0, centre}}
	}
	if l.creases != nil {
		return nil // each place has its own rule
	}
	var all []level
	for n := 2; n <= 8; n++ {
		distance := a * closely().reach[n]
		all = append(all, level{distance * distance, l.profiled(l.rule(distance, closely()))})
	}
	return all
}

// profiled are nodes that weigh as the opening is bright there.
func (l *lamp) profiled(nodes []node) []node {
	for i := range nodes {
		nodes[i].weight *= l.relative(nodes[i].at)
	}
	return nodes
}

// extraOrder is how much the order is raised for a distribution that is not Lambertian.
func (l *lamp) extraOrder() int {
	if l.lambertian {
		return 0
	}
	return 2
}

// distance2 is the square of the distance from the box in which the opening lies.
func (l *lamp) distance2(p r3.Vec) float64 {
	way := r3.Sub(p, l.at)
	o := l.opening
	w, h := o.Width/2, o.Height/2
	switch o.Form {
	case photometry.Disc:
		h = w
	case photometry.Tube:
		h = 0
	case photometry.Sphere, photometry.Lampshade:
		w, h = 0, 0 // from the middle
	}
	x := max(0, math.Abs(r3.Dot(way, l.right))-w)
	y := max(0, math.Abs(r3.Dot(way, l.up))-h)
	z := r3.Dot(way, l.axis)
	return x*x + y*y + z*z
}

// isRound says whether an opening is round from everywhere.
func isRound(o photometry.Opening) bool {
	return o.Form == photometry.Sphere || o.Form == photometry.Lampshade
}

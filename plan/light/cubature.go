package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/plan/solid"
)

// The tolerances of a sum over a part of an opening, of the light of the whole; and how often a triangle is quartered
// at most.
const (
	fineSum   = 1e-6 // single receptors
	coarseSum = 2e-3 // what falls on surfaces
	deepest   = 7
)

// part is what the receptor gets, lx, from a part of the opening that it sees: by closed form where there is one,
// else to a tolerance of the light of the whole.
func (v *visibleSums) part(l *lamp, r *Receptor, corners []r3.Vec, tolerance float64) float64 {
	dome := r.Response == Dome
	switch {
	case l.lambertian && l.opening.Form == photometry.Tube && dome:
		return l.luminance() * formfactor.LineDome(corners[0], corners[1], r.At, r.Axis)
	case l.lambertian && l.opening.Form == photometry.Tube:
		return l.luminance() * formfactor.Line(corners[0], corners[1], r.At, r.Axis)
	case len(corners) == 2:
		return l.alongTube(r, corners)
	case (l.lambertian || l.opening.Form == photometry.Sphere) && dome:
		return l.luminance() * formfactor.PolygonDome(corners, r.At, r.Axis)
	case l.lambertian || l.opening.Form == photometry.Sphere:
		return l.luminance() * formfactor.Polygon(corners, r.At, r.Axis)
	}
	return v.smooth(l, r, corners, tolerance)
}

// alongTube sums a stretch of a tube that is not Lambertian.
func (l *lamp) alongTube(r *Receptor, ends []r3.Vec) (sum float64) {
	along := r3.Sub(ends[1], ends[0])
	length := r3.Norm(along)
	nearest := r3.Norm(r3.Sub(r.At, l.at)) - l.opening.Width/2
	rule := &rulesUpTo()[exactly().order(max(nearest, 0), length)]
	for n, x := range rule.x {
		sum += rule.w[n] * l.fromPoint(r3.Add(ends[0], r3.Scale(x, along)), r)
	}
	return sum * length / l.opening.Width
}

// smooth sums a part of a face whose distribution has no closed form: it is cut where its light has creases, and
// each of the pieces, as triangles about its middle, is quartered until that changes little. Triangles and rule are
// symmetric, so that mirrored scenes have mirrored light.
func (v *visibleSums) smooth(l *lamp, r *Receptor, corners []r3.Vec, tolerance float64) float64 {
	c := cubature{l: l, r: r}
	if corners = v.counting(corners, r); corners == nil {
		return 0
	}
	figures := v.creased(l, r, corners)
	rough := 0.0
	for _, f := range figures {
		c.fan(f, func(t *triangle) { rough += c.sum(t) })
	}
	c.enough = tolerance * math.Abs(rough)
	total := 0.0
	for _, f := range figures {
		c.fan(f, func(t *triangle) { total += c.refine(t, c.sum(t), deepest) })
	}
	return total / l.opening.Surface()
}

// creased cuts a part of a face where its light has creases as seen from the receptor: behind a grid, straight before
// it, and where the light ends.
func (v *visibleSums) creased(l *lamp, r *Receptor, corners []r3.Vec) [][]r3.Vec {
	if l.creases == nil || l.isMeasured() {
		return [][]r3.Vec{corners}
	}
	if corners = v.lit(l, r, corners); corners == nil {
		return nil
	}
	all := [][]r3.Vec{corners}
	for _, axis := range [...]r3.Vec{l.right, l.up} {
		h := solid.Plane{N: axis, C: r3.Dot(axis, r.At)}
		var cut [][]r3.Vec
		for _, f := range all {
			for _, side := range [...]float64{-1, 1} {
				if part := v.Clip(f, &h, side); part != nil {
					cut = append(cut, part)
				}
			}
		}
		all = cut
	}
	return all
}

// lit is the part of a figure from which any light goes toward the receptor; nil where there is none.
func (v *visibleSums) lit(l *lamp, r *Receptor, corners []r3.Vec) []r3.Vec {
	way := l.local(r3.Sub(r.At, l.at))
	x, y, z := way.X, way.Y, way.Z
	p := l.creases
	for _, end := range [...]struct {
		axis r3.Vec
		at   float64
	}{{l.right, x + p.left*z}, {r3.Scale(-1, l.right), p.right*z - x}, {l.up, y + p.down*z}, {r3.Scale(-1, l.up), p.up*z - y}} {
		if math.IsInf(end.at, 0) {
			continue
		}
		if corners = v.Clip(corners, &solid.Plane{N: end.axis, C: r3.Dot(end.axis, l.at) + end.at}, -1); corners == nil {
			return nil
		}
	}
	return corners
}

// cubature sums the light of triangles of a face at a receptor, per m² of the whole source's.
type cubature struct {
	l      *lamp
	r      *Receptor
	enough float64 // what a sum may change by when its triangle is quartered
}

// fan splits a polygon into triangles about its middle.
func (c *cubature) fan(corners []r3.Vec, each func(*triangle)) {
	if len(corners) == 3 {
		each((*triangle)(corners))
		return
	}
	middle := solid.Centre(corners)
	for i, p := range corners {
		each(&triangle{middle, p, corners[(i+1)%len(corners)]})
	}
}

// refine quarters a triangle until its sum changes little.
func (c *cubature) refine(t *triangle, whole float64, depth int) float64 {
	if depth == 0 {
		return whole
	}
	ab, bc, ca := between(t[0], t[1]), between(t[1], t[2]), between(t[2], t[0])
	quarters := [4]triangle{{t[0], ab, ca}, {ab, t[1], bc}, {ca, bc, t[2]}, {ab, bc, ca}}
	var sums [4]float64
	sum := 0.0
	for i := range quarters {
		sums[i] = c.sum(&quarters[i])
		sum += sums[i]
	}
	if math.Abs(sum-whole) <= c.enough {
		return sum
	}
	total := 0.0
	for i := range quarters {
		total += c.refine(&quarters[i], sums[i], depth-1)
	}
	return total
}

func between(a, b r3.Vec) r3.Vec {
	return r3.Vec{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2, Z: (a.Z + b.Z) / 2}
}

// radon is the rule of seven points on a triangle that is exact for polynomials of the fifth degree (J. Radon,
// Monatshefte für Mathematik 52:286, 1948): the share of the first corner, of the two others, and the weight of the
// three such points.
var radon = [...]struct{ own, other, weight float64 }{
	{(9 + 2*root15) / 21, (6 - root15) / 21, (155 - root15) / 1200},
	{(9 - 2*root15) / 21, (6 + root15) / 21, (155 + root15) / 1200},
}

const (
	root15      = 3.872983346207417
	radonMiddle = 9.0 / 40
)

// sum is the rule on one triangle.
func (c *cubature) sum(t *triangle) float64 {
	all := r3.Add(r3.Add(t[0], t[1]), t[2])
	sum := radonMiddle * c.l.fromPoint(r3.Scale(1.0/3, all), c.r)
	for i := range radon {
		n := &radon[i]
		for _, p := range t {
			// own p + other (the two others)
			sum += n.weight * c.l.fromPoint(r3.Add(r3.Scale(n.other, all), r3.Scale(n.own-n.other, p)), c.r)
		}
	}
	return sum * t.area()
}

// short is a rule of three points on one triangle.
func (c *cubature) short(t *triangle) (sum float64) {
	for _, at := range t.three() {
		sum += c.l.fromPoint(at, c.r)
	}
	return sum * t.area() / 3
}

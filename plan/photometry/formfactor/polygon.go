package formfactor

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Polygon gives what a flat receptor receives from a flat convex polygon, by Lambert's formula
// (J. H. Lambert, Photometria, 1760): half the sum over the edges of the angle subtended times the
// cosine of the edge plane's tilt. The polygon shines from the side where its corners run
// counter-clockwise.
func Polygon(corners []r3.Vec, at, axis r3.Vec) float64 {
	if !faces(corners, at) {
		return 0
	}
	var room [12]r3.Vec
	above := clip(room[:0], corners, at, axis)
	return math.Max(0, r3.Dot(polygonVector(above), axis))
}

// PolygonDome gives what an incident dome receives from a flat convex polygon.
func PolygonDome(corners []r3.Vec, at, axis r3.Vec) float64 {
	if !faces(corners, at) {
		return 0
	}
	var room [12]r3.Vec
	seen := room[:0]
	for _, c := range corners {
		seen = append(seen, r3.Sub(c, at))
	}
	return dome(polygonAngle(seen), polygonVector(seen), axis)
}

// inPlane is the distance, m, from the plane of a polygon within which a receptor counts as lying in it, where it
// gets nothing: rounding would have it see some corners and not others.
const inPlane = 1e-9

// faces reports whether at lies before the polygon's luminous side.
func faces(corners []r3.Vec, at r3.Vec) bool {
	if len(corners) < 3 {
		return false
	}
	var normal r3.Vec // Newell's sum, which needs no three good corners
	origin := corners[0]
	for i := 1; i+1 < len(corners); i++ {
		normal = r3.Add(normal, r3.Cross(r3.Sub(corners[i], origin), r3.Sub(corners[i+1], origin)))
	}
	return r3.Dot(normal, r3.Sub(at, origin)) > inPlane*length(normal)
}

// clip appends to dst the part of the polygon above the receptor's plane, relative to at.
func clip(dst, corners []r3.Vec, at, axis r3.Vec) []r3.Vec {
	last := r3.Sub(corners[len(corners)-1], at)
	lastHeight := r3.Dot(last, axis)
	for _, c := range corners {
		v := r3.Sub(c, at)
		height := r3.Dot(v, axis)
		if (height > 0) != (lastHeight > 0) {
			s := lastHeight / (lastHeight - height)
			dst = append(dst, r3.Add(last, r3.Scale(s, r3.Sub(v, last))))
		}
		if height > 0 {
			dst = append(dst, v)
		}
		last, lastHeight = v, height
	}
	return dst
}

// polygonVector is the light vector of a polygon seen from the origin: what a receptor that sees
// all of it receives is this vector along its axis.
func polygonVector(v []r3.Vec) (sum r3.Vec) {
	for i := range v {
		sum = r3.Add(sum, edge(v[(i+1)%len(v)], v[i]))
	}
	return sum
}

// polygonAngle is the solid angle of a convex polygon seen from the origin, fanned into triangles
// (van Oosterom and Strackee, IEEE Trans. Biomed. Eng. 30:125, 1983).
func polygonAngle(v []r3.Vec) (sum float64) {
	if len(v) < 3 {
		return 0
	}
	la, lc := length(v[0]), length(v[1])
	for i := 1; i+1 < len(v); i++ {
		a, b, c := v[0], v[i], v[i+1]
		lb := lc
		lc = length(c)
		triple := r3.Dot(a, r3.Cross(b, c))
		under := la*lb*lc + r3.Dot(a, b)*lc + r3.Dot(a, c)*lb + r3.Dot(b, c)*la
		sum += 2 * math.Atan2(math.Abs(triple), under)
	}
	return sum
}

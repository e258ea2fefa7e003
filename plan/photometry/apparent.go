package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// SolidAngle gives the solid angle, sr, under which a flat convex figure is seen from a place: the sum over the triangles of its fan
// (A. van Oosterom, J. Strackee, The Solid Angle of a Plane Triangle, IEEE Trans. Biomed. Eng. 30, 1983). 0 from its own plane.
func SolidAngle(from r3.Vec, figure []r3.Vec) float64 {
	sum := 0.0
	for i := 2; i < len(figure); i++ {
		a, b, c := r3.Sub(figure[0], from), r3.Sub(figure[i-1], from), r3.Sub(figure[i], from)
		la, lb, lc := r3.Norm(a), r3.Norm(b), r3.Norm(c)
		over := r3.Dot(a, r3.Cross(b, c))
		under := la*lb*lc + r3.Dot(a, b)*lc + r3.Dot(a, c)*lb + r3.Dot(b, c)*la
		sum += 2 * math.Atan2(over, under)
	}
	return math.Abs(sum)
}

// SphereSolidAngle gives the solid angle, sr, of a sphere of a radius, m, whose middle is at a distance, m: all round from within it.
func SphereSolidAngle(radius, distance float64) float64 {
	if distance <= radius {
		return 4 * math.Pi
	}
	return 2 * math.Pi * (1 - math.Sqrt(1-radius*radius/(distance*distance)))
}

// ApparentWidth gives the full angle, degrees, of the round cone that holds a solid angle, sr: how wide something looks, whatever its
// outline.
func ApparentWidth(solidAngle float64) float64 {
	cos := 1 - solidAngle/(2*math.Pi)
	return 2 * math.Acos(min(1, max(-1, cos))) * 180 / math.Pi
}

package lens

import "math"

// ConfusionShare is the part of a gate's diagonal that a circle may have and still count as a point (common practice).
const ConfusionShare = 1.0 / 1500

// Confusion gives the diameter, mm, of the circle that counts as a point in a gate of that size, mm.
func Confusion(width, height float64) float64 { return math.Hypot(width, height) * ConfusionShare }

// Focus is a thin lens and what counts as sharp behind it.
type Focus struct {
	Focal     float64 // mm
	Number    float64 // aperture; a T-number stands for it, which is a little larger
	Confusion float64 // diameter of what counts as a point, mm
}

const millimetres = 1e-3 // m

// Hyperfocal gives the nearest distance, m, that a lens can be focused at with infinity still sharp: f + f²/(N c).
func (l Focus) Hyperfocal() float64 {
	return (l.Focal + l.Focal*l.Focal/(l.Number*l.Confusion)) * millimetres
}

// Sharp gives the nearest and the farthest distance, m, that are sharp where the lens is focused at a distance, m. far is
// +Inf from the hyperfocal distance on; ok is false where the distance is no more than the focal length.
func (l Focus) Sharp(distance float64) (near, far float64, ok bool) {
	f, h := l.Focal*millimetres, l.Hyperfocal()
	if !(distance > f) {
		return 0, 0, false
	}
	near = distance * (h - f) / (h + distance - 2*f)
	if distance >= h {
		return near, math.Inf(1), true
	}
	return near, distance * (h - f) / (h - distance), true
}

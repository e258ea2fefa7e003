package files

import (
	"math"

	"scrimshaw/plan/photometry"
)

// openingOf is the opening of a width, a length and a height, m, by whose signs a file tells its shape.
func openingOf(w, d, h float64) (o photometry.Opening, lost string) {
	w, d, h = side(w), side(d), side(h)
	switch {
	case w == 0 && d == 0 && h == 0:
		return photometry.Opening{}, ""
	case w >= 0 && d >= 0 && h >= 0:
		return box(w, d, h)
	case d > 0 && w <= 0 && h <= 0:
		return photometry.Opening{Form: photometry.Tube, Width: d, Height: math.Max(-w, -h)}, ""
	case w > 0 && d <= 0 && h <= 0:
		return face(math.Max(-d, -h), w), "the cylinder across the planes 0 and 180 is computed as a flat face of its length and thickness"
	case h == 0 && w < 0 && d <= 0:
		return ellipse(-w, -d)
	}
	return sphere(math.Abs(w), math.Abs(d), math.Abs(h))
}

// side is a side of an opening, m; 0 where it is too small to be one.
func side(v float64) float64 {
	if math.Abs(v) < minSide {
		return 0
	}
	return v
}

// box is a rectangle, perhaps with luminous sides.
func box(width, length, height float64) (photometry.Opening, string) {
	lost := ""
	if height > 0 {
		lost = "the light of the luminous box's sides is computed as if it came from its face"
	}
	switch {
	case width > 0 && length > 0:
		return face(length, width), lost
	case width > 0 || length > 0:
		return photometry.Opening{}, "a luminous opening without width or length is computed as a point"
	}
	return sphere(0, 0, height)
}

// face is a rectangle with a length along the planes 0 and 180, the lamp's right.
func face(length, width float64) photometry.Opening {
	return photometry.Opening{Form: photometry.Rectangle, Width: length, Height: width}
}

// ellipse is a disc; where it is oblong, one of its area. Before 2002 a circle has no length.
func ellipse(width, length float64) (photometry.Opening, string) {
	if length == 0 {
		length = width
	}
	lost := ""
	if math.Abs(width-length) > 0.1*width {
		lost = "the ellipse is computed as a disc of its area"
	}
	return photometry.Opening{Form: photometry.Disc, Width: math.Sqrt(width * length)}, lost
}

// sphere is any other body: a sphere of its mean size.
func sphere(w, l, h float64) (photometry.Opening, string) {
	sum, n := 0.0, 0.0
	for _, side := range [...]float64{w, l, h} {
		if side > 0 {
			sum += side
			n++
		}
	}
	lost := ""
	if w != l || l != h {
		lost = "the luminous body is computed as a sphere of its mean size"
	}
	return photometry.Opening{Form: photometry.Sphere, Width: sum / n}, lost
}

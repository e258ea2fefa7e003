// Package lens holds the formulas of the camera: angle of view and exposure. Formulas only.
package lens

import "math"

// AngleOfView gives the full angle, degrees, that a lens sees across size mm of a gate, focused
// at infinity.
func AngleOfView(size, focal float64) float64 {
	return 2 * math.Atan(HalfTangent(size, focal)) * 180 / math.Pi
}

// HalfTangent is the tangent of half the angle that a lens sees across size mm of a gate: how far from the axis the edge
// of the frame lies, by how far before the lens.
func HalfTangent(size, focal float64) float64 { return size / (2 * focal) }

// Crop gives the largest window, mm, of a shape (width over height) within a gate.
func Crop(width, height, aspect float64) (w, h float64) {
	if width > height*aspect {
		return height * aspect, height
	}
	return width, width / aspect
}

// ShutterSeconds gives the exposure time of a rotary shutter's angle, degrees, at fps.
func ShutterSeconds(degrees, fps float64) float64 { return degrees / 360 / fps }

// ShutterDegrees gives the angle of an exposure time at fps.
func ShutterDegrees(seconds, fps float64) float64 { return seconds * fps * 360 }

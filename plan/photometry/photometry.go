// Package photometry describes how sources send out light: lobes, cones, cosine and uniform
// points, luminous faces, discs, tubes and spheres, and grids before them, and tables of measured light. In the lamp frame the
// axis is -Z, C0 is +X and C90 is +Y.
package photometry

import "gonum.org/v1/gonum/spatial/r3"

// Distribution gives luminous intensity per lumen of the source, cd/lm, in a direction of the
// lamp frame (unit vector). Its integral over the sphere is 1.
type Distribution interface {
	Candela(dir r3.Vec) float64
}

// Form is the shape of a luminous opening.
type Form uint8

// The forms. A Rectangle and a Disc shine from one side; a Tube shines all round with dark ends
// and lies along +X; a Sphere shines all round; a Lampshade stands about the axis, and its Shade says how it shines.
const (
	Point Form = iota
	Rectangle
	Disc
	Tube
	Sphere
	Lampshade
)

// Opening is the luminous opening. Width is along +X; for a Disc and a Sphere it is the
// diameter, for a Lampshade the greatest, and Height is how high it is; for a Tube Width is the length and Height the
// diameter (0 is a line). Metres.
type Opening struct {
	Form          Form
	Width, Height float64
}

// Source is a luminous flux, lm, sent out through an opening by a distribution. Where the
// distribution is Lambertian (cosine) an extended opening has luminance Flux/(pi A).
type Source struct {
	Flux         float64
	Distribution Distribution
	Opening      Opening
}

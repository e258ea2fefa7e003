package kit

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
)

// Tilt is how the light of a measured lamp goes by its tilt from the design position, in which it was
// measured: a discharge lamp gives less on its side.
type Tilt struct {
	table *files.Tilt
	zero  r3.Vec // the direction, in the lamp frame, that points straight down in the design position
}

// tiltOf is what a photometric file says of tilt; nil for nothing.
func tiltOf(d files.Data) *Tilt {
	l, ok := d.(*files.LM63)
	if !ok || !l.Tilt.Known() {
		return nil
	}
	t := &Tilt{&l.Tilt, r3.Vec{Z: -1}}
	if l.System == photometry.TypeA { // whose axis is level in the design position
		t.zero = r3.Vec{Y: -1}
	}
	return t
}

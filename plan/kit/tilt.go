package kit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
)

// Tilt is how the light of a measured lamp depends on its tilt from the design position, in which it was
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

// levelSlack is how far the lamp's right may rise and count as level, as a sine.
const levelSlack = 1e-9

// Hang sets the head's light to what its lamp gives as it hangs: right, up and axis are those of the lamp
// frame in the scene. known is false where the file has factors and does not say which of them holds: a
// lamp that is level in the design position lies this way or that after a roll, and the format does not
// say along which side of the luminaire it was.
func (h *Head) Hang(right, up, axis r3.Vec) (known bool) {
	t := h.Tilt
	if t == nil {
		return true
	}
	if t.table.Geometry != files.LampUpright && math.Abs(right.Z) > levelSlack {
		return false
	}
	down := r3.Vec{X: -right.Z, Y: -up.Z, Z: axis.Z}
	tilt := math.Acos(math.Min(1, math.Max(-1, r3.Dot(down, t.zero)))) * 180 / math.Pi
	factor := t.table.Factor(tilt)
	h.Source.Flux *= factor
	h.Steps = append(h.Steps[:len(h.Steps):len(h.Steps)], Step{
		What: "tilted from its design position", Formula: "flux x factor at this tilt",
		In: []float64{tilt, factor}, Out: h.Source.Flux, Unit: "lm",
	})
	return true
}

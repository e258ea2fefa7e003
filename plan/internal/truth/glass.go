package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Glass is followed face by face: light that comes to a pane meets one surface after the other, of each sheet the first and the
// last, and what each throws back is thrown to and fro until next to nothing is left.

// angles is by how many angles from ahead to aside the law of a glass is kept; and mostTurns how often light is followed from
// face to face.
const (
	angles    = 900
	mostTurns = 600
)

// keepGlass works out the law of a face of glass.
func (f *face) keepGlass() {
	if f.glass == nil {
		return
	}
	takes := f.taken()
	ahead := passesAt(1, f.glass.Index, f.glass.Sheets, takes)
	f.aside = make([]float64, angles+1)
	for i := range angles { // and nothing passes along the glass
		f.aside[i] = passesAt(math.Cos(float64(i)*math.Pi/2/angles), f.glass.Index, f.glass.Sheets, takes) / ahead
	}
}

// fromAside is what passes glass along a direction by what passes it straight ahead.
func (f *face) fromAside(d r3.Vec) float64 {
	if f.aside == nil {
		return 1
	}
	x := math.Acos(min(1, math.Abs(r3.Dot(d, f.normal))/r3.Norm(d))) * angles * 2 / math.Pi
	i := min(int(x), angles-1)
	return f.aside[i] + (x-float64(i))*(f.aside[i+1]-f.aside[i])
}

// taken is what a sheet takes of light straight across, as the power of e by which it falls, such that all sheets pass what
// they pass.
func (f *face) taken() float64 {
	low, high := 0.0, 20.0
	for range 50 {
		if middle := (low + high) / 2; passesAt(1, f.glass.Index, f.glass.Sheets, middle) > f.glass.Ahead {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// passesAt is what passes some sheets from an angle by its cosine: light of the two polarisations, a half each.
func passesAt(cos, index float64, sheets int, takes float64) (sum float64) {
	angle := math.Acos(cos)
	inside := math.Asin(math.Sin(angle) / index)
	for _, polarised := range [2]func() float64{
		func() float64 { return math.Sin(angle-inside) / math.Sin(angle+inside) },
		func() float64 { return math.Tan(angle-inside) / math.Tan(angle+inside) },
	} {
		r := polarised()
		if angle < 1e-6 {
			r = (index - 1) / (index + 1)
		}
		sum += toAndFro(2*sheets, r*r, math.Exp(-takes/math.Cos(inside))) / 2
	}
	return sum
}

// toAndFro follows light through some faces, each of which throws a share back, with a stretch of glass behind every other that
// passes a share: what comes to each face from before and from behind, again and again.
func toAndFro(faces int, back, glass float64) (out float64) {
	on, off := make([]float64, faces+1), make([]float64, faces+1)
	stretch := func(before int) float64 { // the way to a face from the one before it
		if before%2 == 1 && before < faces {
			return glass
		}
		return 1
	}
	on[0] = 1
	for range mostTurns {
		next, returned := make([]float64, faces+1), make([]float64, faces+1)
		for i := range faces {
			next[i+1] += stretch(i+1) * (on[i]*(1-back) + off[i]*back)
			if i > 0 {
				returned[i-1] += stretch(i) * (off[i]*(1-back) + on[i]*back)
			}
		}
		out += next[faces]
		next[faces] = 0
		on, off = next, returned
	}
	return out
}

package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// spread is how a lamp sends out light: cd for each lumen in a unit direction by its shares along the lamp's
// right, up and axis. Its integral over all directions is 1.
type spread func(right, up, ahead float64) float64

// spreadOf writes the plain distributions out from their definitions; measured light is asked for its value.
// A lobe's two figures and its edge are found from what it gives at some angles.
func spreadOf(d photometry.Distribution) spread {
	switch d := d.(type) {
	case nil:
		return func(_, _, _ float64) float64 { return 0 }
	case photometry.Uniform:
		return func(_, _, _ float64) float64 { return 1 / (4 * math.Pi) }
	case photometry.Cosine:
		return func(_, _, ahead float64) float64 { return max(0, ahead) / math.Pi }
	case photometry.TubeCosine:
		return func(right, _, _ float64) float64 { return math.Sqrt(max(0, 1-right*right)) / (math.Pi * math.Pi) }
	case *photometry.Lobe:
		return lobeOf(d)
	case photometry.Grid:
		return gridOf(d)
	case photometry.Honeycomb:
		return honeycombOf(d)
	case *photometry.FlatField:
		return flatFieldOf(d)
	case *photometry.Gated:
		return gatedOf(d)
	case photometry.HalfScrim:
		return halfScrimOf(d)
	}
	return func(right, up, ahead float64) float64 { return d.Candela(r3.Vec{X: right, Y: up, Z: -ahead}) }
}

// lobeOf is I0 2^-(t/tb)^n.
func lobeOf(d *photometry.Lobe) spread {
	edge := math.Pi
	if d.At(math.Pi/2+1e-6) == 0 {
		edge = math.Pi / 2
	}
	half, power := lobeFigures(d, edge/2)
	at := func(t float64) float64 {
		if t > edge {
			return 0
		}
		return math.Exp2(-math.Pow(t/half, power))
	}
	// The integral over rings, which are closer near the axis.
	const rings = 20000
	sum := 0.0
	for i := range rings {
		x := (float64(i) + 0.5) / rings
		t := edge * x * x
		sum += at(t) * math.Sin(t) * 2 * edge * x / rings
	}
	peak := 1 / (2 * math.Pi * sum)
	return func(right, up, ahead float64) float64 {
		return peak * at(math.Atan2(math.Sqrt(right*right+up*up), ahead))
	}
}

// lobeFigures finds tb and n from what a lobe gives at two angles: log2 of I0/I is (t/tb)^n.
func lobeFigures(d *photometry.Lobe, angle float64) (half, power float64) {
	stops := func(t float64) float64 { return math.Log2(d.At(0) / d.At(t)) }
	for stops(angle) > 20 {
		angle /= 2
	}
	power = math.Log2(stops(angle) / stops(angle/2))
	return angle / math.Pow(stops(angle), 1/power), power
}

// gridOf is what is behind the grid times 1 - |tan a|/tan A across and along.
func gridOf(d photometry.Grid) spread {
	base, across, along, _ := d.Parts()
	behind := spreadOf(base)
	through := func(right, up, ahead float64) float64 {
		if ahead <= 0 {
			return 0
		}
		open := max(0, 1-math.Abs(right/ahead)/across) * max(0, 1-math.Abs(up/ahead)/along)
		if open == 0 {
			return 0
		}
		return open * behind(right, up, ahead)
	}
	gain := 1 / flux(through, math.Pi/2)
	return func(right, up, ahead float64) float64 { return gain * through(right, up, ahead) }
}

// honeycombOf is what is behind round cells times the part of a cell's far mouth that its near mouth shows: of two
// circles of diameter 1 whose middles are x apart, summed by chords.
func honeycombOf(d photometry.Honeycomb) spread {
	base, cutOff := d.Parts()
	behind := spreadOf(base)
	through := func(right, up, ahead float64) float64 {
		if ahead <= 0 {
			return 0
		}
		return shown(math.Hypot(right, up)/ahead/cutOff) * behind(right, up, ahead)
	}
	gain := 1 / flux(through, math.Pi/2)
	return func(right, up, ahead float64) float64 { return gain * through(right, up, ahead) }
}

// halfScrimOf is what is behind a lens of which the lower half is darker. Of the lens, from -1 below to 1 above, a patch
// shines each way that is to the lens as the narrowest field is to this one; at the edges of the field it lies at the edges
// of the lens. It is summed strip by strip.
func halfScrimOf(d photometry.HalfScrim) spread {
	const strips, widest = 200, 170.0
	base, passes, field, narrowest := d.Parts()
	behind := spreadOf(base)
	edge := math.Tan(min(field, widest) * math.Pi / 360)
	half := min(1, narrowest/field)
	through := func(right, up, ahead float64) float64 {
		value := behind(right, up, ahead)
		if value == 0 {
			return 0
		}
		middle := 0.0
		switch {
		case half == 1: // all of the lens shines each way
		case ahead > 0:
			middle = (1 - half) * up / ahead / edge
		default:
			middle = math.Copysign(math.Inf(1), up)
		}
		sum := 0.0
		for i := range strips {
			if at := middle + half*(2*(float64(i)+0.5)/strips-1); at < 0 {
				sum += passes
			} else {
				sum++
			}
		}
		return value * sum / strips
	}
	gain := 1 / flux(through, math.Pi)
	return func(right, up, ahead float64) float64 { return gain * through(right, up, ahead) }
}

// shown is the part of a circle of diameter 1 that lies in another, shifted by x: chords of the half beyond x/2, twice.
func shown(x float64) float64 {
	const chords = 100
	sum := 0.0
	for i := range chords {
		at := x/2 + (0.5-x/2)*(float64(i)+0.5)/chords
		sum += 2 * math.Sqrt(max(0, 0.25-at*at))
	}
	return max(0, 2*sum*(0.5-x/2)/chords/(math.Pi/4))
}

// flatFieldOf is as strong all over a round gate and dark beside it.
func flatFieldOf(d *photometry.FlatField) spread {
	radius, confusion := d.Figures()
	shape := func(right, up, ahead float64) float64 {
		if ahead <= 0 {
			return 0
		}
		return blurs((radius-math.Hypot(right, up)/ahead)/radius, confusion/radius)
	}
	// Its flux by rings, close to each other at the rim.
	edge := math.Atan(radius + confusion)
	const rings = 20000
	sum := 0.0
	for i := range rings {
		t := edge * (float64(i) + 0.5) / rings
		sum += shape(math.Sin(t), 0, math.Cos(t)) * math.Sin(t) * edge / rings
	}
	gain := 1 / (2 * math.Pi * sum)
	return func(right, up, ahead float64) float64 { return gain * shape(right, up, ahead) }
}

// gatedOf is what is behind a gate times what cuts and a pattern leave of it.
func gatedOf(d *photometry.Gated) spread {
	base, gate, radius := d.Parts()
	behind, open := spreadOf(base), openOf(&gate)
	through := func(right, up, ahead float64) float64 {
		if ahead <= 0 {
			return 0
		}
		share := open(right/(ahead*radius), up/(ahead*radius))
		if share == 0 {
			return 0
		}
		return share * behind(right, up, ahead)
	}
	gain := 1 / gateFlux(through, radius)
	return func(right, up, ahead float64) float64 { return gain * through(right, up, ahead) }
}

// gateFlux is the integral of a spread over a square of the plane before the lamp that holds the image, and over the rest of the
// half space.
func gateFlux(s spread, radius float64) float64 {
	const cells, reach = 900, 1.6
	side := 2 * reach * radius / cells
	sum := 0.0
	for n := range cells * cells {
		x, y := side*(float64(n%cells)+0.5)-reach*radius, side*(float64(n/cells)+0.5)-reach*radius
		r := math.Sqrt(1 + x*x + y*y)
		sum += s(x/r, y/r, 1/r) * side * side / (r * r * r)
	}
	return sum + flux(func(right, up, ahead float64) float64 {
		if math.Max(math.Abs(right), math.Abs(up)) <= reach*radius*ahead {
			return 0
		}
		return s(right, up, ahead)
	}, math.Pi/2)
}

// flux is the integral of a spread over the directions up to an angle from the axis.
func flux(s spread, edge float64) float64 {
	const rings, round = 2000, 720
	sum := 0.0
	for i := range rings {
		t := edge * (float64(i) + 0.5) / rings
		sin, cos := math.Sincos(t)
		for k := range round {
			y, x := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / round)
			sum += s(sin*x, sin*y, cos) * sin
		}
	}
	return sum * edge / rings * 2 * math.Pi / round
}

package explain_test

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
)

// strips is how many strips each way a figure is summed in.
const strips = 400

// integrate sums the form factor of a disc, a tube, a sphere or a face over small pieces, from the figures that were printed.
func integrate(known map[string]float64, words string) (float64, bool) {
	s := seen{vector(known, "u", "v", "w"), strings.Contains(words, "dome")}
	middle := vector(known, "x", "y", "z")
	switch {
	case strings.Contains(words, "corners"):
		return s.face(known), true
	case strings.Contains(words, "disc"):
		return s.disc(middle, vector(known, "m", "n", "o"), known["D"]/2), true
	case strings.Contains(words, "tube"):
		return s.tube(middle, vector(known, "m", "n", "o"), known["W"]), true
	case strings.Contains(words, "rises over"):
		return s.sphere(middle, known["D"]/2), true
	}
	return 0, false
}

func vector(known map[string]float64, x, y, z string) r3.Vec {
	return r3.Vec{X: known[x], Y: known[y], Z: known[z]}
}

// seen weighs what comes from small pieces at a reading in the origin.
type seen struct {
	facing r3.Vec
	dome   bool
}

// weight is that of light from a place.
func (s seen) weight(p r3.Vec) float64 {
	c := r3.Cos(p, s.facing)
	if s.dome {
		return (1 + c) / 2
	}
	return math.Max(0, c)
}

// piece is what a small flat piece gives, by pi.
func (s seen) piece(p, normal r3.Vec, area float64) float64 {
	return area * math.Max(0, -r3.Cos(p, normal)) * s.weight(p) / r3.Norm2(p) / math.Pi
}

func (s seen) face(known map[string]float64) (sum float64) {
	var corners [4]r3.Vec
	for i := range corners {
		n := fmt.Sprint(i + 1)
		corners[i] = vector(known, "x"+n, "y"+n, "z"+n)
	}
	a, b := r3.Sub(corners[1], corners[0]), r3.Sub(corners[3], corners[0])
	normal := r3.Cross(a, b)
	if r3.Dot(normal, corners[0]) > 0 {
		normal = r3.Scale(-1, normal)
	}
	area := r3.Norm(normal) / strips / strips
	for i := range strips {
		for j := range strips {
			p := r3.Add(corners[0], r3.Add(r3.Scale((float64(i)+0.5)/strips, a), r3.Scale((float64(j)+0.5)/strips, b)))
			sum += s.piece(p, normal, area)
		}
	}
	return sum
}

// across are two directions square to a third.
func across(axis r3.Vec) (a, b r3.Vec) {
	other := r3.Vec{X: 1}
	if math.Abs(axis.X) > 0.7*r3.Norm(axis) {
		other = r3.Vec{Y: 1}
	}
	a = r3.Unit(r3.Cross(axis, other))
	return a, r3.Cross(r3.Unit(axis), a)
}

func (s seen) disc(middle, axis r3.Vec, radius float64) (sum float64) {
	a, b := across(axis)
	for i := range strips {
		r := radius * (float64(i) + 0.5) / strips
		for j := range strips {
			sin, cos := math.Sincos(2 * math.Pi * (float64(j) + 0.5) / strips)
			p := r3.Add(middle, r3.Add(r3.Scale(r*cos, a), r3.Scale(r*sin, b)))
			sum += s.piece(p, axis, r*radius/strips*2*math.Pi/strips)
		}
	}
	return sum
}

func (s seen) tube(middle, along r3.Vec, length float64) (sum float64) {
	const pieces = strips * strips
	for i := range pieces {
		p := r3.Add(middle, r3.Scale(length*((float64(i)+0.5)/pieces-0.5), along))
		c := r3.Cos(p, along)
		sum += math.Sqrt(1-c*c) * s.weight(p) / r3.Norm2(p) * length / pieces
	}
	return sum
}

func (s seen) sphere(middle r3.Vec, radius float64) (sum float64) {
	a, b := across(middle)
	d := r3.Norm(middle)
	end := math.Asin(radius / d)
	for i := range strips {
		t := end * (float64(i) + 0.5) / strips
		for j := range strips {
			sin, cos := math.Sincos(2 * math.Pi * (float64(j) + 0.5) / strips)
			way := r3.Add(r3.Scale(math.Cos(t)/d, middle), r3.Scale(math.Sin(t), r3.Add(r3.Scale(cos, a), r3.Scale(sin, b))))
			sum += s.weight(way) * math.Sin(t) * end / strips * 2 * math.Pi / strips / math.Pi
		}
	}
	return sum
}

package formfactor_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/testdata/published"
)

// flat is the rectangle x0..x1, y0..y1 on the floor, shining up.
func flat(x0, x1, y0, y1 float64) []r3.Vec {
	return []r3.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// upright is the rectangle x0..x1, z0..z1 in the plane y = 0, shining to greater y.
func upright(x0, x1, z0, z1 float64) []r3.Vec {
	return []r3.Vec{{X: x0, Z: z0}, {X: x0, Z: z1}, {X: x1, Z: z1}, {X: x1, Z: z0}}
}

func TestExchangeAgainstCatalogues(t *testing.T) {
	for _, row := range published.Read(t, "interreflection.txt", "opposed squares", "opposed plates", "common edge", "raised plate", "meeting corners") {
		in, decimals := row.In, 6
		var got float64
		switch row.Label {
		case "opposed squares":
			got = reference.Exchange(flat(0, 1, 0, 1), face(0, 1, 0, 1, in[0]))
		case "opposed plates":
			got, decimals = reference.Exchange(flat(0, in[0], 0, in[1]), face(0, in[0], 0, in[1], in[2]))/(in[0]*in[1]), 4
		case "common edge":
			got = reference.Exchange(flat(0, in[0], 0, in[2]), upright(0, in[0], 0, in[1])) / (in[0] * in[2])
		case "raised plate":
			got, decimals = reference.Exchange(flat(0, in[0], 0, in[1]), upright(0, in[0], in[2], in[3]))/(in[0]*in[1]), 5
		case "meeting corners":
			got, decimals = reference.Exchange(flat(0, in[0], 0, in[1]), upright(in[0], in[0]+in[2], 0, in[3]))/(in[0]*in[1]), 4
		}
		printed(t, label(row), got, row.Out[0], decimals)
	}
}

// Coaxial discs: the light of the second at points of the first, summed over it.
func TestDiscsAgainstCatalogues(t *testing.T) {
	for _, row := range published.Read(t, "interreflection.txt", "coaxial discs") {
		r1, r2, gap := row.In[0], row.In[1], row.In[2]
		disc := formfactor.Circle{Centre: r3.Vec{Z: gap}, Normal: r3.Vec{Z: -1}, Radius: r2}
		sum := quad.Fixed(func(r float64) float64 {
			return 2 * r / (r1 * r1) * formfactor.Disc(disc, r3.Vec{X: r}, up) / math.Pi
		}, 0, r1, 48, nil, 0)
		decimals := 6
		if row.Status == "secondary" {
			decimals = 4
		}
		printed(t, label(row), sum, row.Out[0], decimals)
	}
}

// A1 F12 = A2 F21: the integral is in closed form along the one polygon and a rule along the other,
// and comes to the same with the two exchanged.
func TestExchangeIsMutual(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		w, d, h := 0.2+r.Float64(), 0.2+r.Float64(), 0.1+2*r.Float64()
		x, y := r.Float64()*3-1.5, r.Float64()*3-1.5
		a, b := flat(0, w, 0, d), face(x, x+d, y, y+w, h)
		within(t, "opposed", reference.Exchange(a, b), reference.Exchange(b, a), 1e-9)
		c := upright(x, x+d, 0.2+0.8*r.Float64(), 1.1+h)
		within(t, "square to each other", reference.Exchange(a, c), reference.Exchange(c, a), 1e-9)
	}
	a, b := flat(0, 1, 0, 2), upright(0, 1, 0, 3)
	within(t, "at a common edge", reference.Exchange(a, b), reference.Exchange(b, a), 1e-9)
}

// From the floor of a closed room all light falls on its other sides: the shares add up to 1.
func TestExchangeFillsARoom(t *testing.T) {
	for _, room := range [][3]float64{{1, 1, 1}, {5, 4, 3}, {4, 4, 2.7}} {
		w, d, h := room[0], room[1], room[2]
		floor := flat(0, w, 0, d)
		front := upright(0, w, 0, h)
		left := []r3.Vec{{}, {Y: d}, {Y: d, Z: h}, {Z: h}}
		sum := reference.Exchange(floor, face(0, w, 0, d, h)) + 2*reference.Exchange(floor, front) + 2*reference.Exchange(floor, left)
		within(t, "sum over a room", sum/(w*d), 1, 1e-9)
	}
}

// The share that a point gets, summed over a polygon, is the share that the polygon gets.
func TestExchangeAgainstPoints(t *testing.T) {
	a, b := flat(0, 1, 0, 1), face(0.3, 1.7, -0.4, 0.8, 0.6)
	sum := quad.Fixed(func(x float64) float64 {
		return quad.Fixed(func(y float64) float64 {
			return formfactor.Polygon(b, r3.Vec{X: x, Y: y}, up) / math.Pi
		}, 0, 1, 40, nil, 0)
	}, 0, 1, 40, nil, 0)
	within(t, "by points", reference.Exchange(a, b), sum, 1e-9)
}

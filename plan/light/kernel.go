package light

import (
	"math"
	"math/bits"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// kernel is a lamp's distribution in the form that rows of lattice points are summed by: one
// short loop for each kind of distribution, without calls where that can be.
type kernel struct {
	kind     kernelKind
	gain     float64    // cd
	grid     [2]float64 // gridded: inverse tangents of the cut-off angles
	table    []float64  // axial: cd against s = sin(t/2)
	measured *globe
	onesided bool
	lamp     *lamp // any other distribution
}

type kernelKind uint8

const (
	cosine kernelKind = iota
	uniform
	line
	axial
	gridded // a grid before a cosine
	tabled
	anyShape
)

func newKernel(l *lamp) *kernel {
	k := &kernel{onesided: l.onesided, lamp: l}
	switch d := l.shape.(type) {
	case photometry.Cosine:
		k.kind, k.gain = cosine, l.flux/math.Pi
	case photometry.Uniform:
		k.kind, k.gain = uniform, l.flux/(4*math.Pi)
	case photometry.TubeCosine:
		k.kind, k.gain = line, l.flux/(math.Pi*math.Pi)
	case photometry.Axial:
		k.kind, k.table = axial, axialTable(d, l.flux)
	case *photometry.Table: // of a point each direction is asked for once
		k.kind = anyShape
		if l.opening.Form == photometry.Point {
			break
		}
		k.kind, k.gain, k.measured = tabled, l.flux, newGlobe(d, l.onesided)
	case photometry.Grid:
		k.kind = anyShape
		if grid, gain, ok := cosineGrid(d); ok && l.onesided {
			k.kind, k.grid, k.gain = gridded, grid, gain*l.flux
		}
	default:
		k.kind = anyShape
	}
	return k
}

// The sizes of an axial table, and the error that ends its growth: relative, and below a
// thousandth of the peak relative to that.
const (
	leastTable = 512
	mostTable  = 16384
	tableError = 2e-4
)

// axialTable tabulates a distribution against s = sin(t/2), which spreads a beam's middle out and
// needs no arc cosine. It is refined until straight lines between its entries serve.
func axialTable(d photometry.Axial, flux float64) []float64 {
	at := func(s float64) float64 { return flux * d.At(2*math.Asin(s)) }
	floor := 1e-3 * flux * photometry.Peak(d)
	table, bent := []float64{at(0), at(1)}, []bool{true}
	for n := 2; n <= mostTable && slices.Contains(bent, true); n *= 2 {
		table, bent = refined(table, bent, at, floor)
	}
	return append(table, table[len(table)-1])
}

// refined halves the steps of a table of f over 0..1, where bent says that straight lines do not serve.
func refined(table []float64, bent []bool, f func(float64) float64, floor float64) (fine []float64, still []bool) {
	n := 2 * len(bent)
	fine, still = make([]float64, n+1, n+2), make([]bool, n)
	for k, is := range bent {
		low, high := table[k], table[k+1]
		middle := (low + high) / 2
		if is {
			value := f(float64(2*k+1) / float64(n))
			off := math.Abs(value-middle) / max(value, floor)
			middle = value
			// Halving the step quarters the error.
			still[2*k] = n < leastTable || off > 4*tableError
			still[2*k+1] = still[2*k]
		}
		fine[2*k], fine[2*k+1] = low, middle
	}
	fine[n] = table[len(table)-1]
	return fine, still
}

// sight is how a row of lattice points is seen from a point of a lamp: each figure as a
// polynomial in the index of the point.
type sight struct {
	ahead, across, over [2]float64 // along the lamp's axis, right and up, m
	fall                [3]float64 // against the receptors' axis, m; before the grid's lean
	square              [3]float64 // of the distance, m²
	flat                float64    // share of the weight that does not depend on the angle: 0 or 1/2
	cos                 float64    // share that goes by the cosine: 1 or 1/2
	grid                *grid
	row                 int
}

// steps is what all rows of a lattice have in common for a lamp.
type steps struct {
	grid            *grid
	ahead, across   float64
	over, fall, own float64
	flat, cos       float64
}

func newSteps(l *lamp, g *grid) steps {
	u := g.lattice.U
	s := steps{
		grid: g, ahead: r3.Dot(u, l.axis), across: r3.Dot(u, l.right), over: r3.Dot(u, l.up),
		fall: -r3.Dot(u, g.lattice.Normal), own: r3.Norm2(u), cos: 1,
	}
	if g.lattice.Weight == Dome {
		s.flat, s.cos = 0.5, 0.5
	}
	return s
}

// from is the sight of row j from a point of the lamp.
func (s *steps) from(l *lamp, j int, point r3.Vec) sight {
	lat := s.grid.lattice
	start := lat.At(0, j)
	v := r3.Sub(start, point)
	made := sight{
		ahead:  [2]float64{r3.Dot(v, l.axis), s.ahead},
		across: [2]float64{r3.Dot(v, l.right), s.across},
		over:   [2]float64{r3.Dot(v, l.up), s.over},
		fall:   [3]float64{-r3.Dot(v, lat.Normal), s.fall},
		square: [3]float64{r3.Norm2(v), 2 * r3.Dot(v, lat.U), s.own},
		flat:   s.flat, cos: s.cos, grid: s.grid, row: j,
	}
	if lat.Toward != nil { // the way to the place, too, is linear in the index
		way := r3.Sub(*lat.Toward, start)
		made.fall = [3]float64{-r3.Dot(v, way), r3.Dot(v, lat.U) - r3.Dot(way, lat.U), s.own}
	}
	return made
}

// falls are the terms of the fall of word w, and what that is multiplied by, point by point.
func (g *sight) falls(w int) (f0, f1, f2 float64, lean *[64]float64) {
	return g.fall[0], g.fall[1], g.fall[2], g.grid.leaning(g.row, w)
}

// add adds to a row what the points of its word w of a mask get: those with a bit set. The row has
// whole words. scale weighs the point of the lamp.
func (k *kernel) add(row []float64, word uint64, w int, g *sight, scale float64) {
	part := (*[64]float64)(row[w*64:])
	switch {
	case k.kind == cosine && g.flat == 0:
		k.addCosine(part, word, w, g, scale*k.gain)
	case k.kind == axial:
		k.addAxial(part, word, w, g, scale)
	case k.kind == gridded:
		k.addGridded(part, word, w, g, scale*k.gain)
	case k.kind == tabled:
		k.addTabled(part, word, w, g, scale*k.gain)
	case k.kind == anyShape:
		k.addAny(part, word, w, g, scale)
	default:
		k.addPlain(part, word, w, g, scale*k.gain)
	}
}

// addCosine needs no square root: E = I0 cos t cos i / d².
func (k *kernel) addCosine(row *[64]float64, word uint64, w int, g *sight, gain float64) {
	x0 := float64(w * 64)
	a0, a1, f0, f1 := g.ahead[0], g.ahead[1], g.fall[0], g.fall[1]
	s0, s1, s2 := g.square[0], g.square[1], g.square[2]
	for ; word != 0; word &= word - 1 {
		i := bits.TrailingZeros64(word) & 63
		x := x0 + float64(i)
		ahead, fall := a0+x*a1, f0+x*f1
		if ahead <= 0 || fall <= 0 {
			continue
		}
		square := s0 + x*(s1+x*s2)
		row[i] += gain * ahead * fall / (square * square)
	}
}

// addPlain is the cosine before a dome, the uniform source and the line.
func (k *kernel) addPlain(row *[64]float64, word uint64, w int, g *sight, gain float64) {
	x0 := float64(w * 64)
	a0, a1 := g.ahead[0], g.ahead[1]
	f0, f1, f2, lean := g.falls(w)
	s0, s1, s2 := g.square[0], g.square[1], g.square[2]
	flat, cos, onesided := g.flat, g.cos, k.onesided
	for ; word != 0; word &= word - 1 {
		i := bits.TrailingZeros64(word) & 63
		x := x0 + float64(i)
		ahead := a0 + x*a1
		square := s0 + x*(s1+x*s2)
		inverse := 1 / math.Sqrt(square)
		weight := flat + cos*(f0+x*(f1+x*f2))*lean[i]*inverse
		if !(weight > 0) || onesided && ahead <= 0 { // in the point itself the weight is no number
			continue
		}
		value := gain
		switch k.kind {
		case cosine:
			value *= max(0, ahead*inverse)
		case line:
			across := (g.across[0] + x*g.across[1]) * inverse
			value *= math.Sqrt(max(0, 1-across*across))
		}
		row[i] += value * weight / square
	}
}

func (k *kernel) addAxial(row *[64]float64, word uint64, w int, g *sight, scale float64) {
	table := k.table
	n := float64(len(table) - 2)
	x0 := float64(w * 64)
	a0, a1 := g.ahead[0], g.ahead[1]
	f0, f1, f2, lean := g.falls(w)
	s0, s1, s2 := g.square[0], g.square[1], g.square[2]
	flat, cos, onesided := g.flat, g.cos, k.onesided
	for ; word != 0; word &= word - 1 {
		i := bits.TrailingZeros64(word) & 63
		x := x0 + float64(i)
		ahead := a0 + x*a1
		square := s0 + x*(s1+x*s2)
		inverse := 1 / math.Sqrt(square)
		weight := flat + cos*(f0+x*(f1+x*f2))*lean[i]*inverse
		if !(weight > 0) || onesided && ahead <= 0 { // in the point itself the weight is no number
			continue
		}
		s := n * math.Sqrt(max(0, min(1, 0.5-0.5*ahead*inverse)))
		at := int(s)
		low, high := table[at], table[at+1]
		row[i] += scale * (low + (s-float64(at))*(high-low)) * weight / square
	}
}

// addGridded is the cosine times 1 - tan a/tan A across and along.
func (k *kernel) addGridded(row *[64]float64, word uint64, w int, g *sight, gain float64) {
	x0 := float64(w * 64)
	a0, a1 := g.ahead[0], g.ahead[1]
	f0, f1, f2, lean := g.falls(w)
	s0, s1, s2 := g.square[0], g.square[1], g.square[2]
	c0, c1 := k.grid[0]*g.across[0], k.grid[0]*g.across[1]
	o0, o1 := k.grid[1]*g.over[0], k.grid[1]*g.over[1]
	flat, cos := g.flat, g.cos
	for ; word != 0; word &= word - 1 {
		i := bits.TrailingZeros64(word) & 63
		x := x0 + float64(i)
		ahead := a0 + x*a1
		open, wide := ahead-math.Abs(c0+x*c1), ahead-math.Abs(o0+x*o1)
		square := s0 + x*(s1+x*s2)
		weight := f0 + x*f1
		if flat != 0 {
			weight = cos*(weight+x*x*f2)*lean[i] + flat*math.Sqrt(square)
		}
		if open <= 0 || wide <= 0 || ahead <= 0 || weight <= 0 {
			continue
		}
		row[i] += gain * open * wide * weight / (ahead * square * square)
	}
}

func (k *kernel) addTabled(row *[64]float64, word uint64, w int, g *sight, gain float64) {
	x0 := float64(w * 64)
	f0, f1, f2, lean := g.falls(w)
	for ; word != 0; word &= word - 1 {
		i := bits.TrailingZeros64(word) & 63
		x := x0 + float64(i)
		ahead := g.ahead[0] + x*g.ahead[1]
		square := g.square[0] + x*(g.square[1]+x*g.square[2])
		inverse := 1 / math.Sqrt(square)
		weight := g.flat + g.cos*(f0+x*(f1+x*f2))*lean[i]*inverse
		if !(weight > 0) || k.onesided && ahead <= 0 { // in the point itself the weight is no number
			continue
		}
		row[i] += gain * k.measured.at(g.across[0]+x*g.across[1], g.over[0]+x*g.over[1], ahead, inverse) * weight / square
	}
}

func (k *kernel) addAny(row *[64]float64, word uint64, w int, g *sight, scale float64) {
	l := k.lamp
	x0 := float64(w * 64)
	f0, f1, f2, lean := g.falls(w)
	for ; word != 0; word &= word - 1 {
		i := bits.TrailingZeros64(word) & 63
		x := x0 + float64(i)
		ahead := g.ahead[0] + x*g.ahead[1]
		square := g.square[0] + x*(g.square[1]+x*g.square[2])
		inverse := 1 / math.Sqrt(square)
		weight := g.flat + g.cos*(f0+x*(f1+x*f2))*lean[i]*inverse
		if !(weight > 0) || k.onesided && ahead <= 0 { // in the point itself the weight is no number
			continue
		}
		d := r3.Vec{
			X: (g.across[0] + x*g.across[1]) * inverse,
			Y: (g.over[0] + x*g.over[1]) * inverse,
			Z: -ahead * inverse,
		}
		row[i] += scale * l.flux * l.shape.Candela(d) * weight / square
	}
}

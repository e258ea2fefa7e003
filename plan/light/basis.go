package light

import (
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
)

// Basis holds lux (or cd/m2) at levels of {1, 1, 1}. Points[t][i] is term t at receptor i by channel of
// AP1, before the receptor's Gains. A field sums the terms of one light: Fields[l][k] is what light l (in
// the order of the emitters) gives straight to lattice k, one value a point, or where a tinted pane
// colours some of it three planes of values one after the other, for the channels of AP1.
// Reflected[l][k] is what comes back of it, likewise, or nil where nothing does.
//
// Where the targets fix the levels, fields are those of FromPoints, FromFaces and FromSurfaces in place of lights, and to
// Field all of these at {1, 1, 1} are the lights at those levels.
//
// A Basis is not changed by use and may be used by many goroutines.
type Basis struct {
	Lights    []string
	Terms     []Term // by light in the order of the emitters: direct, without panes first, then mirrored, then reflected
	Points    [][]colour.RGB
	Fields    [][][]float32
	Reflected [][][]float32
	Gains     []colour.RGB // by receptor: {1, 1, 1}; of a Radiance, from the illuminance to the luminance

	summed     []string // what Fields and Reflected are of: the lights, or the sums at fixed levels
	mix        *mix     // those sums; nil without fixed levels
	targets    Targets
	resolved   []Receptor // the targets' points, with Radiance resolved to a surface
	columns    []column
	errorModel errorModel
	transport  *radiosity.Transport // how surfaces and targets see each other; nil without reflected light
	finer      finer                // likewise, for some of the receptors
}

// column is all that one light gives.
type column struct {
	terms           []Term
	points          [][]colour.RGB
	fields          [][]float32
	reflectedFields [][]float32 // reflected, by lattice
	rayError        []float64   // by receptor, lx: see Basis.Error; nil without reflected light
}

// finer is how some receptors see the set, more closely than lattices do.
type finer struct {
	transport *radiosity.Transport // nil where none does
	of        []int                // the receptors, ascending
}

// Forget lets go of how surfaces see each other, which is most of the memory of a basis and which only Rebase
// asks for: it works that out anew then. No other goroutine may use the basis meanwhile.
func (b *Basis) Forget() { b.transport, b.finer = nil, finer{} }

// column is the index of a light's column, -1 where there is none.
func (b *Basis) column(light string) int {
	if b == nil {
		return -1
	}
	return slices.Index(b.Lights, light)
}

// find is the index of the term of a share, -1 where there is none.
func (c *column) find(s *share) int {
	of := s.term("")
	return slices.IndexFunc(c.terms, func(t Term) bool { return t.Path == of.Path && t.From == of.From && slices.Equal(t.Via, of.Via) })
}

// term is the column that a share belongs to.
func (s *share) term(light string) Term {
	t := Term{Light: light, Path: Direct, Via: s.via}
	if s.mirror != nil {
		t.Path, t.From = Mirrored, *s.mirror
	}
	return t
}

// assemble lays the columns side by side.
func (b *Basis) assemble() {
	b.Fields = make([][][]float32, len(b.columns))
	b.Reflected = make([][][]float32, len(b.columns))
	for i := range b.columns {
		c := &b.columns[i]
		b.Terms = append(b.Terms, c.terms...)
		b.Points = append(b.Points, c.points...)
		b.Fields[i], b.Reflected[i] = c.fields, c.reflectedFields
	}
	b.summed = b.Lights
	if b.mix != nil {
		b.useMix()
	}
}

// useMix makes the sums the fields of a basis.
func (b *Basis) useMix() {
	b.summed = make([]string, len(b.mix))
	for name, i := range mixOf {
		b.summed[i] = name
	}
	b.Fields = [][][]float32{b.mix[0], b.mix[1], make([][]float32, len(b.targets.Lattices))}
	b.Reflected = [][][]float32{nil, nil, b.mix[2]}
}

// Point returns the light at receptor i and the share of each term, in the order of Terms: lux, or
// cd/m² for a Radiance, by its Y.
func (b *Basis) Point(i int, d Levels) (total colour.RGB, shares []colour.RGB) {
	shares = make([]colour.RGB, len(b.Terms))
	for t := range b.Terms {
		term := &b.Terms[t]
		shares[t] = d[term.Light].Times(b.Points[t][i]).Times(b.Gains[i])
		total = total.Add(shares[t])
	}
	return total, shares
}

// Field sums the light on lattice k, lx, into dst, which must hold its NU by NV points, row by
// row.
func (b *Basis) Field(k int, d Levels, dst []float32) { b.field(k, d, dst, true) }

// ReflectedField is Field for reflected light alone.
func (b *Basis) ReflectedField(k int, d Levels, dst []float32) { b.field(k, d, dst, false) }

func (b *Basis) field(k int, d Levels, dst []float32, direct bool) {
	l := &b.targets.Lattices[k]
	dst = dst[:l.NU*l.NV]
	clear(dst)
	s := weighted{size: len(dst)}
	for i, name := range b.summed {
		if level := d[name]; level != (colour.RGB{}) {
			if direct {
				s.add(b.Fields[i][k], level)
			}
			if len(b.Reflected[i]) > 0 {
				s.add(b.Reflected[i][k], level)
			}
		}
	}
	sum(dst, s.planes, s.gains)
}

// weighted are planes of values, each with what it is multiplied by.
type weighted struct {
	size   int // of a plane
	gains  []float32
	planes [][]float32
}

// add takes up the values of a light at its level: one plane, or one a channel.
func (s *weighted) add(values []float32, level colour.RGB) {
	switch len(values) {
	case 0:
	case s.size:
		s.gains, s.planes = append(s.gains, float32(level.Y())), append(s.planes, values)
	default:
		for c := range level {
			var channel colour.RGB
			channel[c] = level[c]
			s.gains = append(s.gains, float32(channel.Y()))
			s.planes = append(s.planes, values[c*s.size:(c+1)*s.size])
		}
	}
}

// sum adds planes to dst, four at a time.
func sum(dst []float32, planes [][]float32, gains []float32) {
	for ; len(planes) >= 4; planes, gains = planes[4:], gains[4:] {
		a, b, c, e := planes[0][:len(dst)], planes[1][:len(dst)], planes[2][:len(dst)], planes[3][:len(dst)]
		ga, gb, gc, ge := gains[0], gains[1], gains[2], gains[3]
		for n := range dst {
			dst[n] += ga*a[n] + gb*b[n] + (gc*c[n] + ge*e[n])
		}
	}
	for k, plane := range planes {
		plane, gain := plane[:len(dst)], gains[k]
		for n := range dst {
			dst[n] += gain * plane[n]
		}
	}
}

// PointValues is how many values of four bytes the light at the receptors takes.
func (b *Basis) PointValues() int {
	const each = 6 // three channels in double precision
	return each * len(b.Points) * len(b.resolved)
}

// Targets returns what the basis was computed for.
func (b *Basis) Targets() Targets { return b.targets }

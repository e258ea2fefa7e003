package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// sum is what the receptor gets from the whole of l, a face, as closely as asked.
func (c *creases) sum(l *lamp, r *Receptor, to *precision) float64 {
	local := Receptor{At: l.local(r3.Sub(r.At, l.at)), Axis: l.local(r.Axis), Response: r.Response}
	p := local.At
	if p.Z <= 0 {
		return 0
	}
	distance := math.Sqrt(l.distance2(r.At))
	w, h := l.opening.Width/2, l.opening.Height/2
	if l.opening.Form == photometry.Disc {
		return c.strips(l, &local, distance, to)
	}
	left, right := max(-w, p.X-c.right*p.Z), min(w, p.X+c.left*p.Z)
	low, high := max(-h, p.Y-c.up*p.Z), min(h, p.Y+c.down*p.Z)
	if left >= right || low >= high {
		return 0
	}
	var xs, ys [3]float64
	across, along := breaks(xs[:0], left, right, []float64{p.X}), breaks(ys[:0], low, high, []float64{p.Y})
	var room [2]stretch
	strip := stretches(room[:0], along, distance, to)
	total := 0.0
	for i := 1; i < len(across); i++ {
		x := newStretch(across[i-1], across[i], distance, to)
		for n := range x.rule.x {
			total += x.length * x.rule.w[n] * c.strip(l, &local, x.at(n), strip)
		}
	}
	return l.flux / (4 * w * h) * total
}

// at is what a receptor in the lamp's frame gets from a point of the face, per lumen.
func (c *creases) at(l *lamp, r *Receptor, x, y float64) float64 {
	vx, vy, vz := r.At.X-x, r.At.Y-y, r.At.Z
	square := vx*vx + vy*vy + vz*vz
	inverse := 1 / math.Sqrt(square)
	d := r3.Vec{X: vx * inverse, Y: vy * inverse, Z: vz * inverse}
	w := response(r, d)
	if w == 0 {
		return 0
	}
	if l.profile != nil {
		w *= l.profile.Relative(x, y)
	}
	if c.measured != nil {
		return c.measured.FastCandela(vx, vy, vz, inverse) * w / square
	}
	d.Z = -d.Z
	return l.shape.Candela(d) * w / square
}

// strips sums a disc in strips along y. With x = R sin t the ends of the disc are smooth; the sum
// along a strip has creases in x, too, where a crease in y leaves the disc.
func (c *creases) strips(l *lamp, r *Receptor, distance float64, to *precision) float64 {
	radius := l.opening.Width / 2
	p := r.At
	creases := [3]float64{p.Y - c.up*p.Z, p.Y, p.Y + c.down*p.Z}
	at := [9]float64{p.X - c.right*p.Z, p.X, p.X + c.left*p.Z}
	for i, y := range creases {
		x := math.Sqrt(max(0, radius*radius-y*y))
		at[3+2*i], at[4+2*i] = -x, x
	}
	for i, x := range at {
		at[i] = math.Asin(max(-1, min(1, x/radius)))
	}
	slices.Sort(at[:])
	var ts [11]float64
	var ys [5]float64
	var room [4]stretch
	ends := breaks(ts[:0], -math.Pi/2, math.Pi/2, at[:])
	total := 0.0
	for i := 1; i < len(ends); i++ {
		t := newStretch(ends[i-1], ends[i], distance/radius, to)
		for n := range t.rule.x {
			sin, cos := math.Sincos(t.at(n))
			strip := stretches(room[:0], breaks(ys[:0], -radius*cos, radius*cos, creases[:]), distance, to)
			total += t.length * t.rule.w[n] * radius * cos * c.strip(l, r, radius*sin, strip)
		}
	}
	return l.flux / (math.Pi * radius * radius) * total
}

// strip sums along y at x.
func (c *creases) strip(l *lamp, r *Receptor, x float64, along []stretch) (sum float64) {
	if c.gain > 0 && r.Response != Dome && l.profile == nil {
		return c.behindGrid(r, x, along)
	}
	for k := range along {
		s := &along[k]
		for n, w := range s.rule.w {
			sum += s.length * w * c.at(l, r, x, s.at(n))
		}
	}
	return sum
}

// behindGrid is strip for a grid before a cosine: most of the light of soft boxes on lattices is summed here.
func (c *creases) behindGrid(r *Receptor, x float64, along []stretch) (sum float64) {
	vx, vz := r.At.X-x, r.At.Z
	across, level := vx*vx+vz*vz, vx*r.Axis.X+vz*r.Axis.Z
	for k := range along {
		s := &along[k]
		part := 0.0
		for n, y := range s.rule.x {
			vy := r.At.Y - s.from - s.length*y
			wide, fall := vz-c.grid[1]*math.Abs(vy), -(level + vy*r.Axis.Y)
			if wide > 0 && fall > 0 {
				square := across + vy*vy
				part += s.rule.w[n] * wide * fall / (square * square)
			}
		}
		sum += s.length * part
	}
	return sum * c.gain * max(0, vz-c.grid[0]*math.Abs(vx)) / vz
}

// breaks appends the ends of a stretch and, between them, those creases that lie within it.
// The creases must be in order.
func breaks(dst []float64, from, to float64, creases []float64) []float64 {
	dst = append(dst, from)
	for _, x := range creases {
		if x > dst[len(dst)-1] && x < to {
			dst = append(dst, x)
		}
	}
	return append(dst, to)
}

// stretch is a part of a line between creases, with the rule that sums over it.
type stretch struct {
	from, length float64
	rule         *gauss
}

func newStretch(from, to, distance float64, precise *precision) stretch {
	return stretch{from, to - from, &rulesUpTo()[precise.order(distance, to-from)]}
}

// at is the place of node n.
func (s *stretch) at(n int) float64 { return s.from + s.length*s.rule.x[n] }

// stretches appends those between the breaks.
func stretches(dst []stretch, breaks []float64, distance float64, to *precision) []stretch {
	for k := 1; k < len(breaks); k++ {
		dst = append(dst, newStretch(breaks[k-1], breaks[k], distance, to))
	}
	return dst
}

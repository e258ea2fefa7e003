package carto

import (
	"gonum.org/v1/gonum/spatial/r2"
)

// sample is the field at a share s of an edge of the lattice.
type sample struct{ s, v float64 }

// probed returns where along a hard edge level k is crossed, and whether that is at a jump. The
// field is straight between samples; the first crossing from the lower end counts, so that the
// levels that cross one edge keep their order.
func (t *tracer) probed(e edge, k int) (s float64, hard bool) {
	samples, ok := t.hard[e]
	if !ok {
		samples = t.bisect(e)
		t.hard[e] = samples
	}
	last, level := len(samples)-1, t.levels[k]
	falls := samples[0].v > samples[last].v
	for i := range last {
		low, high := samples[i], samples[i+1]
		if falls {
			low, high = samples[last-i], samples[last-i-1]
		}
		if low.v < level && level <= high.v {
			fl, fh := t.rule.of(low.v), t.rule.of(high.v)
			share := (t.level[k] - fl) / (fh - fl)
			return low.s + share*(high.s-low.s), t.jump(low, high)
		}
	}
	return 0.5, false
}

// jump says whether two samples stand on the two sides of a hard edge.
func (t *tracer) jump(a, b sample) bool {
	return abs(b.s-a.s)*t.g.Step <= t.opts.Edge && t.rule.stops(a.v, b.v) >= t.opts.Jump/2
}

// bisect samples an edge ever closer to its largest jump, until the jump is found to within
// Options.Edge or turns out to be a slope.
func (t *tracer) bisect(e edge) []sample {
	a, b := t.ends(e)
	from, to := t.g.place(a), t.g.place(b)
	samples := []sample{{0, float64(t.g.Value[a])}, {1, float64(t.g.Value[b])}}
	for {
		i := t.steepest(samples)
		low, high := samples[i], samples[i+1]
		if (high.s-low.s)*t.g.Step <= t.opts.Edge || t.rule.stops(low.v, high.v) < t.opts.Jump/2 {
			return samples
		}
		s := (low.s + high.s) / 2
		m := sample{s, t.opts.Probe(r2.Add(from, r2.Scale(s, r2.Sub(to, from))))}
		samples = append(samples[:i+1], append([]sample{m}, samples[i+1:]...)...)
	}
}

// steepest returns the index of the sample before the largest jump.
func (t *tracer) steepest(samples []sample) int {
	best, most := 0, -1.0
	for i := range len(samples) - 1 {
		if d := t.rule.stops(samples[i].v, samples[i+1].v); d > most {
			best, most = i, d
		}
	}
	return best
}

// sharpen puts points between those of a hard edge where the chord from one to the next leaves
// it: at the corners of a shadow and along round ones.
func (t *tracer) sharpen(l Line, k int) Line {
	if l.Hard == nil {
		return l
	}
	out := Line{Level: l.Level, Index: l.Index, Closed: l.Closed}
	for i, p := range l.Points {
		out.add(p, l.Hard[i])
		next := (i + 1) % len(l.Points)
		if (next < i && !l.Closed) || !l.Hard[i] || !l.Hard[next] {
			continue
		}
		q := l.Points[next]
		if x, ok := t.shadowCorner(l, i, next, k); ok {
			t.between(&out, p, x, k, 1)
			out.add(x, true)
			t.between(&out, x, q, k, 1)
		} else {
			t.between(&out, p, q, k, 4)
		}
	}
	return out
}

// shadowCorner looks for the corner of a shadow between points i and next: where the straight pieces before
// and after them meet. It may lie outside their cell, for a sharp one slips through the lattice.
func (t *tracer) shadowCorner(l Line, i, next, k int) (x r2.Vec, ok bool) {
	p, q := l.Points[i], l.Points[next]
	in, on := r2.Sub(p, t.straightEnd(l, i, -1)), r2.Sub(q, t.straightEnd(l, next, 1)) // both toward the corner
	turns := r2.Cross(in, r2.Scale(-1, on))
	if lengths := r2.Norm(in) * r2.Norm(on); abs(turns) < 0.2*lengths || lengths == 0 {
		return x, false
	}
	// p + a in = q + b on
	d := r2.Sub(q, p)
	a, b := r2.Cross(d, on)/r2.Cross(in, on), r2.Cross(d, in)/r2.Cross(in, on)
	x = r2.Add(p, r2.Scale(a, in))
	reach := 5 * t.g.Step
	if a < 0 || b < 0 || r2.Norm(r2.Sub(x, p)) > reach || r2.Norm(r2.Sub(x, q)) > reach {
		return x, false
	}
	return x, t.onEdge(p, x, k) && t.onEdge(x, q, k)
}

// straightEnd returns the far end of the straight hard piece that leads from point i in steps of by: the
// furthest of a few points from which those between lie on the chord.
func (t *tracer) straightEnd(l Line, i, by int) r2.Vec {
	n, far := len(l.Points), l.Points[i]
	for reach := 1; reach <= 6; reach++ {
		at := i + by*reach
		if l.Closed {
			at = (at%n + n) % n
		}
		if at < 0 || at >= n || at == i || !l.Hard[at] {
			break
		}
		for between := 1; between < reach; between++ {
			m := l.Points[((i+by*between)%n+n)%n]
			if Distance(m, l.Points[i], l.Points[at]) > t.opts.Edge {
				return far
			}
		}
		far = l.Points[at]
	}
	return far
}

// onEdge says whether the straight piece from a to b is an edge of level k, higher side on the left.
func (t *tracer) onEdge(a, b r2.Vec, k int) bool {
	d := r2.Sub(b, a)
	length := r2.Norm(d)
	if length <= 8*t.opts.Edge {
		return true
	}
	up := r2.Scale(t.opts.Edge/length, r2.Vec{X: -d.Y, Y: d.X})
	for _, s := range [...]float64{4 * t.opts.Edge / length, 0.5, 1 - 4*t.opts.Edge/length} {
		m := r2.Add(a, r2.Scale(s, d))
		if t.opts.Probe(r2.Add(m, up)) < t.levels[k] || t.opts.Probe(r2.Sub(m, up)) >= t.levels[k] {
			return false
		}
	}
	return true
}

// between adds the points that the hard edge from p to q needs, excluding both.
func (t *tracer) between(out *Line, p, q r2.Vec, k, depth int) {
	x, bent := t.offChord(p, q, k)
	if !bent || depth == 0 {
		return
	}
	t.between(out, p, x, k, depth-1)
	out.add(x, true)
	t.between(out, x, q, k, depth-1)
}

// offChord looks for the edge of level k on the perpendicular through the middle of p and q. It is
// bent where the edge lies further off than Options.Edge, and within a step of the lattice.
func (t *tracer) offChord(p, q r2.Vec, k int) (x r2.Vec, bent bool) {
	d := r2.Sub(q, p)
	length := r2.Norm(d)
	if length <= 2*t.opts.Edge {
		return x, false
	}
	m, up := r2.Scale(0.5, r2.Add(p, q)), r2.Scale(1/length, r2.Vec{X: -d.Y, Y: d.X})
	high := func(off float64) bool { return t.opts.Probe(r2.Add(m, r2.Scale(off, up))) >= t.levels[k] }
	e := t.opts.Edge
	above, below := high(e), high(-e)
	if above && !below {
		return x, false
	}
	near, far := e, length // the chord is all in the dark: the edge is to the left
	if above {
		near, far = -e, -length
	}
	if high(far) == above {
		return x, false
	}
	for abs(far-near) > e {
		if c := (near + far) / 2; high(c) == above {
			near = c
		} else {
			far = c
		}
	}
	return r2.Add(m, r2.Scale((near+far)/2, up)), true
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

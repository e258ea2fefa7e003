package ink

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Run is one part of a path as straight lines. A closed one does not repeat its first point.
type Run struct {
	Points []r2.Vec // mm
	Closed bool
}

// Flatten returns the parts of a path with curves as chords that stay within tolerance of them. A
// path that does not start with a Move starts at its first point; after a Close the pen is where
// the ring started.
func (p Path) Flatten(tolerance float64) []Run {
	f := flattener{tolerance: tolerance, at: make([]r2.Vec, 0, 2*len(p)+1)}
	for _, s := range p {
		f.step(s)
	}
	f.end(false)
	return f.runs
}

// Points returns the points of all runs of a path, curves within tolerance.
func (p Path) Points(tolerance float64) []r2.Vec {
	var all []r2.Vec
	for _, run := range p.Flatten(tolerance) {
		all = append(all, run.Points...)
	}
	return all
}

type flattener struct {
	tolerance float64
	runs      []Run
	at        []r2.Vec // of the run at hand
}

func (f *flattener) step(s Segment) {
	switch s.Op {
	case Move:
		f.end(false)
		f.at = append(f.at, s.P[0])
	case Line:
		f.at = append(f.at, s.P[0])
	case Curve:
		if len(f.at) == 0 {
			f.at = append(f.at, s.P[0])
		}
		f.curve(f.at[len(f.at)-1], s.P)
	case Close:
		if len(f.at) > 0 {
			start := f.at[0]
			f.end(true)
			f.at = append(f.at, start)
		}
	}
}

// end closes the run at hand. What is left of one after a Close is no run.
func (f *flattener) end(closed bool) {
	after := len(f.at) == 1 && len(f.runs) > 0 && f.runs[len(f.runs)-1].Closed && f.at[0] == f.runs[len(f.runs)-1].Points[0]
	if len(f.at) > 0 && (closed || !after) {
		if n := len(f.at) - 1; closed && n > 0 && f.at[n] == f.at[0] {
			f.at = f.at[:n]
		}
		f.runs = append(f.runs, Run{Points: slices.Clip(f.at), Closed: closed})
	}
	f.at = f.at[len(f.at):] // the next run goes on in the same array
}

// curve appends the chords of a cubic. The number that suffices is Wang's bound: a cubic whose
// second differences are at most d leaves its n chords by at most 6 d / (8 n²).
func (f *flattener) curve(from r2.Vec, p [3]r2.Vec) {
	second := func(a, b, c r2.Vec) float64 { return r2.Norm(r2.Add(r2.Sub(a, b), r2.Sub(c, b))) }
	d := max(second(from, p[0], p[1]), second(p[0], p[1], p[2]))
	n := int(min(math.Ceil(math.Sqrt(0.75*d/f.tolerance)), 1000))
	for i := 1; i < n; i++ {
		f.at = append(f.at, onCubic(from, p, float64(i)/float64(n)))
	}
	f.at = append(f.at, p[2])
}

// onCubic is the point of a cubic at t from 0 to 1.
func onCubic(from r2.Vec, p [3]r2.Vec, t float64) r2.Vec {
	u := 1 - t
	a := r2.Add(r2.Scale(u*u*u, from), r2.Scale(3*u*u*t, p[0]))
	return r2.Add(a, r2.Add(r2.Scale(3*u*t*t, p[1]), r2.Scale(t*t*t, p[2])))
}

package png

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// pen turns lines into polygons. A line is made of pieces that all turn the same way round: a
// rectangle for each straight part, a wedge on the outer side of each corner, and caps. Pieces
// share their edges point by point, so that no seam shows between them.
type pen struct {
	half  float64   // of the width, pixels
	dash  []float64 // pixels
	round bool
	turn  float64 // the most an arc turns between two points, radians
	piece []r2.Vec
	seen  []r2.Vec // the picture with a margin of half the width: what lies beyond does not show
	add   func([]r2.Vec)
}

// newPen returns the pen of a stroke on a paper, both in pixels, that hands its pieces to add.
func newPen(s *ink.Stroke, scale float64, paper []r2.Vec, add func([]r2.Vec)) *pen {
	p := &pen{half: s.Width * scale / 2, round: s.Round, add: add}
	margin := r2.Vec{X: p.half, Y: p.half}
	p.seen = ink.Corners(r2.Sub(paper[0], margin), r2.Add(paper[2], margin))
	period := 0.0
	for _, d := range s.Dash {
		p.dash = append(p.dash, d*scale)
		period += d * scale
	}
	if period < minDash {
		p.dash = nil
	}
	p.turn = math.Pi / 4
	if p.half > roundTolerance {
		p.turn = min(p.turn, max(2*math.Acos(1-roundTolerance/p.half), math.Pi/256))
	}
	return p
}

// roundTolerance is how far the chords of round caps and joins may leave their circle, pixels.
const roundTolerance = 0.01

// minDash is the shortest dash with its gap that is drawn as such, pixels.
const minDash = 0.5

// emit adds a piece.
func (p *pen) emit(corners ...r2.Vec) {
	p.piece = append(p.piece[:0], corners...)
	p.add(p.piece)
}

// stroke adds the pieces of a run, in pixels.
func (p *pen) stroke(run ink.Run) {
	run.Points = distinct(run)
	if len(p.dash) > 0 {
		for _, d := range p.dashes(run) {
			p.line(ink.Run{Points: distinct(ink.Run{Points: d})})
		}
		return
	}
	p.line(run)
}

// distinct returns the points of a run without those that repeat the one before.
func distinct(run ink.Run) []r2.Vec {
	var out []r2.Vec
	for _, q := range run.Points {
		if len(out) == 0 || q != out[len(out)-1] {
			out = append(out, q)
		}
	}
	if n := len(out) - 1; run.Closed && n > 0 && out[n] == out[0] {
		out = out[:n]
	}
	return out
}

// line adds the pieces of an undashed run of distinct points.
func (p *pen) line(run ink.Run) {
	n := len(run.Points)
	if n < 2 {
		if n == 1 && p.round {
			p.dot(run.Points[0])
		}
		return
	}
	edges := n - 1
	if run.Closed {
		edges = n
	}
	normals := make([]r2.Vec, edges)
	for i := range edges {
		a, b := run.Points[i], run.Points[(i+1)%n]
		normals[i] = p.normal(a, b)
		p.emit(r2.Add(a, normals[i]), r2.Add(b, normals[i]), r2.Sub(b, normals[i]), r2.Sub(a, normals[i]))
	}
	for i := 1; i < edges; i++ {
		p.join(run.Points[i], normals[i-1], normals[i])
	}
	if run.Closed {
		p.join(run.Points[0], normals[edges-1], normals[0])
	} else if p.round {
		p.wedge(run.Points[0], r2.Scale(-1, normals[0]), normals[0], math.Pi)
		p.wedge(run.Points[n-1], normals[edges-1], r2.Scale(-1, normals[edges-1]), math.Pi)
	}
}

// normal is half the width, to the side of a line that comes first in its rectangle.
func (p *pen) normal(a, b r2.Vec) r2.Vec {
	d := r2.Sub(b, a)
	return r2.Scale(p.half/r2.Norm(d), r2.Vec{X: d.Y, Y: -d.X})
}

// join fills the outer side of the corner at which a line with normal m turns into one with n.
func (p *pen) join(at, m, n r2.Vec) {
	cross, dot := r2.Cross(m, n), r2.Dot(m, n)
	angle := math.Abs(math.Atan2(cross, dot)) // by which the line turns
	if angle < 1e-9 {
		return
	}
	if cross < 0 {
		m, n = r2.Scale(-1, n), r2.Scale(-1, m)
	}
	if p.round {
		p.wedge(at, m, n, angle)
		return
	}
	// The mitre reaches 1/cos(angle/2) times half the width from the corner.
	if c := math.Cos(angle / 2); c*ink.MitreLimit >= 1 {
		tip := r2.Scale(1/(2*c*c), r2.Add(m, n))
		p.emit(at, r2.Add(at, m), r2.Add(at, tip), r2.Add(at, n))
		return
	}
	p.emit(at, r2.Add(at, m), r2.Add(at, n))
}

// wedge fills the sector about a corner from one normal to another that lies angle further.
func (p *pen) wedge(at, from, to r2.Vec, angle float64) {
	steps := int(math.Ceil(angle / p.turn))
	p.piece = append(p.piece[:0], at, r2.Add(at, from))
	for i := 1; i < steps; i++ {
		p.piece = append(p.piece, r2.Add(at, r2.Rotate(from, angle*float64(i)/float64(steps), r2.Vec{})))
	}
	p.piece = append(p.piece, r2.Add(at, to))
	p.add(p.piece)
}

// dot is the line of no length that a round pen leaves.
func (p *pen) dot(at r2.Vec) {
	side := r2.Vec{X: p.half}
	p.wedge(at, side, r2.Scale(-1, side), math.Pi)
	p.wedge(at, r2.Scale(-1, side), side, math.Pi)
}

package png

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// dashes cuts a run into its dashes, as far as they show. A closed run starts anew at its first
// point, as SVG and PDF have it.
func (p *pen) dashes(run ink.Run) [][]r2.Vec {
	points := run.Points
	if len(points) == 0 {
		return nil
	}
	if run.Closed {
		points = append(points[:len(points):len(points)], points[0])
	}
	c := cutter{dash: p.dash, left: p.dash[0], on: true, at: []r2.Vec{points[0]}}
	for i := range len(points) - 1 {
		a, b := points[i], points[i+1]
		parts := ink.ClipPolyline([]r2.Vec{a, b}, p.seen)
		if len(parts) == 0 {
			c.skip(b, r2.Norm(r2.Sub(b, a)))
			continue
		}
		in, out := parts[0][0], parts[0][1]
		c.skip(in, r2.Norm(r2.Sub(in, a)))
		c.along(in, out)
		c.skip(b, r2.Norm(r2.Sub(b, out)))
	}
	c.end()
	return c.out
}

// cutter walks a line and keeps the parts under the dashes.
type cutter struct {
	dash []float64
	k    int     // of the dash or gap at hand
	left float64 // of it
	on   bool    // whether it is a dash
	at   []r2.Vec
	out  [][]r2.Vec
}

// along walks a straight part.
func (c *cutter) along(a, b r2.Vec) {
	run := r2.Norm(r2.Sub(b, a))
	if run == 0 {
		return
	}
	for done := 0.0; ; {
		if run-done < c.left {
			c.left -= run - done
			if c.on {
				c.at = append(c.at, b)
			}
			return
		}
		done += c.left
		q := r2.Add(a, r2.Scale(done/run, r2.Sub(b, a)))
		if c.on {
			c.at = append(c.at, q)
		}
		c.next(q)
	}
}

// skip walks a straight part to b that does not show: whole turns of the pattern at a time.
func (c *cutter) skip(b r2.Vec, run float64) {
	if run == 0 {
		return
	}
	turn := 0.0
	for _, d := range c.dash {
		turn += d
	}
	c.end()
	run = math.Mod(run, 2*turn) // an odd pattern is itself only after two turns
	for run >= c.left {
		run -= c.left
		c.next(b)
		c.at = nil
	}
	c.left -= run
	if c.on {
		c.at = []r2.Vec{b}
	}
}

// next ends the dash or gap at hand at q and starts the next.
func (c *cutter) next(q r2.Vec) {
	c.end()
	c.k = (c.k + 1) % len(c.dash)
	c.left, c.on = c.dash[c.k], !c.on
	if c.on {
		c.at = []r2.Vec{q}
	}
}

func (c *cutter) end() {
	if c.on && len(c.at) > 0 {
		c.out = append(c.out, c.at)
	}
	c.at = nil
}

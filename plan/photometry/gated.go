package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Gate is what is in the gate of a projection spot, and how sharply its lens throws it.
type Gate struct {
	Cuts    []Cut
	Breakup *Breakup // nil: none
	Blur    float64  // the circle of confusion, share of the width of the image
}

// Cut is a straight edge in the image of a gate.
type Cut struct {
	Angle float64 // of the side that it comes from, degrees clockwise from the top as seen from behind
	Depth float64 // how much of the width of the image it covers, share
}

// Gated is the light of a projection spot with cuts and a pattern in its gate.
type Gated struct {
	base   Distribution
	gate   Gate
	radius float64 // of the image at a distance of 1
	lines  []line
	blur   float64  // radius of the circle of confusion, in radii of the image
	image  *picture // nil: no pattern
	gain   float64
	peak   float64
}

// line is the edge of a cut: light is left where a place of the image lies no farther along a direction.
type line struct{ x, y, at float64 }

// NewGated puts a gate before light with a beam, degrees: its image is the cone to half the intensity. It gives the share of
// the flux that passes.
func NewGated(base Distribution, beam float64, gate Gate) (*Gated, float64) {
	g := &Gated{base: base, gate: gate, radius: ImageRadius(beam), blur: max(gate.Blur, leastBlur), gain: 1}
	for _, c := range gate.Cuts {
		sin, cos := math.Sincos(radians(c.Angle))
		g.lines = append(g.lines, line{sin, cos, 1 - 2*c.Depth})
	}
	if gate.Breakup != nil {
		g.image = gate.Breakup.picture(g.blur)
	}
	share := g.passes()
	g.gain = 1 / max(share, leastPassed)
	g.peak *= g.gain
	return g, share
}

// leastPassed bounds how much stronger light may be per lumen behind a gate than before it.
const leastPassed = 1e-9

// open is the share of the light that is left at a place of the image, in its radii. Where two edges cross, each takes its
// share.
func (g *Gated) open(x, y float64) float64 {
	share := g.uncut(x, y)
	if share > 0 && g.image != nil {
		share *= g.image.at(x, y)
	}
	return share
}

// uncut is what the cuts leave.
func (g *Gated) uncut(x, y float64) float64 {
	share := 1.0
	for i := range g.lines {
		l := &g.lines[i]
		share *= beyondEdge((l.at - x*l.x - y*l.y) / g.blur)
	}
	return share
}

// Candela gives the intensity, cd/lm of what has passed.
func (g *Gated) Candela(dir r3.Vec) float64 {
	if dir.Z >= 0 {
		return 0
	}
	scale := -1 / (dir.Z * g.radius)
	share := g.open(dir.X*scale, dir.Y*scale)
	if share == 0 {
		return 0
	}
	return g.gain * share * g.base.Candela(dir)
}

// Peak gives the greatest intensity, cd/lm.
func (g *Gated) Peak() float64 { return g.peak }

// Detail gives the size of the finest detail, by the distance.
func (g *Gated) Detail() float64 { return 2 * g.blur * g.radius }

// Parts give what is behind the gate, what is in it, and the radius of its image at a distance of 1.
func (g *Gated) Parts() (base Distribution, gate Gate, radius float64) {
	return g.base, g.gate, g.radius
}

// The grid on which the share that passes is summed: rings out to some radii of the image, rings beyond, and places round.
const (
	gateRings = 320
	gateOuter = 1.6
	farRings  = 64
	gateRound = 720
)

// passes sums the share of the flux that passes, and finds the peak.
func (g *Gated) passes() float64 {
	passed, all := 0.0, 0.0
	ring := func(t, width float64) {
		sin := math.Sin(t)
		x := math.Tan(t) / g.radius
		for k := range gateRound {
			turn := 2 * math.Pi * (float64(k) + 0.5) / gateRound
			behind := g.base.Candela(direction(turn, t)) * sin * width
			s, c := math.Sincos(turn)
			share := g.open(x*c, x*s)
			passed, all = passed+share*behind, all+behind
			g.peak = max(g.peak, share*behind/(sin*width))
		}
	}
	outer := math.Atan(gateOuter * g.radius)
	for i := range gateRings {
		ring(outer*(float64(i)+0.5)/gateRings, outer/gateRings)
	}
	for i := range farRings {
		ring(outer+(math.Pi/2-outer)*(float64(i)+0.5)/farRings, (math.Pi/2-outer)/farRings)
	}
	return passed / all
}

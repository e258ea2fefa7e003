package truth

import (
	"math"
	"sort"
)

// beams picks directions about as likely as a lamp sends light along them: by cells of angle from the axis, which
// are finer near it, and round it.
type beams struct {
	edge  float64                           // the greatest angle from the axis
	rings [beamRings + 1]float64            // the likelihood of all rings before each
	round [beamRings][beamRound + 1]float64 // of each ring: that of all cells before each, of the ring's
}

// The cells, how many directions of each are asked each way, and the share of directions that are picked evenly
// from all cells, so that none is out of reach.
const (
	beamRings  = 96
	beamRound  = 48
	beamAsked  = 3
	beamEvenly = 0.02
)

func newBeams(s spread, onesided bool) *beams {
	b := &beams{edge: math.Pi}
	if onesided {
		b.edge = math.Pi / 2
	}
	var cells [beamRings][beamRound]float64
	whole := 0.0
	for i := range cells {
		for k := range cells[i] {
			cells[i][k] = b.sent(s, i, k)
			whole += cells[i][k]
		}
	}
	for i := range cells {
		ring := &b.round[i]
		for k, c := range cells[i] {
			share := 1.0 / (beamRings * beamRound)
			if whole > 0 {
				share = (1-beamEvenly)*c/whole + beamEvenly*share
			}
			ring[k+1] = ring[k] + share
		}
		b.rings[i+1] = b.rings[i] + ring[beamRound]
		for k := range ring {
			ring[k] /= ring[beamRound]
		}
	}
	return b
}

// sent is about what goes out through a cell.
func (b *beams) sent(s spread, i, k int) (sum float64) {
	for m := range beamAsked * beamAsked {
		x := (float64(i) + (float64(m%beamAsked)+0.5)/beamAsked) / beamRings
		turn := (float64(k) + (float64(m/beamAsked)+0.5)/beamAsked) / beamRound
		right, up, ahead := b.direction(x, turn)
		sum += s(right, up, ahead) * b.solid(x)
	}
	return sum
}

// direction is that at a place in the rings and round them, both from 0 to 1.
func (b *beams) direction(x, turn float64) (right, up, ahead float64) {
	sin, cos := math.Sincos(b.edge * x * x)
	s, c := math.Sincos(2 * math.Pi * turn)
	return sin * c, sin * s, cos
}

// solid is the solid angle by x and turn.
func (b *beams) solid(x float64) float64 {
	return math.Sin(b.edge*x*x) * 2 * b.edge * x * 2 * math.Pi
}

// pick gives a direction, and how likely it is by solid angle.
func (b *beams) pick(u, v float64) (right, up, ahead, likely float64) {
	i := find(b.rings[:], u)
	k := find(b.round[i][:], v)
	x := (float64(i) + within(b.rings[:], i, u)) / beamRings
	turn := (float64(k) + within(b.round[i][:], k, v)) / beamRound
	right, up, ahead = b.direction(x, turn)
	return right, up, ahead, b.density(i, k) / b.solid(x)
}

// density is how likely a cell is, by that of all evenly.
func (b *beams) density(i, k int) float64 {
	return (b.rings[i+1] - b.rings[i]) * (b.round[i][k+1] - b.round[i][k]) * beamRings * beamRound
}

// likely is how likely a direction is by solid angle.
func (b *beams) likely(right, up, ahead float64) float64 {
	t := math.Atan2(math.Sqrt(right*right+up*up), ahead)
	if t > b.edge {
		return 0
	}
	x := math.Sqrt(t / b.edge)
	turn := math.Atan2(up, right) / (2 * math.Pi)
	turn -= math.Floor(turn)
	i, k := min(int(x*beamRings), beamRings-1), min(int(turn*beamRound), beamRound-1)
	return b.density(i, k) / max(1e-30, b.solid(x))
}

// find is the step of ascending sums that u lies in.
func find(sums []float64, u float64) int {
	return min(max(sort.Search(len(sums), func(i int) bool { return sums[i] > u })-1, 0), len(sums)-2)
}

// within is how far into the step u lies, 0 to 1.
func within(sums []float64, i int, u float64) float64 {
	return max(0, min(1, (u-sums[i])/(sums[i+1]-sums[i])))
}

package truth

import (
	"math"
	"sort"

	"scrimshaw/plan/photometry"
)

// A projection spot throws its gate through a lens that makes a disc of every point: on a place of the image lies the mean of
// the gate over such a disc. Cuts, rim and pattern each take their share. Lengths are in radii of the gate.

// blurs is the mean of an edge over a disc of a radius whose middle lies so far inside it: by chords of the part that is lit.
func blurs(inside, radius float64) float64 {
	const chords = 400
	if inside >= radius {
		return 1
	}
	lit := inside/radius + 1
	sum := 0.0
	for i := range chords {
		x := lit*(float64(i)+0.5)/chords - 1
		sum += 2 * math.Sqrt(max(0, 1-x*x)) * lit / chords
	}
	return min(max(0, sum/math.Pi), 1)
}

// openOf is the share that cuts and a pattern leave of the light at a place of the image.
func openOf(gate *photometry.Gate) func(x, y float64) float64 {
	var leaves *foliage
	if gate.Breakup != nil {
		leaves = newFoliage(gate.Breakup, gate.Blur)
	}
	return func(x, y float64) float64 {
		share := 1.0
		for _, c := range gate.Cuts {
			s, cos := math.Sincos(c.Angle / 180 * math.Pi)
			share *= blurs(1-2*c.Depth-(x*s+y*cos), gate.Blur)
		}
		if share > 0 && leaves != nil {
			share *= leaves.at(x, y)
		}
		return share
	}
}

// foliage is a pattern of holes: open where a relief lies over a level, blurred and kept on a grid.
type foliage struct{ cells []float64 }

// The grid, how far it reaches from the middle, and how many places of each cell are asked each way.
const (
	foliageSide  = 600
	foliageReach = 1.5
	foliageAsked = 3
)

func newFoliage(b *photometry.Breakup, blur float64) *foliage {
	sharp := sharpFoliage(b)
	f := &foliage{make([]float64, len(sharp))}
	disc := discOf(blur * foliageSide / (2 * foliageReach))
	for n := range f.cells {
		for _, d := range disc {
			i, j := min(max(n%foliageSide+d.i, 0), foliageSide-1), min(max(n/foliageSide+d.j, 0), foliageSide-1)
			f.cells[n] += d.share * sharp[j*foliageSide+i]
		}
	}
	return f
}

// sharpFoliage is how much of each cell of the grid is open.
func sharpFoliage(b *photometry.Breakup) []float64 {
	level := foliageLevel(b)
	sharp := make([]float64, foliageSide*foliageSide)
	part := func(i, k int) float64 { return foliagePlace(float64(i) + (float64(k)+0.5)/foliageAsked - 0.5) }
	for n := range sharp {
		for k := range foliageAsked * foliageAsked {
			if hills(b, part(n%foliageSide, k%foliageAsked), part(n/foliageSide, k/foliageAsked)) >= level {
				sharp[n] += 1.0 / (foliageAsked * foliageAsked)
			}
		}
	}
	return sharp
}

// discCell is a cell of a disc by its place from the middle, and its share of the disc.
type discCell struct {
	i, j  int
	share float64
}

// discOf are the cells of a disc of a radius, by how many of a hundred places of each lie in it.
func discOf(radius float64) (cells []discCell) {
	most := int(radius) + 1
	all := 0.0
	for j := -most; j <= most; j++ {
		for i := -most; i <= most; i++ {
			c := discCell{i: i, j: j}
			for k := range 100 {
				x, y := float64(i)+(float64(k%10)+0.5)/10-0.5, float64(j)+(float64(k/10)+0.5)/10-0.5
				if x*x+y*y <= radius*radius {
					c.share++
				}
			}
			if c.share > 0 {
				cells, all = append(cells, c), all+c.share
			}
		}
	}
	for n := range cells {
		cells[n].share /= all
	}
	return cells
}

// foliagePlace is a place along a side, by cells from the middle of the first.
func foliagePlace(i float64) float64 { return foliageReach * (2*(i+0.5)/foliageSide - 1) }

// foliageLevel is the level over which the share of the gate lies that is open.
func foliageLevel(b *photometry.Breakup) float64 {
	const side = 700
	var all []float64
	for n := range side * side {
		x, y := 2*(float64(n%side)+0.5)/side-1, 2*(float64(n/side)+0.5)/side-1
		if x*x+y*y <= 1 {
			all = append(all, hills(b, x, y))
		}
	}
	sort.Float64s(all)
	k := int((1 - b.Open) * float64(len(all)))
	if k == 0 {
		return -1
	}
	return all[k]
}

// hills are two layers of smooth noise, the second half as high and half as large.
func hills(b *photometry.Breakup, x, y float64) float64 {
	x, y = x/(2*b.Grain), y/(2*b.Grain)
	return hill(x, y, b.Seed) + hill(2*x+0.37, 2*y+0.71, b.Seed+1)/2
}

// hill goes smoothly from corner to corner of a square grid, at each of which it has a height that is drawn by lot.
func hill(x, y float64, seed uint64) (h float64) {
	i, j := math.Floor(x), math.Floor(y)
	for corner := range 4 {
		a, b := float64(corner&1), float64(corner>>1)
		h += lot(int64(i+a), int64(j+b), seed) * nearness(math.Abs(x-i-a)) * nearness(math.Abs(y-j-b))
	}
	return h
}

// nearness falls from 1 to 0 without slope or bend at its ends.
func nearness(t float64) float64 { return 1 - t*t*t*(10-15*t+6*t*t) }

// lot is a number from 0 to 1 for a corner: splitmix64's last steps of its place and the seed.
func lot(i, j int64, seed uint64) float64 {
	z := uint64(i)*0x9E3779B97F4A7C15 ^ uint64(j)*0xC2B2AE3D27D4EB4F ^ seed*0x165667B19E3779F9
	z ^= z >> 30
	z *= 0xBF58476D1CE4E5B9
	z ^= z >> 27
	z *= 0x94D049BB133111EB
	z ^= z >> 31
	return float64(z>>11) / (1 << 53)
}

// at is the mean of the pattern at a place, between the cells of the grid.
func (f *foliage) at(x, y float64) float64 {
	u := min(max((x/foliageReach+1)/2*foliageSide-0.5, 0), foliageSide-1.001)
	v := min(max((y/foliageReach+1)/2*foliageSide-0.5, 0), foliageSide-1.001)
	i, j := int(u), int(v)
	u, v = u-float64(i), v-float64(j)
	n := j*foliageSide + i
	return (1-v)*((1-u)*f.cells[n]+u*f.cells[n+1]) + v*((1-u)*f.cells[n+foliageSide]+u*f.cells[n+foliageSide+1])
}

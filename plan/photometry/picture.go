package photometry

import "math"

// The picture of a pattern: cells to the radius of the gate, and radii from its middle to its edge. Beyond the gate the
// pattern goes on as far as the light of a lens with soft edges does.
const (
	pictureCells = 256
	pictureReach = 1.5
	pictureSide  = 2 * pictureCells * pictureReach
)

// picture is a pattern as a lens throws it, cell by cell the share of the light that is left: rows from below.
type picture struct{ cells []float32 }

// cellPlace is the middle of a cell along a side, in radii of the gate.
func cellPlace(n int) float64 { return (float64(n)+0.5)/pictureCells - pictureReach }

// picture is the pattern through a lens with a circle of confusion of a radius, in radii of the gate: the mean of the pattern
// over that circle, row by row.
func (b *Breakup) picture(blur float64) *picture {
	heights := make([]float64, pictureSide*pictureSide)
	for n := range heights {
		heights[n] = b.relief(cellPlace(n%pictureSide), cellPlace(n/pictureSide))
	}
	sums := openSums(heights, b.level(heights))
	p := &picture{make([]float32, len(heights))}
	radius := max(1, blur*pictureCells)
	step, chords := confusionChords(radius)
	for n := range p.cells {
		i, j := n%pictureSide, n/pictureSide
		open, all := 0.0, 0.0
		for k, half := range chords {
			row := min(max(j+step*(k-len(chords)/2), 0), pictureSide-1)
			open += sums.between(row, float64(i)+0.5-half, float64(i)+0.5+half)
			all += 2 * half
		}
		p.cells[n] = float32(open / all)
	}
	return p
}

// confusionChords are half the lengths of the chords of a circle, so many rows of cells apart, the middle one through its
// middle.
func confusionChords(radius float64) (step int, halves []float64) {
	step = max(1, int(radius/chordsAside))
	most := int(radius) / step
	for k := -most; k <= most; k++ {
		off := float64(k * step)
		halves = append(halves, math.Sqrt(radius*radius-off*off))
	}
	return step, halves
}

// chordsAside is about how many chords to either side of the middle stand for a large circle.
const chordsAside = 10

// rowSums are how many cells of each row are open before each.
type rowSums []float64

// openSums count the cells that lie over a level.
func openSums(heights []float64, level float64) rowSums {
	sums := make(rowSums, pictureSide*(pictureSide+1))
	for n, h := range heights {
		at := n/pictureSide*(pictureSide+1) + n%pictureSide
		sums[at+1] = sums[at]
		if h >= level {
			sums[at+1]++
		}
	}
	return sums
}

// between is how much of a row is open between two places along it, in cells; past its ends the last cell goes on.
func (s rowSums) between(row int, from, to float64) float64 {
	line := s[row*(pictureSide+1) : (row+1)*(pictureSide+1)]
	before := func(x float64) float64 {
		i := min(max(int(math.Floor(x)), 0), pictureSide-1)
		return line[i] + (x-float64(i))*(line[i+1]-line[i])
	}
	return before(to) - before(from)
}

// at is the share of the light that is left at a place, in radii of the gate.
func (p *picture) at(x, y float64) float64 {
	u, v := cellOf(x), cellOf(y)
	i, j := int(u), int(v)
	u, v = u-float64(i), v-float64(j)
	low, high := p.cells[j*pictureSide+i:][:2], p.cells[(j+1)*pictureSide+i:][:2]
	a, b := float64(low[0]), float64(high[0])
	a, b = a+u*(float64(low[1])-a), b+u*(float64(high[1])-b)
	return a + v*(b-a)
}

// cellOf is the place along a side in cells from the middle of the first, never past the last.
func cellOf(x float64) float64 {
	return min(max((x+pictureReach)*pictureCells-0.5, 0), pictureSide-1.001)
}

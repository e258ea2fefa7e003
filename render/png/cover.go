package png

import (
	"math"
	"math/bits"

	"gonum.org/v1/gonum/spatial/r2"
)

// cover finds how much of each pixel a set of polygons covers, by the non-zero rule, exactly: each
// edge leaves in the pixels it passes the area between itself and the pixel's right side, and how
// much it adds to everything further right (the cell accumulation of the scan converters of the
// nineties; L. Bares, LibArt, describes it). Only pixels with edges are kept, so that a thin line
// round a whole sheet costs its length and not the sheet's area.
type cover struct {
	width, height int
	rows          [][]cell
	low, high     int // the rows that have cells: low to high-1
	line          line
}

// cell is what edges do in one pixel and to the right of it. The x of what lies left of the
// picture is -1.
type cell struct {
	x           int
	area, right float64
}

func newCover(width, height int) *cover {
	return &cover{width: width, height: height, rows: make([][]cell, height), low: height, line: newLine(width)}
}

// polygon adds the edges of a closed polygon, in pixels.
func (c *cover) polygon(points []r2.Vec) {
	for i, p := range points {
		c.edge(p, points[(i+1)%len(points)])
	}
}

// edge adds an edge, row by row.
func (c *cover) edge(p, q r2.Vec) {
	sign := 1.0
	if p.Y > q.Y {
		p, q, sign = q, p, -1
	}
	top, bottom := max(p.Y, 0), min(q.Y, float64(c.height))
	if top >= bottom {
		return
	}
	slope := (q.X - p.X) / (q.Y - p.Y)
	first, last := int(top), int(math.Ceil(bottom))
	c.low, c.high = min(c.low, first), max(c.high, last)
	for y := first; y < last; y++ {
		from, to := max(top, float64(y)), min(bottom, float64(y+1))
		c.across(y, p.X+(from-p.Y)*slope, p.X+(to-p.Y)*slope, sign*(to-from))
	}
}

// across adds the part of an edge in one row: it runs from x to another over a height, negative
// where the edge runs upward.
func (c *cover) across(y int, from, to, height float64) {
	if from > to {
		from, to = to, from
	}
	i, last := math.Floor(from), math.Floor(to)
	if i == last || to == from {
		c.add(y, i, height, (from+to)/2-i)
		return
	}
	steep := height / (to - from)
	for ; i <= last; i++ {
		left, right := max(from, i), min(to, i+1)
		c.add(y, i, steep*(right-left), (left+right)/2-i)
	}
}

// add adds to a cell an edge of a height whose middle lies at a share of the pixel's width.
func (c *cover) add(y int, x, height, middle float64) {
	if x >= float64(c.width) || height == 0 {
		return
	}
	if x < 0 {
		x = -1
	}
	c.rows[y] = append(c.rows[y], cell{int(x), height * (1 - middle), height})
}

// spans calls paint for runs of pixels that are covered alike, with their share from over 0 to 1,
// and forgets what was added.
func (c *cover) spans(paint func(y, from, to int, share float64)) {
	for y := c.low; y < c.high; y++ {
		if len(c.rows[y]) > 0 {
			c.line.gather(c.rows[y])
			c.line.spans(func(from, to int, share float64) { paint(y, from, to, share) })
			c.rows[y] = c.rows[y][:0]
		}
	}
	c.low, c.high = c.height, 0
}

// line is one row with its cells in order: added up by their place, which is marked in a set. That
// is quicker than to sort them, and they add up in the order they came.
type line struct {
	area, right []float64 // of pixel x at x+1
	marked      []uint64  // which of them there are
}

func newLine(width int) line {
	return line{make([]float64, width+1), make([]float64, width+1), make([]uint64, width/64+1)}
}

// gather adds up cells.
func (l *line) gather(cells []cell) {
	for _, c := range cells {
		i := c.x + 1
		l.area[i] += c.area
		l.right[i] += c.right
		l.marked[i>>6] |= 1 << (i & 63)
	}
}

// spans calls paint for the runs of the row, and empties it.
func (l *line) spans(paint func(from, to int, share float64)) {
	sum, next := 0.0, 0 // what edges so far add from pixel next on
	for w, word := range l.marked {
		for ; word != 0; word &= word - 1 {
			i := w<<6 + bits.TrailingZeros64(word)
			x := i - 1
			if share := full(sum); share > 0 && x > next {
				paint(next, x, share)
			}
			if share := full(sum + l.area[i]); share > 0 && x >= 0 {
				paint(x, x+1, share)
			}
			sum += l.right[i]
			next = x + 1
			l.area[i], l.right[i] = 0, 0
		}
		l.marked[w] = 0
	}
	if share := full(sum); share > 0 {
		paint(next, len(l.area)-1, share)
	}
}

// full is the share that a sum of windings covers; next to nothing, as rounding leaves it, is
// nothing.
func full(sum float64) float64 {
	share := min(math.Abs(sum), 1)
	if share < 1e-6 {
		return 0
	}
	return share
}

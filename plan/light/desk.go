package light

import (
	"math/bits"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// desk is where one goroutine sums bands of rows.
type desk struct {
	f        *field
	channels int
	brush    *brush
	sums     [3][]float64 // by channel: the light of a band of rows
	clear    []float64    // of points that see part of the opening: what comes through no pane
	veiled   []float64    // and what comes through panes, before them
	row      []float64
	factor   [3][]float64
	partly   []uint64 // the points that see part of the opening
	seen     []uint64
	width    int        // of a row of sums: whole words
	through  [][]uint64 // by pane
}

func newDesk(f *field, channels int) *desk {
	g := f.g
	width := g.words * 64
	d := &desk{f: f, channels: channels, brush: newBrush(g), width: width, row: make([]float64, width)}
	for c := range channels {
		d.sums[c], d.factor[c] = make([]float64, band*width), make([]float64, width)
	}
	d.clear, d.veiled = make([]float64, band*width), make([]float64, band*width)
	d.partly, d.seen = make([]uint64, band*g.words), make([]uint64, g.words)

	d.through = make([][]uint64, len(f.panes))
	for i := range d.through {
		d.through[i] = make([]uint64, band*g.words)
	}
	return d
}

// line is row r of a band of sums.
func (d *desk) line(sums []float64, r int) []float64 { return sums[r*d.width : (r+1)*d.width] }

// work sums rows from up to to.
func (d *desk) work(from, to int, out []float32) {
	g := d.f.g
	for c := range d.channels {
		clear(d.sums[c])
	}
	for j := from; j < to; j++ {
		d.whole(j, from)
	}
	if slices.ContainsFunc(d.partly[:(to-from)*g.words], func(w uint64) bool { return w != 0 }) {
		d.parts(from, to)
		d.fit(from, to)
	}
	size := g.nu * g.nv
	for c := range d.channels {
		for j := from; j < to; j++ {
			row := out[c*size+j*g.nu:][:g.nu]
			for i, v := range d.line(d.sums[c], j-from)[:g.nu] {
				row[i] = float32(v)
			}
		}
	}
}

// whole sorts row j, and lights the points that see the whole opening.
func (d *desk) whole(j, from int) {
	f, g := d.f, d.f.g
	partly := d.partly[(j-from)*g.words : (j-from+1)*g.words]
	for w := range g.words {
		n := j*g.words + w
		mixed := f.some[n]
		if f.sampled {
			mixed = ^uint64(0)
		}
		for i := range f.panes {
			mixed |= f.panes[i].some[n] &^ f.panes[i].all[n]
			d.through[i][w] = f.panes[i].all[n]
		}
		partly[w] = mixed &^ f.all[n]
		d.seen[w] = ^(mixed | f.all[n])
	}
	clear(d.row)
	for w, word := range d.seen {
		if word != 0 {
			f.light(d.row, j, w, word)
		}
	}
	d.pour(j-from, 0, 0)
}

// parts sums what the points that see some of the opening get from each point of it.
func (d *desk) parts(from, to int) {
	f, g := d.f, d.f.g
	rows := d.partly[:(to-from)*g.words]
	clear(d.clear)
	clear(d.veiled)
	if len(f.panes) == 0 {
		d.bundles(from, to)
		return
	}
	for k := range f.points {
		p := &f.points[k]
		for i := range f.panes {
			clear(d.through[i])
			f.through(d.brush, d.through[i], k, i, from, to)
		}
		mask := f.mask(k)[from*g.words:]
		for first := 0; first < len(rows); first += g.words {
			if !d.look(rows[first:], mask[first:]) {
				continue
			}
			r := first / g.words
			s := f.steps.from(f.l, r3.Sub(g.lattice.At(0, from+r), p.at))
			if !d.behindPane(first) {
				d.sum(d.line(d.clear, r), &s, f.share)
				continue
			}
			clear(d.row)
			d.sum(d.row, &s, f.share)
			d.pour(r, k, first)
			veiled := d.line(d.veiled, r)
			for i, v := range d.row {
				veiled[i] += v
			}
		}
	}
}

// look notes which points of a row see a point of the opening, and says whether any does.
func (d *desk) look(partly, mask []uint64) bool {
	any := uint64(0)
	for w := range d.seen {
		d.seen[w] = partly[w] &^ mask[w]
		any |= d.seen[w]
	}
	return any != 0
}

// behindPane says whether some of the points seen, in the row whose masks start at word first,
// look through a pane.
func (d *desk) behindPane(first int) bool {
	for _, m := range d.through {
		for w, word := range d.seen {
			if m[first+w]&word != 0 {
				return true
			}
		}
	}
	return false
}

// sum adds to a row what the points seen get from one point of the opening, or of that share.
func (d *desk) sum(row []float64, s *sight, share float64) {
	for w, word := range d.seen {
		if word != 0 {
			d.f.l.kernel.add(row, word, w, s, share)
		}
	}
}

// pour adds the row to the sums through the panes: those of row r of the band, before point k of
// the opening, whose masks start at word first.
func (d *desk) pour(r, k, first int) {
	for w, word := range d.seen {
		veiled := uint64(0)
		for i := range d.through {
			veiled |= d.through[i][first+w] & word
		}
		if veiled != 0 {
			d.filter(w, word, k, first)
		}
		for c := range d.channels {
			sums := d.line(d.sums[c], r)
			for rest := word &^ veiled; rest != 0; rest &= rest - 1 {
				i := w<<6 + bits.TrailingZeros64(rest)
				sums[i] += d.row[i]
			}
			for rest := veiled; rest != 0; rest &= rest - 1 {
				i := w<<6 + bits.TrailingZeros64(rest)
				sums[i] += d.row[i] * d.factor[c][i]
			}
		}
	}
}

// filter sets the factors of the points of one word.
func (d *desk) filter(w int, word uint64, k, first int) {
	for c := range d.channels {
		for rest := word; rest != 0; rest &= rest - 1 {
			d.factor[c][w<<6+bits.TrailingZeros64(rest)] = 1
		}
	}
	for i := range d.through {
		passing := d.f.panes[i].caster.passing(d.f.points[k].at)
		for rest := word & d.through[i][first+w]; rest != 0; rest &= rest - 1 {
			for c := range d.channels {
				d.factor[c][w<<6+bits.TrailingZeros64(rest)] *= passing[c]
			}
		}
	}
}

// fit adds up the points that see part of the opening, as tracer.fit does.
func (d *desk) fit(from, to int) {
	f, g := d.f, d.f.g
	for j := from; j < to; j++ {
		clear(d.row)
		for w, word := range d.partly[(j-from)*g.words : (j-from+1)*g.words] {
			if word == 0 {
				continue
			}
			if !f.sampled {
				f.light(d.row, j, w, word)
			}
			for ; word != 0; word &= word - 1 {
				i := w<<6 + bits.TrailingZeros64(word)
				n := (j-from)*d.width + i
				scale := 1.0
				if sum := d.clear[n] + d.veiled[n]; !f.sampled && sum > d.row[i] {
					scale = d.row[i] / sum
				}
				for c := range d.channels {
					d.sums[c][n] = scale * (d.sums[c][n] + d.clear[n])
				}
			}
		}
	}
}

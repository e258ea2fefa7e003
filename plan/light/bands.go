package light

import (
	"context"
	"math"
	"math/bits"
	"slices"

	"scrimshaw/plan/light/internal/parallel"
)

// sum is the second round.
func (f *field) sum(ctx context.Context, workers int) ([]float32, error) {
	g := f.g
	channels := f.channels()
	out := make([]float32, channels*g.nu*g.nv)
	bands := g.bands()
	workers = parallel.Workers(workers, bands)
	desks := make([]*bandSummer, workers)
	err := parallel.For(ctx, workers, bands, func(worker, i int) {
		if desks[worker] == nil {
			desks[worker] = newBandSummer(f, channels)
		}
		from := i * band
		desks[worker].sumBand(from, min(from+band, g.nv), out)
	})
	return out, err
}

// sumBand sums rows from up to to.
func (d *bandSummer) sumBand(from, to int, out []float32) {
	g := d.f.g
	if to <= d.f.lit.first || from >= d.f.lit.last {
		return
	}
	for c := range d.channels {
		clear(d.sums[c])
	}
	for j := from; j < to; j++ {
		d.sumWhole(j, from)
	}
	if slices.ContainsFunc(d.partly[:(to-from)*g.words], func(w uint64) bool { return w != 0 }) {
		d.lightParts(from, to)
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

// lightParts lights the points of the band that see part of the opening.
func (d *bandSummer) lightParts(from, to int) {
	d.findHowMuchIsSeen(from, to)
	if d.f.w.little > 0 {
		d.traceLittleSeen(from, to)
	}
	d.sumParts(from, to)
	d.addParts(from, to)
}

// sumWhole sorts row j, and lights the points that see the whole opening.
func (d *bandSummer) sumWhole(j, from int) {
	f, g := d.f, d.f.g
	clear(d.row)
	for w := range g.words {
		n := j*g.words + w
		mixed := f.some[n]
		if f.sampled {
			mixed = ^uint64(0)
		}
		for i := range f.panes {
			mixed |= f.panes[i].some[n] &^ f.panes[i].all[n]
		}
		d.partly[(j-from)*g.words+w] = mixed &^ f.all[n]
		seen := ^(mixed | f.all[n])
		if seen == 0 {
			continue
		}
		f.light(d.row, &d.view, j, w, seen)
		d.filterRow(seen, j, w, from)
	}
}

// addParts adds up the points that see part of the opening.
func (d *bandSummer) addParts(from, to int) {
	f, g := d.f, d.f.g
	for j := from; j < to; j++ {
		clear(d.row)
		for w, word := range d.partly[(j-from)*g.words : (j-from+1)*g.words] {
			if word == 0 {
				continue
			}
			if half := d.halfSeen[(j-from)*g.words+w]; half != 0 {
				f.light(d.row, &d.view, j, w, half)
			}
			d.addWord(word, j, w, from)
		}
	}
}

// addWord adds up word w of row j. The light of the whole opening is known to those that see at least half of it.
func (d *bandSummer) addWord(word uint64, j, w, from int) {
	most, half := d.mostlySeen[(j-from)*d.f.g.words+w], d.halfSeen[(j-from)*d.f.g.words+w]
	for rest := most; rest != 0; rest &= rest - 1 {
		i := w<<6 + bits.TrailingZeros64(rest)
		d.row[i] = max(0, d.row[i]-d.hiddenLight[(j-from)*d.width+i])
	}
	if most != 0 {
		d.filterRow(most, j, w, from)
	}
	if most == word {
		return
	}
	d.splitByPanes(word&^most, j, w, d.mixedPanes)
	for _, p := range d.portions {
		for rest := p.points; rest != 0; rest &= rest - 1 {
			bit := bits.TrailingZeros64(rest)
			i := w<<6 + bit
			whole := math.Inf(1)
			if half>>bit&1 != 0 {
				whole = d.row[i]
			}
			d.total((j-from)*d.width+i, whole, p.factor.Scale(d.f.fromAside(d.glass, p.glass, i, j)), d.throughMixed(i, j, w))
		}
	}
}

// throughMixed is what passes, in the mean, those panes through which point i of row j, in word w, sees a part of what it sees.
func (d *bandSummer) throughMixed(i, j, w int) float64 {
	f := d.f
	sum, count := 0.0, 0.0
	for _, k := range d.mixedPanes {
		if f.ifGlass(k) != noGlass && f.panes[k].some[j*f.g.words+w]>>(i&63)&1 != 0 {
			sum, count = sum+f.glassRatio(k, i, j), count+1
		}
	}
	if count == 0 {
		return 1
	}
	return sum / count
}

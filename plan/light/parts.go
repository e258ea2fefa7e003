package light

import (
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry/row"
)

// sumParts sums what the points that see part of the opening get from it, or, where that is less, what is hidden
// from them: from the middle of each bundle, as many times as points of it count.
func (d *bandSummer) sumParts(from, to int) {
	f, g := d.f, d.f.g
	for i := range d.shares {
		clear(d.shares[i].sums)
	}
	clear(d.hiddenLight)
	d.findMixedPanes(from, to)
	for n := range f.bundles {
		b := &f.bundles[n]
		d.maskPanes(b, from, to)
		share := f.share * f.l.relative(b.middle)
		for j := from; j < to; j++ {
			ready := false
			for w, word := range d.partly[(j-from)*g.words : (j-from+1)*g.words] {
				if word == 0 || !d.seen(b, word, from/band, (j-from)*g.words+w) {
					continue
				}
				if !ready {
					d.view, ready = f.steps.from(f.l, j, b.middle), true
				}
				d.add(j-from, w, b.to-b.from, share)
			}
		}
	}
}

// findHowMuchIsSeen finds the points that see at least half of the opening, and those that see little of it, part of it past the
// edge of cloth, which hides more than it passes, or any of one that their plane runs through: its points before that are few and stand aslant.
func (d *bandSummer) findHowMuchIsSeen(from, to int) {
	f, g := d.f, d.f.g
	clear(d.halfSeen)
	clear(d.mostlySeen)
	copy(d.littleSeen, d.partly)
	if f.sampled {
		return
	}
	first := from * g.words
	hidden := d.hidden[:(to-from)*g.words]
	d.countHidden(hidden, from/band)
	few := int(f.w.little * float64(len(f.points)))
	for at := range hidden {
		word := d.partly[at]
		if !f.cut {
			d.littleSeen[at] = word &^ hidden[at].atMost(len(f.points)-few-1)
		}
		word &= hidden[at].atMost(len(f.points) / 2)
		d.halfSeen[at] = word
		for i := range f.panes {
			mixed := f.panes[i].some[first+at] &^ f.panes[i].all[first+at]
			word &^= mixed
			if f.panes[i].caster.dims(f.l.at) {
				d.littleSeen[at] |= d.partly[at] & mixed
			}
		}
		d.mostlySeen[at] = word
	}
}

// countHidden counts, by word of a band, how many points of the opening are hidden.
func (d *bandSummer) countHidden(hidden []wideCounter, n int) {
	f := d.f
	size := band * f.g.words
	clear(hidden)
	k := 0
	for ; k+7 <= len(f.points); k += 7 {
		seven := f.masks[(n*len(f.points)+k)*size:][:7*size]
		for at, word := range d.partly[:len(hidden)] {
			if word != 0 {
				hidden[at].addSeven(seven[at:], size)
			}
		}
	}
	for ; k < len(f.points); k++ {
		mask := f.bandMask(n, k)
		for at := range hidden {
			hidden[at].add(mask[at], 0)
		}
	}
}

// findMixedPanes finds the panes that need to be drawn for each point of the opening.
func (d *bandSummer) findMixedPanes(from, to int) {
	f := d.f
	d.mixedPanes = d.mixedPanes[:0]
	first := from * f.g.words
	for i := range f.panes {
		some, all := f.panes[i].some[first:], f.panes[i].all[first:]
		for at, word := range d.partly[:(to-from)*f.g.words] {
			if word&some[at]&^all[at] != 0 {
				d.mixedPanes = append(d.mixedPanes, i)
				break
			}
		}
	}
}

// maskPanes draws what is seen through the mixed panes from each point of a bundle.
func (d *bandSummer) maskPanes(b *bundle, from, to int) {
	f := d.f
	for k := b.from; k < b.to; k++ {
		before := d.panesBefore[k-b.from][:0]
		for _, i := range d.mixedPanes {
			n := (k-b.from)*len(f.panes) + i
			clear(d.through[n])
			f.through(d.rasteriser, d.through[n], k, i, from, to)
			if slices.ContainsFunc(d.through[n], func(w uint64) bool { return w != 0 }) {
				d.transmittances[n] = f.panes[i].caster.transmittance(f.points[k].at)
				before = append(before, n)
			}
		}
		d.panesBefore[k-b.from] = before
	}
}

// seen counts, for each point of a word, the points of a bundle that it sees, by share, or those hidden from
// it. The word is word at of band n. It says whether there are any.
func (d *bandSummer) seen(b *bundle, word uint64, n, at int) (any bool) {
	most := d.mostlySeen[at]
	for i := range d.counts {
		d.counts[i] = smallCounter{}
	}
	d.hiddenCount = smallCounter{}
	for k := b.from; k < b.to; k++ {
		mask := d.f.bandMask(n, k)[at]
		d.hiddenCount.add(mask & most)
		points := word &^ most &^ mask
		if points == 0 {
			continue
		}
		any = true
		if before := d.panesBefore[k-b.from]; len(before) > 0 {
			d.behind(before, points, at)
		} else {
			d.counts[0].add(points)
		}
	}
	return any || d.hiddenCount != smallCounter{}
}

// behind counts points of a word that see a point of a bundle, some of them through panes.
func (d *bandSummer) behind(before []int, points uint64, at int) {
	d.portions = append(d.portions[:0], portion{points, colour.RGB{1, 1, 1}, noGlass})
	for _, n := range before {
		if through := d.through[n][at] & points; through != 0 {
			d.filterPortions(through, d.transmittances[n], noGlass)
		}
	}
	for _, p := range d.portions {
		d.counts[d.share(p.factor)].add(p.points)
	}
}

// add adds the light of what has been counted for word w of row r: a point of the opening has a share of it.
func (d *bandSummer) add(r, w, size int, share float64) {
	for i := range d.counts {
		d.times(&d.counts[i], d.line(d.shares[i].sums, r), w, size, share)
	}
	d.times(&d.hiddenCount, d.line(d.hiddenLight, r), w, size, share)
}

// times adds the light of a point of the opening to word w of a row, as often as counted.
func (d *bandSummer) times(c *smallCounter, line []float64, w, size int, share float64) {
	left := c.any()
	part := (*[row.Word]float64)(line[w*row.Word:])
	for n := size; left != 0; n-- { // most often all or none
		if points := c.exactly(n); points != 0 {
			d.f.l.kernel.Add(part, points, w, &d.view, float64(n)*share)
			left &^= points
		}
	}
}

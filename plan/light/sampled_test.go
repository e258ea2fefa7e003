package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
)

// sampled gives what fields promise: the light of a lamp by rays from those points of its opening that
// lattices take, where some of it is hidden. It shares the points and the rule with fields and not the way
// in which these find who sees what.
func sampled(w *World, l *lamp, r *Receptor) (sum colour.RGB) {
	if l.onesided && r3.Dot(r3.Sub(r.At, l.at), l.axis) <= 0 {
		return sum
	}
	if l.opening.Form == photometry.Point {
		t := tracer{visibleSums: newVisibleSums(w.bvh)}
		for _, s := range t.light(l, r) {
			sum = sum.Add(s.filter.Scale(s.value))
		}
		return sum
	}
	p := panesSeen{w: w, l: l, r: r}
	for n := 0; n < len(l.order); {
		n = p.bundle(n)
	}
	if p.seen > 0 && (p.behind == 0 || l.lambertian) {
		p.fit(l.unoccluded(r, exactly()))
	}
	for _, s := range p.shares {
		sum = sum.Add(s.filter.Scale(s.value))
	}
	return sum
}

// panesSeen counts what a receptor sees of an opening, by the panes before it.
type panesSeen struct {
	w                    *World
	l                    *lamp
	r                    *Receptor
	shares               []share
	seen, hidden, behind int
	lost                 float64
}

// bundle adds the points that share one evaluation, from point n on, and gives the next.
func (p *panesSeen) bundle(n int) int {
	var middle r3.Vec
	there, hidden := 0, 0
	counts := map[colour.RGB]int{}
	for first := n; n < len(p.l.order) && (n == first || !p.l.begins[n]); n++ {
		at := p.l.points[p.l.order[n]]
		way := r3.Sub(p.r.At, at)
		if distance := r3.Norm(way); distance == 0 || response(p.r, r3.Scale(1/distance, way)) == 0 {
			p.behind++
			continue
		}
		middle, there = r3.Add(middle, at), there+1
		panes, blocked := p.w.bvh.Segment(at, p.r.At, p.r.Skip, nil)
		if blocked {
			hidden++
			continue
		}
		filter := colour.RGB{1, 1, 1}
		for _, pane := range panes {
			filter = filter.Times(pane.Factor())
		}
		counts[filter]++
	}
	if there > 0 {
		each := p.l.fromPoint(r3.Scale(1/float64(there), middle), p.r) / float64(len(p.l.points))
		p.lost += each * float64(hidden)
		for filter, count := range counts {
			p.add(filter, each*float64(count))
		}
	}
	p.seen, p.hidden = p.seen+there-hidden, p.hidden+hidden
	return n
}

func (p *panesSeen) add(filter colour.RGB, value float64) {
	for i := range p.shares {
		if p.shares[i].filter == filter {
			p.shares[i].value += value
			return
		}
	}
	p.shares = append(p.shares, share{filter: filter, value: value})
}

// fit takes what is hidden from the whole where that is the lesser part, and never gives more than the whole.
func (p *panesSeen) fit(full float64) {
	if p.hidden <= p.seen && len(p.shares) == 1 {
		p.shares[0].value = max(0, full-p.lost)
		return
	}
	all := 0.0
	for _, s := range p.shares {
		all += s.value
	}
	if !(all > 0) {
		return // from what is seen of it no light comes
	}
	for i := range p.shares {
		p.shares[i].value *= math.Min(1, full/all)
	}
}

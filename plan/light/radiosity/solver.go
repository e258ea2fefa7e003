package radiosity

import (
	"context"

	"scrimshaw/plan/colour"
)

// solver solves some columns. It keeps its memory from one block to the next.
type solver struct {
	t         *Transport
	channel   [width]int
	direct    [width]directLux // from the lamps, lx: every so many figures one element's, from its channel's on
	incident  []columns        // by slot: from other surfaces, lx
	before    []columns        // back as it was before the pass
	ofDirect  []columns32      // by slot: the sum over the links of what the lamps' light makes shine, lm/m²
	reflected []columns32      // by slot, then by what is seen through clear sheets: what of back shines, lm/m²
	exitance  []columns32      // by element, lm/m²
	reflect   []columns        // by face
	other     []int32          // by slot of a cloth: the one on its other face; 0 for others; nil without cloth
	flux      columns          // what comes straight from the lamps, lm
	returned  columns          // and what of it is returned to surfaces that are followed
	gain      columns          // what links are multiplied by, so that no flux is made or lost
	closed    [width]bool      // whether next to nothing leaves the set: what is lost tells how much links are off by
	done      [width]bool      // columns that change no more, whatever is solved beside them
}

func newSolver(t *Transport) *solver {
	n := len(t.patches)
	w := &solver{
		t: t, incident: make([]columns, n), before: make([]columns, n),
		ofDirect: make([]columns32, n), reflected: make([]columns32, n+len(t.filtered)), reflect: make([]columns, len(t.mesh.faces)),
	}
	for c := range width {
		w.channel[c] = c % t.Channels()
	}
	if len(t.cloth) > 0 {
		w.other = make([]int32, n)
	}
	for _, c := range t.cloth {
		w.other[c.slot] = int32(c.behind)
	}
	for f := range w.reflect {
		for c := range width {
			w.reflect[f][c] = t.mesh.faces[f].reflect[w.channel[c]]
		}
	}
	return w
}

// load takes up what comes straight from some lamps, and what patches get of what is hot by it.
func (w *solver) load(lamps []directLux, hot []hotParts, fromHot [][]float32) {
	t, channels := w.t, w.t.Channels()
	w.reset(lamps, channels)
	var sent, swallowed columns
	w.setExitance()
	w.removeHot(hot)
	for s := 1; s < len(t.patches); s++ {
		p := &t.patches[s]
		w.ofDirect[s] = sum(w.exitance, t.links[p.from:p.to], 0)
		w.addFlux(s, &sent, &swallowed)
	}
	for i := range fromHot {
		w.addHot(fromHot[i], i)
	}
	for c := range width {
		w.closed[c] = sent[c]-(w.returned[c]+swallowed[c]) <= closedLeak*sent[c]
	}
}

// reset starts anew with some lamps.
func (w *solver) reset(lamps []directLux, channels int) {
	w.direct, w.flux, w.returned, w.done = [width]directLux{}, columns{}, columns{}, [width]bool{}
	for c := range width {
		w.gain[c] = 1
		if lamp := c / channels; lamp < len(lamps) {
			w.direct[c] = lamps[lamp][w.channel[c]:]
		}
	}
	clear(w.incident)
	clear(w.reflected)
	w.exitance = make([]columns32, 4*(len(w.t.patches)+len(w.t.filtered)))
}

// addFlux adds the straight light on a patch to the flux, what the patch returns of it to what is sent, and what of that ends on
// black surfaces to what is swallowed.
func (w *solver) addFlux(s int, sent, swallowed *columns) {
	p := &w.t.patches[s]
	for k, a := range p.area {
		for c := range width {
			e := a * w.from(4*s+k, c)
			w.flux[c] += e
			returned := e * w.returns(p, c)
			w.returned[c] += e * w.keptShare(p, c)
			sent[c] += returned
			swallowed[c] += returned * p.swallowed[w.channel[c]]
		}
	}
}

// removeHot takes what hot elements return of the straight light out of the exitance, but not out of what mirrors show of it:
// looks at what is hot go straight.
func (w *solver) removeHot(hot []hotParts) {
	channels := w.t.Channels()
	for i := range hot {
		for e := range hot[i].of {
			clear(w.exitance[e][i*channels : (i+1)*channels])
		}
	}
	w.filterAll(true)
}

// addHot adds what patches get of what a lamp makes hot to the sums over their links.
func (w *solver) addHot(fromHot []float32, lamp int) {
	channels := w.t.Channels()
	for i, e := range fromHot {
		p := &w.t.patches[i/channels]
		w.ofDirect[i/channels][lamp*channels+i%channels] += e * float32(p.to-p.from)
	}
}

// from is what element e gets straight from the lamp of a column, lx.
func (w *solver) from(e, column int) float64 {
	if w.direct[column] == nil {
		return 0
	}
	return float64(w.direct[column][e*w.t.Channels()])
}

// keptShare is the share of what falls on a patch that it returns to surfaces that return some of it.
func (w *solver) keptShare(p *patch, c int) float64 {
	return w.returns(p, c) * (p.kept[w.channel[c]] - p.swallowed[w.channel[c]])
}

// returns is the share of what falls on a patch that it returns.
func (w *solver) returns(p *patch, c int) float64 {
	return w.reflect[p.face][c] * w.t.mesh.faces[p.face].met
}

// run passes the light of some lamps on, up and down the patches in turn, until little is left to move.
func (w *solver) run(ctx context.Context, lamps []directLux, hot []hotParts, fromHot [][]float32) block {
	w.load(lamps, hot, fromHot)
	pass := 0
	for pass < mostPasses && ctx.Err() == nil {
		copy(w.before, w.incident)
		w.filterReflected()
		if n := len(w.incident); pass%2 == 0 {
			for s := 1; s < n; s++ {
				w.gather(s)
			}
		} else {
			for s := n - 1; s > 0; s-- {
				w.gather(s)
			}
		}
		pass++
		if w.normalise(pass > fillPasses) {
			break
		}
	}
	w.setExitance()
	b := block{exitance: w.exitance, passes: pass}
	w.account(&b)
	return b
}

// gather sums what a patch gets from other surfaces, and passes it on. What the lamps make shine was summed
// once, element by element; what surfaces pass on is the same all over a patch.
func (w *solver) gather(s int) {
	p := &w.t.patches[s]
	links := w.t.links[p.from:p.to]
	if len(links) == 0 {
		return
	}
	passed := sum(w.reflected, links, 2)
	share := 1 / float64(len(links))
	back := &w.incident[s]
	for c := range passed {
		if !w.done[c] {
			back[c] = float64(w.ofDirect[s][c]+passed[c]) * share * w.gain[c]
		}
	}
	w.reflectSlot(s)
	if w.other != nil && w.other[s] != 0 {
		w.reflectSlot(int(w.other[s]))
	}
}

// sum adds up figures of elements, of which 2^shift in a row share one. Most of the work of a solution is done
// here: in single variables it takes half the time.
func sum(of []columns32, elements []uint32, shift uint8) columns32 {
	var a, b, c, d, e, f float32
	for _, n := range elements {
		x := &of[n>>(shift&31)]
		a, b, c, d, e, f = a+x[0], b+x[1], c+x[2], d+x[3], e+x[4], f+x[5]
	}
	return columns32{a, b, c, d, e, f}
}

// reflectSlot sets what a slot passes on.
func (w *solver) reflectSlot(s int) {
	back := w.arriving(s)
	out, reflect := &w.reflected[s], &w.reflect[w.t.patches[s].face]
	for c := range out {
		out[c] = float32(reflect[c] * back[c])
	}
}

// arriving is what comes to a slot from other surfaces, and to the other face of a cloth, lx before it.
func (w *solver) arriving(s int) columns {
	if w.other == nil || w.other[s] == 0 {
		return w.incident[s]
	}
	all, through := w.incident[s], &w.t.mesh.faces[w.t.patches[s].face].through
	for c, e := range w.incident[w.other[s]] {
		all[c] += through[w.channel[c]] * e
	}
	return all
}

// setExitance sets the exitance of all elements.
func (w *solver) setExitance() {
	for s := 1; s < len(w.incident); s++ {
		back, reflect := w.arriving(s), &w.reflect[w.t.patches[s].face]
		for e := 4 * s; e < 4*s+4; e++ {
			out := &w.exitance[e]
			for c := range out {
				out[c] = float32(reflect[c] * (w.from(e, c) + back[c]))
			}
		}
	}
	w.filterAll(false)
}

// filterAll sets the exitance of what is seen through clear sheets, and unless straight of what is seen by mirrors.
func (w *solver) filterAll(straight bool) {
	end := 4 * len(w.incident)
	for i := range w.t.filtered {
		v := &w.t.filtered[i]
		if straight && v.mirror {
			continue
		}
		w.filter(&w.exitance[end+4*i], &w.exitance[v.element], &v.factor)
	}
}

// filterReflected brings what is passed on through clear sheets up to date.
func (w *solver) filterReflected() {
	for i := range w.t.filtered {
		v := &w.t.filtered[i]
		w.filter(&w.reflected[len(w.incident)+i], &w.reflected[v.element/4], &v.factor)
	}
}

// filter is what is left behind clear sheets.
func (w *solver) filter(to, from *columns32, factor *colour.RGB) {
	for c := range to {
		to[c] = from[c] * float32(factor[w.channel[c]])
	}
}

// account adds up what has become of the lamps' light.
func (w *solver) account(b *block) {
	b.sent = w.flux
	for s := 1; s < len(w.incident); s++ {
		p := &w.t.patches[s]
		for k, a := range p.area {
			for c := range width {
				in := a * (w.from(4*s+k, c) + w.arriving(s)[c]) * w.t.mesh.faces[p.face].met
				out := in * w.returns(p, c)
				b.taken[c] += in - out + out*p.swallowed[w.channel[c]]
				b.lost[c] += out * (1 - p.kept[w.channel[c]])
			}
		}
	}
}

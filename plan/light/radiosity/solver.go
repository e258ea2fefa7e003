package radiosity

import (
	"context"

	"scrimshaw/plan/colour"
)

// solver solves some columns. It keeps its memory from one block to the next.
type solver struct {
	t        *Transport
	eye      *eye
	channel  [width]int
	straight [width]first // from the lamps, lx: every so many figures one element's, from its channel's on
	back     []columns    // by slot: from other surfaces, lx
	before   []columns    // back as it was before the pass
	once     []shining    // by slot: the sum over the links of what the lamps' light makes shine, lm/m²
	passed   []shining    // by slot, then by what is seen through clear sheets: what of back shines, lm/m²
	exitance []shining    // by element, lm/m²
	reflect  []columns    // by face
	flux     columns      // what comes straight from the lamps, lm
	returned columns      // and what of it is returned to surfaces
	gain     columns      // what links are multiplied by, so that no flux is made or lost
	closed   [width]bool  // whether next to nothing leaves the set: what is lost tells how much links are off by
	done     [width]bool  // columns that change no more, whatever is solved beside them
}

func newSolver(t *Transport) *solver {
	n := len(t.patches)
	w := &solver{
		t: t, eye: newEye(t.mesh), back: make([]columns, n), before: make([]columns, n),
		once: make([]shining, n), passed: make([]shining, n+len(t.veils)), reflect: make([]columns, len(t.mesh.faces)),
	}
	for c := range width {
		w.channel[c] = c % t.Channels()
	}
	for f := range w.reflect {
		for c := range width {
			w.reflect[f][c] = t.mesh.faces[f].reflect[w.channel[c]]
		}
	}
	return w
}

// load takes up what comes straight from some lamps, and notes by lamp and slot what half of the looks at hot elements
// put the exitance off by.
func (w *solver) load(lamps []first, hot []spotted, halves [][]float32) {
	t, channels := w.t, w.t.Channels()
	w.reset(lamps, channels)
	var sent columns
	w.shine()
	w.dim(hot)
	for s := 1; s < len(t.patches); s++ {
		p := &t.patches[s]
		w.once[s] = sum(w.exitance, t.links[p.from:p.to], 0)
		for i := range hot {
			halves[i][s] = w.glance(&hot[i], i, s)
		}
		w.weigh(s, &sent)
	}
	for c := range width {
		w.closed[c] = sent[c]-w.returned[c] <= ajar*sent[c]
	}
}

// reset starts anew with some lamps.
func (w *solver) reset(lamps []first, channels int) {
	w.straight, w.flux, w.returned, w.done = [width]first{}, columns{}, columns{}, [width]bool{}
	for c := range width {
		w.gain[c] = 1
		if lamp := c / channels; lamp < len(lamps) {
			w.straight[c] = lamps[lamp][w.channel[c]:]
		}
	}
	clear(w.back)
	clear(w.passed)
	w.exitance = make([]shining, 4*(len(w.t.patches)+len(w.t.veils)))
}

// weigh adds the straight light on a patch to the flux, and what the patch returns of it to what is sent.
func (w *solver) weigh(s int, sent *columns) {
	p := &w.t.patches[s]
	for k, a := range p.area {
		for c := range width {
			e := a * w.from(4*s+k, c)
			w.flux[c] += e
			w.returned[c] += e * w.keeps(p, c)
			sent[c] += e * w.reflect[p.face][c]
		}
	}
}

// dim takes what hot elements return of the straight light out of the exitance.
func (w *solver) dim(hot []spotted) {
	channels := w.t.Channels()
	for i := range hot {
		for e := range hot[i].of {
			clear(w.exitance[e][i*channels : (i+1)*channels])
		}
	}
	w.veilAll()
}

// glance adds what a patch gets of hot elements to the sum over its links, and gives what half of the looks put its
// exitance off by.
func (w *solver) glance(hot *spotted, lamp, slot int) (off float32) {
	if len(hot.parts) == 0 {
		return 0
	}
	t, channels := w.t, w.t.Channels()
	p, from := &t.patches[slot], t.ofPatch(slot)
	t.glances(w.eye, hot, &from, func(g glance) {
		for c := range channels {
			got := g.gain[c] * g.part.own[c]
			w.once[slot][lamp*channels+c] += float32(got * float64(p.to-p.from))
			if c == channels/2 {
				off += float32(got * (1 - 2*float64(g.look&1)) * w.reflect[p.face][lamp*channels+c])
			}
		}
	})
	return off
}

// from is what element e gets straight from the lamp of a column, lx.
func (w *solver) from(e, column int) float64 {
	if w.straight[column] == nil {
		return 0
	}
	return float64(w.straight[column][e*w.t.Channels()])
}

// keeps is the share of what falls on a patch that it returns to surfaces.
func (w *solver) keeps(p *patch, c int) float64 {
	return w.reflect[p.face][c] * p.kept[w.channel[c]]
}

// run passes the light of some lamps on, up and down the patches in turn, until little is left to move.
func (w *solver) run(ctx context.Context, lamps []first, hot []spotted, halves [][]float32) block {
	w.load(lamps, hot, halves)
	pass := 0
	for pass < mostPasses && ctx.Err() == nil {
		copy(w.before, w.back)
		w.unveil()
		if n := len(w.back); pass%2 == 0 {
			for s := 1; s < n; s++ {
				w.gather(s)
			}
		} else {
			for s := n - 1; s > 0; s-- {
				w.gather(s)
			}
		}
		pass++
		if w.level(pass > fills) {
			break
		}
	}
	w.shine()
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
	passed := sum(w.passed, links, 2)
	share := 1 / float64(len(links))
	back := &w.back[s]
	for c := range passed {
		if !w.done[c] {
			back[c] = float64(w.once[s][c]+passed[c]) * share * w.gain[c]
		}
	}
	w.pass(s)
}

// sum adds up figures of elements, of which 2^shift in a row share one. Most of the work of a solution is done
// here: in single variables it takes half the time.
func sum(of []shining, elements []uint32, shift uint8) shining {
	var a, b, c, d, e, f float32
	for _, n := range elements {
		x := &of[n>>(shift&31)]
		a, b, c, d, e, f = a+x[0], b+x[1], c+x[2], d+x[3], e+x[4], f+x[5]
	}
	return shining{a, b, c, d, e, f}
}

// pass sets what a slot passes on.
func (w *solver) pass(s int) {
	out, back, reflect := &w.passed[s], &w.back[s], &w.reflect[w.t.patches[s].face]
	for c := range out {
		out[c] = float32(reflect[c] * back[c])
	}
}

// shine sets the exitance of all elements.
func (w *solver) shine() {
	for s := 1; s < len(w.back); s++ {
		back, reflect := &w.back[s], &w.reflect[w.t.patches[s].face]
		for e := 4 * s; e < 4*s+4; e++ {
			out := &w.exitance[e]
			for c := range out {
				out[c] = float32(reflect[c] * (w.from(e, c) + back[c]))
			}
		}
	}
	w.veilAll()
}

// veilAll sets the exitance of what is seen through clear sheets.
func (w *solver) veilAll() {
	end := 4 * len(w.back)
	for i := range w.t.veils {
		v := &w.t.veils[i]
		w.veil(&w.exitance[end+4*i], &w.exitance[v.element], &v.factor)
	}
}

// unveil brings what is passed on through clear sheets up to date.
func (w *solver) unveil() {
	for i := range w.t.veils {
		v := &w.t.veils[i]
		w.veil(&w.passed[len(w.back)+i], &w.passed[v.element/4], &v.factor)
	}
}

// veil is what is left behind clear sheets.
func (w *solver) veil(to, from *shining, factor *colour.RGB) {
	for c := range to {
		to[c] = from[c] * float32(factor[w.channel[c]])
	}
}

// account adds up what has become of the lamps' light.
func (w *solver) account(b *block) {
	b.sent = w.flux
	for s := 1; s < len(w.back); s++ {
		p := &w.t.patches[s]
		for k, a := range p.area {
			for c := range width {
				in := a * (w.from(4*s+k, c) + w.back[s][c])
				out := in * w.reflect[p.face][c]
				b.taken[c] += in - out
				b.lost[c] += out * (1 - p.kept[w.channel[c]])
			}
		}
	}
}

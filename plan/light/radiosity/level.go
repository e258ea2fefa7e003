package radiosity

import "math"

// normalise brings all that surfaces get from each other to the flux that they send to each other:
// what is taken in and what leaves the set then add up to what the lamps sent, to the last digit,
// though rays only sample who sees whom. On the way it saves passes: a white room fills at once. Where
// learn is set, the links take over the factor, so that in the end there is nothing left to bring up.
// It says whether the pass moved less than the residual in every column.
func (w *solver) normalise(learn bool) (done bool) {
	var moved columns
	w.spreadUnseen()
	scale := w.scales(learn)
	for s := 1; s < len(w.incident); s++ {
		area := w.t.patches[s].area
		a := area[0] + area[1] + area[2] + area[3]
		back, before := &w.incident[s], &w.before[s]
		for c := range width {
			back[c] *= scale[c]
			moved[c] += a * math.Abs(back[c]-before[c])
		}
	}
	for s := 1; s < len(w.incident); s++ {
		w.reflectSlot(s)
	}
	done = true
	for c := range width {
		settled := learn || w.closed[c] // what an open set gets is brought up in the first passes alone, and put right by the next
		w.done[c] = w.done[c] || settled && moved[c] <= max(residual, w.t.quality.Settled)*w.flux[c]
		done = done && w.done[c]
	}
	return done
}

// scales are what the light that surfaces get from each other has to be multiplied by.
func (w *solver) scales(learn bool) (scale columns) {
	var got, kept columns
	for s := 1; s < len(w.incident); s++ {
		p, back, passed := &w.t.patches[s], &w.incident[s], w.arriving(s)
		a, met := p.whole(), w.t.mesh.faces[p.face].met
		for c := range width {
			got[c] += a * met * back[c] // what passes a cloth comes to what is behind it
			kept[c] += a * passed[c] * w.keptShare(p, c)
		}
	}
	for c := range width {
		scale[c] = 1
		if w.done[c] {
			continue
		}
		if lost := got[c] - kept[c]; lost > 0 && (w.closed[c] || !learn) {
			scale[c] = w.returned[c] / lost
		}
		if learn && w.closed[c] {
			w.gain[c] = min(max(w.gain[c]*math.Sqrt(scale[c]), leastGain), mostGain)
		}
	}
	return scale
}

// spreadUnseen spreads evenly what surfaces return where no ray of any patch has met it: the footprint of a beam
// on a corner, say.
func (w *solver) spreadUnseen() {
	for c := range width {
		got, open := 0.0, 0.0
		for s := 1; s < len(w.incident) && w.returned[c] > 0 && got == 0; s++ {
			p := &w.t.patches[s]
			got += w.incident[s][c]
			open += p.whole() * (1 - w.keptShare(p, c))
		}
		for s := 1; s < len(w.incident) && got == 0 && open > 0; s++ {
			w.incident[s][c] = w.returned[c] / open
		}
	}
}

// The solution ends when the flux that a pass still moves is less than this share of the lamp's, or than what the quality says,
// or after so many passes.
const (
	residual   = 1e-5
	mostPasses = 500
)

// In the first passes light spreads and says nothing of the links; and a link's factor is held to
// these bounds where next to nothing is passed on.
const (
	fillPasses = 3
	leastGain  = 0.5
	mostGain   = 2
)

// closedLeak is the share of what surfaces return of the lamps' light that may leave a set that counts as closed. Of an open
// one the links do not tell what leaves well enough to put them right by it: a wall outside that a lamp
// floods would put the light inside off.
const closedLeak = 1e-3

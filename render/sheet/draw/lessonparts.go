package draw

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/meter"
	"scrimshaw/symbols/ink"
)

// partStep is how closely the head is looked at for the parts that its lights cut it into, mm, and clearOfFace how far off the nose
// and the eyes lettering stays.
const (
	partStep    = 0.5
	clearOfFace = 1.6
)

// parts letters each part of the head with the numbers of the lights that reach it, where it has room.
func (h *headView) parts(p Pad, all []*meter.LessonLight) {
	st := p.Style(capName, p.Look.Ink)
	g := h.cut(all)
	for _, set := range g.sets() {
		var tags []string
		for i := range h.Lights { // the key first
			for k, t := range all {
				if t == &h.Lights[i] && set&(1<<k) != 0 {
					tags = append(tags, t.Tag)
				}
			}
		}
		words := strings.Join(tags, " ")
		size := st.boxOf(words)
		if at, room := g.widest(set); words != "" && room*partStep >= math.Max(size.X, st.Cap)/2+0.5 {
			p.turned(r2.Vec{X: h.centre.X + at.X, Y: h.centre.Y + at.Y - st.Cap/2}, words, st, ink.Centre, 0, &p.Look.Paper)
		}
	}
}

// pieces are the squares of a head, each with the set of lights that reach it: bit k for light k; -1 off the head and at its
// features.
type pieces struct {
	side int
	set  []int
}

// cut looks which lights reach each square of the head.
func (h *headView) cut(all []*meter.LessonLight) pieces {
	half := int(h.high/partStep) + 1
	g := pieces{side: 2*half + 1}
	features := h.featurePlaces()
	for n := range g.side * g.side {
		g.set = append(g.set, h.reaching(g.place(n), all, features))
	}
	return g
}

// place is the middle of a square about the middle of the head, mm on paper.
func (g *pieces) place(n int) r2.Vec {
	half := g.side / 2
	return r2.Vec{X: float64(n%g.side-half) * partStep, Y: float64(n/g.side-half) * partStep}
}

// reaching is the set of lights that reach a place of the head.
func (h *headView) reaching(q r2.Vec, all []*meter.LessonLight, features []r2.Vec) (set int) {
	for _, f := range features {
		if r2.Norm(r2.Sub(f, r2.Add(h.centre, q))) < clearOfFace {
			return -1
		}
	}
	own := h.inHead(r3.Vec{X: q.X, Y: q.Y})
	n := r3.Vec{X: own.X / h.wide, Y: own.Y / h.high}
	square := n.X*n.X + n.Y*n.Y
	if square >= 1 {
		return -1
	}
	n.Z = math.Sqrt(1 - square)
	for k, t := range all {
		if d, _ := h.light(t); r3.Dot(n, d) > 0 {
			set |= 1 << k
		}
	}
	return set
}

// sets are those that stand on some square, in their order.
func (g *pieces) sets() (all []int) {
	seen := map[int]bool{-1: true}
	for _, s := range g.set {
		if !seen[s] {
			seen[s] = true
			all = append(all, s)
		}
	}
	return all
}

// widest is the middle of the largest square of a set, and how many steps there are from there to its side.
func (g *pieces) widest(set int) (at r2.Vec, room float64) {
	large := make([]int, len(g.set)) // the side of the largest square of the set that ends here
	best := -1
	for n, s := range g.set {
		if s != set {
			continue
		}
		large[n] = 1
		if n%g.side > 0 && n >= g.side {
			large[n] += min(large[n-1], large[n-g.side], large[n-g.side-1])
		}
		if best < 0 || large[n] > large[best] {
			best = n
		}
	}
	if best < 0 {
		return at, 0
	}
	back := float64(large[best]-1) / 2 * partStep
	return r2.Sub(g.place(best), r2.Vec{X: back, Y: back}), float64(large[best]) / 2
}

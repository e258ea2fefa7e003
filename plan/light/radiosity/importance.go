package radiosity

import (
	"context"
	"math/bits"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
)

// What single receptors read hangs on some patches more than on others: on those that they see, and on those that
// light these. The first rays of all patches tell how much (the adjoint of the transport: B. Smits, J. Arvo and D.
// Salesin, Computer Graphics 26:273, 1992), and more rays go where much does.

// adjointPasses is how often what hangs on a patch is handed on to what it sees.
const adjointPasses = 4

// mostLinks bounds the rays of one patch.
const mostLinks = 4096

// addRays gives patches more rays by their importance.
func (t *Transport) addRays(ctx context.Context) error {
	chosen, want := t.chooseForRays()
	out := make([]linked, len(chosen))
	chunks := (len(chosen) + chunk - 1) / chunk
	tracers := t.mesh.tracers(t.workers, chunks)
	err := parallel.For(ctx, t.workers, chunks, func(worker, c int) {
		for i := c * chunk; i < min((c+1)*chunk, len(chosen)); i++ {
			out[i] = t.addRaysTo(&tracers[worker], chosen[i], want[i])
		}
	})
	if err != nil {
		return err
	}
	for i, s := range chosen {
		t.enqueue(out[i].links)
		p := &t.patches[s]
		p.kept = out[i].kept
		p.from = int32(len(t.links))
		t.links = append(t.links, out[i].links...)
		p.to = int32(len(t.links))
	}
	return nil
}

// chooseForRays sets the importance of all patches, and chooses by it those that get more rays: by slot, and how many rays each
// is to have.
func (t *Transport) chooseForRays() (slots, want []int) {
	budget := t.quality.More * len(t.places)
	if budget == 0 || len(t.patches) <= 1 {
		return nil, nil
	}
	importance := t.importance()
	all := 0.0
	for _, v := range importance {
		all += v
	}
	if all == 0 {
		return nil, nil
	}
	for s := 1; s < len(t.patches); s++ {
		p := &t.patches[s]
		p.importance = importance[s] / all
		n := t.quality.rays(t.mesh.faces[p.face].du * t.mesh.faces[p.face].dv)
		more := n + int(importance[s]/all*float64(budget))
		if more = min(1<<bits.Len(uint(more*2/3)), mostLinks); more > n {
			slots, want = append(slots, s), append(want, more)
		}
	}
	return slots, want
}

// addRaysTo follows further rays of a patch, up to so many, and gives all of its links.
func (t *Transport) addRaysTo(e *tracer, slot, want int) linked {
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	l := linked{patch: *p, links: append(make([]uint32, 0, want), t.links[p.from:p.to]...)}
	l.kept = colour.RGB{}
	t.cast(e, f, &l, t.quality.rays(f.du*f.dv), want)
	l.kept = l.kept.Add(p.kept.Scale(float64(p.to - p.from)))
	if len(l.links) > 0 {
		l.kept = l.kept.Scale(1 / float64(len(l.links)))
	}
	return l
}

// importance is what hangs on the light that each patch gets from other surfaces, by its place in the list.
func (t *Transport) importance() []float64 {
	a := newAdjoint(t)
	now := a.ofReceptors()
	sum := make([]float64, len(t.patches))
	for range adjointPasses {
		next := make([]float64, len(t.patches))
		for s := 1; s < len(t.patches); s++ {
			p := &t.patches[s]
			sum[s] += now[s]
			if n := p.to - p.from; n > 0 && now[s] > 0 {
				a.distribute(next, t.links[p.from:p.to], now[s]*t.mesh.faces[p.face].reflect.Y()/float64(n))
			}
			if f := &t.mesh.faces[p.face]; f.otherSide != 0 {
				a.throughCloth(f, p, now[s], next, sum)
			}
		}
		now = next
	}
	sum[0] = 0
	return sum
}

// throughCloth hands what hangs on a patch of a cloth on to the patch on its other face, and to what that sees.
func (a *adjoint) throughCloth(f *face, p *patch, amount float64, next, sum []float64) {
	t := a.t
	b := a.of[t.mesh.behind(p.number)]
	if b == 0 {
		return
	}
	amount *= f.through.Y()
	sum[b] += amount
	other := &t.patches[b]
	if n := other.to - other.from; n > 0 {
		a.distribute(next, t.links[other.from:other.to], amount*f.reflect.Y()/float64(n))
	}
}

// adjoint follows importance from receptors to what they see, against the way of the light.
type adjoint struct {
	t  *Transport
	of []int32 // by patch of the mesh: its place in the list
}

func newAdjoint(t *Transport) *adjoint {
	a := &adjoint{t, make([]int32, t.mesh.count)}
	for s := 1; s < len(t.patches); s++ {
		a.of[t.patches[s].number] = int32(s)
	}
	return a
}

// distribute gives an amount to each patch that rays have met.
func (a *adjoint) distribute(to []float64, hits []uint32, amount float64) {
	for _, h := range hits {
		to[a.of[a.t.mesh.patchOf(h)]] += amount
	}
}

// ofReceptors is what hangs on each patch that a receptor sees, or that a cell sees that a receptor sees.
func (a *adjoint) ofReceptors() []float64 {
	t := a.t
	now, cells := make([]float64, len(t.patches)), make([]float64, len(t.cells))
	for i := range t.places {
		p := &t.places[i]
		share := 1 / float64(len(p.hits))
		for r, h := range p.hits {
			if p.cellOf != nil && p.cellOf[r] >= 0 {
				cells[p.cellOf[r]] += share
			} else {
				now[a.of[t.mesh.patchOf(h)]] += share
			}
		}
	}
	for i := range t.cells {
		c := &t.cells[i]
		f := &t.mesh.faces[c.face]
		amount := cells[i] * f.reflect.Y() / float64(len(c.hits))
		a.distribute(now, c.hits, amount)
		a.distribute(now, c.beyond, amount*f.through.Y())
	}
	return now
}

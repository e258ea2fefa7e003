package radiosity

import (
	"context"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/crew"
	"scrimshaw/plan/solid"
)

// finest is how often, at most, an element is halved each way for a lamp: down to 8 mm.
const finest = 16

// first is what each element gets straight from a lamp, lx, channel by channel.
type first []float32

// straight asks a lamp what it gives to every patch.
func (t *Transport) straight(ctx context.Context, lamp Lamp) (first, error) {
	channels := t.Channels()
	out := make(first, 4*len(t.patches)*channels)
	chunks := (len(t.patches) + chunk - 1) / chunk
	err := crew.Each(ctx, t.workers, chunks, func(worker, c int) {
		for s := max(1, c*chunk); s < min((c+1)*chunk, len(t.patches)); s++ {
			var e [4]colour.RGB
			t.sample(lamp, worker, s, &e)
			for k := range e {
				for c := range channels {
					out[(4*s+k)*channels+c] = float32(e[k][c])
				}
			}
		}
	})
	if err != nil {
		return nil, err
	}
	t.balance(lamp, out)
	return out, nil
}

// balance brings what lands up to what was sent, where all of it lands: places asked one by one
// miss a little of it. Where they miss most, the light of a beam close before a surface, what rays from
// the lamp bring stands in its place.
func (t *Transport) balance(lamp Lamp, out first) {
	channels := t.Channels()
	type landed struct {
		element int
		part    colour.RGB
	}
	var brought []landed
	var flux colour.RGB
	all := lamp.Landing(func(h solid.Hit, at r3.Vec, part colour.RGB) bool {
		e := t.mesh.element(&h, at)
		slot := int(t.slots[e/4])
		brought = append(brought, landed{4*slot + t.patches[slot].lively(int(e&3)), part})
		flux = flux.Add(part)
		return slot != 0
	})
	if !all {
		return
	}
	for c := range channels {
		sum := 0.0
		for s := 1; s < len(t.patches); s++ {
			for k, a := range t.patches[s].area {
				sum += a * float64(out[(4*s+k)*channels+c])
			}
		}
		if sum > flux[c]/2 {
			for i := c; i < len(out); i += channels {
				out[i] *= float32(flux[c] / sum)
			}
			continue
		}
		for i := c; i < len(out); i += channels {
			out[i] = 0
		}
		for _, l := range brought {
			if a := t.patches[l.element/4].area[l.element&3]; a > 0 {
				out[l.element*channels+c] += float32(l.part[c] / a)
			}
		}
	}
}

// lively is an element of the patch, or where it has no area to speak of the one that has the most.
func (p *patch) lively(k int) int {
	if p.area[k] > 0 {
		return k
	}
	for i := range p.area {
		if p.area[i] > p.area[k] {
			k = i
		}
	}
	return k
}

// sample asks for the light of one patch: at so many places of each element that no footprint slips
// between them, and at more where something hides the lamp from some.
func (t *Transport) sample(lamp Lamp, worker, slot int, e *[4]colour.RGB) {
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	grain := lamp.Grain(f.at(p.x+f.du/2, p.y+f.dv/2))
	if !(grain > 0) {
		return
	}
	n := min(max(1, int(math.Ceil(math.Max(f.du, f.dv)/(2*grain)))), finest)
	mixed := t.ask(lamp, worker, slot, n, e)
	if mixed && t.quality.Refine > 1 {
		t.ask(lamp, worker, slot, n*t.quality.Refine, e)
	}
}

// ask takes n by n samples of each element. It says whether the lamp is hidden from some and not
// from others.
func (t *Transport) ask(lamp Lamp, worker, slot, n int, e *[4]colour.RGB) (mixed bool) {
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	step := 0.5 / float64(n)
	sample := int(scatter(p.number) >> 8)
	hidden, seen := 0, 0
	for k := range e {
		var sum colour.RGB
		alive := 0
		for i := range n * n {
			x := p.x + f.du*(0.5*float64(k&1)+step*(float64(i%n)+0.5))
			y := p.y + f.dv*(0.5*float64(k>>1)+step*(float64(i/n)+0.5))
			at := f.at(x, y)
			if p.partly && !t.alive(f, x, y, at) {
				continue
			}
			alive++
			light, some := lamp.Light(worker, sample, at, f.n)
			sample++
			if some {
				hidden++
			} else if light != (colour.RGB{}) {
				seen++
			}
			sum = sum.Add(light)
		}
		e[k] = colour.RGB{}
		if alive > 0 {
			e[k] = sum.Scale(1 / float64(alive))
		}
	}
	return hidden > 0 && seen > 0
}

// clearance is how far before a face it is asked, m, whether a place lies inside a solid.
const clearance = 1e-5

// alive says whether a place is on the face and in the air.
func (t *Transport) alive(f *face, x, y float64, at r3.Vec) bool {
	if !f.holds(x, y) {
		return false
	}
	_, inside := t.mesh.bvh.Inside(r3.Add(at, r3.Scale(clearance, f.n)))
	return !inside
}

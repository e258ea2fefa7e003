package radiosity

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// directLux is what each element gets straight from a lamp, lx, channel by channel.
type directLux []float32

// directSolver is the straight light of one lamp, while it is worked out.
type directSolver struct {
	t        *Transport
	lamp     Lamp
	open     OpenLamp   // the same, where it takes from others that nothing stands between; else nil
	known    *knownLamp // what a memory has of it; nil without one
	channels int
	lux      directLux
	edges    []float64 // by slot: lx that elements of a patch are apart where a shadow may have its edge
	lit      []*aimed  // by worker
}

// The share of the brightest element of a patch by which another must differ for the light within them to count as uneven:
// where the edge of a shadow may run over the patch, and where nothing shades it and the light falls off by itself, as
// beside the plane of a large lamp close by.
const (
	unevenAtEdge   = 0.05
	unevenByItself = 0.3
)

// uneven says of each patch whether the light within its elements is uneven: by the edge of a shadow, or by itself.
func (d *directSolver) uneven() []bool {
	t, channels := d.t, d.channels
	out := make([]bool, len(t.patches))
	for s, apart := range d.edges {
		var e [4]colour.RGB
		brightest := 0.0
		for k := range e {
			e[k][1] = float64(d.lux[(4*s+k)*channels+channels/2])
			brightest = max(brightest, e[k][1])
		}
		out[s] = apart > unevenAtEdge*brightest || brightest > 0 && t.patches[s].range4(&e) > unevenByItself*brightest
	}
	return out
}

// shadowEdges lists the patches that the edge of a shadow may put off by more than their share: of the flux that comes
// straight to all patches, or of what single receptors read of it.
func (d *directSolver) shadowEdges() (again []int) {
	t, channels := d.t, d.channels
	flux, read := 0.0, 0.0
	means := make([]float64, len(t.patches))
	for s := 1; s < len(t.patches); s++ {
		p := &t.patches[s]
		for k, a := range p.area {
			e := float64(d.lux[(4*s+k)*channels+channels/2])
			flux += a * e
			means[s] += e / 4
		}
		read += p.importance * means[s]
	}
	for s := range d.edges {
		d.raiseToNeighbours(means, s)
	}
	for s, off := range d.edges {
		if p := &t.patches[s]; off*p.whole() > t.quality.Edge*flux || off*p.importance > t.quality.Edge*read && off > 0 {
			again = append(again, s)
		}
	}
	return again
}

// raiseToNeighbours raises how far a patch may be off to how far it is from its neighbours on the face, where something shades it:
// the edge of a shadow that runs along its rim leaves its own elements alike.
func (d *directSolver) raiseToNeighbours(means []float64, s int) {
	t, edges := d.t, d.edges
	p := &t.patches[s]
	if s == 0 || edges[s] < 0 {
		return
	}
	f := &t.mesh.faces[p.face]
	cell := int(p.number - f.first)
	x, y := cell%f.nu, cell/f.nu
	for _, side := range [...]struct {
		there bool
		step  int
	}{{x > 0, -1}, {x < f.nu-1, 1}, {y > 0, -f.nu}, {y < f.nv-1, f.nu}} {
		if side.there {
			if n := t.slots[int(p.number)+side.step]; n != 0 {
				edges[s] = max(edges[s], math.Abs(means[n]-means[s]))
			}
		}
	}
}

// balance brings what lands up to what was sent, where all of it lands: places asked one by one
// miss a little of it. Where they miss most, the light of a beam close before a surface, what rays from
// the lamp bring stands in its place.
func (d *directSolver) balance() {
	t, channels, out := d.t, d.channels, d.lux
	brought, swallowed, flux, all := d.followRays()
	if !all {
		return
	}
	for c := range channels {
		sum := swallowed[c]
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

// throughCloth adds to what elements of cloth get what falls on the cloth behind them and shines from them, too.
func (d *directSolver) throughCloth() {
	t := d.t
	own, edges := slices.Clone(d.lux), slices.Clone(d.edges)
	for _, c := range t.cloth {
		p := &t.patches[c.slot]
		f := &t.mesh.faces[p.face]
		other := &t.mesh.faces[f.otherSide-1]
		for k := range 4 {
			middle := f.at(p.x+f.du*(0.25+0.5*float64(k&1)), p.y+f.dv*(0.25+0.5*float64(k>>1)))
			from, to := 4*c.behind+int(other.element(middle)&3), 4*c.slot+k
			for n := range d.channels {
				d.lux[to*d.channels+n] += float32(f.through[n]) * own[from*d.channels+n]
			}
		}
		if edges[c.behind] > 0 {
			d.edges[c.slot] = max(d.edges[c.slot], f.through.Y()*edges[c.behind])
		}
	}
}

// landed is what a ray of a lamp brings to an element.
type landed struct {
	element int
	part    colour.RGB // of the lamp's flux, lm
}

// followRays follows the rays of the lamp, and gives what they bring to elements, what of it ends on black surfaces, and the sum; all says
// whether everything comes to surfaces.
func (d *directSolver) followRays() (brought []landed, swallowed, flux colour.RGB, all bool) {
	t := d.t
	all = d.lamp.EmitRays(func(h solid.Hit, at r3.Vec, part colour.RGB) bool {
		e := t.mesh.element(&h, at)
		flux = flux.Add(part)
		if e != black && t.mesh.faceOf(e).isBlack() {
			swallowed = swallowed.Add(part)
			return true
		}
		slot := int(t.slots[e/4])
		brought = append(brought, landed{4*slot + t.patches[slot].elementWithArea(int(e&3)), part})
		return slot != 0
	})
	return brought, swallowed, flux, all
}

// lightRow asks for the light of the patches from a slot on, before end, that lie in a row, and gives the slot after them: most of a
// room sees all of a lamp, and to look for what stands between costs more than to sum what comes.
func (d *directSolver) lightRow(worker, slot, end int) (next int) {
	next = endOfRow(d.t.patches, slot, end)
	sight := PartlyOccluded
	if d.open != nil && next-slot >= leastRow && !d.known.knowsAll(d.t.patches[slot:next]) {
		f := &d.t.mesh.faces[d.t.patches[slot].face]
		corners := d.t.patches[slot].row(f, next-slot)
		sight = d.lamp.SetPatch(worker, corners[:], f.n)
	}
	for s := slot; s < next; s++ {
		if d.edges[s] = -1; sight != Hidden {
			d.lightPatch(worker, s, false, sight == Unoccluded)
		}
	}
	return next
}

// lightPatch asks for the light of one patch, by the parts of its elements that lie in the air, and notes how far they
// are apart where a shadow may have its edge; less than nought where none may.
func (d *directSolver) lightPatch(worker, slot int, closely, open bool) {
	p := &d.t.patches[slot]
	if edge, is := d.known.recall(p.number, closely, d.luxOf(slot)); is {
		d.edges[slot] = edge
		return
	}
	f := &d.t.mesh.faces[p.face]
	lit, e := d.lit[worker], [4]colour.RGB{}
	if open {
		lit.aimOpen(d.open, f, p)
	} else {
		lit.aimBefore(f, p)
	}
	d.edges[slot] = -1
	if lit.sight != Hidden {
		lit.illuminate(p, f, &e, closely)
	}
	if lit.sight == PartlyOccluded {
		d.edges[slot] = p.range4(&e)
	}
	for k := range e {
		for c := range d.channels {
			d.lux[(4*slot+k)*d.channels+c] = float32(e[k][c])
		}
	}
}

// luxOf is the light of the elements of a patch.
func (d *directSolver) luxOf(slot int) directLux {
	return d.lux[4*slot*d.channels : 4*(slot+1)*d.channels]
}

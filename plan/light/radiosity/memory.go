package radiosity

import (
	"reflect"

	"scrimshaw/plan/light/receptor"
)

// Memory is what transports of one set found out of it that holds for the next as well: what patches see, what the points of
// lattices see, and what lamps give straight to patches. What it gives is the same bits as what would be found anew. The zero
// value is empty. It is for one set at one quality, and for one goroutine at a time.
type Memory struct {
	mesh   *mesh
	linked []*linked // by patch of the mesh; nil for those that nobody has seen
	frames []knownFrame
	lamps  map[Lamp]*knownLamp
	size   int // bytes of all of that, about
	round  int
}

// mostKept is how many bytes a Memory holds, about: what would be more is found anew.
const mostKept = 10 << 20

// What is kept takes so many bytes, about: a patch beside its links, and a patch as a lamp lights it.
const (
	patchBytes = 160
	luxBytes   = 80
)

// Next begins another round: what the last one did not use is let go.
func (m *Memory) Next() {
	kept := m.frames[:0]
	for _, f := range m.frames {
		if f.used == m.round {
			kept = append(kept, f)
		} else {
			m.size -= f.bytes()
		}
	}
	clear(m.frames[len(kept):])
	m.frames = kept
	for lamp, known := range m.lamps {
		if known.used != m.round {
			m.size -= known.bytes()
			delete(m.lamps, lamp)
		}
	}
	m.round++
}

// holds takes up so many bytes more, where there is room.
func (m *Memory) holds(bytes int) bool {
	if m.size+bytes > mostKept {
		return false
	}
	m.size += bytes
	return true
}

// linksOf gives of some patches the known ones, each at its place, and lists the places of the rest.
func (m *Memory) linksOf(patches []uint32) (out []linked, missing []int) {
	out = make([]linked, len(patches))
	for i, n := range patches {
		if l := m.linked[n]; l != nil {
			out[i] = *l
		} else {
			missing = append(missing, i)
		}
	}
	return out, missing
}

// keepLinks takes up patches with what they see.
func (m *Memory) keepLinks(some []linked) {
	for _, l := range some { // each by itself, so that those for which there is no room are let go
		if m.holds(patchBytes + 4*cap(l.links)) {
			m.linked[l.number] = &l
		}
	}
}

// knownFrame is what the points of a lattice see, by the numbers of the mesh.
type knownFrame struct {
	frame
	used int // the last round that did
}

func (f *knownFrame) bytes() (n int) {
	for s := range f.buffers {
		b := &f.buffers[s]
		n += 4*len(b.points) + 4*len(b.seen) + 2*len(b.short) + 4*len(b.long)
	}
	return n
}

// frameOf is a lattice with what its points see, turned as it is; nil where that is not known.
func (m *Memory) frameOf(l *receptor.Lattice, rays int) *frame {
	if m == nil {
		return nil
	}
	for i := range m.frames {
		k := &m.frames[i]
		if k.rays != rays || !alikeButTurned(k.Lattice, *l) {
			continue
		}
		k.used = m.round
		f := k.frame
		f.Lattice = *l
		for s := range f.buffers {
			nu, _ := f.size(s)
			f.buffers[s].turn(&f, s, nu)
		}
		return &f
	}
	return nil
}

// alikeButTurned says whether two lattices are the same but for the place that their domes are turned to, if they are.
func alikeButTurned(a, b receptor.Lattice) bool {
	if (a.Toward == nil) != (b.Toward == nil) {
		return false
	}
	a.Toward, b.Toward = nil, nil
	return reflect.DeepEqual(a, b)
}

// keepFrame takes up what the points of a lattice see.
func (m *Memory) keepFrame(f *frame) {
	if m == nil {
		return
	}
	known := knownFrame{*f, m.round}
	for s := range known.buffers {
		known.buffers[s].turned = nil // found anew for each place that the domes are turned to
	}
	if m.holds(known.bytes()) {
		m.frames = append(m.frames, known)
	}
}

// knownLamp is what a lamp gives straight to patches, by their numbers in the mesh: by a few of their places and, where the edge
// of a shadow was looked at, closely.
type knownLamp struct {
	rough, closely map[uint32]patchLux
	used           int // the last round that did
}

// patchLux is the light of the elements of a patch, channel by channel, lx, and how far they are apart where a shadow may have
// its edge.
type patchLux struct {
	lux  [12]float32
	edge float64
}

func (k *knownLamp) bytes() int { return luxBytes * (len(k.rough) + len(k.closely)) }

// lampOf is what is known of a lamp; nil without a memory.
func (m *Memory) lampOf(lamp Lamp) *knownLamp {
	if m == nil {
		return nil
	}
	known := m.lamps[lamp]
	if known == nil {
		known = &knownLamp{rough: map[uint32]patchLux{}, closely: map[uint32]patchLux{}}
		m.lamps[lamp] = known
	}
	known.used = m.round
	return known
}

// of is the light of patches as they are looked at; nil where nothing is kept.
func (k *knownLamp) of(closely bool) map[uint32]patchLux {
	switch {
	case k == nil:
		return nil
	case closely:
		return k.closely
	}
	return k.rough
}

// recall takes the light of a patch into lux, with its edge.
func (k *knownLamp) recall(number uint32, closely bool, lux []float32) (edge float64, is bool) {
	known, is := k.of(closely)[number]
	if is {
		copy(lux, known.lux[:])
	}
	return known.edge, is
}

// knowsAll says whether the light of all of some patches is known.
func (k *knownLamp) knowsAll(patches []patch) bool {
	known := k.of(false)
	for i := range patches {
		if _, is := known[patches[i].number]; !is {
			return false
		}
	}
	return true
}

// remember keeps the light of a patch of a lamp, as long as there is room.
func (m *Memory) remember(k *knownLamp, number uint32, closely bool, lux []float32, edge float64) {
	known := k.of(closely)
	if _, is := known[number]; is || known == nil || !m.holds(luxBytes) {
		return
	}
	p := patchLux{edge: edge}
	copy(p.lux[:], lux)
	known[number] = p
}

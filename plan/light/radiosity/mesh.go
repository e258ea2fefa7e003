package radiosity

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// mostPatches bounds the patches of a set; beyond it they are larger.
const mostPatches = 60_000

// black is the element that gives no light: where rays end that meet nothing.
const black = 0

// mesh is a set cut into patches. Patch p has the elements 4p to 4p+3; patch 0 is black.
type mesh struct {
	bvh      *solid.BVH
	faces    []face
	of       map[solid.ID]span
	count    uint32 // of patches, with the black one
	panes    []pane
	bulks    []bulk // of the prisms
	reflects bool
	channels int
	groups   []solid.ID // the first solid of each name
	seen     veils
	blades   []blade // what parts faces
}

// span is a run of faces.
type span struct{ from, to int32 }

// pane is a clear sheet.
type pane struct {
	id      solid.ID
	corners []r3.Vec
	n       r3.Vec // of the front
}

func newMesh(set *solid.Set, bvh *solid.BVH, size float64) *mesh {
	m := &mesh{bvh: bvh, of: map[solid.ID]span{}, count: 1, channels: 1, blades: bladesOf(set)}
	named := map[string]int32{}
	for i := range set.Prisms {
		p := &set.Prisms[i]
		faces := prismFaces(p)
		m.add(p.ID, faces, m.group(named, p.Name, p.ID), &p.Skin)
		if len(faces) > 0 {
			m.bulks = append(m.bulks, bulkOf(append(lifted(p.Base, p.Z0), lifted(p.Base, p.Z1)...)))
		}
	}
	for i := range set.Sheets {
		s := &set.Sheets[i]
		if s.Front.Clear() || s.Back.Clear() {
			m.addPane(s)
			continue
		}
		front, back := sheetFaces(s)
		group := m.group(named, s.Name, s.ID)
		m.add(s.ID, front, group, &s.Front)
		m.add(s.ID, back, group, &s.Back)
	}
	m.cut(size)
	return m
}

// group numbers the things that solids belong to, by name; a solid without a name is a thing of its
// own.
func (m *mesh) group(named map[string]int32, name string, id solid.ID) int32 {
	if g, known := named[name]; known && name != "" {
		return g
	}
	g := int32(len(m.groups))
	m.groups = append(m.groups, id)
	if name != "" {
		named[name] = g
	}
	return g
}

// add takes up the faces of one solid.
func (m *mesh) add(id solid.ID, faces []face, group int32, skin *solid.Skin) {
	s, known := m.of[id]
	if !known {
		s.from = int32(len(m.faces))
	}
	for _, f := range split(faces, m.blades) {
		f.id, f.group, f.reflect = id, group, skin.Reflect
		m.tell(skin.Reflect)
		m.faces = append(m.faces, f)
	}
	s.to = int32(len(m.faces))
	m.of[id] = s
}

// tell notes what a factor means for the whole set.
func (m *mesh) tell(c colour.RGB) {
	m.reflects = m.reflects || c != colour.RGB{}
	if math.Abs(c[0]-c[1]) > 1e-12 || math.Abs(c[1]-c[2]) > 1e-12 {
		m.channels = 3
	}
}

func (m *mesh) addPane(s *solid.Sheet) {
	n := area(s.Corners)
	if !(r3.Norm(n) > 0) {
		return
	}
	m.panes = append(m.panes, pane{id: s.ID, corners: s.Corners, n: r3.Unit(n)})
	for _, c := range []colour.RGB{s.Front.Direct, s.Back.Direct} {
		if c[0] != c[1] || c[1] != c[2] {
			m.channels = 3
		}
	}
}

// cut lays the patches out.
func (m *mesh) cut(size float64) {
	all := 0.0
	for i := range m.faces {
		all += m.faces[i].width * m.faces[i].height
	}
	size = math.Max(size, math.Sqrt(all/mostPatches))
	for i := range m.faces {
		f := &m.faces[i]
		f.first = m.count
		f.nu, f.nv = pieces(f.width, size), pieces(f.height, size)
		f.du, f.dv = f.width/float64(f.nu), f.height/float64(f.nv)
		m.count += uint32(f.nu * f.nv)
	}
}

func pieces(length, size float64) int { return max(1, int(math.Ceil(length/size-1e-9))) }

// element is what a hit falls on.
func (m *mesh) element(h *solid.Hit, at r3.Vec) uint32 {
	s := m.of[h.ID]
	best, most := int32(-1), 0.5
	for i := s.from; i < s.to; i++ {
		f := &m.faces[i]
		d := r3.Dot(f.n, h.Normal)
		if d > most+sameWay || f.parted && d > most-sameWay && f.under(at) {
			best, most = i, max(d, most)
		}
	}
	if best < 0 {
		return black
	}
	return m.faces[best].element(at)
}

// sameWay is how much the normals of two parts of a face may differ.
const sameWay = 1e-9

// face is the face that a patch belongs to.
func (m *mesh) face(patch uint32) int {
	low, high := 0, len(m.faces)
	for high-low > 1 {
		if mid := (low + high) / 2; m.faces[mid].first <= patch {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// veiled is an element as it is seen through clear sheets.
type veiled struct {
	element uint32
	factor  colour.RGB
	via     []solid.ID // from the element to the eye
}

// veils numbers what is seen through clear sheets. The numbers depend on who comes first, and
// nothing depends on the numbers.
type veils struct {
	sync.Mutex
	known map[string]uint32
	list  []veiled
}

// veil marks a hit as one of veils.
const veil = 1 << 31

// behind gives the number of an element seen through panes, which are in order from the eye.
func (v *veils) behind(element uint32, panes []solid.Pane) uint32 {
	key := make([]byte, 4, 4+4*len(panes))
	put(key, element)
	w := veiled{element: element, factor: colour.RGB{1, 1, 1}}
	for i := len(panes) - 1; i >= 0; i-- {
		p := &panes[i]
		key = append(key, 0, 0, 0, 0)
		put(key[len(key)-4:], uint32(p.ID))
		w.factor = w.factor.Times(p.Factor)
		w.via = append(w.via, p.ID)
	}
	v.Lock()
	defer v.Unlock()
	n, known := v.known[string(key)]
	if !known {
		if v.known == nil {
			v.known = map[string]uint32{}
		}
		n = uint32(len(v.list))
		v.known[string(key)] = n
		v.list = append(v.list, w)
	}
	return veil | n
}

func put(b []byte, n uint32) {
	b[0], b[1], b[2], b[3] = byte(n), byte(n>>8), byte(n>>16), byte(n>>24)
}

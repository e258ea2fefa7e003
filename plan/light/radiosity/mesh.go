package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// mostPatches bounds the patches of a set; beyond it they are larger.
const mostPatches = 60_000

// mesh is a set cut into patches. Patch p has the elements 4p to 4p+3; patch 0 is black.
type mesh struct {
	bvh         *solid.BVH
	faces       []face
	of          map[solid.ID]span
	count       uint32 // of patches, with the black one
	panes       []pane
	prismBoxes  []box // of the prisms
	reflects    bool
	channels    int
	groups      []solid.ID // the first solid of each name
	seen        filteredElements
	splitPlanes []splitPlane // what parts faces
	beyond      environment
	turns       turns // of cloths, mirrors and glass
	veils       veils
	mirrors     mirrors
	glass       glassTurns
	stretches   []float64 // of rays between mirrors
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
	m := &mesh{bvh: bvh, of: map[solid.ID]span{}, count: 1, channels: 1, splitPlanes: splitPlanesOf(set), beyond: darkness{}, veils: veils{}, mirrors: mirrors{}}
	named := map[string]int32{}
	for i := range set.Prisms {
		p := &set.Prisms[i]
		faces := prismFaces(p)
		m.add(p.ID, faces, m.group(named, p.Name, p.ID), &p.Skin)
		if len(faces) > 0 {
			m.prismBoxes = append(m.prismBoxes, boxRound(append(ringAt(p.Base, p.Z0), ringAt(p.Base, p.Z1)...)))
		}
	}
	for i := range set.Sheets {
		m.addSheet(&set.Sheets[i], named)
	}
	m.stretches = newStretches(&m.turns, mostMirrors)
	m.glass = newGlassTurns(&m.turns, len(m.panes))
	m.cut(size)
	return m
}

// addSheet takes up a sheet as what it is: clear, a cloth or opaque.
func (m *mesh) addSheet(s *solid.Sheet, named map[string]int32) {
	clear := s.Front.Clear() || s.Back.Clear()
	if clear {
		m.addPane(s)
	}
	switch {
	case s.Front.Scatters() || s.Back.Scatters():
		m.addCloth(s, m.group(named, s.Name, s.ID))
	case !clear:
		front, back := sheetFaces(s)
		group := m.group(named, s.Name, s.ID)
		m.addSide(mirrorSide{s.ID, true}, front, group, &s.Front)
		m.addSide(mirrorSide{s.ID, false}, back, group, &s.Back)
	}
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
	for _, f := range split(faces, m.splitPlanes) {
		f.id, f.group, f.reflect, f.met = id, group, skin.Reflect, 1
		m.noteColour(skin.Reflect)
		m.faces = append(m.faces, f)
	}
	s.to = int32(len(m.faces))
	m.of[id] = s
}

// noteColour notes what a factor means for the whole set.
func (m *mesh) noteColour(c colour.RGB) {
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

// addSide takes up one side of an opaque sheet.
func (m *mesh) addSide(side mirrorSide, faces []face, group int32, skin *solid.Skin) {
	shiny, matt := skin.Specular(), skin.Matt()
	first := len(m.faces)
	if shiny == (colour.RGB{}) {
		m.add(side.id, faces, group, skin)
		return
	}
	on := shiny.Y() / (shiny.Y() + matt.Y())
	s := &specular{turns: veil{passing: on, turn: m.turns.next()}, factor: shiny.Scale(1 / on), power: skin.LobePower()}
	for i := range s.lobe {
		s.lobe[i].turn = m.turns.next()
	}
	m.mirrors[side] = s
	m.noteColour(shiny)
	if on < 1 {
		matt = matt.Scale(1 / (1 - on))
	}
	m.add(side.id, faces, group, &solid.Skin{Reflect: matt})
	for i := first; i < len(m.faces); i++ {
		m.faces[i].met, m.faces[i].specular = 1-on, s
	}
}

// addCloth takes up the two faces of a sheet that scatters what it lets through.
func (m *mesh) addCloth(s *solid.Sheet, group int32) {
	front, back := sheetFaces(s)
	met, from := m.veils.add(s, m.turns.next()), len(m.faces)
	m.addClothSide(s.ID, front, group, s.Front.Reflect, s.Back.Diffuse, met)
	m.addClothSide(s.ID, back, group, s.Back.Reflect, s.Front.Diffuse, met)
	m.pairFaces(from)
}

// addClothSide takes up one face of a cloth, from which what comes from behind leaves scattered. met is the share of rays that
// end on it.
func (m *mesh) addClothSide(id solid.ID, faces []face, group int32, reflect, diffuse colour.RGB, met float64) {
	for c := range reflect {
		reflect[c] = max(reflect[c], leastReflect)
	}
	first := len(m.faces)
	m.add(id, faces, group, &solid.Skin{Reflect: reflect.Scale(1 / met)})
	for i := first; i < len(m.faces); i++ {
		m.faces[i].met, m.faces[i].through = met, through(reflect, diffuse)
		m.noteColour(diffuse)
	}
}

// behind is the patch on the other face of a cloth; 0 where there is none.
func (m *mesh) behind(patch uint32) uint32 {
	f := &m.faces[m.face(patch)]
	if f.otherSide == 0 {
		return 0
	}
	cell := int(patch - f.first)
	x, y := (float64(cell%f.nu)+0.5)*f.du, (float64(cell/f.nu)+0.5)*f.dv
	return m.faces[f.otherSide-1].element(f.at(x, y)) / 4
}

// pairFaces gives each face of a sheet, of those from a number on, the one behind it.
func (m *mesh) pairFaces(from int) {
	for i := from; i < len(m.faces); i++ {
		middle := solid.Centre(m.faces[i].corners)
		for k := from; k < len(m.faces); k++ {
			if f := &m.faces[k]; k != i && f.liesUnder(middle) && r3.Dot(f.n, m.faces[i].n) < 0 {
				m.faces[i].otherSide = int32(k) + 1
			}
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
		longest := size
		if f.otherSide != 0 {
			longest *= ofCloth
		}
		f.nu, f.nv = pieces(f.width, longest), pieces(f.height, longest)
		f.du, f.dv = f.width/float64(f.nu), f.height/float64(f.nv)
		m.count += uint32(f.nu * f.nv)
	}
}

// element is what a hit falls on.
func (m *mesh) element(h *solid.Hit, at r3.Vec) uint32 {
	s := m.of[h.ID]
	best, most := int32(-1), 0.5
	for i := s.from; i < s.to; i++ {
		f := &m.faces[i]
		d := r3.Dot(f.n, h.Normal)
		if d > most+sameWay || f.parted && d > most-sameWay && f.liesUnder(at) {
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

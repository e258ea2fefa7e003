package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// A cloth passes light straight on and scatters light through: it is a pane and has faces. A ray that meets it either
// passes or ends there, by turns in the proportion of what passes, and counts for as much more as the other way would have
// been taken. What falls on one of its faces shines from the other, too.

// veil is a sheet that scatters what it lets through.
type veil struct {
	passing float64 // share of rays that pass
	turn    float64 // by how much of a whole the turns go on from one ray to the next: irrational
}

// mostPassing bounds the share of rays that pass, so that what the cloth itself sends is met.
const mostPassing = 0.9

// addVeil notes a sheet that lets light through scattered, and gives what of a face's exitance rays see that end there.
func (m *mesh) addVeil(s *solid.Sheet) (met float64) {
	passing := min(max(s.Front.Direct.Y(), s.Back.Direct.Y()), mostPassing)
	if m.veils == nil {
		m.veils = map[solid.ID]veil{}
	}
	m.veils[s.ID] = veil{passing: passing, turn: math.Sqrt(prime(len(m.veils)))}
	return 1 - passing
}

// prime is number n of the primes: the square roots of all differ and none is a share of others (the additive
// recurrence of R. D. Richtmyer, 1951).
func prime(n int) float64 {
	for p := 2; ; p++ {
		if isPrime(p) {
			if n == 0 {
				return float64(p)
			}
			n--
		}
	}
}

func isPrime(p int) bool {
	for d := 2; d*d <= p; d++ {
		if p%d == 0 {
			return false
		}
	}
	return true
}

// passes says whether a ray, by its number, passes the cloth.
func (v veil) passes(number int) bool {
	_, turn := math.Modf(float64(number+1) * v.turn)
	return turn < v.passing
}

// weigh multiplies what clear sheets let pass by how much seldomer rays pass them than others.
func (m *mesh) weigh(panes []solid.Pane) {
	if len(m.veils) == 0 {
		return
	}
	for i := range panes {
		if v, is := m.veils[panes[i].ID]; is && v.passing > 0 {
			panes[i].Factor = panes[i].Factor.Scale(1 / v.passing)
		}
	}
}

// leastReflect is the least that a face of a cloth is taken to return, so that what comes through is a share of it.
const leastReflect = 1e-6

// through is what shines from a face by what falls on the face behind it, as a share of what the same light before it would.
func through(reflect, diffuse colour.RGB) (share colour.RGB) {
	for c := range share {
		share[c] = diffuse[c] / reflect[c]
	}
	return share
}

// addCloth takes up the two faces of a sheet that scatters what it lets through.
func (m *mesh) addCloth(s *solid.Sheet, group int32) {
	front, back := sheetFaces(s)
	met := m.addVeil(s)
	from := len(m.faces)
	for side, faces := range [...][]face{front, back} {
		own, other := &s.Front, &s.Back
		if side == 1 {
			own, other = other, own
		}
		skin := solid.Skin{Reflect: own.Reflect}
		for c := range skin.Reflect {
			skin.Reflect[c] = max(skin.Reflect[c], leastReflect) / met
		}
		first := len(m.faces)
		m.add(s.ID, faces, group, &skin)
		for i := first; i < len(m.faces); i++ {
			f := &m.faces[i]
			f.met, f.through = met, through(skin.Reflect.Scale(met), other.Diffuse)
			m.noteColour(other.Diffuse)
		}
	}
	m.pairFaces(from)
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

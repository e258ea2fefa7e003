package light

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/solid"
)

// Options says how a World computes. The zero value is normal quality on all cores.
type Options struct {
	Quality Quality
	Workers int // how many goroutines; 0: one a core. The results are the same bits for any number
	// Progress, where it is set, gets from time to time how much of a Basis is done, 0 to 1. One goroutine calls it.
	Progress func(done float64)
	Direct   bool       // leaves reflected light out
	Slender  []solid.ID // what drawn beams go past, as bars between panes: they would end on it in their plane
	Bodies   *solid.Set // what a spot meter sees although it does not shade: lamp bodies, stands
	Memory   *Memory    // what the last World of the same solids left, where they are the same; nil for nothing
}

// World is the set, made ready for light. It depends on nothing else, is not changed by use and
// may be used by many goroutines, unless it has a Memory.
type World struct {
	set             *solid.Set
	bvh             *solid.BVH // shades
	bodies          *solid.BVH // seen, never shade
	casters         []caster   // large first
	sides           []caster   // the same with the sides of prisms, for lattices that are not level
	panes           []caster   // clear sheets, in the order of the set
	tinted          bool       // whether a clear sheet tints
	scattering      map[solid.ID]bool
	little          float64 // share of an opening: fields find exactly what points see that see less of it
	faces           int     // points of a face that are traced
	tubes           int
	bundle          int // how many of them a lattice takes together
	radiosity       radiosity.Quality
	direct          bool // no reflected light
	errorModel      errorModel
	allowedRayError float64 // share of a receptor's light that rays may leave it off by before more are sent
	workers         int
	report          func(done float64)
	masks           *sync.Pool // the memory of fields, of *[]uint64
	mirrors         []mirror
	slender         []solid.ID // what drawn beams go past
	boards          []board
	memory          *Memory // nil where nothing is kept
}

// Memory is what one World leaves for the next one of the same solids: the set made ready, what surfaces see of each other,
// and the light of lamps that have not moved, on surfaces and lattices and at receptors that have not either. A World that is
// built with it gives the same bits as one without. What a World did not use is let go when the next but one is built. The
// zero value is empty. It is for one goroutine at a time.
type Memory struct {
	options       Options
	world         *World // of the solids; nil before the first
	rough, closer radiosity.Memory
	lamps         []*readyLamp
	round         int
	fields        int // values of fields that are held
}

// BVH returns the rays through the set.
func (w *World) BVH() *solid.BVH { return w.bvh }

// reflects says whether any surface of the set returns light.
func reflects(set *solid.Set) bool {
	lit := func(s *solid.Skin) bool { return s.Reflect != colour.RGB{} || s.Scatters() }
	return slices.ContainsFunc(set.Prisms, func(p solid.Prism) bool { return lit(&p.Skin) }) ||
		slices.ContainsFunc(set.Sheets, func(s solid.Sheet) bool { return lit(&s.Front) || lit(&s.Back) })
}

// sortSet sorts the set into casters and panes.
func (w *World) sortSet(set *solid.Set) {
	for i := range set.Prisms {
		if c, ok := prismCaster(&set.Prisms[i]); ok {
			w.casters = append(w.casters, c)
		}
	}
	for i := range set.Sheets {
		s := &set.Sheets[i]
		if s.Front.Scatters() || s.Back.Scatters() {
			w.scattering[s.ID] = true
		}
		c, ok := sheetCaster(s)
		switch {
		case !ok:
		case s.Front.Clear() || s.Back.Clear():
			w.panes = append(w.panes, c)
			w.tinted = w.tinted || coloured(s.Front.Direct) || coloured(s.Back.Direct)
		default:
			w.casters = append(w.casters, c)
		}
	}
	w.sortCasters()
}

// sortCasters takes prisms apart into sides, too. What shades most comes first: what lies in the dark already is passed
// over.
func (w *World) sortCasters() {
	for i := range w.casters {
		if c := &w.casters[i]; c.flat {
			w.sides = append(w.sides, *c)
		} else {
			w.sides = append(w.sides, c.sides()...)
		}
	}
	bySize := func(a, b caster) int { return cmp.Compare(b.size, a.size) }
	slices.SortStableFunc(w.casters, bySize)
	slices.SortStableFunc(w.sides, bySize)
}

// mirror is a mirror of the set, and the set as its light meets it.
type mirror struct {
	solid.Mirror
	w *World
}

// findMirrors makes the mirrors of a set ready.
func (w *World) findMirrors(set *solid.Set) {
	for _, m := range set.Mirrors() {
		if m.Power > 0 {
			w.boards = append(w.boards, newBoard(m))
			continue
		}
		through := m.Through(set)
		v := &World{set: through, masks: w.masks, scattering: map[solid.ID]bool{}, bvh: solid.NewBVH(through), little: w.little, faces: w.faces, tubes: w.tubes, bundle: w.bundle, workers: w.workers}
		v.sortSet(through)
		w.mirrors = append(w.mirrors, mirror{m, v})
	}
}

// board is a side of a sheet that mirrors in a lobe.
type board struct {
	solid.Mirror
	least float64 // the cosine at which the lobe ends
	faint float64 // and at which it does for fields and surfaces
}

// newBoard makes a board ready.
func newBoard(m solid.Mirror) board {
	return board{m, math.Pow(lobeEnd, 1/m.Power), math.Pow(faintLobe, 1/m.Power)}
}

// The shares of the middle of a lobe below which nothing is followed: for single receptors, and for fields and surfaces.
const (
	lobeEnd   = 1e-6
	faintLobe = 1e-4
)

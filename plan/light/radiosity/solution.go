package radiosity

import (
	"context"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
)

// Solution is the light of some lamps on the patches of a transport.
type Solution struct {
	t               *Transport
	lamps           int
	mixed           bool // whether it is a Mix
	blocks          []block
	withoutHot      [][]columns32 // by block: its exitance without what hot elements return of the lamps' own light
	direct          []directLux
	hot             []hotParts    // by lamp: its hot elements
	fromHot         [][]float32   // by lamp, slot and channel: what patches get of what is hot, lx; nil where nothing is
	uneven          [][]bool      // by lamp and slot: whether the edge of a shadow runs over it
	cells           [][]cellLight // by lamp and cell
	bright          [][]float32   // luminous exitance by lamp and element, lm/m²
	brightest       [][]float32   // likewise of the brightest element of a face, by lamp and face
	rest            [][]float32   // the same without what hot elements return of the lamp's own light
	halfDifferences [][]float32   // by lamp and slot: what half of the rays of a patch put its exitance off by, lm/m²
	readings        []reading     // by receptor
	passes          int
}

// block is some columns: the exitance of each element that is seen, lm/m², and of those seen through
// clear sheets, four places each.
type block struct {
	exitance          []columns32
	sent, taken, lost columns // lm
	passes            int
}

// cellLight is what a cell returns of a lamp's light.
type cellLight struct {
	exitance colour.RGB // lm/m²
	rest     colour.RGB // lm/m², without what of it comes straight from the lamp
	off      float64    // what half of its rays and samples put that off by, lm/m²
}

// reading is what a receptor gets of each lamp's light.
type reading struct {
	keys   []Key
	values [][]colour.RGB // by lamp and key, lx
	spread []float64      // by lamp: the standard error that rays leave, lx
}

// column is where the light of a lamp in a channel is kept.
func (s *Solution) column(lamp, channel int) (block, column int) {
	n := lamp*s.t.Channels() + channel
	return n / width, n % width
}

// channels is how many planes of values a lamp has.
func (s *Solution) channels() int {
	if s.mixed {
		return len(colour.RGB{})
	}
	return s.t.Channels()
}

// exitance is what an element returns of a lamp's light, lm/m².
func (s *Solution) exitance(element uint32, lamp int) (e colour.RGB) {
	for c := range s.t.Channels() {
		b, k := s.column(lamp, c)
		e[c] = float64(s.blocks[b].exitance[element][k])
	}
	if s.t.Channels() == 1 {
		e[1], e[2] = e[0], e[0]
	}
	return e
}

// ofLamp is what an element returns of what comes straight from a lamp, lm/m².
func (s *Solution) ofLamp(element uint32, lamp int) (e colour.RGB) {
	channels := s.t.Channels()
	for c := range e {
		e[c] = float64(s.direct[lamp][int(element)*channels+c%channels])
	}
	return s.t.mesh.faces[s.t.patches[element/4].face].reflect.Times(e)
}

// ownHot is what a hot element returns of what comes straight from the lamp, lm/m², as it is seen; nought of any other.
func (s *Solution) ownHot(element uint32, lamp int) colour.RGB {
	hot := s.hot[lamp].of
	if len(hot) == 0 {
		return colour.RGB{}
	}
	if s.t.isMirrored(element) {
		return colour.RGB{} // looks at what is hot go straight, and rays alone bring what mirrors show
	}
	e := s.t.behind(element)
	if _, is := hot[e]; !is {
		return colour.RGB{}
	}
	return s.ofLamp(e, lamp).Times(s.t.factor(element))
}

// isHot says whether an element is a hot one of a lamp.
func (s *Solution) isHot(element uint32, lamp int) bool {
	_, is := s.hot[lamp].of[element]
	return is
}

// fromCell is what a cell returns of a lamp's light, lm/m²; of a hot element without what comes straight from the lamp, which a
// receptor gets part by part.
func (s *Solution) fromCell(n int32, lamp int) colour.RGB {
	if s.isHot(s.t.cells[n].element, lamp) {
		return s.cells[lamp][n].rest
	}
	return s.cells[lamp][n].exitance
}

// brightestOf is the brightest element of each face.
func brightestOf(t *Transport, bright []float32) []float32 {
	out := make([]float32, len(t.mesh.faces))
	for slot := 1; slot < len(t.patches); slot++ {
		of := &out[t.patches[slot].face]
		for _, v := range bright[4*slot : 4*slot+4] {
			*of = max(*of, v)
		}
	}
	return out
}

// setLuminous sets the luminous exitance of all elements by lamp, and what is left of it without what hot ones return of
// the lamp's own light.
func (s *Solution) setLuminous(ctx context.Context) error {
	n := uint32(4 * (len(s.t.patches) + len(s.t.filtered)))
	s.bright, s.rest, s.brightest = make([][]float32, s.lamps), make([][]float32, s.lamps), make([][]float32, s.lamps)
	return parallel.For(ctx, s.t.workers, s.lamps, func(_, lamp int) {
		bright := make([]float32, n)
		for e := range n {
			bright[e] = float32(s.exitance(e, lamp).Y())
		}
		s.bright[lamp], s.rest[lamp], s.brightest[lamp] = bright, bright, brightestOf(s.t, bright)
		if len(s.hot[lamp].of) > 0 {
			s.rest[lamp] = s.withoutOwn(bright, lamp)
		}
	})
}

// withoutOwn is what is left of the luminous exitance of all elements without what hot ones return of a lamp's own light.
func (s *Solution) withoutOwn(bright []float32, lamp int) []float32 {
	rest := slices.Clone(bright)
	for e := range s.hot[lamp].of {
		rest[e] -= float32(s.ownHot(e, lamp).Y())
	}
	for e := uint32(4 * len(s.t.patches)); int(e) < len(rest); e++ {
		rest[e] -= float32(s.ownHot(e, lamp).Y())
	}
	return rest
}

// Balance is the flux of a lamp, lm by channel: what comes straight from it to the surfaces that are
// followed, what of it they take in in the end, and what leaves the set or stays in clear sheets.
func (s *Solution) Balance(lamp int) (sent, taken, lost colour.RGB) {
	if len(s.blocks) == 0 {
		return sent, taken, lost
	}
	for c := range sent {
		b, k := s.column(lamp, c%s.t.Channels())
		sent[c], taken[c], lost[c] = s.blocks[b].sent[k], s.blocks[b].taken[k], s.blocks[b].lost[k]
	}
	return sent, taken, lost
}

// Keys returns the ways that light comes back to a receptor.
func (s *Solution) Keys(receptor int) []Key {
	if len(s.readings) == 0 {
		return nil
	}
	return s.readings[receptor].keys
}

// Point is what a receptor gets of a lamp's light, lx, by the ways of Keys.
func (s *Solution) Point(receptor, lamp int) []colour.RGB {
	if len(s.readings) == 0 {
		return nil
	}
	return s.readings[receptor].values[lamp]
}

// Spread is the standard error, lx, that the number of rays leaves in what a receptor gets of a lamp.
func (s *Solution) Spread(receptor, lamp int) float64 {
	if len(s.readings) == 0 {
		return 0
	}
	return s.readings[receptor].spread[lamp]
}

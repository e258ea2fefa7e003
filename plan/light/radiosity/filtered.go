package radiosity

import (
	"math"
	"sync"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// black is the element that gives no light: where rays end that meet nothing.
const black = 0

// filtered is an element as it is seen through clear sheets and by mirrors.
type filtered struct {
	element uint32
	factor  colour.RGB
	via     []solid.ID // from the element to where it is seen
	mirror  bool       // whether one of those is a mirror
	ratio   float32    // of the factor to what would pass the sheets from straight ahead
}

// filteredElements numbers what is seen through clear sheets. The numbers depend on who comes first, and
// nothing depends on the numbers.
type filteredElements struct {
	sync.Mutex
	known map[string]uint32
	list  []filtered
}

// filteredBit marks a hit as an element that is seen through clear sheets.
const filteredBit = 1 << 31

// behind gives the number of an element seen through panes or by mirrors, which are in order from where it is seen.
func (v *filteredElements) behind(element uint32, panes []solid.Pane, mirror bool) uint32 {
	ratio := ratioOf(panes)
	key := make([]byte, 8, 8+4*len(panes))
	put(key, element)
	put(key[4:], math.Float32bits(ratio))
	w := filtered{element: element, factor: colour.RGB{1, 1, 1}.Scale(float64(ratio)), mirror: mirror, ratio: ratio}
	for i := len(panes) - 1; i >= 0; i-- {
		p := &panes[i]
		key = append(key, 0, 0, 0, 0)
		put(key[len(key)-4:], uint32(p.ID))
		w.factor = w.factor.Times(p.Ahead)
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
	return filteredBit | n
}

func put(b []byte, n uint32) {
	b[0], b[1], b[2], b[3] = byte(n), byte(n>>8), byte(n>>16), byte(n>>24)
}

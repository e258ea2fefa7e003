package ink

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"encoding/gob"
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// foldedItem is a mark as a folded page keeps it: its path is in steps, of which most are small, so that they pack well.
type foldedItem struct {
	Item
	Steps []byte
}

// Fold keeps the marks that a page has so far in a fraction of the memory, until they are written: a packet of many pages would
// else hold all of them open. Of a folded page Items are those that were added since; Unfolded has all of them. The places of
// paths are rounded as Strata rounds them, and paths that it leaves out are left out.
func (p *Page) Fold() {
	if len(p.Items) == 0 {
		return
	}
	var packed bytes.Buffer
	w, _ := flate.NewWriter(&packed, flate.DefaultCompression) // the level is one that there is
	to := gob.NewEncoder(w)
	for _, it := range p.Items {
		if it.Text != nil || it.Image != nil || it.tidyPath() {
			one := foldedItem{Item: it, Steps: stepsOf(it.Path)}
			one.Path = nil
			_ = to.Encode(&one) // plain data, and a buffer takes all
		}
	}
	_ = w.Close()
	p.folded, p.Items = append(p.folded[:len(p.folded):len(p.folded)], bytes.Clone(packed.Bytes())), nil
}

// Unfolded is the page with all its marks: itself, where none are folded.
func (p *Page) Unfolded() *Page {
	if len(p.folded) == 0 {
		return p
	}
	q := *p
	q.folded, q.Items = nil, nil
	for _, packed := range p.folded {
		from := gob.NewDecoder(flate.NewReader(bytes.NewReader(packed)))
		for { // to the end of what Fold wrote
			var one foldedItem
			if from.Decode(&one) != nil {
				break
			}
			one.Path = pathOf(one.Steps)
			q.Items = append(q.Items, one.Item)
		}
	}
	q.Items = append(q.Items, p.Items...)
	return &q
}

// perMillimetre is how many steps a millimetre has: Round keeps as many places of one.
const perMillimetre = 100

// stepsOf is a path whose places are rounded: each operation, and behind it how far each of its places lies from the one before.
func stepsOf(path []Segment) (steps []byte) {
	x, y := 0.0, 0.0 // in steps
	for _, s := range path {
		steps = append(steps, byte(s.Op))
		for _, at := range s.P[:s.points()] {
			toX, toY := math.Round(at.X*perMillimetre), math.Round(at.Y*perMillimetre)
			steps = binary.AppendVarint(steps, int64(toX-x))
			steps = binary.AppendVarint(steps, int64(toY-y))
			x, y = toX, toY
		}
	}
	return steps
}

// pathOf is the path of such steps.
func pathOf(steps []byte) (path []Segment) {
	x, y := int64(0), int64(0)
	next := func() int64 {
		by, n := binary.Varint(steps)
		steps = steps[max(n, 0):]
		return by
	}
	for len(steps) > 0 {
		s := Segment{Op: Op(steps[0])}
		steps = steps[1:]
		for i := range s.points() {
			x += next()
			y += next()
			s.P[i] = r2.Vec{X: float64(x) / perMillimetre, Y: float64(y) / perMillimetre}
		}
		path = append(path, s)
	}
	return path
}

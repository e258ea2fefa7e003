package light

import (
	"encoding/binary"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/radiosity"
)

// readyLamp is a lamp made ready for a World and, for as long as a Memory holds it, its light at levels of {1, 1, 1}.
type readyLamp struct {
	emitter Emitter
	lamp    *lamp
	surface radiosity.Lamp // as surfaces see it
	points  map[receptorKey]knownShares
	fields  []knownField
	used    int // the last round that did
}

// receptorKey tells receptors apart.
type receptorKey struct {
	at, axis r3.Vec
	response Response
	skip     string
}

type knownShares struct {
	shares []share
	used   int
}

type knownField struct {
	lattice Lattice
	values  []float32
	used    int
}

// letGo forgets the light that a round did not ask for.
func (k *readyLamp) letGo(round int) {
	k.fields = slices.DeleteFunc(k.fields, func(f knownField) bool { return f.used != round })
	for r, s := range k.points {
		if s.used != round {
			delete(k.points, r)
		}
	}
}

// sharesAt is what a receptor is known to get of the lamp.
func (l *readyLamp) sharesAt(r *Receptor) (shares []share, known bool) {
	if l.points == nil {
		return nil, false
	}
	k, known := l.points[keyOf(r)]
	return k.shares, known
}

// keyOf is what tells a receptor from others.
func keyOf(r *Receptor) receptorKey {
	var skip []byte
	for _, id := range r.Skip {
		skip = binary.LittleEndian.AppendUint32(skip, uint32(id))
	}
	return receptorKey{r.At, r.Axis, r.Response, string(skip)}
}

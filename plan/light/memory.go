package light

import (
	"reflect"
	"slices"

	"scrimshaw/plan/solid"
)

// mostFieldValues is how many values of fields a Memory holds: 4 MB of them.
const mostFieldValues = 1 << 20

// mostReceptors is of how many receptors, at most, it holds what lamps give to them.
const mostReceptors = 1 << 10

// next begins another round. It says whether the set is that of the last one, looked at as closely; else all is forgotten.
func (m *Memory) next(set *solid.Set, o Options) (same bool) {
	if m.world == nil || o.Quality != m.options.Quality || o.Direct != m.options.Direct || o.Workers != m.options.Workers || !reflect.DeepEqual(*m.world.set, *set) {
		*m = Memory{options: Options{Quality: o.Quality, Direct: o.Direct, Workers: o.Workers}}
		return false
	}
	m.lamps = slices.DeleteFunc(m.lamps, func(k *readyLamp) bool { return k.used != m.round })
	m.fields = 0
	for _, k := range m.lamps {
		k.letGo(m.round)
		for i := range k.fields {
			m.fields += len(k.fields[i].values)
		}
	}
	m.rough.Next()
	m.closer.Next()
	m.round++
	return true
}

// lampsOf gives the known ones of some lights, by their places among all; nil for the rest.
func (m *Memory) lampsOf(lights []Emitter, fresh []int) []*readyLamp {
	known := make([]*readyLamp, len(lights))
	if m == nil {
		return known
	}
	for _, i := range fresh {
		for _, k := range m.lamps {
			if reflect.DeepEqual(k.emitter, lights[i]) {
				known[i], k.used = k, m.round
			}
		}
	}
	return known
}

// keepLamps takes up those of some lamps that are new.
func (m *Memory) keepLamps(lamps []*readyLamp, fresh []int) {
	if m == nil {
		return
	}
	for _, i := range fresh {
		if l := lamps[i]; !slices.Contains(m.lamps, l) {
			l.used = m.round
			m.lamps = append(m.lamps, l)
		}
	}
}

// keepShares takes up what a lamp gives to receptors, traced one after the other, where that is not too much.
func (m *Memory) keepShares(l *readyLamp, receptors []Receptor, traced [][]share) {
	if m == nil || len(receptors) > mostReceptors {
		return
	}
	if l.points == nil {
		l.points = map[receptorKey]knownShares{}
	}
	for i := range receptors {
		l.points[keyOf(&receptors[i])] = knownShares{traced[i], m.round}
	}
}

// keepField takes up what a lamp gives to a lattice, as long as there is room.
func (m *Memory) keepField(l *readyLamp, lattice *Lattice, values []float32) {
	if m == nil || m.fields+len(values) > mostFieldValues {
		return
	}
	m.fields += len(values)
	l.fields = append(l.fields, knownField{*lattice, values, m.round})
}

// fieldOn is what the lamp is known to give to a lattice; nil where nothing is.
func (m *Memory) fieldOn(l *readyLamp, lattice *Lattice) []float32 {
	for i := range l.fields {
		if f := &l.fields[i]; reflect.DeepEqual(f.lattice, *lattice) {
			f.used = m.round
			return f.values
		}
	}
	return nil
}

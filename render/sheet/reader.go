package sheet

import (
	"slices"

	"scrimshaw/render/sheet/section"
)

// The readers that pages can be picked for.
const (
	forElectric = "electric"
	forGrip     = "grip"
	forCamera   = "camera"
	forRental   = "rental"
	forClass    = "class"
)

// reader is what somebody on a set reads of a day.
type reader struct {
	name                   string // "": everybody
	bare                   bool   // plans without light: what stands, its beams, the lists of it
	faces                  bool   // the map at the faces
	plans, matching, teach bool
	lists                  []string // the tables of a day, by their names
	shelves                []string // of the kit; none: all of it
}

// readers are all there are, the first everybody.
func readers() []reader {
	const kit, lamps, circuits = "kit", "lamps", "circuits"
	return []reader{
		{faces: true, plans: true, matching: true, lists: []string{kit, lamps, circuits}},
		{name: forElectric, plans: true, lists: []string{lamps, circuits}},
		{name: forGrip, plans: true, bare: true, lists: []string{kit}, shelves: []string{"stand", "rigging", "grip", "cloth", "bag", "safety"}},
		{name: forCamera, plans: true, faces: true, matching: true},
		{name: forRental, lists: []string{kit, lamps}},
		{name: forClass, plans: true, faces: true, matching: true, teach: true},
	}
}

// ReaderNames lists those that pages can be picked for.
func ReaderNames() (names []string) {
	for _, r := range readers()[1:] {
		names = append(names, r.name)
	}
	return names
}

func (w *request) readReader(word string, log *faults) {
	all := readers()
	i := slices.IndexFunc(all, func(r reader) bool { return r.name == word })
	if i < 0 {
		unknown(log, placedWord{word: word}, "reader", ReaderNames())
		i = 0
	}
	w.reader = all[i]
	w.teach = w.teach || w.reader.teach
	if word == forElectric && w.how.Beams == section.ManyBeams {
		w.how.Beams = section.AllBeams
	}
}

// restrict leaves out of a set-up what its reader has no use for.
func (r *reader) restrict(in Input) Input {
	if !r.faces {
		in.Inset, in.Insets = nil, nil
	}
	if r.bare {
		in.Field, in.Floors, in.Faces, in.Walks, in.Readings = nil, nil, nil, nil, nil
	}
	return in
}

// PicksPlans says whether the pages that the options ask for show the plans of set-ups, for which light is needed.
func (o Options) PicksPlans() bool { return o.For != forRental }

// Matches says whether the pages that the options ask for put faces of several set-ups side by side.
func (o Options) Matches() bool {
	return o.Packet && slices.ContainsFunc(readers(), func(r reader) bool { return r.name == o.For && r.matching })
}

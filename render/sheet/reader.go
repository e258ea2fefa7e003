package sheet

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
	plugs                  bool   // what circuits carry, and what is on them
	faces                  bool   // the map at the faces
	plans, matching, teach bool
	lists                  []string // the tables of a day, by their names
	shelves                []string // of the kit; none: all of it
	lamps                  []string // the columns of the lamps, by their keys; none: all
}

// readers are all there are, the first everybody.
func readers() []reader {
	const kit, consumables, dimmers, lamps, circuits, power = "kit", "consumables", "dimmers", "lamps", "circuits", "power"
	return []reader{
		{plugs: true, faces: true, plans: true, matching: true, lists: []string{kit, consumables, dimmers, lamps, circuits, power}},
		{name: forElectric, plugs: true, plans: true, lists: []string{kit, consumables, dimmers, lamps, circuits, power}, shelves: []string{"unit", "bulb", "modifier", "accessory", "dimmer", "power", "cable", "adapter", "sheet"}},
		{name: forGrip, plans: true, bare: true, lists: []string{kit}, shelves: []string{"stand", "rigging", "grip", "cloth", "bag", "safety"}},
		{name: forCamera, plans: true, faces: true, matching: true},
		{name: forRental, lists: []string{kit, consumables, lamps}, lamps: []string{"number", "unit", "filters", "dimmer", "mount", "bags"}},
		{name: forClass, plugs: true, plans: true, faces: true, matching: true, teach: true},
	}
}

// ReaderNames lists those that pages can be picked for.
func ReaderNames() (names []string) {
	for _, r := range readers()[1:] {
		names = append(names, r.name)
	}
	return names
}

// restrict leaves out of a set-up what its reader has no use for.
func (r *reader) restrict(in Input) Input {
	if !r.faces {
		in.Inset, in.Insets = nil, nil
	}
	if r.bare {
		in.Field, in.Floors, in.Faces, in.Walks, in.Readings, in.Cues, in.Played = nil, nil, nil, nil, nil, nil, nil
		in.Holds = true
	}
	in.NoMains = !r.plugs
	return in
}

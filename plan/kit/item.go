package kit

import (
	"cmp"
	"math"

	"scrimshaw/plan/source"
)

// Item is what a van holds that gives and shapes no light of its own: clamps, bags, cable, distribution, batteries. Lengths are in m,
// masses in kg, currents in A.
type Item struct {
	Entry
	Label    string
	Group    string
	Mass     float64    // kg
	Load     float64    // the most that it may carry, kg; 0 none
	Length   float64    // m
	Size     [3]float64 // m
	Ground   [2]float64 // width and depth of the ground that its feet take as it stands, m; 0 none
	Spigot   string     // what it offers: the word of a spigot
	Amps     float64    // that it is made for
	Breakers float64    // of its outlets, A; 0 none
	Residual float64    // current at which its residual-current device trips, mA; 0 none
	Outlets  int
	Section  float64 // of each core of a cable, mm²
	Cores    int
	Plug     string  // that it goes into the mains with; "" that of the country
	Phases   int     // of the mains that go into it; 0 and 1 are one
	Watts    float64 // that it gives, or draws
	PerCable float64 // of what is used up: how much cable one of it is for, m; 0 none
	PerLight float64 // of what is used up: how many lights one of it is for; 0 none
	Least    float64 // of a dimmer, the least load that it dims, W; 0 not known
	Volts    float64 // of a battery, a generator, or a box that is not for 230 V
	Energy   float64 // of a battery, Wh
}

// itemGroups are the shelves of a van.
var itemGroups = []string{LiftGroup, "clamp", "arm", "head", "holder", "box", "bag", "safety", "cable", "splitter", "distribution", "protection",
	dimmerGroup, "battery", GeneratorGroup, "kit", "consumable"}

// GeneratorGroup is the shelf of generators.
const GeneratorGroup = "generator"

// LiftGroup is the shelf of lifts.
const LiftGroup = "lift"

// LiftFor is the lowest lift that goes to a height, m, with a load, kg; nil where none does.
func (c *Catalogue) LiftFor(height, load float64) (best *Item) {
	for _, item := range c.Items {
		if item.Group == LiftGroup && item.Length >= height && item.Load >= load && (best == nil || item.Length < best.Length) {
			best = item
		}
	}
	return best
}

// HighestLift is the lift that goes highest; nil where there is none.
func (c *Catalogue) HighestLift() (best *Item) {
	for _, item := range c.Items {
		if item.Group == LiftGroup && (best == nil || item.Length > best.Length) {
			best = item
		}
	}
	return best
}

// boxMains is the voltage of a box that says none, V: the plugs of IEC 60309 that those of the kit have are for 200 V to 250 V to the neutral.
const boxMains = 230.0

// boxSlack is how far mains may be from what a box is made for, as a share of that: those that the plugs are for, and what these stray.
const boxSlack = 0.15

// BoxFor is the smallest box of some items with breakers, each less than what feeds it, that takes a current, A, a phase of mains of a voltage, V; nil where there is none.
func BoxFor(items []*Item, amps, volts float64, phases int) (best *Item) {
	for _, item := range items {
		made := cmp.Or(item.Volts, boxMains)
		fits := item.Breakers > 0 && item.Breakers < amps && item.Amps >= amps && max(item.Phases, 1) == phases && math.Abs(volts-made) <= boxSlack*made
		if fits && (best == nil || item.Amps < best.Amps) {
			best = item
		}
	}
	return best
}

func itemShape() *source.Shape[Item] {
	type i = Item
	return &source.Shape[Item]{Name: "item", Doc: "What a van holds beside lamps, stands and grip.", Fields: append([]source.Field[Item]{
		required(doc(func(v *i) *string { return &v.Doc })),
		spare(func(v *i) *float64 { return &v.Spare }),
		required(label(func(v *i) *string { return &v.Label })),
		required(field("group", source.OneOf("a group", itemGroups...), func(v *i) *string { return &v.Group },
			"What it is for.")),
		required(field("mass", mass("a mass", "0.7 kg"), func(v *i) *float64 { return &v.Mass }, "Mass.")),
		field("load", mass("a load", "8 kg"), func(v *i) *float64 { return &v.Load }, "The most that it may carry."),
		field("length", length("a length", "10", 0.01, 200), func(v *i) *float64 { return &v.Length }, "Length of a cable, an arm, a roll; of a lift how high it goes."),
		withDefault(field("per-cable", length("a length", "50", 1, 1e4), func(v *i) *float64 { return &v.PerCable }, "Of what is used up: the length of cable that one of it is for."), "not counted"),
		withDefault(field("per-light", amount("a number of lights", "6", 1, 1e4), func(v *i) *float64 { return &v.PerLight }, "Of what is used up: how many lights one of it is for."), "not counted"),
		field("size", caseSize(), func(v *i) *[3]float64 { return &v.Size }, "Width, depth and height."),
		field("ground", pair("the ground of a lift", "[0.75, 1.2]", length("a side", "1.2", 0.1, 10)), func(v *i) *[2]float64 { return &v.Ground }, "Of a lift: width and depth of the ground that its feet take as it stands."),
		field("spigot", source.OneOf("a spigot", spigots...), func(v *i) *string { return &v.Spigot }, "What it offers to a head."),
	}, electricalFields()...)}
}

// electricalFields are the keys of an item that a circuit plan asks for.
func electricalFields() []source.Field[Item] {
	type i = Item
	current := func(what string, most float64) source.Reader[float64] { return amount(what, "16", 0.1, most) }
	return []source.Field[Item]{
		field("amps", current("a current", 400), func(v *i) *float64 { return &v.Amps }, "The current that it is made for."),
		field("breakers", current("a breaker", 400), func(v *i) *float64 { return &v.Breakers }, "Breakers of its outlets, amps."),
		field("residual", amount("a residual current", "30", 1, 1000), func(v *i) *float64 { return &v.Residual }, "Residual current at which it trips, milliamps."),
		field("outlets", source.Int("a number of outlets", 1, 100), func(v *i) *int { return &v.Outlets }, "How many outlets it has."),
		field("section", amount("a section", "2.5", 0.1, 300), func(v *i) *float64 { return &v.Section }, "Section of each core of a cable, mm²."),
		field("cores", source.Int("a number of cores", 2, 7), func(v *i) *int { return &v.Cores }, "Cores of a cable."),
		withDefault(field("plug", source.Text("a plug", "IEC 60309, 16 A"), func(v *i) *string { return &v.Plug }, "What it goes into the mains with."), "that of the country"),
		withDefault(field("phases", source.Int("a number of phases", 1, 3), func(v *i) *int { return &v.Phases }, "Phases of the mains that go into it: 1 or 3."), "1"),
		field("power", watts("a power", "1000 W"), func(v *i) *float64 { return &v.Watts }, "What it gives, or draws."),
		field("least", watts("a power", "40 W"), func(v *i) *float64 { return &v.Least }, "Of a dimmer, the least load that it dims."),
		field("volts", amount("a voltage", "14.4", 1, 1000), func(v *i) *float64 { return &v.Volts }, "Of a battery, a generator, or a box that is not for 230 V."),
		field("energy", amount("an energy", "98", 1, 1e5), func(v *i) *float64 { return &v.Energy }, "Of a battery, watt-hours."),
	}
}

// check says what does not go together in an item.
func (i *Item) check() (message, hint string) {
	if i.Phases == 2 {
		return "has two phases, and circuits have one or three", "write phases: 3, or leave it out, for a box of one phase"
	}
	if i.Group == LiftGroup && (i.Ground[0] == 0 || i.Length == 0 || i.Load == 0) {
		return "is a lift, and says not all of its ground, its length and its load", "write ground: [0.75, 1.2], length: with how high it goes, and load:"
	}
	if i.Group != LiftGroup && i.Ground != [2]float64{} {
		return "has a ground, and is no lift", "write group: lift, or leave its ground out"
	}
	return "", ""
}

// figures are those that the item has.
func (i *Item) figures() map[string]any {
	all := map[string]any{"label": i.Label, "group": i.Group, "mass": i.Mass}
	for key, v := range map[string]float64{
		"load": i.Load, "length": i.Length, "amps": i.Amps, "breakers": i.Breakers, "residualMilliamps": i.Residual, "outlets": float64(i.Outlets),
		"section": i.Section, "cores": float64(i.Cores), "phases": float64(i.Phases), "watts": i.Watts, "leastWatts": i.Least, "volts": i.Volts, "wattHours": i.Energy, "perCable": i.PerCable, "perLight": i.PerLight, "spareShare": i.Spare,
	} {
		if v > 0 {
			all[key] = v
		}
	}
	if i.Size[0] > 0 {
		all["size"] = i.Size
	}
	if i.Ground[0] > 0 {
		all["ground"] = i.Ground
	}
	for key, v := range map[string]string{"spigot": i.Spigot, "plug": i.Plug} {
		if v != "" {
			all[key] = v
		}
	}
	return all
}

package day

import (
	"fmt"
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/rig"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Names of the catalogue by which things are held.
const (
	wallPlate    = "wall-plate"
	boomStand    = "combo-stand"
	gripHead     = "grip-head"
	gripArm      = "grip-arm-100"
	boardHolder  = "board-holder"
	frameHolders = "frame-ears"
	threadStud   = "thread-stud"
	socketStud   = "spigot-28-to-16"
)

// The clamps that hold a light or grip to things and poles, and to a ceiling, the usual one first: common practice.
var (
	clamps        = []string{"stud-clamp", "pipe-clamp"}
	ceilingClamps = []string{"scissor-clamp", "pipe-clamp"}
)

// gripStands are what a piece of grip stands on where the scene names no stand, the usual one first: common practice.
var gripStands = []string{"c-stand", boomStand, "tall-combo-stand", "wind-up-stand"}

// load is what a mount holds: the mass of one, how many, and how high it is over what its stand stands on.
type load struct {
	tag       string
	mass      float64 // of one, kg
	known     bool    // whether that is all of it
	count     int
	height    float64 // m
	practical bool    // it belongs to the set, and hangs or stands by itself
	sturdy    bool    // it is no thing for a light grip stand
	spigot    string  // what it sits on a stand by: the word of a spigot; "" not known
}

// mount counts what holds a thing.
func (n *needs) mount(m *plan.Mount, l load) {
	switch m.Kind {
	case "", term.Stand:
		n.stand(m, l)
	case term.Boom:
		n.stand(m, l)
		n.boom(m, l)
	case term.Clamp, term.Ceiling:
		if !l.practical {
			n.clamp(m, l)
		}
	case term.Pole:
		n.add(n.stock(Rigging, plan.CeilingPole, "pole"), 1, l.tag)
		n.clamp(m, l)
	case term.Wall:
		n.add(n.stock(Rigging, wallPlate, "wall plate"), l.count, l.tag)
	case term.Lift:
		n.lift(m, l)
	}
	if hangs(m) && !l.practical {
		n.bond(l)
	}
}

// lift counts the lift that a thing stands on; what the kit has none for is named by its height and load.
func (n *needs) lift(m *plan.Mount, l load) {
	item := Item{Shelf: Rigging, Label: "lift for " + unit.FormatMass(l.mass) + " at " + n.length(m.Arm)}
	if m.Lift != nil {
		item = stocked(Rigging, m.Lift)
		item.Note = "platform of " + l.tag + " at " + n.length(m.Arm)
	}
	n.add(item, 1, l.tag)
}

// hangs says whether a thing could fall on somebody.
func hangs(m *plan.Mount) bool {
	switch m.Kind {
	case term.Boom, term.Clamp, term.Ceiling, term.Pole, term.Wall, term.Lift:
		return true
	}
	return false
}

// stand counts a stand and its bags.
func (n *needs) stand(m *plan.Mount, l load) {
	n.add(n.standOf(m, l), l.count, l.tag)
	n.spigot(m, l)
	n.add(n.stock(Bag, plan.Sandbag, "sandbag"), l.count*m.Bags(l.height), l.tag)
}

// spigot counts what joins a thing to a stand that takes its spigot by an adapter alone: a stud for a camera thread, and one of 16 mm in a socket of 28 mm.
func (n *needs) spigot(m *plan.Mount, l load) {
	switch {
	case m.Stand == nil || m.Kind == term.Boom:
	case m.Stand.Spigot == kit.Spigot28 && l.spigot == kit.Spigot16:
		n.add(n.stock(Adapter, socketStud, "adapter 28 to 16 mm"), l.count, l.tag)
	case m.Stand.Spigot != "" && l.spigot == kit.CameraThread:
		n.add(n.stock(Adapter, threadStud, "stud with a camera thread"), l.count, l.tag)
	}
}

// standOf is the stand that the scene or the unit names, else the usual one that is high and strong enough.
func (n *needs) standOf(m *plan.Mount, l load) Item {
	if m.Stand != nil {
		return Item{Shelf: Stand, Name: m.Stand.Name, Label: m.Stand.Label, Mass: m.Stand.Mass}
	}
	for _, name := range gripStands {
		stand := n.kit.Stand(name)
		if stand != nil && stand.Highest >= l.height && stand.Load >= l.mass && (name != gripStands[0] || m.Kind != term.Boom && !l.sturdy) {
			return Item{Shelf: Stand, Name: name, Label: stand.Label, Mass: stand.Mass, Note: "for " + l.tag + " the scene names none"}
		}
	}
	return Item{Shelf: Stand, Label: "stand", Note: "for " + l.tag + ", to " + n.length(l.height)}
}

// boom counts the arm of a boom and what balances it about the stand: m1 a1 = m2 a2, without the arm's own mass.
func (n *needs) boom(m *plan.Mount, l load) {
	arm := n.stock(Rigging, plan.BoomArm, "boom")
	if found := n.kit.ItemOf(plan.BoomArm); found == nil || m.Arm > found.Length || l.mass > found.Load {
		arm = Item{Shelf: Rigging, Label: "boom", Note: "for " + l.tag + ", of " + n.length(m.Arm) + " and for " + unit.FormatMass(l.mass)}
	}
	n.add(arm, l.count, l.tag)
	sandbag := n.stock(Bag, plan.Sandbag, "sandbag")
	if !l.known || sandbag.Mass == 0 {
		n.add(Item{Shelf: Bag, Label: "counterweight for " + l.tag + " on its boom"}, l.count, l.tag)
		return
	}
	mass := Counterweight(l.mass, m.Arm)
	count := int(math.Ceil(mass/sandbag.Mass - 1e-9))
	sandbag.Note = fmt.Sprintf("%d to balance %s on its boom: %s at %s behind the stand, without the arm's own mass", count, l.tag, unit.FormatMass(mass), n.length(rig.CounterArm))
	n.add(sandbag, l.count*count, l.tag)
}

// Counterweight is the mass, kg, that holds another at the end of an arm, m, in balance at the usual distance behind the stand,
// rounded up to half a kilogram.
func Counterweight(mass, arm float64) float64 {
	return math.Ceil(2*rig.Counterweight(mass, arm, rig.CounterArm)-1e-9) / 2
}

// clamp counts the usual clamp that carries the load.
func (n *needs) clamp(m *plan.Mount, l load) {
	names := clamps
	if m.Kind == term.Ceiling {
		names = ceilingClamps
	}
	item := Item{Shelf: Rigging, Label: "clamp for " + unit.FormatMass(l.mass)}
	for _, name := range names {
		if found := n.kit.ItemOf(name); found != nil && found.Load >= l.mass {
			item = stocked(Rigging, found)
			break
		}
	}
	if m.Kind == term.Ceiling {
		item.Note = "or what the ceiling takes"
	}
	if !l.known {
		item.Note = joinNote(item.Note, "its load is not known")
	}
	n.add(item, l.count, l.tag)
}

// bond counts the shortest safety wire that holds the load.
func (n *needs) bond(l load) {
	item := Item{Shelf: Safety, Label: "safety wire for " + unit.FormatMass(l.mass)}
	if found := n.least("safety", func(i *kit.Item) float64 { return i.Load }, l.mass); found != nil {
		item = stocked(Safety, found)
	}
	n.add(item, l.count, l.tag)
}

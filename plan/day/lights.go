package day

import (
	"fmt"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// light counts a light: its units, what is in and on them, and what holds them.
func (n *needs) light(l *plan.Light) {
	n.unit(l)
	n.accessories(l)
	n.dimmer(l)
	n.sheets(l)
	n.mount(&l.Mount, load{tag: l.Tag, mass: l.Head.Mass, known: l.Head.Mass > 0, count: l.Count, height: l.Frame.At.Z - l.Base,
		practical: l.Head.Class == term.Practical, spigot: l.Head.Spigot})
}

// unit counts the units of a light, and the bulbs that practicals get.
func (n *needs) unit(l *plan.Light) {
	u := l.Head.Unit
	if u == nil { // nobody knows whether two sources that a scene states are one lamp
		n.add(Item{Shelf: Unit, Label: l.Name + ", " + l.Head.UnitLabel}, l.Count, l.Tag)
		return
	}
	note := joinNote(n.withWords(u), when(u.Class == term.Practical, ofTheSet))
	n.add(Item{Shelf: Unit, Name: u.Name, Label: u.Label, Note: note, Mass: u.Mass + u.Supply, Case: u.Case, Spare: u.Spare, Gives: n.gives(l)}, l.Count, l.Tag)
	if b := l.Head.Bulb; b != nil {
		label := fmt.Sprintf("%s, %s, %s", lowered(b.Doc), unit.FormatPower(b.Watts), unit.FormatKelvin(b.Kelvin))
		n.add(Item{Shelf: Bulb, Name: b.Name, Label: label, Mass: b.Mass, Spare: b.Spare}, l.Count, l.Tag)
	}
}

// lowered begins a phrase in the middle of a line, unless it begins with a word in capitals.
func lowered(words string) string {
	if len(words) < 2 || strings.ToUpper(words[:2]) == words[:2] {
		return words
	}
	return strings.ToLower(words[:1]) + words[1:]
}

// gives says what another unit has to give to do in a light's place: how bright it is on its axis from afar, as its lens stands and without
// gels and scrims, which are listed for themselves, and its white; and which of the kit does. Of what stands on the set nobody asks it.
func (n *needs) gives(l *plan.Light) []Equal {
	h := l.Head.Unscrimmed()
	if h.Class == term.Practical {
		return nil
	}
	e := Equal{Lux: twoFigures(h.Source.AxisLux(atEqual)), Wears: "bare", Whites: whites(&h)}
	if h.ModifierLabel != "" {
		e.Wears = "with " + h.ModifierLabel
	}
	var set []string
	if focus := h.FocusWord(); focus != "" {
		set = append(set, "at "+focus)
	}
	if u := h.Unit; u.Kelvin[0] != u.Kelvin[1] { // it is not as bright at each of its whites
		set = append(set, "set to "+unit.FormatKelvin(h.White.Kelvin))
	}
	e.Set = strings.Join(set, " ")
	if equal := n.equals.Of(n.kit, l.Choice); equal != nil {
		e.Such = equal.Label
	}
	return []Equal{e}
}

// ofTheSet is what stands on a set that a rental house need not bring.
const ofTheSet = "of the set, or hired"

// withWords say what comes with a unit, by the names that a desk knows, and what of its mass does not hang on its stand.
func (n *needs) withWords(u *kit.Unit) string {
	with := slices.Clone(u.ComesWith)
	for i, name := range with {
		if m := n.kit.Modifier(name); m != nil {
			with[i] = m.Label
		}
	}
	if u.OwnCable > 0 {
		with = append(with, "mains cable of "+n.cableWords(u.OwnCable))
	}
	var parts []string
	if len(with) > 0 {
		parts = append(parts, "comes with "+strings.Join(with, ", "))
	}
	if u.Supply > 0 {
		parts = append(parts, unit.FormatMass(u.Supply)+" of its mass is the supply")
	}
	return strings.Join(parts, "; ")
}

// cableWords is how long a cable is, as a desk writes it: in the metres of its case, or in the feet of the scene.
func (n *needs) cableWords(metres float64) string {
	if n.setup.Feet {
		return n.length(metres)
	}
	return unit.FormatNumber(metres) + " m"
}

// What of a head comes in its case, by the words of the catalogue.
const (
	ownDoors  = "barn doors"
	ownScrims = "wire scrims"
)

// brings says whether a unit comes with a thing.
func brings(u *kit.Unit, thing string) bool { return u != nil && slices.Contains(u.ComesWith, thing) }

// accessories count modifiers, barn doors and scrims that are in no unit's case.
func (n *needs) accessories(l *plan.Light) {
	u := l.Head.Unit
	for _, m := range l.Head.Modifiers {
		own := m.Shade != nil && u != nil && u.Class == term.Practical && m.Name == u.Modifier
		if !own && !brings(u, m.Name) {
			n.add(Item{Shelf: Modifier, Name: m.Name, Label: m.Label, Mass: m.Mass}, l.Count, l.Tag)
		}
	}
	if l.Head.Doors != nil && !brings(u, ownDoors) {
		n.add(Item{Shelf: Accessory, Label: "barn doors for " + l.Head.UnitLabel}, l.Count, l.Tag)
	}
	note := ""
	if brings(u, ownScrims) {
		note = "a set comes with the head: take what that lacks"
	}
	for _, s := range l.Head.Scrims {
		n.add(Item{Shelf: Accessory, Label: string(s) + " scrim for " + l.Head.UnitLabel, Note: note}, l.Count, l.Tag)
	}
}

package section

import (
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
)

// accessories names what hangs on a light and stands in it beside its modifier: the bulb that was put in, scrims, doors
// with the angles of their leaves, and what is in a gate and how sharp it is.
func accessories(l *plan.Light) string {
	return Joined(", ", bulb(&l.Head), scrims(&l.Head), doors(l.Head.Doors), l.Head.EdgeWord(), cuts(&l.Head), breakup(&l.Head))
}

// inGate names them without scrims and doors.
func inGate(l *plan.Light) string {
	return Joined(", ", bulb(&l.Head), l.Head.EdgeWord(), cuts(&l.Head), breakup(&l.Head))
}

// shortAccessories names the same without the figures of leaves, cuts and patterns, which the list of lights has.
func shortAccessories(l *plan.Light) string {
	word := func(figures, word string) string {
		if figures == "" {
			return ""
		}
		return word
	}
	h := &l.Head
	return Joined(", ", bulb(h), scrims(h), word(doors(h.Doors), "doors"), h.EdgeWord(), word(cuts(h), "cuts"), word(breakup(h), "breakup"))
}

// cuts names the cuts in a gate by the side that each comes from and its share of the image: "cuts top 30 right 12 %".
func cuts(h *kit.Head) string {
	var all []string
	for _, c := range h.Gate.Cuts {
		all = append(all, kit.SideWord(c.Angle)+" "+unit.FormatNumber(math.Round(100*c.Depth)))
	}
	if len(all) == 0 {
		return ""
	}
	return "cuts " + strings.Join(all, " ") + " %"
}

// breakup names the pattern in a gate: "breakup 40 % grain 10 %", the share that is open first; of any but the usual pattern also which.
func breakup(h *kit.Head) string {
	b := h.Gate.Breakup
	if b == nil {
		return ""
	}
	words := "breakup " + unit.FormatPercent(b.Open) + " grain " + unit.FormatPercent(b.Grain)
	if b.Seed != scene.DefaultSeed {
		words += " pattern " + unit.FormatNumber(float64(b.Seed))
	}
	return words
}

// bulb names the bulb that was put in; "" where it is the lamp's own.
func bulb(h *kit.Head) string {
	if h.BulbWatts == 0 {
		return ""
	}
	return unit.FormatPower(h.BulbWatts) + " bulb"
}

// scrims names the wire before a lamp: "double + half-single scrim".
func scrims(h *kit.Head) string {
	var all []string
	for _, s := range h.Scrims {
		all = append(all, string(s))
	}
	if len(all) == 0 {
		return ""
	}
	return strings.Join(all, " + ") + " scrim"
}

// doors names the leaves of barn doors that are not folded back.
func doors(d *kit.HungDoors) string {
	if d == nil {
		return ""
	}
	var leaves []string
	for _, leaf := range [...]struct {
		name   string
		opened float64
	}{{"top", d.Top}, {"bottom", d.Bottom}, {"left", d.Left}, {"right", d.Right}} {
		if leaf.opened < kit.Folded {
			leaves = append(leaves, leaf.name+" "+unit.FormatAngle(leaf.opened))
		}
	}
	turned := ""
	if d.Turn != 0 {
		turned = "turned " + unit.FormatAngle(d.Turn)
	}
	return Joined(" ", "doors", strings.Join(leaves, " "), turned)
}

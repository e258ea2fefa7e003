package section

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/unit"
)

// accessories names what hangs on a light and stands in it beside its modifier: the bulb that was put in, scrims, doors
// with the angles of their leaves.
func accessories(l *plan.Light) string {
	h := &l.Head
	var scrims []string
	for _, s := range h.Scrims {
		scrims = append(scrims, string(s))
	}
	bulb, wire := "", strings.Join(scrims, " + ")
	if h.BulbWatts > 0 {
		bulb = unit.FormatPower(h.BulbWatts) + " bulb"
	}
	if wire != "" {
		wire += " scrim"
	}
	return Joined(", ", bulb, wire, doors(h.Doors))
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

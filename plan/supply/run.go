package supply

import (
	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/power"
)

// Run is the cable from an outlet to a light, and what is lost in it.
type Run struct {
	*plan.Run
	Section float64 // of each core, mm²; 0: no cable of the kit carries as much
	Drop    float64 // share of the voltage that is lost in it with the light at full
}

// runOf is the cable that feeds a light; nil where it has none.
func runOf(s *plan.Setup, c *plan.Circuit, d *Draw) *Run {
	if d.Light.Cable == nil {
		return nil
	}
	r := &Run{Run: d.Light.Cable, Section: sectionFor(s.Kit, c.Breaker)}
	if r.Section > 0 && c.Volts > 0 {
		r.Drop = power.CableDrop(r.Length, r.Section, d.Full/float64(d.Light.Count)) / c.Volts
	}
	return r
}

// sectionFor is the least section of a cable of the kit that carries what a breaker lets through, mm²; 0 where none does.
func sectionFor(k *kit.Catalogue, breaker float64) (least float64) {
	if k == nil {
		return 0
	}
	for _, item := range k.Items {
		if item.Section > 0 && item.Amps >= breaker && (least == 0 || item.Section < least) {
			least = item.Section
		}
	}
	return least
}

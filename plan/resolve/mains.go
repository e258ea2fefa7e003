package resolve

import (
	"slices"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
)

// mainsOf is the voltage that a light gets: that of its circuit; of one that names none that of all circuits, where they
// agree. It is 0 where nothing says it.
func (r *lightPass) mainsOf(l *scene.Light) float64 {
	var all []float64
	for i := range r.s.Circuits {
		if c := &r.s.Circuits[i]; !l.Circuit.Set || c.Name == l.Circuit.Value {
			all = append(all, circuitVolts(c))
		}
	}
	if all = slices.Compact(all); len(all) == 1 {
		return all[0]
	}
	return 0
}

// circuitVolts is the voltage of a circuit: as it is written, else by the frequency of its mains. Of a battery it is not
// known.
func circuitVolts(c *scene.Circuit) float64 {
	const between = 55 // Hz
	switch {
	case c.Volts.Set:
		return c.Volts.Value
	case c.Kind.Value == scene.BatteryCircuit || c.Hertz.Set && c.Hertz.Value == 0:
		return 0
	case c.Hertz.Set && c.Hertz.Value > between:
		return kit.MainsLow
	}
	return kit.MainsHigh
}

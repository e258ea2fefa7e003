package explain

import (
	"slices"
	"strconv"

	"scrimshaw/plan"
)

// total adds up what a light gives on all its ways.
func (x *explainer) total(l *Light) []Step {
	w := newWorking()
	formula := ""
	for i := range l.Ways {
		symbol := "E" + strconv.Itoa(i+1)
		w.known[symbol] = l.Ways[i].Value
		formula += " + " + symbol
	}
	returned := 0.0
	for i := range l.Returned {
		returned += l.Returned[i].Lux
	}
	if len(l.Returned) > 0 {
		w.given("off surfaces, all together", "R", returned, x.unit(), "found by the engine: surfaces send light to and fro until it is spent")
		w.strike(x.reading.Struck())
		formula += " + R"
	}
	if formula == "" {
		return nil
	}
	w.worked("this light", "L", formula[len(" + "):], l.Value, x.unit(), "")
	w.strike(x.reading.Struck())
	return w.steps
}

// sum adds up the lights.
func (x *explainer) sum(lights []Light) []Step {
	w := newWorking()
	formula, all := "", 0.0
	for i := range lights {
		if l := &lights[i]; l.Value > 0 {
			symbol := "L" + strconv.Itoa(i+1)
			w.known[symbol] = l.Value
			formula += " + " + symbol
			all += l.Value
		}
	}
	if formula == "" {
		formula = " + 0"
	}
	w.worked("all lights", x.symbol(), formula[len(" + "):], all, x.unit(), "light adds up")
	w.strike(x.reading.Struck())
	return w.steps
}

// symbol is that of the reading.
func (x *explainer) symbol() string {
	if x.spot() {
		return "B"
	}
	return "E"
}

// exposure is the stop that a reading calls for, and how far it lies from the working stop.
func (x *explainer) exposure(e plan.Exposure) []Step {
	value := x.reading.Lux
	if x.spot() {
		value = x.reading.Luminance
	}
	if value == nil || !(e.ISO > 0 && e.Seconds > 0 && e.Constant > 0) {
		return nil
	}
	w := newWorking()
	w.known[x.symbol()] = *value
	w.given("exposure index", "S", e.ISO, "", "the scene, or its default")
	w.given("exposure time", "t", e.Seconds, "s", "shutter and frames a second")
	w.given("constant of the incident meter", "C", e.Constant, "lx·s", "ISO 2720")
	set, times := e.Metered(), ""
	if e.Lost > 0 {
		w.given("share that passes before the lens", "P", set.Passes(), "", e.Filters)
		times = " × P"
	}
	w.given("working stop", "n", e.Stop.N, "", "the scene; marks are powers of the square root of two")
	w.worked("what the working stop calls for", "W", "n² × C / (S × t"+times+")", set.Lux(e.Stop.N), "lx", "ISO 2720")
	w.strike(x.cameraStruck())
	if x.spot() {
		w.worked("luminance of mid grey there", "G", "0.18 × W / π", set.MidGrey(e.Stop.N), "cd/m²", "a matt card of 18 %")
		w.strike(x.cameraStruck())
		x.over(w, "over mid grey", "G")
		return w.steps
	}
	if x.reading.Stop != nil {
		w.worked("stop that the reading calls for", "T", "sqrt(E × S × t"+times+" / C)", *x.reading.Stop, "", "ISO 2720")
		w.strike(x.reading.StopsStruck())
	}
	x.over(w, "over the working stop", "W")
	return w.steps
}

// over is how many stops the reading lies over what another symbol stands for.
func (x *explainer) over(w *working, words, base string) {
	if over := x.reading.Over; over != nil {
		w.worked(words, "", "log2("+x.symbol()+" / "+base+")", *over, "stops", "a stop is a factor of two")
		w.strike(x.reading.StopsStruck())
	}
}

// cameraStruck says whether a key that is not computed yet could change what the camera makes of light.
func (x *explainer) cameraStruck() bool {
	return slices.ContainsFunc(x.reading.Uncomputed, func(u plan.Uncomputed) bool { return !u.AltersLight() })
}

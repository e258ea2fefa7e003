package colour

import "math"

// BeforeLens gives the light that looks to a camera like white w through a stack of corrections before its lens: what
// ThroughGels makes w of. held is true where no light is so warm or so cool, and it is brought to the end of what is.
func BeforeLens(w White, stack []Filter) (before White, held bool) {
	mired, duv := 0.0, 0.0
	for _, f := range stack {
		mired += f.Mired
		duv += f.Duv
	}
	if mired == 0 && duv == 0 {
		return w, false
	}
	before = w.OnPlanck()
	wanted := Mired(before.Kelvin) - mired
	at := math.Min(math.Max(wanted, MinMired), MaxMired)
	return White{Kelvin: Mired(at), Duv: before.Duv - duv}, at != wanted
}

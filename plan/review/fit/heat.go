package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// What cloth and glass stand of heat rays, W/m². Dark cloth that gives 15 W/m² for each kelvin to the air reaches
// 90 °C in a room at about the first, the most that IEC 60598-1 lets a lit surface take. A pane takes up a quarter of such
// rays and gives them off on both sides: at the second its middle is some 35 K over its edge, which can crack it.
const (
	mostHeatOfCloth = 1000.0
	mostHeatOfGlass = 3400.0
)

// wattsFit warns of what is on a lamp and not made for its heat.
func (r *checker) wattsFit(l *plan.Light) bool {
	h := &l.Head
	watts := h.FilamentWatts()
	if !r.out.EverUp(l) || h.MostWatts == 0 || watts <= h.MostWatts*(1+1e-9) {
		return true
	}
	most := unit.FormatPower(h.MostWatts)
	as := unit.FormatPower(h.Watts)
	if h.Technology != term.Tungsten {
		as += ", as hot as a filament of " + unit.FormatPower(math.Round(watts)) + ","
	}
	if _, shaded := h.ShadeForm(); shaded || h.Class == term.Practical {
		r.Warnf(l.Span, CodeTooHot, "take a bulb of "+most+" or less, or one of LEDs", "%s has a bulb of %s in its %s, which is made for %s", l.Numbered(), as, h.ModifierLabel, most)
		return true
	}
	r.Warnf(l.Span, CodeTooHot, "take one that is made for more, or a cooler head", "%s has %s behind its %s, which stands the heat of %s", l.Numbered(), as, h.ModifierLabel, most)
	return true
}

// heatedSheet is cloth or glass that a lamp may heat.
type heatedSheet struct {
	what    string
	corners [4]r3.Vec
	most    float64 // W/m²
	harm    string
}

// heatFits warns of cloth and glass that a lamp heats too much.
func (r *checker) heatFits(l *plan.Light) bool {
	if !r.out.EverUp(l) || l.Head.Heat(1) == 0 || l.Head.Source.Distribution == nil {
		return true
	}
	out := r.out.MostOut(l)
	for _, s := range r.heatedSheets() {
		heat, near := hottest(l, out, &s.corners)
		if heat <= s.most {
			continue
		}
		far := near * math.Sqrt(heat/s.most)
		r.Warnf(l.Span, CodeHeat, "move it to "+r.Length(math.Ceil(far*10)/10)+" from there, widen its beam, or dim it",
			"%s puts %s kW/m² on %s from %s, and %s from %s", l.Numbered(), unit.FormatNumber(math.Round(heat/100)/10), s.what, r.Length(near),
			s.harm, unit.FormatNumber(math.Round(s.most/100)/10))
	}
	return true
}

// heatedSheets are the grip and the panes of the set-up.
func (r *checker) heatedSheets() (all []heatedSheet) {
	for i := range r.out.Grip {
		g := &r.out.Grip[i]
		all = append(all, heatedSheet{string(g.Kind) + " " + g.Numbered(), g.Rectangle(), mostHeatOfCloth, "cloth scorches"})
	}
	for i := range r.out.Openings {
		o := &r.out.Openings[i]
		if o.Glass == "" || o.Kind != term.Window {
			continue
		}
		out := r2.Scale(o.Depth/2, o.Outward)
		left, right := r2.Add(o.Left, out), r2.Add(o.Right, out)
		all = append(all, heatedSheet{"the glass of " + o.Name, [4]r3.Vec{
			plan.AtHeight(left, o.Sill), plan.AtHeight(right, o.Sill), plan.AtHeight(right, o.Head), plan.AtHeight(left, o.Head),
		}, mostHeatOfGlass, "panes crack"})
	}
	return all
}

// heatSteps is how many places each way of a sheet are asked.
const heatSteps = 8

// hottest is the most heat that a lamp puts on a place of a sheet where it puts out so much, W/m², and how far from the lamp that is.
// A face gives no more than it sends out.
func hottest(l *plan.Light, out float64, corners *[4]r3.Vec) (heat, near float64) {
	source := &l.Head.Source
	u, v := r3.Sub(corners[1], corners[0]), r3.Sub(corners[3], corners[0])
	normal := r3.Unit(r3.Cross(u, v))
	most := math.Inf(1)
	if area := source.Opening.Surface(); area > 0 {
		most = source.Flux / area
	}
	for n := range (heatSteps + 1) * (heatSteps + 1) {
		x, y := float64(n%(heatSteps+1))/heatSteps, float64(n/(heatSteps+1))/heatSteps
		way := r3.Sub(r3.Add(corners[0], r3.Add(r3.Scale(x, u), r3.Scale(y, v))), l.Frame.At)
		far := r3.Norm(way)
		if far == 0 {
			continue
		}
		d := r3.Scale(1/far, way)
		lux := min(source.Intensity(l.Frame.Local(d))*math.Abs(r3.Dot(d, normal))/(far*far), most)
		if h := l.Head.Heat(lux * out / max(l.Head.Filter, 1e-3)); h > heat {
			heat, near = h, far
		}
	}
	return heat, near
}

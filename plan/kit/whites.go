package kit

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// setWhite sets the lamp's own white: the choice's where the unit can make it, else its native.
func (b *builder) setWhite(u *Unit) {
	w := colour.White{Kelvin: u.Native}
	if w.Kelvin == 0 { // its entry is at fault, and says so
		w.Kelvin = PlainWhite
	}
	if asked := b.choice.White; asked != nil {
		w = *asked
		if w.Kelvin < u.Kelvin[0]-0.5 || w.Kelvin > u.Kelvin[1]+0.5 {
			b.whiteFault(u, w.Kelvin)
		}
	}
	w.Duv += b.choice.Tint
	if math.Abs(w.Duv) > u.Tint+1e-9 {
		b.report(source.Warning, b.choice.TintSpan, CodeTintRange, "use a plus or minus green gel, which works on any unit",
			"%q cannot be set to a Duv of %s; the figures take it as if it could", u.Name, unit.FormatDuv(w.Duv))
	}
	b.head.native = w
}

// whiteFault says which whites a unit makes, the nearest of them, and the way there with gels.
func (b *builder) whiteFault(u *Unit, asked float64) {
	nearest := math.Min(math.Max(asked, u.Kelvin[0]), u.Kelvin[1])
	makes := "from " + unit.FormatKelvin(u.Kelvin[0]) + " to " + unit.FormatKelvin(u.Kelvin[1])
	if u.Kelvin[0] == u.Kelvin[1] {
		makes = unit.FormatKelvin(u.Kelvin[0]) + " only"
	}
	gels := "CTO"
	if asked > nearest {
		gels = "CTB"
	}
	b.fault(b.choice.WhiteSpan, CodeWhiteRange,
		fmt.Sprintf("set it to %s, the nearest, and add %s gels", unit.FormatKelvin(nearest), gels),
		"%q makes %s, not %s", u.Name, makes, unit.FormatKelvin(asked))
}

// Filter gives what the gel does to light.
func (g *GelData) Filter() colour.Filter {
	return colour.Filter{Mired: g.Mired, Duv: g.Duv, Transmittance: g.Transmittance, Tint: g.XY}
}

// addGels sends the lamp's white through the gels of the choice.
func (b *builder) addGels() {
	h := &b.head
	b.step("white of the lamp", "", "", h.native.Kelvin, "K")
	for _, gel := range b.choice.Gels {
		g := b.catalogue.Gel(gel.Name)
		if g == nil {
			b.fault(gel.Span, CodeUnknownGel, unknown(gel.Name, Names(b.catalogue.Gels), "gels"), "there is no gel %q in the catalogue", gel.Name)
			continue
		}
		h.stack = append(h.stack, g.Filter())
		after := colour.ThroughGels(h.native, h.stack)
		b.step("white after "+g.Name, "mireds and Duv add", place(g.Origin), after.White.Kelvin, "K", g.Mired, g.Duv)
		b.step("light after "+g.Name, "transmittances multiply", place(g.Origin), after.Transmittance, "", g.Transmittance)
	}
	light := colour.ThroughGels(h.native, h.stack)
	h.White, h.RGB, h.Filter = light.White, light.RGB, light.Transmittance
	if len(h.stack) == 0 {
		h.White = h.native // keeps the word daylight
	}
	b.clampFault(light)
}

// clampFault warns of a stack that goes further than colour is followed.
func (b *builder) clampFault(light colour.Filtered) {
	switch m := light.Mired; {
	case m < colour.MinMired || m > colour.MaxMired:
		held := math.Min(math.Max(m, colour.MinMired), colour.MaxMired)
		b.report(source.Warning, b.choice.Span, CodeGelGamut, "use fewer gels",
			"the gels take %s to %s mired; the figures take it at %s mired, %s, the last white that is computed",
			b.lightName(), unit.FormatNumber(math.Round(m)), unit.FormatNumber(held), unit.FormatKelvin(colour.Mired(held)))
	case light.Clamped:
		b.report(source.Warning, b.choice.Span, CodeGelGamut, "",
			"the colour of %s is more saturated than the computation can hold; the figures take the nearest colour that it holds", b.lightName())
	}
}

// lightName is the name of the light, as a message on a sheet needs it.
func (b *builder) lightName() string {
	if _, name, ok := strings.Cut(b.choice.Path, "."); ok {
		return name
	}
	return "this light"
}

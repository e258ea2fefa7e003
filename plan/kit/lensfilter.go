package kit

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// LensFilter is a filter before a lens.
type LensFilter struct {
	Entry
	Converts [2]float64 // the white that it turns into another, and that other, K; 0: it leaves white as it is
	Mired    float64    // its shift in mireds, plus warms
	Stops    float64    // that it takes
}

func lensFilterShape() *source.Shape[LensFilter] {
	type f = LensFilter
	return &source.Shape[LensFilter]{Name: "filter", Doc: "A filter before a lens. An ND needs no entry: it is called by its density, `ND 0.6`.", Fields: []source.Field[LensFilter]{
		withDefault(doc(func(v *f) *string { return &v.Doc }), "its name"),
		required(field("stops", amount("a number of stops", "1.5", 0, MostFilterStops), func(v *f) *float64 { return &v.Stops },
			"The stops that it takes.")),
		withDefault(field("converts", pair("a pair of whites", "[5500 K, 3200 K]", kelvin("a white", "5500 K")), func(v *f) *[2]float64 { return &v.Converts },
			"The white that it turns into another, and that other: its shift in mireds follows."), "none"),
		withDefault(field("mired", amount("a shift in mireds", "131", -1000, 1000), func(v *f) *float64 { return &v.Mired },
			"Shift in mireds, positive warms."), "that of `converts`"),
	}}
}

// MostFilterStops is the most that one filter takes: a density of 4 takes 13.3.
const MostFilterStops = 14

// fill gives a filter the words that it leaves out, and the shift that follows from the whites that it converts.
func (f *LensFilter) fill() {
	if f.Converts[0] > 0 {
		f.Mired = colour.Mired(f.Converts[1]) - colour.Mired(f.Converts[0])
	}
	if f.Doc == "" {
		f.Doc = f.Name
	}
}

func (f *LensFilter) summary() string {
	says := "takes " + unit.FormatNumber(f.Stops) + " stops"
	if f.Mired != 0 {
		says += fmt.Sprintf(", %+.0f mired", f.Mired)
	}
	return says
}

// BeforeLens is what a filter does by its name: an ND by its density, a filter of the catalogue, or a gel that does not
// colour more than a correction. typical is true of what the catalogue says, and false of a density, which is exact.
func (c *Catalogue) BeforeLens(name string) (does colour.Filter, typical, ok bool) {
	if density, isND := densityOf(name); isND && density <= MostDensity {
		return colour.Filter{Transmittance: math.Exp2(-lens.DensityStops(density))}, false, true
	}
	if f := c.LensFilter(name); f != nil {
		return colour.Filter{Mired: f.Mired, Transmittance: math.Exp2(-f.Stops)}, true, true
	}
	if g := c.Gel(name); g != nil && g.Kind != term.Colour {
		return g.Filter(), true, true
	}
	return colour.Filter{}, false, false
}

// MostDensity is that of the densest ND that is made for a lens (common practice).
const MostDensity = 4

// densityOf reads the density of an ND: ND 0.6, ND .6. A whole number is a factor as often, and does not count.
func densityOf(name string) (density float64, is bool) {
	figure, is := strings.CutPrefix(strings.ToLower(strings.TrimSpace(name)), "nd")
	if !is || !strings.Contains(figure, ".") {
		return 0, false
	}
	density, err := unit.ParseNumber(strings.TrimSpace(figure))
	return density, err == nil && density > 0
}

// NDFault says what is wrong with the name of an ND, and what to write; "" of all else.
func NDFault(name string) (message, hint string) {
	figure, is := strings.CutPrefix(strings.ToLower(strings.TrimSpace(name)), "nd")
	factor, err := unit.ParseNumber(strings.TrimSpace(figure))
	switch {
	case !is || err != nil:
		return "", ""
	case factor <= 1 || strings.Contains(figure, "."):
		return fmt.Sprintf("an ND has a density over 0 and up to %g, and %q has not", float64(MostDensity), name), "ND 0.3, ND 0.6 or ND 0.9 take one, two or three stops"
	}
	return fmt.Sprintf("an ND is called by its density, and %q may be a factor", name),
		fmt.Sprintf("write ND %.1f for a factor of %s", math.Log10(factor), unit.FormatNumber(factor))
}

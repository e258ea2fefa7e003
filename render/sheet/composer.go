package sheet

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// composer holds one sheet in the making.
type composer struct {
	in        Input
	wish      wish
	date      string
	log       *faults
	p         pad                      // for its styles; it has no page
	uses      map[string]bool          // the symbols that the plan shows
	people    map[string]symbols.Drawn // as they stand on the plan
	stands    []symbols.Drawn          // lights, grip, cameras and people as they stand on it
	furniture []symbols.Drawn          // in the order of the set-up
	rungs     []int                    // how many labels fell to each rung of their ladder
	reduced   int                      // labels that say less than what they are about
	shortened int                      // labels that say less than they could
	terse     bool                     // tags are their numbers alone: the lists stand right below
	part      int                      // of a plan in parts, the one at hand
	insetMost float64                  // the height of the second map, mm
}

// clear forgets the plan that was drawn.
func (c *composer) clear() {
	c.uses, c.people = map[string]bool{}, map[string]symbols.Drawn{}
	c.stands, c.furniture, c.rungs, c.reduced, c.shortened = nil, nil, nil, 0, 0
}

// used notes that the plan shows a symbol.
func (c *composer) used(kind string) { c.uses[kind] = kind != "" }

func newComposer(in Input, o Options, log *faults) *composer {
	c := &composer{in: in, date: o.Date, log: log, insetMost: insetHeights[0]}
	c.clear()
	c.wish = asked(o, in.Setup, log)
	c.p = pad{look: &c.wish.theme, face: o.Font}
	return c
}

// rung counts a label on its rung.
func (c *composer) rung(n int) {
	for len(c.rungs) <= n {
		c.rungs = append(c.rungs, 0)
	}
	c.rungs[n]++
}

// length prints metres with their unit, or feet and inches.
func (c *composer) length(m float64) string { return unit.FormatLength(m, c.in.Setup.Feet) }

// bare prints a length for a column whose head names the unit.
func (c *composer) bare(m float64) string { return strings.TrimSuffix(c.length(m), " m") }

// measured is a heading of a table of bare lengths.
func (c *composer) measured(s string) string {
	if c.in.Setup.Feet {
		return s
	}
	return s + ", in metres"
}

// inFootcandles says whether light is printed in footcandles.
func (c *composer) inFootcandles() bool { return c.wish.levels == carto.Footcandles }

// lux prints an illuminance.
func (c *composer) lux(lx *float64) string {
	switch {
	case lx == nil:
		return "–"
	case c.inFootcandles():
		return unit.FormatFootcandles(*lx)
	}
	return unit.FormatLux(*lx)
}

// stop prints the aperture of a reading to a third, or a dash.
func stop(n *float64) string {
	if n == nil || !(*n > 0) {
		return "–"
	}
	return unit.FormatStop(*n)
}

// kelvin prints a colour temperature, or a dash where there is none.
func kelvin(k *float64) string {
	if k == nil {
		return "–"
	}
	return unit.FormatKelvin(*k)
}

// signed puts a true minus in place of a hyphen.
func signed(s string) string { return strings.Replace(s, "-", "−", 1) }

// exposure is the set-up's as the lens package takes it.
func (c *composer) exposure() lens.Exposure {
	x := c.in.Setup.Exposure
	return lens.Exposure{ISO: x.ISO, Seconds: x.Seconds, Constant: x.Constant}
}

// working is the illuminance of the working stop, lx; 0 where the exposure is incomplete.
func (c *composer) working() float64 {
	x := c.exposure()
	if !(x.ISO > 0 && x.Seconds > 0 && x.Constant > 0) {
		return 0
	}
	return x.Lux(c.in.Setup.Exposure.Stop.N)
}

// white is the chromaticity that colours are seen against: the camera's white.
func (c *composer) white() [2]float64 {
	w := c.in.Setup.Exposure.White
	if !(w.Kelvin > 0) {
		w.Kelvin = 5600
	}
	return w.XY()
}

// lampInk is the ink of a light: its own colour as the camera sees it.
func (c *composer) lampInk(l *plan.Light) ink.Colour {
	return c.wish.theme.lamp(lampColour(l), c.white())
}

// beamInk is the ink of the lines of a light's beam.
func (c *composer) beamInk(l *plan.Light) ink.Colour {
	return c.wish.theme.beam(lampColour(l), c.white())
}

// lampColour is the colour of a light; of one that is out, what it would be.
func lampColour(l *plan.Light) colour.RGB {
	rgb := l.Drive
	if !(rgb.Y() > 0) {
		rgb = l.Head.RGB
	}
	if !(rgb.Y() > 0) && l.White.Kelvin > 0 {
		rgb = l.White.RGB()
	}
	return rgb
}

// lightLabel is a light's unit and modifier as one line.
func (c *composer) lightLabel(l *plan.Light) string {
	return joined(", ", c.unitLabel(l), c.modifierLabel(l))
}

func (c *composer) unitLabel(l *plan.Light) string {
	s := c.sized(l.Head.UnitLabel)
	if s == "" {
		s = l.Name
	}
	if l.Count > 1 {
		s = unit.FormatNumber(float64(l.Count)) + " × " + s
	}
	return s
}

func (c *composer) modifierLabel(l *plan.Light) string { return c.sized(l.Head.ModifierLabel) }

// metres is a size as the catalogue writes it.
var metres = regexp.MustCompile(`\b(\d+(?:\.\d+)?) m\b`)

// sized is a name of the catalogue, which gives sizes in metres, with them in the scene's own units.
func (c *composer) sized(label string) string {
	if !c.in.Setup.Feet {
		return label
	}
	return metres.ReplaceAllStringFunc(label, func(s string) string {
		m, err := strconv.ParseFloat(strings.TrimSuffix(s, " m"), 64)
		if err != nil {
			return s
		}
		return c.length(m)
	})
}

// joined joins what is not empty.
func joined(between string, parts ...string) string {
	var some []string
	for _, s := range parts {
		if s != "" {
			some = append(some, s)
		}
	}
	return strings.Join(some, between)
}

// lightColour prints the colour of a light: its CCT, with Duv where that shows.
func lightColour(l *plan.Light) string {
	w := l.White.OnPlanck()
	if !(w.Kelvin > 0) {
		return "–"
	}
	if math.Abs(w.Duv) > 0.05 {
		return "coloured"
	}
	return unit.FormatKelvin(w.Kelvin)
}

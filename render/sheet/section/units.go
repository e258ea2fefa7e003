package section

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
)

// Units are those that a sheet prints lengths and light in.
type Units struct {
	Feet    bool       // lengths in feet and inches, not in metres
	Light   carto.Unit // what contours are lettered in
	Stop    float64    // the working stop, a T-number
	Written string     // as the scene has it: "T3.2"
}

// Length prints metres with their unit, or feet and inches.
func (u Units) Length(m float64) string { return unit.FormatLength(m, u.Feet) }

// Bare prints a length for a column whose head names the unit.
func (u Units) Bare(m float64) string { return strings.TrimSuffix(u.Length(m), " m") }

// measured is a heading of a table of bare lengths.
func (u Units) measured(s string) string {
	if u.Feet {
		return s
	}
	return s + ", in metres"
}

// inFootcandles says whether light is printed in footcandles.
func (u Units) inFootcandles() bool { return u.Light == carto.Footcandles }

// The units of illuminance.
const (
	luxWord        = "lx"
	footcandleWord = "fc"
)

// lightUnit is the unit that illuminance is printed in.
func (u Units) lightUnit() string {
	if u.inFootcandles() {
		return footcandleWord
	}
	return luxWord
}

// Lux prints an illuminance.
func (u Units) Lux(lx *float64) string {
	switch {
	case lx == nil:
		return "–"
	case u.inFootcandles():
		return unit.FormatFootcandles(*lx)
	}
	return unit.FormatLux(*lx)
}

// Stop prints the aperture of a reading to a third, or a dash.
func Stop(n *float64) string {
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

// LightLabel is a light's unit and modifier as one line.
func (u Units) LightLabel(l *plan.Light) string {
	return Joined(", ", u.UnitLabel(l), u.ModifierLabel(l))
}

// UnitLabel names the unit of a light, with how many there are.
func (u Units) UnitLabel(l *plan.Light) string {
	s := u.sized(l.Head.UnitLabel)
	if s == "" {
		s = l.Name
	}
	if l.Count > 1 {
		s = unit.FormatNumber(float64(l.Count)) + " × " + s
	}
	return s
}

// ModifierLabel names what a light wears.
func (u Units) ModifierLabel(l *plan.Light) string {
	return Joined(", ", u.sized(l.Head.ModifierLabel), accessories(l))
}

// ShortModifierLabel names what a light wears without the figures of what it can be set to.
func (u Units) ShortModifierLabel(l *plan.Light) string {
	return Joined(", ", u.sized(l.Head.ModifierLabel), shortAccessories(l))
}

// metres is a size as the catalogue writes it, of one or two figures: "0.9 m", "1.2 × 0.6 m".
var metres = regexp.MustCompile(`\b(?:(\d+(?:\.\d+)?) × )?(\d+(?:\.\d+)?) m\b`)

// sized is a name of the catalogue, which gives sizes in metres, with them in the scene's own units.
func (u Units) sized(label string) string {
	if !u.Feet {
		return label
	}
	return metres.ReplaceAllStringFunc(label, func(s string) string {
		var sides []string
		for side := range strings.SplitSeq(strings.TrimSuffix(s, " m"), " × ") {
			m, err := strconv.ParseFloat(side, 64)
			if err != nil {
				return s
			}
			sides = append(sides, u.Length(m))
		}
		return strings.Join(sides, " × ")
	})
}

// LightLevel prints the level of a light.
func LightLevel(l *plan.Light) string {
	if l.Level <= 0 {
		return "off"
	}
	return unit.FormatPercent(l.Level)
}

// LightColour prints the colour of a light: its CCT, with Duv where that shows; of one that is off, none.
func LightColour(l *plan.Light) string {
	if l.Level <= 0 {
		return "–"
	}
	w := l.White.OnPlanck()
	if !(w.Kelvin > 0) {
		return "–"
	}
	if math.Abs(w.Duv) > 0.05 {
		return "coloured"
	}
	return unit.FormatKelvin(w.Kelvin)
}

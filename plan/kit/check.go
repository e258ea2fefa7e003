package kit

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// fill gives a unit the values that it leaves to their defaults.
func (u *Unit) fill() {
	u.Modifier = normaliseModifier(u.Modifier)
	if u.Modifier == "" && len(u.Outputs) > 0 && u.Spread == "" {
		u.Modifier = u.Outputs[0].Modifier
	}
	u.PowerFactor = orOne(u.PowerFactor)
	if u.Native == 0 {
		u.Native = u.Kelvin[0]
	}
}

// check says what does not go together in a unit.
func (u *Unit) check() (message, hint string) {
	switch {
	case u.Bulb != "":
		return "", "" // white and flux come with the bulb
	case u.Kelvin[0] == 0:
		return "does not say what white it makes", "add kelvin: 5600 K"
	case u.Native < u.Kelvin[0] || u.Native > u.Kelvin[1]:
		return "has its native white outside its own range", ""
	case len(u.Outputs) == 0 && u.Lumens == 0:
		return "does not say how much light it makes", "add lumens: or outputs:"
	case u.Spread != "" && u.Lumens == 0:
		return "says how its bare flux is spread, but not how much it is", "add lumens:"
	case u.Levels.Kelvin > 0 && u.Levels.Least == 0:
		return "says what white it has at its least level, and not what level that is", "add least: 50 %"
	case u.Technology == "":
		return "does not say what makes its light", "add technology: led"
	}
	return "", ""
}

// bulbWidth is the diameter of a household bulb whose entry does not say it, m: common practice.
const bulbWidth = 0.06

// fill gives a bulb the values that it leaves to their defaults.
func (b *Bulb) fill() {
	b.PowerFactor = orOne(b.PowerFactor)
	if b.Width == 0 {
		b.Width = bulbWidth
	}
}

// fill gives a modifier that zooms the figures of its flood, which hold where nothing is said of focus, and makes a
// shade pass all that its own figures do not take.
func (m *Modifier) fill() {
	if n := len(m.Zoom); n > 0 {
		flood := m.Zoom[n-1]
		m.Efficiency, m.Beam, m.Field = flood.Efficiency, flood.Beam, flood.Field
	}
	if m.Shade != nil || m.Skirt > 0 {
		m.Efficiency = 1
	}
}

// check says what does not go together in a modifier.
func (m *Modifier) check() (message, hint string) {
	switch {
	case m.Field > 0 && m.Field <= m.Beam:
		return "must have a field angle wider than its beam angle", ""
	case m.Grid[0] > 0 && m.Honeycomb > 0:
		return "has two kinds of cells", "keep grid or honeycomb"
	case m.Shade != nil && m.Shade.makesLight():
		return tooBright, ""
	case m.Skirt > 0 && (m.Beam > 0 || m.Grid[0] > 0 || m.Honeycomb > 0 || m.Opening.Form != photometry.Point):
		return "is a skirt, and needs nothing else to say how its light leaves", "leave the rest out"
	case m.Shade != nil && (m.Beam > 0 || m.Grid[0] > 0 || m.Honeycomb > 0 || m.Opening.Form != photometry.Point):
		return "is a shade, and needs nothing else to say how its light leaves", "leave the rest out"
	}
	for _, z := range m.Zoom {
		if z.Field > 0 && z.Field <= z.Beam {
			return "must have a field angle wider than its beam angle at each focus", ""
		}
	}
	return "", ""
}

// fill gives a gel the words that it leaves out, and the shift that follows from the whites that it converts.
func (g *GelData) fill() {
	g.Part = orOne(g.Part)
	if g.Converts[0] > 0 {
		g.Mired = g.Part * (colour.Mired(g.Converts[1]) - colour.Mired(g.Converts[0]))
	}
	if g.Label == "" {
		g.Label = g.Name
	}
	if g.Doc == "" {
		g.Doc = g.Name
	}
}

// check says what does not go together in a gel.
func (g *GelData) check() (message, hint string) {
	switch {
	case g.Kind == term.Colour && g.XY == nil:
		return "does not say what colour it is", "add xy: [0.58, 0.40]"
	case g.Transmittance == 0:
		return "lets no light through", ""
	}
	return "", ""
}

// fill gives a gate the circle of confusion and the readout that it leaves out.
func (s *Sensor) fill() {
	if s.Confusion == 0 {
		s.Confusion = lens.Confusion(s.Width, s.Height)
	}
	if s.Readout == 0 {
		s.Readout = DefaultReadout
	}
}

// tooBright is said of a surface that makes light.
const tooBright = "lets through and throws back more light than falls on it"

// check says whether a material makes light.
func (m *Material) check() (message, hint string) {
	if m.Reflectance+m.Transmittance > 1 {
		return tooBright, ""
	}
	return "", ""
}

// check says what does not go together in a stand.
func (s *Stand) check() (message, hint string) {
	if s.Highest < s.Lowest {
		return "has its highest height below its lowest", ""
	}
	return "", ""
}

// orOne is a factor, 1 where it was left out.
func orOne(v float64) float64 {
	if v == 0 {
		return 1
	}
	return v
}

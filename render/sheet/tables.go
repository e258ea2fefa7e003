package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/symbols/ink"
)

// lights is the list of lights: what it is, how it is set, where it points, where the tape puts it.
// What has no column runs on below the name, for a column would cut the names.
func (c *composer) lights() *section {
	t := table{columns: []column{
		{strong: true},
		{flexible: true},
		{head: "colour", align: ink.Right},
		{head: "level", align: ink.Right},
		{head: "height", align: ink.Right},
		{head: "throw", align: ink.Right},
	}}
	var coloured []plan.Uncomputed
	for i := range c.in.Setup.Lights {
		l := &c.in.Setup.Lights[i]
		chip := c.lampInk(l)
		keys := onColour(c.in.Setup, l.Name)
		coloured = append(coloured, keys...)
		throw := "–"
		if l.Throw > 0 {
			throw = c.bare(l.Throw)
		}
		t.entries = append(t.entries, entry{
			cells:  []string{l.Tag, c.unitLabel(l), lightColour(l), unit.FormatPercent(l.Level), c.bare(l.Height), throw},
			notes:  c.lightNotes(l),
			chip:   &chip,
			struck: some(len(keys) > 0, 2),
		})
	}
	return &section{title: c.measured("Lights"), rank: needed, tables: []table{t}, lacks: nonEmpty(without(coloured))}
}

func (c *composer) lightNotes(l *plan.Light) []string {
	return nonEmpty(
		joined("; ", joined(", ", c.modifierLabel(l), strings.Join(l.Gels, " + "), mountWords(l.Mount), c.rise(string(l.Mount.Kind), l.Frame.At.Z-l.Base, l.Height)),
			joined(", ", c.aimWords(l), powerWords(l)), l.Note),
		c.placing(l.Placing),
	)
}

// mountWords names what is worth saying of a mount: a stand is what one expects.
func mountWords(m plan.Mount) string {
	switch m.Kind {
	case "", "stand":
		if m.On != "" {
			return "stand on " + m.On
		}
		return ""
	case "clamp", "wall":
		return joined(" on ", string(m.Kind), m.On)
	case "ceiling":
		return "from the ceiling"
	case "floor":
		if m.On == "" {
			return "on the floor"
		}
		return "on " + m.On
	}
	return string(m.Kind)
}

// rise says how high a thing is above what its stand stands on, where that is not the floor that heights
// count from: what a stand has to reach.
func (c *composer) rise(mount string, rise, height float64) string {
	onStand := mount == "" || mount == "stand" || mount == "boom"
	if !onStand || c.length(rise) == c.length(height) {
		return ""
	}
	return c.length(rise) + " above what it stands on"
}

// placing says the two distances that put a thing in its place with a tape.
func (c *composer) placing(ds []plan.Dimension) string {
	var parts []string
	for _, d := range ds {
		parts = append(parts, c.length(d.Metres)+" from "+d.From)
	}
	return strings.Join(parts, ", ")
}

// grip is the list of grip.
func (c *composer) grip() *section {
	t := table{columns: []column{
		{strong: true},
		{flexible: true},
		{head: "size", align: ink.Right},
		{head: "height", align: ink.Right},
	}}
	for i := range c.in.Setup.Grip {
		g := &c.in.Setup.Grip[i]
		t.entries = append(t.entries, entry{
			cells: []string{g.Tag, joined(", ", g.Kind, g.Cloth, g.Surface), c.bare(g.Size[0]) + " × " + c.bare(g.Size[1]),
				c.bare(g.Height)},
			notes: nonEmpty(joined("; ", c.rise(string(g.Mount.Kind), g.Frame.At.Z-g.Base, g.Height), g.Note), c.placing(g.Placing)),
		})
	}
	return &section{title: c.measured("Grip"), rank: other, tables: []table{t}}
}

// cameras is the list of cameras.
func (c *composer) cameras() *section {
	t := table{columns: []column{
		{strong: true},
		{flexible: true},
		{head: "lens", align: ink.Right},
		{head: "angle of view", align: ink.Right},
		{head: "height", align: ink.Right},
	}}
	var squeezed []plan.Uncomputed
	for i := range c.in.Setup.Cameras {
		m := &c.in.Setup.Cameras[i]
		keys := onView(c.in.Setup, m.Name)
		squeezed = append(squeezed, keys...)
		t.entries = append(t.entries, entry{
			cells: []string{m.Name, unit.FormatAspect(m.Aspect), unit.FormatLens(m.Lens),
				fmt.Sprintf("%.1f° × %.1f°", m.HAOV, m.VAOV), c.bare(m.Height)},
			notes:  nonEmpty(joined(", ", m.Sensor, gateWords(m)), c.ownExposure(m), c.rise("stand", m.Frame.At.Z-m.Base, m.Height)),
			struck: some(len(keys) > 0, 3),
		})
	}
	return &section{title: c.measured("Cameras"), rank: other, tables: []table{t}, lacks: nonEmpty(without(squeezed))}
}

// ownExposure says what a camera sets differently from the scene.
func (c *composer) ownExposure(m *plan.Camera) string {
	own, all := m.Exposure, c.in.Setup.Exposure
	differs := func(is bool, words string) string { return strings.Join(some(is, words), "") }
	return joined(", ",
		differs(own.Stop.N > 0 && own.Stop.N != all.Stop.N, "T"+unit.FormatNumber(own.Stop.Written)),
		differs(own.ISO > 0 && own.ISO != all.ISO, "ISO "+unit.FormatNumber(own.ISO)),
		differs(own.FPS > 0 && own.FPS != all.FPS, unit.FormatNumber(own.FPS)+" fps"),
		differs(own.Degrees > 0 && own.Degrees != all.Degrees, unit.FormatAngle(own.Degrees)),
		differs(own.Seconds > 0 && own.Seconds != all.Seconds, unit.FormatShutter(unit.Shutter{Seconds: own.Seconds})),
		differs(own.White.Kelvin > 0 && own.White != all.White, "white "+unit.FormatKelvin(own.White.Kelvin)))
}

// gateWords says how much of the sensor is used.
func gateWords(m *plan.Camera) string {
	if m.Gate[0] <= 0 || m.Gate[1] <= 0 {
		return ""
	}
	return fmt.Sprintf("%s × %s mm of it", tenths(m.Gate[0]), tenths(m.Gate[1]))
}

// faces is what the meter says at each face.
func (c *composer) faces() *section {
	s := section{title: "At the faces"}
	for i := range c.in.Faces {
		f := &c.in.Faces[i]
		t := table{columns: []column{{flexible: true}, {align: ink.Right}, {align: ink.Right}}, entries: c.faceRows(f)}
		if len(c.in.Faces) == 1 {
			s.title = "At the face of " + f.Person
		} else {
			t.columns[0].head = f.Person
		}
		s.tables = append(s.tables, t)
	}
	s.lacks = nonEmpty(leftOut(c.atFaces()...))
	return &s
}

// atFaces are the readings of the list of faces.
func (c *composer) atFaces() []*meter.Reading {
	var all []*meter.Reading
	for i := range c.in.Faces {
		f := &c.in.Faces[i]
		all = append(append(all, f.Key, f.Fill), f.Domes...)
	}
	return all
}

func (c *composer) faceRows(f *Face) []entry {
	if f.Key == nil || f.Fill == nil {
		return []entry{{cells: []string{orDash(f.Skipped), "", ""}}}
	}
	rows := []entry{
		c.faceRow("key side", f.Key),
		c.faceRow("fill side", f.Fill),
	}
	for _, d := range f.Domes {
		rows = append(rows, c.faceRow("dome toward "+lastPart(d.Name), d))
	}
	stops, ratio := contrastWords(f)
	key, fill := f.Key.Struck(), f.Fill.Struck()
	return append(rows,
		entry{cells: []string{"contrast, key : fill", stops, ratio}, struck: some(key || fill, 1, 2)},
		entry{cells: []string{"colour, key and fill", kelvin(f.Key.CCT), kelvin(f.Fill.CCT)}, struck: append(some(key, 1), some(fill, 2)...)},
	)
}

// faceRow is one reading of a face: its light and its stop.
func (c *composer) faceRow(name string, r *meter.Reading) entry {
	return entry{cells: []string{name, c.lux(r.Lux), stop(r.Stop)}, struck: append(some(r.Struck(), 1), some(r.StopsStruck(), 2)...)}
}

// contrastWords says a contrast in stops and as a ratio; dashes where a side is dark.
func contrastWords(f *Face) (stops, ratio string) {
	if !lit(f.Key) || !lit(f.Fill) {
		return "–", "–"
	}
	ratio = tenths(*f.Key.Lux / *f.Fill.Lux) + " : 1"
	if unit.EqualStops(f.Contrast) {
		return "equal", ratio
	}
	return signed(tenths(f.Contrast)) + " stops", ratio
}

// tenths prints a figure to a tenth; nothing has no sign.
func tenths(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10+0, 'f', 1, 64) }

func lit(r *meter.Reading) bool { return r != nil && r.Lux != nil && *r.Lux > 0 }

// lastPart is what follows the last dot of a name.
func lastPart(s string) string { return s[strings.LastIndexByte(s, '.')+1:] }

func orDash(s string) string {
	if s == "" {
		return "–"
	}
	return s
}

// meters is the list of the scene's own readings.
func (c *composer) meters() *section {
	t := table{columns: []column{
		{head: "Meter", flexible: true},
		{align: ink.Right},
		{head: "stop", align: ink.Right},
		{head: "over " + c.workingStop(), align: ink.Right},
	}}
	var own []*meter.Reading
	for i := range c.in.Readings {
		r := &c.in.Readings[i]
		if r.Person != "" {
			continue
		}
		t.entries = append(t.entries, entry{cells: []string{r.Name + ", " + r.Kind, c.metered(r), stop(r.Stop), overTenths(r.Over)},
			struck: append(some(r.Struck(), 1), some(r.StopsStruck(), 2, 3)...)})
		own = append(own, r)
	}
	return &section{title: "Meters", rank: other, tables: []table{t}, lacks: nonEmpty(leftOut(own...))}
}

// metered is the figure a meter shows: illuminance, or luminance of a spot.
func (c *composer) metered(r *meter.Reading) string {
	if r.Kind == "spot" {
		if r.Luminance == nil {
			return "–"
		}
		return unit.FormatLuminance(*r.Luminance)
	}
	return c.lux(r.Lux)
}

// over prints stops over the working stop.
func over(stops *float64) string {
	if stops == nil {
		return "–"
	}
	return signed(unit.FormatStops(*stops))
}

// overTenths prints stops over the working stop for a column, all to a tenth.
func overTenths(stops *float64) string {
	if stops == nil {
		return "–"
	}
	s := fmt.Sprintf("%+.1f", *stops)
	if s == "+0.0" || s == "-0.0" {
		s = "0.0"
	}
	return signed(s)
}

func nonEmpty(parts ...string) []string {
	var some []string
	for _, s := range parts {
		if s != "" {
			some = append(some, s)
		}
	}
	return some
}

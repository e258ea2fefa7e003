package sheet

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
	"scrimshaw/symbols/ink"
)

// lights is the list of lights: what it is, how it is set, where it points, where the tape puts it.
// What has no column runs on below the name, for a column would cut the names.
func (c Report) lights() *section {
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
		chip := lampColour(l)
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

func (c Report) lightNotes(l *plan.Light) []string {
	return nonEmpty(
		joined("; ", joined(", ", c.modifierLabel(l), strings.Join(l.Gels, " + "), mountWords(l.Mount), c.rise(l.Mount.Kind, l.Frame.At.Z-l.Base, l.Height)),
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
		return joined(" on ", m.Kind, m.On)
	case "ceiling":
		return "from the ceiling"
	case "floor":
		if m.On == "" {
			return "on the floor"
		}
		return "on " + m.On
	}
	return m.Kind
}

// rise says how high a thing is above what its stand stands on, where that is not the floor that heights
// count from: what a stand has to reach.
func (c Units) rise(mount string, rise, height float64) string {
	onStand := mount == "" || mount == "stand" || mount == "boom"
	if !onStand || c.length(rise) == c.length(height) {
		return ""
	}
	return c.length(rise) + " above what it stands on"
}

// placing says the two distances that put a thing in its place with a tape.
func (c Units) placing(ds []plan.Dimension) string {
	var parts []string
	for _, d := range ds {
		parts = append(parts, c.length(d.Metres)+" from "+d.From)
	}
	return strings.Join(parts, ", ")
}

// grip is the list of grip.
func (c Report) grip() *section {
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
			notes: nonEmpty(joined("; ", c.rise(g.Mount.Kind, g.Frame.At.Z-g.Base, g.Height), g.Note), c.placing(g.Placing)),
		})
	}
	return &section{title: c.measured("Grip"), rank: other, tables: []table{t}}
}

// cameras is the list of cameras.
func (c Report) cameras() *section {
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
			notes:  nonEmpty(joined(", ", m.Sensor, gateWords(m)), ownExposure(c.in.Setup, m), c.rise("stand", m.Frame.At.Z-m.Base, m.Height)),
			struck: some(len(keys) > 0, 3),
		})
	}
	return &section{title: c.measured("Cameras"), rank: other, tables: []table{t}, lacks: nonEmpty(without(squeezed))}
}

// ownExposure says what a camera sets differently from the scene.
func ownExposure(s *plan.Setup, m *plan.Camera) string {
	own, all := m.Exposure, s.Exposure
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

// rooms is the list of rooms, whose clear sizes stand on dimension lines of the plan.
func (c Report) rooms() *section {
	t := table{columns: []column{{strong: true}, {head: "size", align: ink.Right}, {head: "height", align: ink.Right}}}
	for i := range c.in.Setup.Rooms {
		r := &c.in.Setup.Rooms[i]
		g := gatherer{}
		g.all(r.Inside, 0)
		t.entries = append(t.entries, entry{cells: []string{r.Name, c.bare(width(g.box())) + " × " + c.bare(height(g.box())), c.bare(r.Top - r.Base)}})
	}
	return &section{title: c.measured("Rooms"), tables: []table{t}}
}

// pieces is the list of furniture, whose heights are lettered on the plan.
func (c Report) pieces() *section {
	t := table{columns: []column{{strong: true}, {flexible: true}, {head: "size", align: ink.Right}, {head: "height", align: ink.Right}}}
	for i := range c.in.Setup.Furniture {
		f := &c.in.Setup.Furniture[i]
		t.entries = append(t.entries, entry{cells: []string{f.Name, f.Kind, c.bare(f.Size[0]) + " × " + c.bare(f.Size[1]), c.bare(f.Z1 - f.Base)}})
	}
	return &section{title: c.measured("Furniture"), tables: []table{t}}
}

package section

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// lights is the list of lights: what it is, how it is set, where it points, where the tape puts it.
// Units stand in the heads alone, which leaves room to the name. What has no column runs on below the name, for a column would cut the names.
func (c Report) lights() *Section {
	t := Table{Columns: []Column{
		{Strong: true},
		{Flexible: true},
		{Head: "K", Align: ink.Right},
		{Head: "%", Align: ink.Right},
		{Head: "high", Align: ink.Right},
		{Head: "throw", Align: ink.Right},
	}}
	var coloured []plan.Uncomputed
	for i := range c.In.Setup.Lights {
		l := &c.In.Setup.Lights[i]
		chip := LampColour(l)
		keys := OnColour(c.In.Setup, l.Name)
		coloured = append(coloured, keys...)
		throw := "–"
		if l.Throw > 0 {
			throw = c.Bare(l.Throw)
		}
		t.Entries = append(t.Entries, Entry{
			Cells:  []string{l.Tag, c.UnitLabel(l), strings.TrimSuffix(LightColour(l), " K"), strings.TrimSuffix(LightLevel(l), " %"), c.Bare(l.Height), throw},
			Notes:  c.lightNotes(l),
			Chip:   &chip,
			Struck: When(len(keys) > 0, 2),
			Of:     []string{thingKey(change.Light, l.Name)},
		})
	}
	return &Section{Title: c.measured("Lights"), Rank: layout.Listed, Tables: []Table{t}, Without: NonEmpty(without(coloured))}
}

// Filters are the gels and the cloth before a light, from it outward.
func Filters(l *plan.Light) string { return strings.Join(slices.Concat(l.Gels, l.Diffusion), " + ") }

func (c Report) lightNotes(l *plan.Light) []string {
	return NonEmpty(
		Joined("; ", roleWords(l.Roles), Joined(", ", c.ModifierLabel(l), l.Head.FocusWord(), Filters(l), mountWords(l.Mount), c.rise(l.Mount.Kind, l.Frame.At.Z-l.Base, l.Height)),
			Joined(", ", c.aimWords(l), c.bounceWords(l), c.mainsWords(l)), c.In.standInWords(l), c.In.cueWords(l), l.Note),
		c.holdWords(l),
		c.placing(l.Placing, c.Bare),
	)
}

// mainsWords say what a light draws, and of which circuit.
func (c Report) mainsWords(l *plan.Light) string {
	if c.In.NoMains {
		return ""
	}
	return Joined(", ", powerWords(l), circuitWords(l))
}

// rise says how high a thing is above what its stand stands on, where that is not the floor that heights
// count from: what a stand has to reach.
func (c Units) rise(mount term.Mount, rise, height float64) string {
	onStand := mount == "" || mount == term.Stand || mount == term.Boom
	if !onStand || c.Length(rise) == c.Length(height) {
		return ""
	}
	return c.Length(rise) + " above its ground"
}

// grip is the list of grip.
func (c Report) grip() *Section {
	t := Table{Columns: []Column{
		{Strong: true},
		{Flexible: true},
		{Head: "size", Align: ink.Right},
		{Head: "height", Align: ink.Right},
	}}
	for i := range c.In.Setup.Grip {
		g := &c.In.Setup.Grip[i]
		t.Entries = append(t.Entries, Entry{
			Cells: []string{g.Tag, Joined(", ", gripName(g), g.Cloth, SurfaceWord(g)), c.GripSize(g, c.Bare),
				c.Bare(g.Height)},
			Notes: NonEmpty(Joined("; ", mountWords(g.Mount), c.rise(g.Mount.Kind, g.Frame.At.Z-g.Base, g.Height), g.Note), c.clothWords(g.Name), c.placing(g.Placing, c.Bare)),
			Of:    []string{thingKey(change.Grip, g.Name)},
		})
	}
	for i := range c.In.Setup.Openings {
		o := &c.In.Setup.Openings[i]
		of := []string{thingKey(change.Opening, o.Name)}
		for k := range o.Dressing {
			d := &o.Dressing[k]
			t.Entries = append(t.Entries, Entry{Of: of, Cells: []string{o.Name, Joined(", ", DressingWords(d), hungOn(o, d)),
				c.Bare(r2.Norm(r2.Sub(d.B, d.A))) + " × " + c.Bare(d.Top-d.Foot), c.Bare((d.Top+d.Foot)/2 - floorOf(c.In.Setup, o.Room))}})
		}
		if len(o.Gels) > 0 {
			t.Entries = append(t.Entries, Entry{Of: of, Cells: []string{o.Name, "on the glass: " + strings.Join(o.Gels, " + "), c.Bare(o.Width()) + " × " + c.Bare(o.Head-o.Sill), ""}})
		}
	}
	return &Section{Title: c.measured("Grip"), Rank: layout.Wanted, Tables: []Table{t}}
}

// GripSize is how large a piece of grip is, its lengths written in a way: a disc by its diameter.
func (c Report) GripSize(g *plan.Grip, written func(metres float64) string) string {
	if g.Round() {
		return written(g.Size[0]) + " across"
	}
	return written(g.Size[0]) + " × " + written(g.Size[1])
}

// gripName is what a piece of grip is called: by the catalogue, else by its kind.
func gripName(g *plan.Grip) string {
	if g.Item != nil {
		return g.Item.Label
	}
	return string(g.Kind)
}

// SurfaceWord is the surface of a piece of grip beside its kind: of a silver board "hammered", not silver once more.
func SurfaceWord(g *plan.Grip) string {
	kind := string(g.Kind)
	if g.Surface == kind {
		return ""
	}
	return strings.TrimPrefix(g.Surface, kind+"-")
}

// clothWords is what the cloth of a piece of grip does to light: what it takes, and how uneven it is lit.
func (c Report) clothWords(grip string) string {
	for i := range c.In.Cloths {
		if f := &c.In.Cloths[i]; f.Grip == grip {
			words := fmt.Sprintf("takes %.1f stops", f.Lost)
			if f.HotSpot != nil {
				words += fmt.Sprintf(", hot spot %.1f over its mean", *f.HotSpot)
			}
			return words
		}
	}
	return ""
}

// cameras is the list of cameras.
func (c Report) cameras() *Section {
	t := Table{Columns: []Column{
		{Strong: true},
		{Flexible: true},
		{Head: "lens", Align: ink.Right},
		{Head: "angle of view", Align: ink.Right},
		{Head: "height", Align: ink.Right},
	}}
	seen := map[string]string{}
	for _, s := range shot.Of(c.In.Setup) {
		seen[s.Camera] = Joined("; ", s.Frame(c.Bare), s.Sharp(c.Bare))
	}
	for i := range c.In.Setup.Cameras {
		m := &c.In.Setup.Cameras[i]
		t.Entries = append(t.Entries, Entry{
			Cells: []string{m.Name, unit.FormatAspect(m.Aspect), unit.FormatLens(m.Lens),
				fmt.Sprintf("%.1f° × %.1f°", m.HAOV, m.VAOV), c.Bare(m.Height)},
			Notes: NonEmpty(Joined("; ", Joined(", ", m.SqueezeWords(), m.Sensor, gateWords(m)), seen[m.Name]), ownExposure(c.In.Setup, m), c.rise(term.Stand, m.Frame.At.Z-m.Base, m.Height), c.trackWords(m), Joined("", When(m.Track != nil, "at its end: "+cmp.Or(seen[m.AtEnd()], "nobody in frame"))...), c.alongTrack(m)),
			Of:    []string{thingKey(change.Camera, m.Name)},
		})
	}
	return &Section{Title: c.measured("Cameras"), Rank: layout.Wanted, Tables: []Table{t}}
}

// trackWords say how a camera moves: "track 2.40, from [3.30, 0.50] to [0.90, 0.50]".
func (c Report) trackWords(m *plan.Camera) string {
	if m.Track == nil {
		return ""
	}
	at := func(p r2.Vec) string { return "[" + c.Bare(p.X) + ", " + c.Bare(p.Y) + "]" }
	words := make([]string, len(m.Track.Corners))
	for i, p := range m.Track.Corners {
		words[i] = at(p)
	}
	return "track " + c.Bare(m.Track.Length()) + ": " + strings.Join(words, " to ")
}

// alongTrack says what changes along the track of a camera.
func (c Report) alongTrack(m *plan.Camera) string {
	for i := range c.In.Tracks {
		if t := &c.In.Tracks[i]; t.Camera == m.Name {
			return strings.Join(t.ChangeWords(c.Bare), "; ")
		}
	}
	return ""
}

// ownExposure says what a camera sets differently from the scene.
func ownExposure(s *plan.Setup, m *plan.Camera) string {
	own, all := m.Exposure, s.Exposure
	differs := func(is bool, words string) string { return strings.Join(When(is, words), "") }
	return Joined(", ",
		differs(own.Stop.N > 0 && own.Stop.N != all.Stop.N, "T"+unit.FormatNumber(own.Stop.Written)),
		differs(own.ISO > 0 && own.ISO != all.ISO, "ISO "+unit.FormatNumber(own.ISO)),
		differs(own.FPS > 0 && own.FPS != all.FPS, unit.FormatNumber(own.FPS)+" fps"),
		differs(own.Degrees > 0 && own.Degrees != all.Degrees, unit.FormatAngle(own.Degrees)),
		differs(own.Seconds > 0 && own.Seconds != all.Seconds, unit.FormatShutter(unit.Shutter{Seconds: own.Seconds})),
		differs(own.SetTo().Kelvin > 0 && own.SetTo() != all.SetTo(), "white "+unit.FormatKelvin(own.SetTo().Kelvin)),
		filterWords(&own), differs(own.Range != all.Range, rangeWords(&own)))
}

// gateWords says how much of the sensor is used.
func gateWords(m *plan.Camera) string {
	if m.Gate[0] <= 0 || m.Gate[1] <= 0 {
		return ""
	}
	return fmt.Sprintf("%s × %s mm of it", tenths(m.Gate[0]), tenths(m.Gate[1]))
}

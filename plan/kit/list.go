package kit

import (
	"fmt"
	"slices"
	"strings"

	"scrimshaw/plan/unit"
)

// Listed is an entry as a list of the catalogue shows it.
type Listed struct {
	Kind    string `json:"kind"` // "unit", "bulb", "modifier", "gel", "cloth", "stand", "grip", "item", "material", "sensor", "filter"
	Name    string `json:"name"`
	Summary string `json:"says"` // its main figures, in a few words
	Doc     string `json:"doc"`
	Figures any    `json:"figures"` // all of them; nil in a list that is only read
}

// List gives the whole catalogue, kind by kind, in the order of its files.
func (c *Catalogue) List() []Listed {
	var all []Listed
	all = addAll(all, "unit", c.Units, (*Unit).summary)
	all = addAll(all, "bulb", c.Bulbs, (*Bulb).summary)
	all = addAll(all, "modifier", c.Modifiers, (*Modifier).summary)
	all = addAll(all, "gel", c.Gels, (*GelData).summary)
	all = addAll(all, "cloth", c.Cloth, (*Cloth).summary)
	all = addAll(all, "stand", c.Stands, (*Stand).summary)
	all = addAll(all, "grip", c.Grip, (*Grip).summary)
	all = addAll(all, "item", c.Items, (*Item).summary)
	all = addAll(all, "material", c.Materials, (*Material).summary)
	all = addAll(all, "sensor", c.Sensors, (*Sensor).summary)
	return addAll(all, "filter", c.Filters, (*LensFilter).summary)
}

func addAll[T named](all []Listed, kind string, entries []T, says func(T) string) []Listed {
	for _, e := range entries {
		all = append(all, Listed{Kind: kind, Name: e.entry().Name, Summary: says(e), Doc: e.entry().Doc})
	}
	return all
}

// WithFigures gives rows of the catalogue their figures.
func (c *Catalogue) WithFigures(rows []Listed) []Listed {
	full := slices.Clone(rows)
	for i := range full {
		switch r := &full[i]; r.Kind {
		case "unit":
			r.Figures = c.Figures(c.Unit(r.Name))
		case "modifier":
			r.Figures = c.Modifier(r.Name).figures()
		default:
			r.Figures = figuresOf(c.plain(r.Kind, r.Name))
		}
	}
	return full
}

// plain is an entry of one of the other kinds.
func (c *Catalogue) plain(kind, name string) any {
	switch kind {
	case "bulb":
		return c.Bulb(name)
	case "gel":
		return find(c.Gels, name)
	case "cloth":
		return c.ClothOf(name)
	case "stand":
		return c.Stand(name)
	case "grip":
		return c.GripOf(name)
	case "item":
		return c.ItemOf(name)
	case "material":
		return c.Material(name)
	case "filter":
		return c.LensFilter(name)
	}
	return c.Sensor(name)
}

// Matching keeps the entry of a name, or else the entries of a kind, in the plural too, or else those that hold each of some words.
func Matching(all []Listed, word string) []Listed {
	word = strings.ToLower(word)
	if kept := listedWhere(all, func(l Listed) bool { return strings.ToLower(l.Name) == word }); len(kept) > 0 {
		return kept
	}
	if kept := listedWhere(all, func(l Listed) bool { return l.Kind == word || l.Kind+"s" == word }); len(kept) > 0 {
		return kept
	}
	words := strings.Fields(word)
	return listedWhere(all, func(l Listed) bool {
		text := strings.ToLower(l.Kind + " " + l.Name + " " + l.Summary + " " + l.Doc)
		return !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(text, w) })
	})
}

func listedWhere(all []Listed, is func(Listed) bool) (kept []Listed) {
	for _, l := range all {
		if is(l) {
			kept = append(kept, l)
		}
	}
	return kept
}

func (u *Unit) summary() string {
	white := unit.FormatKelvin(u.Native)
	if u.Kelvin[0] != u.Kelvin[1] {
		white = unit.FormatKelvin(u.Kelvin[0]) + " to " + unit.FormatKelvin(u.Kelvin[1])
	}
	return fmt.Sprintf("%s, draws %g W, %s, %g kg", u.Class, u.Watts, white, u.Mass)
}

func (c *Cloth) summary() string {
	return fmt.Sprintf("passes %.0f %% straight, %.0f %% scattered", 100*c.Direct, 100*c.Diffuse)
}

func (s *Stand) summary() string {
	says := fmt.Sprintf("%.2f to %.2f m, footprint %.2f m, carries %g kg", s.Lowest, s.Highest, s.Footprint, s.Load)
	if s.Spigot != "" {
		says += ", " + s.Spigot
	}
	return says
}

func (s *Sensor) summary() string { return fmt.Sprintf("%g x %g mm", s.Width, s.Height) }

func (g *Grip) summary() string {
	if g.Round {
		return fmt.Sprintf("%s, %.2f m across, %g kg", g.Kind, g.Width, g.Mass)
	}
	return fmt.Sprintf("%s, %.2f x %.2f m, %g kg", g.Kind, g.Width, g.Height, g.Mass)
}

func (i *Item) summary() string {
	parts, outlets, phases := []string{i.Label}, "%g outlets", 0.0
	if i.Outlets == 1 {
		outlets = "%g outlet"
	}
	if i.Phases > 1 {
		phases = float64(i.Phases)
	}
	for _, p := range []struct {
		value  float64
		format string
	}{
		{i.Length, "%g m"}, {i.Section, "%g mm²"}, {i.Amps, "%g A"}, {phases, "%g phases"}, {float64(i.Outlets), outlets}, {i.Residual, "trips at %g mA"},
		{i.Energy, "%g Wh"}, {i.Watts, "%g W"}, {i.Least, "dims from %g W on"}, {i.Load, "carries %g kg"}, {i.Mass, "%g kg"},
		{i.PerCable, "one for %g m of cable"}, {i.PerLight, "one for %g lights"}, {100 * i.Spare, "%g %% more as spares"},
	} {
		if p.value > 0 {
			parts = append(parts, fmt.Sprintf(p.format, p.value))
		}
	}
	if i.Ground[0] > 0 {
		parts = append(parts, fmt.Sprintf("stands on %g x %g m", i.Ground[0], i.Ground[1]))
	}
	return strings.Join(parts, ", ")
}

func (b *Bulb) summary() string {
	says := fmt.Sprintf("%g W, %g lm, %s", b.Watts, b.Lumens, unit.FormatKelvin(b.Kelvin))
	if b.Volts > 0 {
		says += fmt.Sprintf(", %g V", b.Volts)
	}
	if b.Spare > 0 {
		says += fmt.Sprintf(", %g %% more as spares", 100*b.Spare)
	}
	return says
}

func (m *Modifier) summary() string {
	passes := fmt.Sprintf("passes %.0f %%", 100*m.Efficiency)
	switch {
	case m.Skirt > 0:
		return fmt.Sprintf("hangs %g m below the middle of its globe, open below", m.Skirt)
	case m.Shade != nil && m.Shade.Aims:
		return fmt.Sprintf("open in front, turns with the aim, its side passes %.0f %%", 100*m.Shade.Transmittance)
	case m.Shade != nil:
		return fmt.Sprintf("open above and below, its side passes %.0f %%", 100*m.Shade.Transmittance)
	case m.Grid[0] > 0:
		return fmt.Sprintf("square cells, hide all beyond %g°, %s on the axis", m.Grid[0]/2, passes)
	case m.Honeycomb > 0:
		return fmt.Sprintf("round cells, hide all beyond %g°, %s on the axis", m.Honeycomb/2, passes)
	case len(m.Zoom) > 0:
		return fmt.Sprintf("beam %g° to %g°, %s flooded", m.Zoom[0].Beam, m.Beam, passes)
	case m.Beam == 0:
		return "soft, " + passes
	}
	return fmt.Sprintf("beam %g°, field %g°, %s", m.Beam, m.Field, passes)
}

func (g *GelData) summary() string {
	parts := []string{fmt.Sprintf("passes %.1f %%", 100*g.Transmittance)}
	if g.Mired != 0 {
		parts = append(parts, fmt.Sprintf("%+.0f mired", g.Mired))
	}
	if g.Duv != 0 {
		parts = append(parts, fmt.Sprintf("%+.4f Duv", g.Duv))
	}
	return strings.Join(parts, ", ")
}

func (m *Material) summary() string {
	if m.Transmittance > 0 {
		return fmt.Sprintf("passes %.0f %%", 100*m.Transmittance)
	}
	return fmt.Sprintf("reflects %.0f %%", 100*m.Reflectance)
}

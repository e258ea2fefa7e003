package kit

import (
	"fmt"
	"strings"

	"scrimshaw/plan/unit"
)

// Listed is an entry as a list of the catalogue shows it.
type Listed struct {
	Kind    string `json:"kind"` // "unit", "bulb", "modifier", "gel", "cloth", "stand", "material", "sensor"
	Name    string `json:"name"`
	Summary string `json:"says"` // its main figures, in a few words
	Doc     string `json:"doc"`
}

// List returns the whole catalogue, kind by kind, in the order of its files.
func (c *Catalogue) List() []Listed {
	var all []Listed
	add := func(kind string, e Entry, says string) {
		all = append(all, Listed{Kind: kind, Name: e.Name, Summary: says, Doc: e.Doc})
	}
	for _, u := range c.Units {
		add("unit", u.Entry, u.summary())
	}
	for _, b := range c.Bulbs {
		add("bulb", b.Entry, b.summary())
	}
	for _, m := range c.Modifiers {
		add("modifier", m.Entry, m.summary())
	}
	for _, g := range c.Gels {
		add("gel", g.Entry, g.summary())
	}
	for _, cl := range c.Cloth {
		add("cloth", cl.Entry, fmt.Sprintf("passes %.0f %% straight, %.0f %% scattered", 100*cl.Direct, 100*cl.Diffuse))
	}
	for _, s := range c.Stands {
		add("stand", s.Entry, fmt.Sprintf("%.2f to %.2f m, footprint %.2f m, carries %g kg", s.Lowest, s.Highest, s.Footprint, s.Load))
	}
	for _, m := range c.Materials {
		add("material", m.Entry, m.summary())
	}
	for _, s := range c.Sensors {
		add("sensor", s.Entry, fmt.Sprintf("%g x %g mm", s.Width, s.Height))
	}
	return all
}

// Matching keeps the entries of a kind, in the plural too, or else those that hold a word.
func Matching(all []Listed, word string) []Listed {
	word = strings.ToLower(word)
	kept := listedWhere(all, func(l Listed) bool { return l.Kind == word || l.Kind+"s" == word })
	if len(kept) > 0 {
		return kept
	}
	return listedWhere(all, func(l Listed) bool {
		return strings.Contains(strings.ToLower(l.Kind+" "+l.Name+" "+l.Summary+" "+l.Doc), word)
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
	return fmt.Sprintf("%s, %g W, %s", u.Class, u.Watts, white)
}

func (b *Bulb) summary() string {
	says := fmt.Sprintf("%g W, %g lm, %s", b.Watts, b.Lumens, unit.FormatKelvin(b.Kelvin))
	if b.Volts > 0 {
		says += fmt.Sprintf(", %g V", b.Volts)
	}
	return says
}

func (m *Modifier) summary() string {
	if m.Shade != nil {
		return fmt.Sprintf("open above and below, its side passes %.0f %%", 100*m.Shade.Transmittance)
	}
	if m.Beam == 0 {
		return fmt.Sprintf("soft, passes %.0f %%", 100*m.Efficiency)
	}
	return fmt.Sprintf("beam %g°, field %g°, passes %.0f %%", m.Beam, m.Field, 100*m.Efficiency)
}

func (g *GelData) summary() string {
	parts := []string{fmt.Sprintf("passes %.1f %%", 100*g.Transmittance)}
	if g.Mired != 0 {
		parts = append(parts, fmt.Sprintf("%+.0f mired (set %s)", g.Mired, g.Set))
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

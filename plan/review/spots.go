package review

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// spotReads warns where a spot meter reads something else than a surface of the set: nothing, somebody, a door, or cloth; and notes glass
// before the surface.
func (c *checker) spotReads(m *plan.Meter) {
	r := c.reading(m.Name)
	if r == nil || r.Sees == nil {
		return
	}
	sees := r.Sees
	add := func(severity source.Severity, hint, words string) {
		c.add(severity, CodeSpotReads, m.Span, "meters."+m.Name, hint, "%s, a spot meter from %s, %s", m.Name, m.From, words)
	}
	person, _, _ := strings.Cut(sees.Surface, ".")
	door := c.setup.OpeningNamed(sees.Surface)
	switch {
	case sees.Surface == "":
		add(source.Warning, "point it at something that stands", "reads nothing: no surface lies on its way"+pastWords(r.Sees.Past))
	case c.setup.Post(person) != nil:
		add(source.Warning, "read "+person+".key at the face, or point it past", "reads "+sees.Surface+", who is drawn as a plain figure: no skin, hair or cloth of its own")
	case door != nil && door.Kind == term.Door && door.Glass == "":
		add(source.Warning, "open the door wider, or point the meter past it", "reads the leaf of "+door.Name)
	case sees.Scatters:
		add(source.Warning, "hold a flat meter behind the cloth for what falls on it", "reads "+sees.Surface+" by what it returns: light that comes through it is not counted")
	}
	for _, p := range sees.Past {
		if p.Scatters && sees.Surface != "" {
			add(source.Warning, "point it past the cloth", "looks through "+p.Name+" and reads "+sees.Surface+" behind it: the light of the cloth itself is not counted")
			return
		}
	}
	for _, p := range sees.Past {
		if !p.Mirror && sees.Surface != "" {
			add(source.Info, "", "looks through "+p.Name+" and reads "+sees.Surface+" behind it: what the glass mirrors is not counted")
			return
		}
	}
}

// pastWords name what a meter that reads nothing looks through.
func pastWords(past []meter.Passed) string {
	if len(past) == 0 {
		return ""
	}
	return " behind " + past[len(past)-1].Name
}

package review

import (
	"math"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// keyNotBrightest tells where the side that the named key lights is not the brighter one: the readings call
// the brighter side the key side, and the file means the other.
func (c *checker) keyNotBrightest(p *plan.Person) {
	key, fill := c.reading(p.Name+".key"), c.reading(p.Name+".fill")
	if key == nil || fill == nil || key.Lux == nil || fill.Lux == nil || !(*fill.Lux > 0) {
		return
	}
	var names []string
	bright, dark := 0.0, 0.0
	for i := range c.setup.Lights {
		l := &c.setup.Lights[i]
		if slices.ContainsFunc(l.Roles, func(r scene.Role) bool { return r.Role == term.Key && (r.Person.Name == "" || r.Person.Name == p.Name) }) {
			names = append(names, l.Numbered())
			bright, dark = bright+shareOf(key, l.Name), dark+shareOf(fill, l.Name)
		}
	}
	under := math.Log2(*key.Lux / *fill.Lux)
	if !(dark > bright) || unit.EqualStops(under) {
		return
	}
	c.add(source.Warning, CodeKeyNotBrightest, p.Span, "people."+p.Name, "bring the other lights down or the key up, or give the key the role fill",
		"%sthe key of %s, %s, lights mostly the darker side of the face, which is %.1f stops under the other", withoutPrefix(meter.AlteringLight(key, fill)), p.Name, strings.Join(names, " and "), under)
}

// shareOf is what a light gives to a reading, lx.
func shareOf(r *meter.Reading, light string) (lux float64) {
	for _, s := range r.Shares {
		if s.Light == light {
			lux += s.Lux
		}
	}
	return lux
}

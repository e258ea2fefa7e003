package review

import (
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// keyNotBrightest tells where the side that the named key lights is not the brighter one: the readings call
// the brighter side the key side, and the file means the other.
func (c *checker) keyNotBrightest(p *plan.Person) {
	key, fill := c.reading(p.Name+".key"), c.reading(p.Name+".fill")
	if !lit(key) || !lit(fill) || neverSeen(p) {
		return
	}
	names, bright, dark := c.keysOn(p.Name, key, fill)
	under := math.Log2(*key.Lux / *fill.Lux)
	if !(dark > bright) || unit.EqualStops(under) || c.stage.allDown(c.setup, p.Name) {
		return
	}
	c.addMost(p.Name, 1, source.Warning, CodeKeyNotBrightest, p.Span, "people."+p.Name, "bring the other lights down or the key up, or give the key the role fill",
		"%sthe key of %s, %s, lights mostly the darker side of the face, which is %.1f stops under the other", withoutPrefix(meter.AlteringLight(key, fill)), p.Name, strings.Join(names, " and "), under)
}

// keysOn are the keys of somebody, and what they give together to the brighter and to the darker side.
func (c *checker) keysOn(person string, key, fill *meter.Reading) (names []string, bright, dark float64) {
	for i := range c.setup.Lights {
		if l := &c.setup.Lights[i]; l.IsKeyOf(person) {
			names = append(names, l.Numbered())
			bright, dark = bright+shareOf(key, l.Name), dark+shareOf(fill, l.Name)
		}
	}
	return names, bright, dark
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

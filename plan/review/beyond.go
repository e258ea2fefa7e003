package review

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// beyond says what a camera does not hold: a side of a face is a warning, a lamp or a surface may be meant so.
func (c *checker) beyond(camera *plan.Camera) {
	for i := range c.set.Pictures {
		p := &c.set.Pictures[i]
		if p.Camera != camera.Name {
			continue
		}
		for k := range p.Beyond {
			b := &p.Beyond[k]
			code, verb, holds, hint := CodeClipped, "clips", unit.FormatNumber(p.Range.Over)+" over", "stop down, or take light off it"
			if b.Sinks {
				code, verb, holds, hint = CodeSunk, "sinks", unit.FormatNumber(p.Range.Under)+" under", "open up, or lay light on it"
			}
			severity, at, path := source.Info, camera.Span, "cameras."+camera.Name
			switch person, light := c.setup.Post(b.Person), c.setup.LightNamed(b.Light); {
			case person != nil:
				severity, at, path = source.Warning, person.Span, "people."+b.Person
			case light != nil:
				at, path = light.Span, light.Path
			}
			if severity == source.Info {
				hint = ""
			}
			if c.stage != nil && b.Sinks {
				continue // a cue takes light away to make it dark
			}
			much := 1.0
			if b.Over != nil {
				much = math.Exp2(*b.Over)
			}
			c.addMost(camera.Name+" "+b.What, much, severity, code, at, path, hint, "%s%s %s for %s: %s, and it holds %s", withoutPrefix(p.Uncomputed), b.What, verb, camera.Name, b.Words(), holds)
		}
	}
}

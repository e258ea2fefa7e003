package review

import (
	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// walk notes where somebody's walk leaves the working stop, for each camera: it may be meant.
func (c *checker) walk(p *plan.Person) {
	w := c.set.WalkOf(p.Name)
	if w == nil || !c.setup.HasLight() || neverSeen(p) {
		return
	}
	for i := range w.Courses {
		course := &w.Courses[i]
		whom := ""
		if course.Camera != "" {
			whom = " for " + plan.CameraWords(course.Camera)
		}
		for k := range course.Off {
			o := &course.Off[k]
			c.add(source.Info, CodeWalkLeaves, p.Walk.Span, "people."+p.Name, mendWalk(o.Over),
				"%sthe walk of %s leaves %s%s %s: %s", withoutPrefix(meter.AlteringLight(w.Judged(i)...)), p.Name,
				unit.FormatStop(course.Working), whom, o.Where(c.setup.Feet), meter.OverWords(o.Over))
		}
	}
}

// mendWalk says what brings a stretch of a walk back.
func mendWalk(over *float64) string {
	if over != nil && *over > 0 {
		return "flag or net what lights it there, or let it be bright"
	}
	return "lay light there, or let it go dark"
}

package review

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// faintEdge is how many stops under the key side an edge or a hair light is lost: a judgement of the trade (common practice).
const faintEdge = 3.0

// role tells where a light does not do what its role says: for anybody, where it is nobody's in particular, and neither where
// they are nor at a mark.
func (c *checker) role(l *plan.Light) {
	if l.Level == 0 || l.Misplaced {
		return // another finding says so
	}
	if c.stage.down(l) {
		return // that it does less then is what the cue is for
	}
	for i := range l.Roles {
		c.effect(l, &l.Roles[i])
	}
}

// effect looks for somebody for whom a light has the effect of its role.
func (c *checker) effect(l *plan.Light, r *scene.Role) {
	failing := failings[r.Role]
	if failing == nil {
		return
	}
	var why *failure
	for _, p := range c.setup.Posts() {
		if who, _, _ := strings.Cut(p.Name, "."); r.Person.Name != "" && r.Person.Name != who {
			continue
		}
		f := failing(c, l, p.Name)
		if f == nil {
			return
		}
		if why == nil {
			why = f
		}
	}
	if why != nil {
		c.addMost(l.Name+" "+string(r.Role), 1, source.Warning, CodeRoleEffect, l.Span, l.Path, why.hint, "%s%s is %s, and %s", withoutPrefix(meter.AlteringLight(why.of...)), l.Numbered(), worded[r.Role], why.words)
	}
}

// worded are the roles that are checked, as a sentence has them.
var worded = map[term.Role]string{term.Key: "the key", term.Fill: "a fill", term.Edge: "an edge", term.Hair: "a hair light"}

// failure is how a light fails in its role.
type failure struct {
	words, hint string
	of          []*meter.Reading // that show it
}

// failings say how a light fails somebody in a role; nil where it does not.
var failings = map[term.Role]func(c *checker, l *plan.Light, person string) *failure{
	term.Edge: func(c *checker, l *plan.Light, p string) *failure { return c.lostBehind(l, p, "back", "edge") },
	term.Hair: func(c *checker, l *plan.Light, p string) *failure {
		return c.lostBehind(l, p, "hair", "light on the hair")
	},
	term.Fill: (*checker).fillsNothing,
	term.Key:  (*checker).keyIsNotTheMost,
}

// lostBehind tells where a light gives the front of the head more than its back, or gives that too little to be seen.
func (c *checker) lostBehind(l *plan.Light, person, plane, effect string) *failure {
	back, front, key := c.reading(person+"."+plane), c.reading(person+".front"), c.reading(person+".key")
	if !lit(key) || back == nil || front == nil {
		return nil
	}
	of := []*meter.Reading{back, front, key}
	given, before := shareOf(back, l.Name), shareOf(front, l.Name)
	under := math.Log2(*key.Lux / given)
	switch {
	case before >= given && before > 0:
		return &failure{fmt.Sprintf("it lights the front of the head of %s more than the back: it gives no %s", person, effect), "move it behind " + person, of}
	case math.IsInf(under, 1):
		return &failure{fmt.Sprintf("none of its light reaches the back of the head of %s", person), "aim it at the back of the head, or clear its way", of}
	case under > faintEdge:
		return &failure{fmt.Sprintf("what it gives the back of the head of %s is %.1f stops under the key side: it gives no %s", person, under, effect),
			fmt.Sprintf("raise it by %.1f stops or bring it nearer", upToTenth(under-faintEdge)), of}
	}
	return nil
}

// upToTenth rounds stops up to a tenth, so that what is asked for is enough.
func upToTenth(stops float64) float64 { return math.Ceil(10*stops) / 10 }

// fillsNothing tells where a fill gives the fill side less than a trace, or the key side more than every other light.
func (c *checker) fillsNothing(l *plan.Light, person string) *failure {
	key, fill := c.reading(person+".key"), c.reading(person+".fill")
	if !lit(key) || !lit(fill) {
		return nil
	}
	if _, bright, dark := c.keysOn(person, key, fill); dark > bright {
		return nil // another finding says that the key lights the darker side
	}
	of := []*meter.Reading{key, fill}
	if shareOf(fill, l.Name) < minShare**fill.Lux {
		return &failure{fmt.Sprintf("it gives the fill side of %s nothing", person), "aim it at the darker side of the face, or clear its way", of}
	}
	if most := c.most(key); most == l.Name && len(c.setup.Lights) > 1 && c.hasKey(person) {
		return &failure{fmt.Sprintf("no light gives the key side of %s more", person), "lower it, or give it the role key", of}
	}
	return nil
}

// keyIsNotTheMost tells where a key gives a face nothing, or another light gives more than it to the side that it lights.
func (c *checker) keyIsNotTheMost(l *plan.Light, person string) *failure {
	left, right := c.reading(person+".left"), c.reading(person+".right")
	if left == nil || right == nil || left.Lux == nil || right.Lux == nil {
		return nil
	}
	side, words, given := left, "own left", shareOf(left, l.Name)
	if more := shareOf(right, l.Name); more > given {
		side, words, given = right, "own right", more
	}
	bright := brighter(left, right)
	none := given <= minShare**bright.Lux
	if none {
		side = bright
	}
	most := c.most(side)
	if most == l.Name || c.isKey(most, person) {
		return nil
	}
	if none {
		return &failure{fmt.Sprintf("none of its light reaches the face of %s", person), "aim it at the face, or clear its way", []*meter.Reading{left, right}}
	}
	return &failure{fmt.Sprintf("%s gives the %s side of %s %.1f stops more", c.setup.Numbered(most), words, person, math.Log2(shareOf(side, most)/given)),
		"raise the key, lower the other, or give the other the role key", []*meter.Reading{side}}
}

// brighter is that of two readings that has more light; the first where both have the same.
func brighter(a, b *meter.Reading) *meter.Reading {
	if *b.Lux > *a.Lux {
		return b
	}
	return a
}

// most is the light that gives a reading the most.
func (c *checker) most(r *meter.Reading) (name string) {
	best := 0.0
	for i := range c.setup.Lights {
		if given := shareOf(r, c.setup.Lights[i].Name); given > best {
			name, best = c.setup.Lights[i].Name, given
		}
	}
	return name
}

// isKey says whether a light has the role of key for somebody.
func (c *checker) isKey(light, person string) bool {
	return slices.ContainsFunc(c.setup.Lights, func(l plan.Light) bool { return l.Name == light && l.IsKeyOf(person) })
}

// hasKey says whether somebody has a key that is up.
func (c *checker) hasKey(person string) bool {
	return slices.ContainsFunc(c.setup.Lights, func(l plan.Light) bool { return l.Level > 0 && l.IsKeyOf(person) })
}

func lit(r *meter.Reading) bool { return r != nil && r.Lux != nil && *r.Lux > 0 }

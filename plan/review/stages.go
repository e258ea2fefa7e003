package review

import (
	"fmt"
	"math"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// stage is a set-up after one of its cues.
type stage struct {
	cue  string
	most map[string]float64 // what each light puts out at most in the set-up or after a cue
}

// ofStages are the findings that are looked for again after each cue: what light does to a picture that comes up in it. What is dark then,
// is meant.
var ofStages = []string{CodeKeyOver, CodeKeyNotBrightest, CodeRoleEffect, CodeSeenBright, CodeStandInColour, CodeStandInAngle, CodeClipped, CodeInGlass, CodeFlare, CodeFlicker}

// afterCues looks again at the light after each cue.
func afterCues(c *checker) {
	most := map[string]float64{}
	for i := range c.setup.Lights {
		most[c.setup.Lights[i].Name] = c.setup.MostOut(&c.setup.Lights[i])
	}
	for i := range c.set.Stages {
		s := &c.set.Stages[i]
		after := *c
		after.setup, after.set, after.readings = s.Setup, &s.Set, s.Set.Readings
		after.found, after.stage = nil, &stage{cue: c.setup.Cues[i].Name, most: most}
		runAll(&after, again(ofPeople), after.setup.People)
		runAll(&after, again(ofLights), after.setup.Lights)
		runAll(&after, again(ofCameras), after.setup.Cameras)
		c.found = append(c.found, after.found...)
	}
}

// again are those of some checks that look for something of ofStages.
func again[T any](checks []check[T]) (all []check[T]) {
	for _, k := range checks {
		if slices.ContainsFunc(k.codes, func(code string) bool { return slices.Contains(ofStages, code) }) {
			all = append(all, k)
		}
	}
	return all
}

// down says whether a light is well below the most that it gives in another state. Before the cues no light counts as down.
func (s *stage) down(l *plan.Light) bool {
	return s != nil && l.RelativeOutput.Y()*muchMore <= s.most[l.Name]
}

// allDown says whether all keys of somebody are.
func (s *stage) allDown(setup *plan.Setup, person string) bool {
	return s != nil && !slices.ContainsFunc(setup.Lights, func(l plan.Light) bool { return l.IsKeyOf(person) && l.Level > 0 && !s.down(&l) })
}

// muchMore is by how much what is found once has to grow until a review tells it again, and a light to fall until a cue means it: a stop.
const muchMore = 2

// addMost tells what is found of something, in the set-up or after a cue, which it names then: once, and again where there is a stop more
// of it.
func (c *checker) addMost(of string, much float64, severity source.Severity, code string, at source.Span, path, hint, format string, args ...any) {
	key := code + " " + of
	if before, told := c.told[key]; told && c.stage != nil && !(much >= muchMore*before) {
		return
	}
	c.told[key] = math.Max(much, c.told[key])
	words := fmt.Sprintf(format, args...)
	if c.stage != nil {
		words = "after " + c.stage.cue + ", " + words
	}
	c.found = append(c.found, source.Diagnostic{Severity: severity, Code: code, Span: at, Path: path, Setup: c.setup.Name, Hint: hint, Message: words})
}

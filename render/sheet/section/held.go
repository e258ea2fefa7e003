package section

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
)

// holdWords say on what stand a light is and how many bags lie on that, for who sets it; what else holds one is said of it anyway.
func (c Report) holdWords(l *plan.Light) string {
	if !c.In.Holds || l.Mount.Stand == nil {
		return ""
	}
	return Joined(", ", heldAll(l), bags(l))
}

// bags are the sandbags on all stands of a light: "2 bags"; "" where there are none.
func bags(l *plan.Light) string {
	if n := l.Count * l.Mount.Bags(l.Frame.At.Z-l.Base); n > 0 {
		return Count(n, "bag")
	}
	return ""
}

// heldAll names what holds all of a light: of several on stands how many stands, as the bags beside them are for all.
func heldAll(l *plan.Light) string {
	words := held(l.Mount)
	if l.Count > 1 && l.Mount.Stand != nil && l.Mount.Kind.OnLegs() {
		return fmt.Sprintf("%d × %s", l.Count, words)
	}
	return words
}

// held names what holds a light: its stand by the name that the catalogue gives it, else how it is held.
func held(m plan.Mount) string {
	var stand string
	if m.Stand != nil {
		stand = m.Stand.Label
	}
	switch m.Kind {
	case "", term.Stand:
		return Joined(" on ", stand, m.On)
	case term.Boom:
		return strings.TrimSuffix("boom on "+stand, " on ")
	}
	return mountWords(m)
}

// mountWords names what is worth saying of a mount: a stand is what one expects.
func mountWords(m plan.Mount) string {
	switch m.Kind {
	case "", term.Stand:
		switch {
		case m.Chosen:
			return Joined(" on ", m.Stand.Label, m.On)
		case m.On != "":
			return "stand on " + m.On
		}
		return ""
	case term.Clamp, term.Wall:
		return Joined(" on ", string(m.Kind), m.On)
	case term.Ceiling:
		return "from the ceiling"
	case term.Floor:
		if m.On == "" {
			return "on the floor"
		}
		return "on " + m.On
	}
	return string(m.Kind)
}

package section

import (
	"cmp"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/unit"
)

// partWords says one aspect that differs.
func (c told) partWords(l *change.Line, a change.Aspect) string {
	before, s, name := c.before, c.In.Setup, l.Name
	switch l.Sort {
	case change.Light:
		return c.lightPart(before.LightNamed(name), s.LightNamed(name), a)
	case change.Grip:
		return c.gripPart(before.GripNamed(name), s.GripNamed(name), a)
	case change.Camera:
		return c.cameraPart(before.CameraNamed(name), s.CameraNamed(name), a)
	case change.Furniture:
		return c.piecePart(before.PieceNamed(name), s.PieceNamed(name), a)
	case change.Opening:
		return c.openingPart(before.OpeningNamed(name), s.OpeningNamed(name), a)
	case change.Person, change.Mark:
		return c.personPart(before.Post(name), s.Post(name), a)
	case change.Circuit:
		return "fed otherwise"
	case change.Cue:
		return c.cuePart(before.CueNamed(name), s.CueNamed(name), a)
	}
	return cmp.Or(exposureChanges(&before.Exposure, &s.Exposure), "set otherwise")
}

// lightPart says one aspect of a light that differs; the list of lights has its new place and aim in full.
func (c told) lightPart(was, is *plan.Light, a change.Aspect) string {
	switch a {
	case change.Unit:
		return set("", c.UnitLabel(is), c.UnitLabel(was))
	case change.Wears:
		return set("", c.sized(is.Head.ModifierLabel), c.sized(was.Head.ModifierLabel))
	case change.Bulb:
		return set("", bulb(&is.Head), bulb(&was.Head))
	case change.Focus:
		return Joined("; ", set("", is.Head.FocusWord(), was.Head.FocusWord()), set("edge", is.Head.EdgeWord(), was.Head.EdgeWord()))
	case change.Scrims:
		return set("", scrims(&is.Head), scrims(&was.Head))
	case change.Doors:
		return set("", doors(is.Head.Doors), doors(was.Head.Doors))
	case change.Cuts:
		return set("", cuts(&is.Head), cuts(&was.Head))
	case change.Pattern:
		return set("", breakup(&is.Head), breakup(&was.Head))
	case change.Place:
		return c.placeChange(was.Frame.At, is.Frame.At, was.Height, is.Height)
	case change.Hold:
		return set("on", heldWords(&is.Mount), heldWords(&was.Mount))
	case change.Aim:
		return cmp.Or(c.aimWords(is), "turned")
	case change.Level:
		return set("level", LightLevel(is), LightLevel(was)) + strings.Join(When(slices.Equal(was.Gels, is.Gels) && was.Head.White == is.Head.White, gives(was, is)), "")
	case change.White:
		return set("", LightColour(is), LightColour(was))
	case change.Gels:
		return set("gels", strings.Join(is.Gels, " + "), strings.Join(was.Gels, " + ")) + gives(was, is)
	case change.Cloth:
		return set("diffusion", strings.Join(is.Diffusion, " + "), strings.Join(was.Diffusion, " + "))
	case change.Feed:
		return set("circuit", is.Circuit, was.Circuit)
	case change.Dimmer:
		return set("dimmer", dimmed(is), dimmed(was))
	case change.Plays:
		return set("", playWords(is), playWords(was))
	}
	return set("note", is.Note, was.Note)
}

// dimmed names what a light is dimmed by, with the frequency where the scene says one.
func dimmed(l *plan.Light) string {
	if d := &l.Dimming; d.Hertz > 0 {
		return string(d.Kind) + " at " + unit.FormatNumber(d.Hertz) + " Hz"
	}
	return string(l.Dimming.Kind)
}

// cuePart says one aspect of a cue that differs: the table of cues has its new state in full.
func (c told) cuePart(was, is *plan.Cue, a change.Aspect) string {
	switch a {
	case change.On:
		return set("goes", is.OnWords(), was.OnWords())
	case change.Over:
		return set("", is.OverWords(), was.OverWords())
	}
	var parts []string
	for i := range is.Moves {
		m := &is.Moves[i]
		if before := was.Move(m.Light); before == nil || before.To != m.To {
			l := c.In.Setup.LightNamed(m.Light)
			at := lightAt(l, m.To)
			parts = append(parts, Joined(" ", l.Numbered(), LightLevel(&at), strings.Join(When(m.To.Level > 0, LightColour(&at)), "")))
		}
	}
	for i := range was.Moves {
		if name := was.Moves[i].Light; is.Move(name) == nil {
			parts = append(parts, "no more of "+c.In.Setup.Numbered(name))
		}
	}
	return cmp.Or(strings.Join(parts, "; "), "in another order")
}

// gives says the colour that follows from a level or from gels; where both are others, the gels say it, and where its own white is, that does.
func gives(was, is *plan.Light) string {
	if is.Level <= 0 || was.Level <= 0 || LightColour(is) == LightColour(was) {
		return ""
	}
	return ", gives " + LightColour(is)
}

// heldWords names what holds a thing, with its arm where it has one.
func heldWords(m *plan.Mount) string { return cmp.Or(held(*m), string(m.Kind), "stand") }

// gripPart says one aspect of a piece of grip that differs.
func (c told) gripPart(was, is *plan.Grip, a change.Aspect) string {
	size := func(g *plan.Grip) string { return c.GripSize(g, c.Length) }
	switch a {
	case change.Piece:
		return cmp.Or(Joined("; ", set("", string(is.Kind), string(was.Kind)), set("", size(is), size(was))), "another one")
	case change.Cloth:
		return set("", is.Cloth, was.Cloth)
	case change.Surface:
		return set("", is.Surface, was.Surface)
	case change.Place:
		return c.placeChange(was.Frame.At, is.Frame.At, was.Height, is.Height)
	case change.Hold:
		return set("on", heldWords(&is.Mount), heldWords(&was.Mount))
	case change.Aim:
		if !turned(was.Frame.Axis, is.Frame.Axis) {
			return "turned about its middle"
		}
		return "faces " + cmp.Or(strings.TrimPrefix(panWords(is.Frame.Axis), "pan "), tiltWords(is.Frame.Axis))
	}
	return set("note", is.Note, was.Note)
}

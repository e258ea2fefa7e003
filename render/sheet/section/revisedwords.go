package section

import (
	"cmp"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/unit"
)

// revisedPart says one aspect that is otherwise than on the sheet before: those that a crew changes in the words of a change.
func (c told) revisedPart(l *change.Line, p *change.Part) string {
	switch l.Sort {
	case change.Room:
		return c.roomPart(c.before.RoomNamed(l.Name), c.In.Setup.RoomNamed(l.Name), p)
	case change.Meter, change.Cue, change.Material, change.Whole:
		return c.valuePart(p)
	case change.Circuit:
		return c.circuitPart(p)
	}
	switch p.Aspect {
	case change.Data:
		return "gives or takes otherwise, by the data of its unit"
	case change.Number, change.Role, change.Seen, change.StandsFor, change.Margin, change.Metered, change.Form, change.Along, change.Across, change.Sill,
		change.Head, change.Panes, change.Hinged, change.Escape, change.Stature:
		return c.valuePart(p)
	}
	return c.partWords(l, p.Aspect)
}

// valuePart says a value by what it holds, with what it was.
func (c told) valuePart(p *change.Part) string {
	if p.Aspect == change.Facing {
		return cmp.Or(set("from", c.valueWords(p.Aspect, p.Is), c.valueWords(p.Aspect, p.Was)), "turned")
	}
	label := string(p.Aspect)
	if other, known := aspectLabels[p.Aspect]; known {
		label = other
	}
	return set(label, c.valueWords(p.Aspect, p.Is), c.valueWords(p.Aspect, p.Was))
}

// aspectLabels say aspects whose own word would not be understood beside what they are.
var aspectLabels = map[change.Aspect]string{change.Over: "", change.Form: "", change.Margin: "room about the frame", change.Metered: "meter", change.Stature: "", change.Across: "clear width",
	change.StandsFor: "passes for"}

// valueWords print a value: words as they are, figures by what they measure.
func (c told) valueWords(a change.Aspect, v change.Value) string {
	var all []string
	switch a {
	case change.Along, change.Across, change.Sill, change.Head, change.Ground, change.Place:
		for _, f := range v.Figures {
			all = append(all, c.Length(f))
		}
	case change.Stature:
		return c.Length(v.Figures[0]) + " tall, eyes at " + c.Length(v.Figures[1])
	case change.Margin:
		for _, f := range v.Figures {
			all = append(all, unit.FormatPercent(f))
		}
	case change.North:
		all = append(all, unit.FormatAngle(v.Figures[0]))
	case change.Returns:
		all = append(all, unit.FormatPercent(v.Figures[0]))
	case change.Metered:
		all = append(all, v.Words[0]+", C = "+unit.FormatNumber(v.Figures[0]))
	case change.Timed:
		for i, f := range v.Figures {
			all = append(all, v.Words[i]+" "+Minutes(f))
		}
	case change.Cued, change.Role, change.StandsFor, change.Seen, change.Hinged, change.Action:
		all = v.Words
	default:
		return strings.Join(v.Words, " ")
	}
	return Joined(", ", all...)
}

// circuitPart says how a circuit is fed.
func (c told) circuitPart(p *change.Part) string {
	fed := func(v change.Value) []string {
		f := v.Figures
		words := []string{strings.Join(v.Words, " "), unit.FormatNumber(f[0]) + " V", unit.FormatAmps(f[1]), unit.FormatPercent(f[2]), unit.FormatPower(f[3]), "", ""}
		if f[4] > 0 {
			words[5] = "direct"
		}
		if len(f) > 6 {
			words[6] = c.Length(f[5]) + ", " + c.Length(f[6])
		}
		return words
	}
	is, was := fed(p.Is), fed(p.Was)
	var all []string
	for i, label := range []string{"", "", "breaker", "of which may be used", "on it already", "current", "outlet at"} {
		all = append(all, set(label, is[i], was[i]))
	}
	return Joined("; ", all...)
}

// roomPart says one aspect of a room that differs.
func (c told) roomPart(was, is *plan.Room, p *change.Part) string {
	switch p.Aspect {
	case change.Place:
		return Joined("; ", c.moved(was.Inside[0], is.Inside[0]), set("floor at", c.Length(is.Base), c.Length(was.Base)))
	case change.Shape:
		return cmp.Or(set("", c.spanWords(is), c.spanWords(was)), "its walls run otherwise")
	case change.Ceiling:
		return cmp.Or(c.height(is.Top-is.Base, was.Top-was.Base), "its ceiling slopes otherwise")
	case change.Thick:
		return cmp.Or(set("walls", c.thickness(is), c.thickness(was)), "walls otherwise thick")
	}
	var all []string
	for i := range p.Is.Words {
		what, is, _ := strings.Cut(p.Is.Words[i], " ")
		_, was, _ := strings.Cut(p.Was.Words[i], " ")
		all = append(all, set(what, is, was))
	}
	return Joined("; ", all...)
}

// spanWords are how wide and deep a room is at its widest.
func (c told) spanWords(r *plan.Room) string {
	low, high := r.Inside[0], r.Inside[0]
	for _, q := range r.Inside {
		low, high = r2.Vec{X: min(low.X, q.X), Y: min(low.Y, q.Y)}, r2.Vec{X: max(high.X, q.X), Y: max(high.Y, q.Y)}
	}
	return c.Length(high.X-low.X) + " × " + c.Length(high.Y-low.Y)
}

// thickness is that of the walls of a room, each that they have once.
func (c told) thickness(r *plan.Room) string {
	var all []string
	for i := range r.Walls {
		if words := c.Length(r.Walls[i].Thickness); !strings.Contains(strings.Join(all, ", "), words) {
			all = append(all, words)
		}
	}
	return strings.Join(all, ", ")
}

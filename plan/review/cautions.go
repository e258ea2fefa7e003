// Package review is every check of a lit set-up, as diagnostics, and the cautions that a sheet
// must carry. It sits on top of all of plan.
package review

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Caution is one usual warning of the trade with the lights it is about.
type Caution struct {
	Hazard string   // "mains", "overhead", "heat", "glass", "changing", "weather"
	Text   string   // ready to print
	Tags   []string // of the lights and grip concerned; empty: everyone
	Winds  []Wind   // of the weather: at which wind each of them comes down, where that is known
}

// Wind is the wind at which a thing outdoors comes down.
type Wind struct {
	Tag   string
	Speed float64 // m/s
	Words string  // the speed, rounded down
}

// overheadHeight is the height above the floor from which a fall can hurt, m.
const overheadHeight = 2.0

// ClosingSentence is the sentence that closes every list of cautions.
const ClosingSentence = "Local codes and licensed practice come first."

// Cautions returns what applies to a set-up, in a fixed order. They are common practice, not
// a substitute for a competent person on the day.
func Cautions(s *plan.Setup) []Caution {
	all := []Caution{
		{Hazard: "mains", Tags: tagsOf(s, powered),
			Text: "Mains: earth leakage protection, cables dry and off the walkways."},
		{Hazard: "overhead", Tags: append(tagsOf(s, hangsHigh), gripTags(s, gripHangsHigh)...),
			Text: "Overhead: safety bonds, bags on the high leg, nobody below as it moves."},
		{Hazard: "heat", Tags: tagsOf(s, (*plan.Light).GetsHot),
			Text: "Heat: keep cloth, gel, sprinklers and people clear; cool before moving."},
		{Hazard: "glass", Tags: tagsOf(s, discharge),
			Text: "Glass: no cracked lens or globe; the lens stops ultraviolet."},
		{Hazard: "changing", Tags: handledTags(s),
			Text: "Changing: off and cool before hands are on; two people where the list says so."},
		{Hazard: "weather", Tags: append(tagsOf(s, outside(s)), gripTags(s, sheetOutside(s))...), Winds: windsOf(s),
			Text: "Weather: rain covers, guys; down before the wind decides."},
	}
	applies := all[:0]
	for _, c := range all {
		if len(c.Tags) > 0 {
			applies = append(applies, c)
		}
	}
	return applies
}

func tagsOf(s *plan.Setup, is func(*plan.Light) bool) []string {
	var tags []string
	for i := range s.Lights {
		if is(&s.Lights[i]) {
			tags = append(tags, s.Lights[i].Tag)
		}
	}
	return tags
}

func powered(l *plan.Light) bool { return l.Head.Watts > 0 }

// hangsHigh is a light that hangs, or one whose stand carries it above a head.
func hangsHigh(l *plan.Light) bool { return overhead(&l.Mount, l.Height) }

func gripHangsHigh(g *plan.Grip) bool { return overhead(&g.Mount, g.Frame.At.Z-g.Base) }

func overhead(m *plan.Mount, height float64) bool {
	switch m.Kind {
	case term.Boom, term.Clamp, term.Pole, term.Wall, term.Lift, term.Ceiling:
		return true
	}
	return height >= overheadHeight
}

func discharge(l *plan.Light) bool { return l.Head.Technology == term.Discharge }

func outside(s *plan.Setup) func(*plan.Light) bool {
	return func(l *plan.Light) bool { return len(s.Rooms) > 0 && s.RoomAt(l.Frame.At) == nil }
}

// handledTags are what is hot as it is touched between the set-up before and this one, or takes two people.
func handledTags(s *plan.Setup) (tags []string) {
	if s.Before == nil {
		return nil
	}
	list, handled := change.Between(change.Of(s.Before), change.Of(s)), map[string]bool{}
	for i := range list.Lines {
		l := &list.Lines[i]
		handled[l.Name] = handled[l.Name] || (l.HotMinutes > 0 || len(l.Hands) > 0) && (l.Sort == change.Light || l.Sort == change.Grip)
	}
	add := func(name, tag string) {
		if handled[name] && !slices.Contains(tags, tag) {
			tags = append(tags, tag)
		}
	}
	for _, of := range []*plan.Setup{s, s.Before} {
		for i := range of.Lights {
			add(of.Lights[i].Name, of.Lights[i].Tag)
		}
		for i := range of.Grip {
			add(of.Grip[i].Name, of.Grip[i].Tag)
		}
	}
	return tags
}

// sheetOutside is a sheet out in the weather: outside of all rooms, or of which it is known at which wind it comes down.
func sheetOutside(s *plan.Setup) func(*plan.Grip) bool {
	return func(g *plan.Grip) bool { return g.TakeDown > 0 || len(s.Rooms) > 0 && s.RoomAt(g.Frame.At) == nil }
}

// windsOf are the winds at which things outdoors come down.
func windsOf(s *plan.Setup) (all []Wind) {
	add := func(tag string, at float64) {
		if at > 0 {
			all = append(all, Wind{tag, at, unit.FormatWind(at, s.Feet)})
		}
	}
	for i := range s.Lights {
		add(s.Lights[i].Tag, s.Lights[i].TakeDown)
	}
	for i := range s.Grip {
		add(s.Grip[i].Tag, s.Grip[i].TakeDown)
	}
	return all
}

func gripTags(s *plan.Setup, is func(*plan.Grip) bool) (tags []string) {
	for i := range s.Grip {
		if is(&s.Grip[i]) {
			tags = append(tags, s.Grip[i].Tag)
		}
	}
	return tags
}

// Unchecked returns what neither the figures nor the checks take into account, in sentences that every sheet
// carries: what is not said to be unchecked is taken for checked. What a scene writes and nothing computes yet
// the sheet names apart.
func Unchecked() []string {
	return []string{
		"Polished surfaces: all but mirrors, silver boards and panes return light as if they were matt.",
		"Some of what a picture could show: walls, stands and cameras in glass, and people at their marks there, a mirror seen in another, cables without an outlet in the scene, who holds a lamp by hand or pushes a camera, how legs are turned, and when somebody who walks, or a camera on a track, is where.",
		"Floor load, house wiring up to the outlets, breakers of lights that name no circuit, earths, rigging points and detectors.",
	}
}

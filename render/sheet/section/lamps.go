package section

import (
	"cmp"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
)

// Lamp is a line of the list of lamps in words: what is rigged, and how. What there is none of is "".
type Lamp struct {
	Light                         *plan.Light // nil: it is struck, and only its number and the change are there
	Tag                           string
	Unit, Wears, Focus, Colour    string
	Doors, Scrims                 string
	Filters                       string // gels and cloth, from the lamp outward
	Rise                          string // over what its stand stands on, where that is not the floor
	Aim                           string // what it is aimed at
	Role, Mount, Placing, Circuit string
	Level, Cues, Note, Change     string   // Cues: what it does in each, and how it plays
	TiltDegrees, PanDegrees       *float64 // up from level, and clockwise from the plan's up; nil: nobody aims it, or it has none
}

// Lamps are the lights of a set-up by their numbers, and after them those that are struck since the set-up before.
func Lamps(s *plan.Setup) []Lamp {
	c := Report{In: &Input{Setup: s}, Units: Units{Feet: s.Feet}}
	changes := map[string]string{} // by name
	var lamps, struck []Lamp
	if s.Before != nil {
		since := "since " + cmp.Or(s.Before.Name, "the set-up before") + ": "
		for _, row := range ChangeRows(s.Before, s, change.Between(change.Of(s.Before), change.Of(s)), c.Units) {
			switch l := row.Line; {
			case l == nil || l.Sort != change.Light:
			case l.Part(change.Goes) != nil:
				was := s.Before.LightNamed(l.Name)
				struck = append(struck, Lamp{Tag: was.Tag, Unit: c.UnitLabel(was), Change: since + row.Words})
			case changes[l.Name] == "":
				changes[l.Name] = since + row.Words
			default:
				changes[l.Name] += "; " + notAgain(changes[l.Name], row.Words)
			}
		}
	}
	for i := range s.Lights {
		l := c.lamp(&s.Lights[i])
		l.Change = changes[s.Lights[i].Name]
		lamps = append(lamps, l)
	}
	return append(lamps, struck...)
}

// notAgain is what a change says more of a light, without whom it follows where that is said.
func notAgain(said, words string) string {
	before, last := words, ""
	if at := strings.LastIndex(words, "; follows "); at >= 0 {
		before, last = words[:at], words[at:]
	}
	if last != "" && strings.Contains(said+";", last+";") {
		return before
	}
	return words
}

// lamp is the line of one light.
func (c Report) lamp(l *plan.Light) Lamp {
	line := Lamp{
		Light: l, Tag: l.Tag, Unit: c.UnitLabel(l), Wears: Joined(", ", c.sized(l.Head.ModifierLabel), inGate(l)), Doors: doors(l.Head.Doors), Scrims: scrims(&l.Head), Focus: l.Head.FocusWord(), Colour: LightColour(l), Filters: Filters(l),
		Rise: c.rise(l.Mount.Kind, l.Frame.At.Z-l.Base, l.Height), Role: roleWords(l.Roles), Mount: heldAll(l),
		Placing: c.placing(l.Placing, c.Length), Circuit: l.Circuit, Level: LightLevel(l), Cues: c.In.cueMoves(l), Note: l.Note,
	}
	aim := writtenAim(c.In.Setup, l)
	if l.Frame.Axis == (r3.Vec{}) || aim == nil && allRound(l) {
		return line
	}
	line.Aim = aimedAt(c.In.Setup, l, aim)
	tilt := math.Round(Tilt(l.Frame.Axis))
	line.TiltDegrees = &tilt
	if math.Abs(Tilt(l.Frame.Axis)) < steepest {
		turned := pan(l.Frame.Axis)
		line.PanDegrees = &turned
	}
	return line
}

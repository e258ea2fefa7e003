package section

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// Beams says whose beams and throws a plan draws whole.
type Beams uint8

// Whose beams are drawn whole; of the other lights a stub shows the direction.
const (
	ManyBeams Beams = iota // of all lights where they are few, else of the main ones
	AllBeams
	MainBeams
	NoBeams
)

// fewLights is how many lights may have their beams drawn before they hide each other.
const fewLights = 6

// BeamNames lists the words for whose beams are drawn, in the order of the constants after the first.
func BeamNames() []string { return []string{"all", "main", "none"} }

// BeamsNamed is the choice by a word; "" leaves it to how many lights there are.
func BeamsNamed(word string) (b Beams, ok bool) {
	if word == "" {
		return ManyBeams, true
	}
	i := slices.Index(BeamNames(), word)
	return AllBeams + Beams(i), i >= 0
}

// WholeBeams are the names of the lights whose beams and throws are drawn whole.
func WholeBeams(in *Input, which Beams) map[string]bool {
	names := map[string]bool{}
	switch {
	case which == NoBeams:
	case which == MainBeams, which == ManyBeams && litLights(in.Setup) > fewLights:
		names = mainLights(in)
	default:
		for i := range in.Setup.Lights {
			names[in.Setup.Lights[i].Name] = true
		}
	}
	return names
}

// litLights counts the lights that are on.
func litLights(s *plan.Setup) (n int) {
	for i := range s.Lights {
		if s.Lights[i].Level > 0 {
			n++
		}
	}
	return n
}

// mainLights are the names of those that matter: whose role is key or fill, or where no role says so, those that
// give the largest share on a side of a face.
func mainLights(in *Input) map[string]bool {
	names := map[string]bool{}
	for i := range in.Setup.Lights {
		l := &in.Setup.Lights[i]
		if MainRole(l) != "" {
			names[l.Name] = true
		}
	}
	if len(names) > 0 {
		return names
	}
	for i := range in.Faces {
		for _, r := range []*meter.Reading{in.Faces[i].Key, in.Faces[i].Fill} {
			if name := largestShare(r); name != "" {
				names[name] = true
			}
		}
	}
	return names
}

// MainRole is "key light" or "fill light" where a light is somebody's, rather key; "" for other lights.
func MainRole(l *plan.Light) string {
	for _, main := range []term.Role{term.Key, term.Fill} {
		if slices.ContainsFunc(l.Roles, func(r scene.Role) bool { return r.Role == main }) {
			return string(main) + " light"
		}
	}
	return ""
}

// largestShare is the light that gives the most of a reading.
func largestShare(r *meter.Reading) (name string) {
	if r == nil {
		return ""
	}
	sums := map[string]float64{}
	for _, s := range r.Shares {
		if sums[s.Light] += s.Lux; name == "" || sums[s.Light] > sums[name] {
			name = s.Light
		}
	}
	return name
}

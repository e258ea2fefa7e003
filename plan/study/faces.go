package study

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
)

// HasFace says whether a set-up has fields at face height: a person, and a camera to turn the domes to.
func HasFace(s *plan.Setup) bool {
	return len(s.People) > 0 && len(s.Cameras) > 0 && s.People[0].Face.At != s.Cameras[0].Frame.At
}

// facePlots are the domes at the height of the faces on every floor, each turned to the lens of the first
// camera. The floor of the first person comes first.
func facePlots(s *plan.Setup) []plot {
	c := &s.Cameras[0]
	var all []plot
	for _, g := range faceGrounds(s) {
		f := Field{Kind: AtFace, Z: faceHeight(s, g), Toward: c.Name}
		on := level(s, f, g, r3.Vec{}, light.Dome)
		on.Lattice.Toward = &c.Frame.At
		for i := range s.People {
			on.Lattice.Skip = append(on.Lattice.Skip, s.People[i].Own...)
		}
		all = append(all, on)
	}
	return all
}

// faceGrounds are the floors, and the open ground where somebody stands on it, which takes in the rooms on its
// level.
func faceGrounds(s *plan.Setup) []ground {
	all := grounds(s)
	for i := range s.People {
		g := groundUnder(s, &s.People[i])
		k := slices.IndexFunc(all, g.level)
		switch {
		case k < 0:
			all = append(all, g)
		case g.open:
			all[k] = g
		}
	}
	own := groundUnder(s, &s.People[0])
	rank := func(g ground) int {
		if own.level(g) {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(all, func(a, b ground) int { return cmp.Compare(rank(a), rank(b)) })
	return all
}

// faceHeight is the z of the faces over a ground: that of the first person on it, or as high over it as the first
// person's is over theirs.
func faceHeight(s *plan.Setup, g ground) float64 {
	for i := range s.People {
		if p := &s.People[i]; groundUnder(s, p).level(g) {
			return p.Face.At.Z
		}
	}
	return g.base + s.People[0].Face.At.Z - groundUnder(s, &s.People[0]).base
}

package study

import (
	"context"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/pending"
)

// litGlass is what cameras see in panes of what light falls on. It has a basis of its own, a draft as that of pictures.
type litGlass struct {
	setup       *plan.Setup
	reflections []frame.Reflection
	glints      [][]glint // of each
	basis       *light.Basis
}

// glint is a place at which glass shows what light falls on: that, and what is seen through the glass there.
type glint struct {
	frame.Glint
	thrown, through sighted
}

// sighted is a line of sight whose parts are points of a basis, from the first on.
type sighted struct {
	look
	first int
}

// glintsIn lights what panes show of what light falls on; nil where they show nothing of it.
func glintsIn(ctx context.Context, s *plan.Setup, found []frame.Reflection, draft func() (*light.World, error)) (*litGlass, error) {
	found = slices.DeleteFunc(slices.Clone(found), func(r frame.Reflection) bool { return len(r.Glints) == 0 })
	if len(found) == 0 {
		return nil, nil
	}
	world, err := draft()
	if err != nil {
		return nil, err
	}
	all := &litGlass{setup: s}
	var spots []light.Receptor
	sees := beholder{setup: s, skins: sheetsOf(s)}
	for i := range found {
		if glints := sees.glintsOf(world, &found[i], &spots); len(glints) > 0 {
			all.reflections, all.glints = append(all.reflections, found[i]), append(all.glints, glints)
		}
	}
	if len(spots) == 0 {
		return nil, nil
	}
	if all.basis, err = ownBasis(ctx, s, world, spots, "what shows in the glass"); err != nil {
		return nil, err
	}
	return all, nil
}

// seenFrom is where the lens is that a reflection shows in.
func seenFrom(s *plan.Setup, r *frame.Reflection) r3.Vec {
	at := s.CameraNamed(r.Camera).OnTrack(r.Along)
	return at.Frame.At
}

// glintsOf looks at what a pane shows of a thing, place by place, and at what is behind the glass there; the points that this takes are added to
// the spots. Where a line of sight meets something else first, as what of the thing lies inside another, there is no glint.
func (s *beholder) glintsOf(world *light.World, r *frame.Reflection, spots *[]light.Receptor) (all []glint) {
	sight := func(at, way r3.Vec) sighted {
		return sighted{s.look(world, 0, 0, light.Receptor{At: at, Axis: way, Response: light.Radiance}), len(*spots)}
	}
	from := seenFrom(s.setup, r)
	for _, g := range r.Glints {
		one := glint{Glint: g, thrown: sight(g.On, g.Onward)}
		if name, _, _ := strings.Cut(one.thrown.name, "."); name != r.Name {
			continue
		}
		one.thrown.add(spots)
		one.through = sight(from, g.Toward)
		one.through.add(spots)
		all = append(all, one)
	}
	return all
}

// add adds the receptors of a line of sight to others.
func (s *sighted) add(spots *[]light.Receptor) {
	for i := range s.line.Parts {
		*spots = append(*spots, s.line.Parts[i].Receptor)
	}
}

// luminance is that of what a line of sight shows at some levels, cd/m².
func (s *sighted) luminance(basis *light.Basis, levels light.Levels) (sum float64) {
	for i := range s.line.Parts {
		total, _ := basis.Point(s.first+i, levels)
		sum += total.Times(s.line.Parts[i].Gain).Y()
	}
	return sum
}

// read reads what panes show at some levels.
func (all *litGlass) read(levels light.Levels, figures *pending.Figures, into *meter.Set) {
	if all == nil {
		return
	}
	given := map[string]float64{}
	for name, level := range levels {
		given[name] = level.Y()
	}
	for i := range all.reflections {
		into.Reflections = append(into.Reflections, all.readOne(i, levels, given, figures))
	}
}

// readOne reads how bright a thing is in glass where it stands out most against what is behind it.
func (all *litGlass) readOne(i int, levels light.Levels, given map[string]float64, figures *pending.Figures) (r meter.Reflection) {
	places := []r3.Vec{seenFrom(all.setup, &all.reflections[i])}
	for k := range all.glints[i] {
		g, one := &all.glints[i][k], meter.Reflection{Reflection: all.reflections[i]}
		one.Factor, one.Surface = g.Factor, g.through.name
		one.Luminance, one.Behind = g.Factor*g.thrown.luminance(all.basis, levels), g.through.luminance(all.basis, levels)
		if k == 0 || standsOutMore(&one, &r) {
			r = one
		}
		places = append(places, g.thrown.line.At, g.through.line.At)
	}
	r.Uncomputed = figures.At(given, places...)
	return r
}

// standsOutMore compares one thing at two places of glass: where it is seen, and of such places where it is brightest.
func standsOutMore(a, b *meter.Reflection) bool {
	switch {
	case a.StandsOut() != b.StandsOut():
		return a.StandsOut()
	case a.StandsOut():
		return a.Luminance > b.Luminance
	}
	return a.Luminance-meter.LeastGlint*a.Behind > b.Luminance-meter.LeastGlint*b.Behind
}

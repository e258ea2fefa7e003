package study

import (
	"context"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/pending"
)

// lenses are what cameras get of lamps beside the picture that they make: reflections, and light onto the lens.
type lenses struct {
	setup       *plan.Setup
	reflections []meter.Reflection
	behind      []int        // of each reflection: its place among the points of the basis; -1 where nothing stands behind it
	basis       *light.Basis // of what is seen through glass where a lamp shows in it; nil where that is nothing
	lit         *litGlass    // nil where glass shows nothing that light falls on
	flares      []meter.Flare
	ways        [][]light.Way // of each flare: how its light comes
}

// lensesOf looks through the cameras of a set-up. What is seen through glass is lit in a basis of its own, so that readings are the
// same bits whether or not a lamp shows there; most scenes ask for none of it. What light falls on is lit in a draft.
func lensesOf(ctx context.Context, s *plan.Setup, world *light.World, draft func() (*light.World, error)) (*lenses, error) {
	all := &lenses{setup: s}
	found := frame.Reflections(s)
	spots := all.keepReflections(found, world)
	var err error
	if all.lit, err = glintsIn(ctx, s, found, draft); err != nil {
		return nil, err
	}
	all.findFlares(world)
	if len(spots) == 0 {
		return all, nil
	}
	if all.basis, err = ownBasis(ctx, s, world, spots, "what is behind the glass"); err != nil {
		return nil, err
	}
	return all, nil
}

// keepReflections keeps those in mirrors, and of lamps in glass; it returns the receptors that look at what is behind the latter.
func (all *lenses) keepReflections(found []frame.Reflection, world *light.World) (spots []light.Receptor) {
	for _, r := range found {
		if len(r.Glints) > 0 {
			continue
		}
		one, at := meter.Reflection{Reflection: r}, -1
		if from := seenFrom(all.setup, &r); r.Glass {
			if hit, met := world.BVH().FirstOpaque(from, r.Toward, nil); met {
				one.Surface, at = all.setup.Names[hit.ID], len(spots)
				spots = append(spots, light.Receptor{At: from, Axis: r.Toward, Response: light.Radiance})
			}
		}
		all.reflections, all.behind = append(all.reflections, one), append(all.behind, at)
	}
	return spots
}

// findFlares finds the lamps whose light comes straight onto a lens: of one that moves where along its track most of it does, in the frame
// and beside it.
func (all *lenses) findFlares(world *light.World) {
	emitters := light.Emitters(all.setup)
	for _, g := range frame.Glares(all.setup) {
		c := all.setup.CameraNamed(g.Camera).OnTrack(g.Along)
		for i := range emitters {
			if emitters[i].Name != g.Light {
				continue
			}
			on := light.Receptor{At: c.Frame.At, Axis: c.Frame.Axis, Response: light.Cosine}
			if ways := light.Straight(world, &emitters[i], &on); len(ways) > 0 {
				all.keep(&g, ways)
			}
		}
	}
}

// keep adds a flare, in place of one of the same lamp in the same part of the picture that is weaker.
func (all *lenses) keep(g *frame.Glare, ways []light.Way) {
	for i := range all.flares {
		if f := &all.flares[i]; f.Camera == g.Camera && f.Light == g.Light && f.Within() == g.Within() {
			if luxBy(ways) > luxBy(all.ways[i]) {
				f.Glare, all.ways[i] = *g, ways
			}
			return
		}
	}
	all.flares, all.ways = append(all.flares, meter.Flare{Glare: *g}), append(all.ways, ways)
}

// luxBy is what light of a lamp at full comes by some ways, lx.
func luxBy(ways []light.Way) (lux float64) {
	for i := range ways {
		lux += ways[i].Lux
	}
	return lux
}

// read reads them at some levels.
func (all *lenses) read(levels light.Levels, into *meter.Set) {
	figures := pending.Of(all.setup, levels)
	into.Reflections, into.Flares = nil, nil
	for i := range all.reflections {
		r := all.reflections[i]
		if r.Glass {
			if !(levels[r.Name].Y() > 0) {
				continue // it is up at another time
			}
			all.readGlass(&r, all.behind[i], levels, figures)
		}
		into.Reflections = append(into.Reflections, r)
	}
	all.lit.read(levels, figures, into)
	for i := range all.flares {
		f := all.flares[i]
		level := levels[f.Light]
		for _, way := range all.ways[i] {
			f.Lux += level.Times(way.Filter).Y() * way.Lux
		}
		if f.Lux > 0 {
			c := all.setup.CameraNamed(f.Camera).OnTrack(f.Along)
			f.Uncomputed = figures.At(map[string]float64{f.Light: 1}, c.Frame.At)
			into.Flares = append(into.Flares, f)
		}
	}
}

// readGlass reads how bright a lamp is in glass, and what is behind it: a point of the basis, or nothing where that is -1.
func (all *lenses) readGlass(r *meter.Reflection, behind int, levels light.Levels, figures *pending.Figures) {
	l := all.setup.LightNamed(r.Name)
	r.Luminance = r.Factor * frame.Luminance(l, levels[l.Name].Y(), r.From)
	if behind >= 0 {
		total, _ := all.basis.Point(behind, levels)
		r.Behind = total.Y()
	}
	from := seenFrom(all.setup, &r.Reflection)
	r.Uncomputed = figures.At(map[string]float64{r.Name: 1}, from, r3.Add(from, r3.Scale(farBehind, r.Toward)))
}

// farBehind is how far from a lens what is behind glass is taken to lie where only the space that it lies in counts, m.
const farBehind = 20

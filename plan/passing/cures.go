package passing

import (
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
)

// curing looks for what brings a light nearer to the colour that is wanted of it at a face.
type curing struct {
	*passer
	gap     colour.Gap
	factors colour.RGB // what the way to the face makes of its light, channel by channel
	wanted  colour.RGB
}

// gels are those that the lamp wears in place of its own: of all stacks on the bare lamp the one that kit.Correct takes. What it wears already stays
// where that is as close. Neutral densities and strong colours stay in any case, for they are on it for something else. A bare lamp without a
// colour temperature keeps all, and gets more.
func (c *curing) gels() (cure meter.Cure) {
	catalogue := c.lit.Setup.Kit
	worn, bare := c.stripped()
	from, ok := gapOf(c.factors.Times(bare.RelativeOutput(c.light.Level)), c.wanted)
	if !ok {
		worn, bare, from = nil, c.light.Head, c.gap
	}
	stack := catalogue.Correct(from)
	if len(worn) > 0 && c.gap.Size() <= stack.Enough {
		return cure
	}
	cure.Off, cure.Gels = without(worn, stack.Gels), without(stack.Gels, worn)
	c.tell(bare.Gelled(catalogue, stack.Gels), &cure)
	return cure
}

// stripped is the lamp without the gels that correct its white, and these.
func (c *curing) stripped() (worn []string, bare kit.Head) {
	catalogue, bare := c.lit.Setup.Kit, c.light.Head.Ungelled()
	for _, g := range c.light.Choice.Gels {
		if catalogue.Corrects(g.Name) {
			worn = append(worn, catalogue.Gel(g.Name).Name) // as the catalogue writes it
		} else {
			bare = bare.Gelled(catalogue, []string{g.Name})
		}
	}
	return worn, bare
}

// without is a list of gels without others, each taken away once.
func without(all, others []string) (rest []string) {
	others = slices.Clone(others)
	for _, name := range all {
		if i := slices.Index(others, name); i >= 0 {
			others = slices.Delete(others, i, i+1)
		} else {
			rest = append(rest, name)
		}
	}
	return rest
}

// setting is the white of the unit's own that closes the gap best, with the gels that the lamp wears, or without those that correct it where that is
// as close; nil where it has no other that helps.
func (c *curing) setting() *meter.Cure {
	u := c.unit()
	if u == nil {
		return nil
	}
	var best *meter.Cure
	if head, to := c.light.Head.SetNearer(u, c.gap); to.Moves {
		best = &meter.Cure{White: &to}
		c.tell(head, best)
	}
	worn, bare := c.stripped()
	if from, ok := gapOf(c.factors.Times(bare.RelativeOutput(c.light.Level)), c.wanted); ok && len(worn) > 0 {
		head, to := bare.SetNearer(u, from)
		plain := &meter.Cure{White: &to, Off: worn}
		if c.tell(head, plain); to.Moves && plain.Left != nil && (best == nil || best.Left == nil || kit.AsClose(plain.Left, best.Left)) {
			best = plain
		}
	}
	return best
}

// tell works out anew what a change leaves of the gap, and what it costs.
func (c *curing) tell(h kit.Head, cure *meter.Cure) {
	l := c.light
	out := h.RelativeOutput(l.Level)
	if left, ok := gapOf(c.factors.Times(out), c.wanted); ok {
		cure.Left = &left
	}
	cure.Stops = stopsLost(l.Head.RelativeOutput(l.Level).Y()*l.Head.Source.Flux, out.Y()*h.Source.Flux)
}

// unit is the unit of the light in the catalogue; nil of one that states its own output.
func (c *curing) unit() *kit.Unit {
	for i := range c.lit.Setup.Scene.Lights {
		if w := &c.lit.Setup.Scene.Lights[i]; w.Name == c.light.Name && w.Output == nil {
			return c.lit.Setup.Kit.Unit(w.Unit.Value)
		}
	}
	return nil
}

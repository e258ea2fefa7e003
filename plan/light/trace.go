package light

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// share is what comes from one lamp through the same panes.
type share struct {
	via    []solid.ID // in order from the lamp
	filter colour.RGB
	value  float64   // lx at levels of {1, 1, 1}, before the filter
	mirror *solid.ID // that it came by; nil where it came straight
}

// tracer follows light from lamps to receptors. It keeps its memory from one to the next.
type tracer struct {
	visibleSums
	shadeView
	quick    bool    // by short rules, for fields and surfaces
	coarse   bool    // part by part, as closely as surfaces are summed, where short rules do not serve
	among    []int32 // where it is not nil, what may stand between the lamp and all receptors that are asked for
	panes    []solid.Pane
	aside    []solid.Pane // from the corners of a part
	ids      []solid.ID
	shares   []share
	gathered []share      // straight, by mirrors and by boards
	kept     []r3.Vec     // of an outline
	behind   solid.Viewer // of what a lamp lights of a board
}

// light returns what a lamp gives to a receptor, in shares that hold until the next call; none to a spot meter, which looks
// past all surfaces. A point is seen or not; of any other opening the part that is seen is found exactly, and summed as
// closely as the whole is, or quickly by a short rule.
func (t *tracer) light(l *lamp, r *Receptor) []share {
	t.shares = t.shares[:0]
	t.Reset()
	if l.screened != nil {
		defer func(set *solid.BVH) { t.BVH = set }(t.BVH)
		t.BVH = l.screened
	}
	if r.Response == Radiance || l.onesided && r3.Dot(r3.Sub(r.At, l.at), l.axis) <= 0 {
		return nil
	}
	if l.shade != nil {
		t.shade(l, r)
		return t.shares
	}
	sides := roundSides
	if t.quick && l.screened != nil && l.isSteep(r) {
		sides = fewSides
		t.quick, t.coarse = false, true
		defer func() { t.quick, t.coarse = true, false }()
	}
	figure := l.outline(r.At, sides)
	if figure == nil {
		t.point(l, r)
		return t.shares
	}
	t.ofFigure(l, r, figure)
	return t.shares
}

// ofFigure adds what comes of an opening that is seen as a flat figure.
func (t *tracer) ofFigure(l *lamp, r *Receptor, figure []r3.Vec) {
	past := t.between(l, r)
	seen, cut := t.inSight(l, figure)
	if len(seen) == 0 {
		return
	}
	if past == nil && !cut {
		if value := t.whole(l, r, figure); value > 0 {
			t.add(value, nil)
		}
		return
	}
	all := t.Visible(r.At, seen, past, true)
	for i := range all {
		all[i].Cut = all[i].Cut || cut
	}
	switch {
	case len(all) == 0:
	case len(all) == 1 && !all[0].Cut:
		t.through(&all[0], r, t.whole(l, r, figure))
	case t.quick:
		for i := range all {
			t.through(&all[i], r, t.rough(l, r, all[i].Corners, fewPlaces))
		}
	default:
		t.parts(l, r, figure, all)
	}
}

// total is all that a lamp gives to a receptor, lx at levels of {1, 1, 1}.
func (t *tracer) total(l *lamp, r *Receptor) colour.RGB {
	t.light(l, r)
	return t.sum()
}

// sum adds the shares up.
func (t *tracer) sum() colour.RGB { return totalOf(t.shares) }

func totalOf(shares []share) (sum colour.RGB) {
	for _, s := range shares {
		sum = sum.Add(s.filter.Scale(s.value))
	}
	return sum
}

// between finds what may stand between a lamp and a receptor; nil where nothing does.
func (t *tracer) between(l *lamp, r *Receptor) []int32 {
	if t.among != nil {
		s := solid.NewBoxShaft([]r3.Vec{r.At}, l.bound(r.At))
		t.found = t.BVH.Among(&s, t.among, t.found[:0])
	} else {
		s := l.shaftTo(r.At)
		if r.Response == Cosine { // what lies behind the receptor's plane hides nothing that counts
			s.Bound(facing(r.At, r.Axis))
		}
		if l.onesided {
			s.Bound(facing(l.at, l.axis))
		}
		t.found = t.BVH.Between(&s, r.Skip, t.found[:0])
	}
	if len(t.found) == 0 {
		return nil
	}
	return t.found
}

// shaftTo holds all ways between the opening and a point.
func (l *lamp) shaftTo(at r3.Vec) solid.Shaft {
	if bound := l.bound(at); bound != nil || l.shade == nil {
		return solid.NewShaft([]r3.Vec{at}, bound)
	}
	box := boxAbout(l.at, l.roundRadius())
	return solid.NewBoxShaft([]r3.Vec{at}, box[:])
}

// point is the light of an opening that is seen as a point.
func (t *tracer) point(l *lamp, r *Receptor) {
	value := l.unoccluded(r, exactly())
	if !(value > 0) {
		return
	}
	var blocked bool
	if t.panes, blocked = t.BVH.Segment(l.at, r.At, r.Skip, t.panes[:0]); !blocked {
		t.add(value, t.panes)
	}
}

// whole is what the receptor gets where nothing hides any part of the opening. Measured light has a crease at each
// of its angles, so that a rule for smooth light misses a little of it.
func (t *tracer) whole(l *lamp, r *Receptor, figure []r3.Vec) float64 {
	switch cut := runsThrough(r, l); {
	case t.quick && cut:
		return t.part(l, r, figure, coarseSum)
	case t.quick:
		return l.unoccluded(r, coarsely())
	case l.isMeasured() || cut:
		return t.part(l, r, figure, fineSum)
	}
	return l.unoccluded(r, exactly())
}

// parts adds up what is seen of an opening, as shares of the whole: its parts are summed by another rule than a round
// opening is, and by the same as the whole here.
func (t *tracer) parts(l *lamp, r *Receptor, figure []r3.Vec, all []solid.VisiblePart) {
	closely := fineSum
	if t.coarse {
		closely = coarseSum
	}
	whole := t.part(l, r, figure, closely)
	if !(whole > 0) {
		return
	}
	full := whole
	if !l.isMeasured() && !runsThrough(r, l) {
		full = l.unoccluded(r, exactly())
	}
	left := 1.0
	for i := range all {
		share := min(t.part(l, r, all[i].Corners, closely)/whole, left)
		if share > 0 {
			left -= share
			t.through(&all[i], r, share*full)
		}
	}
}

// through adds the light of a part of an opening, through the panes that stand before it.
func (t *tracer) through(g *solid.VisiblePart, r *Receptor, value float64) {
	t.panes = t.panes[:0]
	if g.Filtered {
		t.panes, _ = t.BVH.Segment(t.wayFrom(g.Corners, r), r.At, r.Skip, t.panes)
		if !t.quick {
			value *= t.overAngles(g.Corners, r)
		}
	}
	if value != 0 {
		t.add(value, t.panes)
	}
}

// steepGlass is the ratio of what passes glass to what passes it from straight ahead below which that differs over a lamp.
const steepGlass = 0.99

// overAngles is what passes the glass before a part of an opening, in the mean over the part, by what passes from its middle:
// by the rule of Simpson, from the middle and from close before the corners: in the very corners other things begin. Where something
// else stands before one all the same it counts as the middle.
func (t *tracer) overAngles(corners []r3.Vec, r *Receptor) float64 {
	middle := glassRatio(t.panes)
	if middle >= steepGlass || middle == 0 || len(corners) < 3 {
		return 1
	}
	mean, centre := 0.0, solid.Centre(corners)
	for _, p := range corners {
		p = r3.Add(p, r3.Scale(beforeCorner, r3.Sub(centre, p)))
		ratio, blocked := middle, false
		if t.aside, blocked = t.BVH.Segment(p, r.At, r.Skip, t.aside[:0]); !blocked && slices.EqualFunc(t.aside, t.panes, sameSheet) {
			ratio = glassRatio(t.aside)
		}
		mean += ratio / float64(len(corners))
	}
	return (mean/middle + 2) / 3
}

// beforeCorner is how far from a corner of a part of an opening, by how far that is from the middle, light from the corner is followed.
const beforeCorner = 1e-4

// sameSheet says whether two rays pass the same sheet.
func sameSheet(a, b solid.Pane) bool { return a.ID == b.ID }

// glassRatio is what passes panes by what would from straight ahead.
func glassRatio(panes []solid.Pane) float64 {
	ratio := 1.0
	for i := range panes {
		ratio *= panes[i].Ratio
	}
	return ratio
}

// add adds light that has passed some panes to its share.
func (t *tracer) add(value float64, panes []solid.Pane) {
	t.ids = t.ids[:0]
	filter := colour.RGB{1, 1, 1}
	for i := range panes {
		t.ids = append(t.ids, panes[i].ID)
		filter = filter.Times(panes[i].Factor())
	}
	for i := range t.shares {
		if s := &t.shares[i]; slices.Equal(s.via, t.ids) {
			s.value += value * filter.Y() / s.filter.Y() // glass passes more of the one than of the other
			return
		}
	}
	t.shares = append(t.shares, share{via: append([]solid.ID(nil), t.ids...), filter: filter, value: value})
}

// inSight is what of the outline of a lamp lies before the mirror that shows it, and whether that is less than all of it.
func (t *tracer) inSight(l *lamp, figure []r3.Vec) (part []r3.Vec, cut bool) {
	if l.before == nil {
		return figure, false
	}
	clipped := t.Clip(figure, l.before, -1)
	t.kept = append(t.kept[:0], clipped...)
	return t.kept, true
}

// passed is what panes leave of light.
func passed(panes []solid.Pane) colour.RGB {
	factor := colour.RGB{1, 1, 1}
	for i := range panes {
		factor = factor.Times(panes[i].Factor())
	}
	return factor
}

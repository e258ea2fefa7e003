package kit

import (
	"cmp"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// What another unit may differ by and still be used alike, as ratios: its beam, and each side of the opening that its light leaves by. Common
// practice: more is another beam, or another softness.
const (
	likeBeam    = 1.5
	likeOpening = 1.25
)

// UsedLike says whether the light of two heads is used alike: of one class, out of openings about as large, in beams about as wide; behind cloth through
// apertures about as large, for before a lens the cloth is as large as that has it.
func (h *Head) UsedLike(other *Head, behindCloth bool) bool {
	o, p := h.Source.Opening, other.Source.Opening
	if h.Class != other.Class || o.Form != p.Form || h.Zooms != other.Zooms || behindCloth && !within(h.Aperture, other.Aperture, likeOpening) ||
		!within(o.Width, p.Width, likeOpening) || !within(o.Height, p.Height, likeOpening) {
		return false // before the beams, which take longer to find
	}
	across, up := photometry.BeamAngle(h.Source.Distribution)
	wide, high := photometry.BeamAngle(other.Source.Distribution)
	return within(across, wide, likeBeam) && within(up, high, likeBeam)
}

// within says whether two measures differ by a ratio at most.
func within(a, b, ratio float64) bool { return a <= b*ratio && b <= a*ratio }

// Equal is the unit of the least power, and of those the least mass, that does in the place of the one that is chosen: of its technology and used like it, with the
// same modifier, focus and white, and set to all the whites of the other, it gives at least as much along its axis at full, without gels and scrims. nil where no other of the catalogue does.
func (c *Catalogue) Equal(ch Choice) (best *Unit) {
	own := c.Unit(ch.Unit)
	if own == nil || own.Class == term.Practical {
		return nil
	}
	ch.Modifier, ch.Level, ch.Gels, ch.Scrims = c.DefaultModifier(ch), nil, nil, nil
	if ch.White == nil {
		ch.White = &colour.White{Kelvin: own.Native}
	}
	is, ok := c.Head(ch, &source.Log{})
	if !ok {
		return nil
	}
	enough := is.Source.AxisLux(1)
	for _, u := range c.Units {
		asSmall := best != nil && cmp.Or(cmp.Compare(best.Watts, u.Watts), cmp.Compare(best.Mass, u.Mass)) <= 0
		if u == own || asSmall || !u.asOwn(own) || !slices.Contains(c.Fitting(u), ch.Modifier) {
			continue
		}
		with := ch
		with.Unit = u.Name
		if head, ok := c.Head(with, &source.Log{}); ok && head.Source.AxisLux(1) >= enough && is.UsedLike(&head, false) {
			best = u
		}
	}
	return best
}

// Equals remembers which unit does in the place of each that was asked for: a day asks of its lamps again and again, and many are chosen alike. The
// zero Equals is ready.
type Equals struct{ known map[chosen]*Unit }

// Of is Equal of a catalogue, found once for all choices that are alike.
func (e *Equals) Of(c *Catalogue, ch Choice) *Unit {
	key := chosenOf(c, &ch)
	if u, ok := e.known[key]; ok {
		return u
	}
	if e.known == nil {
		e.known = map[chosen]*Unit{}
	}
	u := c.Equal(ch)
	e.known[key] = u
	return u
}

// chosen is all of a choice that Equal reads, without the places where it was written.
type chosen struct {
	from           *Catalogue
	unit, modifier string
	white          colour.White // all nought: the native one
	tint           float64      // Duv
	focus, edge    float64      // shares; -1 is not given
	ofZoom         bool
	bulb           BulbChoice
	shade          ShadeChoice
	doors          Opened
	hung           bool // whether there are doors
}

func chosenOf(c *Catalogue, ch *Choice) chosen {
	key := chosen{from: c, unit: ch.Unit, modifier: ch.Modifier, tint: ch.Tint, focus: -1, edge: -1, ofZoom: ch.FocusOfZoom, hung: ch.Doors != nil}
	if ch.Focus != nil {
		key.focus = *ch.Focus
	}
	if ch.Edge != nil {
		key.edge = *ch.Edge
	}
	if ch.White != nil {
		key.white = *ch.White
	}
	if ch.Bulb != nil {
		key.bulb = *ch.Bulb
	}
	if ch.Shade != nil {
		key.shade = *ch.Shade
	}
	if ch.Doors != nil {
		key.doors = *ch.Doors
	}
	key.bulb.Span, key.shade.Span, key.doors.Span = source.Span{}, source.Span{}, source.Span{}
	return key
}

// asOwn says whether a unit is of the class and the technology of another, and can be set to all of its whites.
func (u *Unit) asOwn(own *Unit) bool {
	return u.Class == own.Class && u.Technology == own.Technology && u.Kelvin[0] <= own.Kelvin[0] && u.Kelvin[1] >= own.Kelvin[1]
}

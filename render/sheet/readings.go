package sheet

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// readings marks what the meter reads.
type readings struct{ *drawing }

// mark draws the mark of a reading and returns its box.
func (c readings) mark(p pad, kind string, at r2.Vec, r *meter.Reading) r2.Box {
	c.used("reading:" + kind)
	return symbols.Mark(p.of("reading:"+r.Name, c.readingAlt(r)).canvas, p.symbols(), symbols.MeterKind(kind), at).Box()
}

// drawReadings draws the marks of faces and meters, and returns the notes that go beside them.
func (c readings) drawReadings(p pad, v view) []placeable {
	var notes []placeable
	for i := range c.in.Faces {
		f := &c.in.Faces[i]
		if lit(f.Key) {
			notes = append(notes, c.faceNote(p, v, f.Key, faceWords{c.whose(f), stop(f.Key.Stop), "key", ""}, nil))
		}
		if lit(f.Fill) {
			words, struck := faceWords{c.whose(f), stop(f.Fill.Stop), "fill", ""}, []string(nil)
			if lit(f.Key) {
				words.under = unit.FormatAgainst(-f.Contrast, "key")
				struck = some(f.Key.Struck() || f.Fill.Struck(), words.under)
			}
			notes = append(notes, c.faceNote(p, v, f.Fill, words, struck))
		}
	}
	for i := range c.in.Readings {
		r := &c.in.Readings[i]
		if where := v.flat(targetOf(c.in.Setup, r)); r.Person == "" && contains(v.panel, where) {
			notes = append(notes, c.meterNote(p, where, r))
		}
	}
	return notes
}

// whose is the name of whose face it is, where there are several.
func (c Report) whose(f *Face) string {
	if len(c.in.Faces) < 2 {
		return ""
	}
	return f.Person
}

// faceWords are those beside one side of a face: whose it is, its stop, which side, and how far it is under the
// other.
type faceWords struct{ who, figure, side, under string }

// faceNote marks one side of a face at the edge of the head, the way that side faces. Its words may
// not stand on the body, and are led out of it.
func (c readings) faceNote(p pad, v view, r *meter.Reading, words faceWords, struck []string) placeable {
	out := plain(r.Facing)
	if n := r2.Norm(out); n > 0 {
		out = r2.Scale(1/n, out)
	}
	c.used("reading:face")
	mark := symbols.Side(p.of("reading:"+r.Name, c.readingAlt(r)).canvas, p.symbols(), headOf(c.in.Setup, v, r), bearing(out), v.scale)
	return &note{object: "reading:" + r.Name, layer: ink.Readings, style: c.p.small().strong(), forms: c.faceForms(words),
		struck: append(struck, some(r.StopsStruck(), words.figure)...), anchor: middle(mark.Body[2], mark.Body[3]), body: mark.Box(), toward: &out, weight: 2, leader: 30, led: true}
}

// headOf is the axis of the head that a reading is of, on paper.
func headOf(s *plan.Setup, v view, r *meter.Reading) r2.Vec {
	for i := range s.People {
		if who := &s.People[i]; who.Name == r.Person {
			return v.mm(who.At)
		}
	}
	return v.flat(r.At)
}

// faceForms are the ways to say a reading, fullest first. Where the list of faces stands right below,
// the leader to the head tells whose it is; elsewhere nobody could use it without the name.
func (c readings) faceForms(w faceWords) []string {
	said := w.figure + " " + w.side
	if w.who != "" && !c.terse {
		said = w.who + ", " + said
	}
	if w.under == "" {
		return []string{said}
	}
	return []string{said + ", " + w.under, said}
}

// target is the place a reading is of: of a spot meter what it looks at, not where it looks from.
func targetOf(s *plan.Setup, r *meter.Reading) r3.Vec {
	for i := range s.Meters {
		if m := &s.Meters[i]; m.Name == r.Name && r.Kind == "spot" {
			return m.At
		}
	}
	return r.At
}

// meterNote marks a meter of the scene.
func (c readings) meterNote(p pad, where r2.Vec, r *meter.Reading) placeable {
	body := c.mark(p, r.Kind, where, r)
	return &note{object: "reading:" + r.Name, layer: ink.Readings, style: c.p.small(), forms: []string{r.Name + " " + c.metered(r), c.metered(r)},
		struck: some(r.Struck(), c.metered(r)), anchor: where, body: body, weight: 1.5, leader: 20}
}

// readingAlt says a reading in a sentence.
func (c Report) readingAlt(r *meter.Reading) string {
	if r.Kind == "spot" {
		return fmt.Sprintf("Spot reading %s: %s, %s stops over mid grey.", r.Name, c.metered(r), over(r.Over)) + alsoStruck(r)
	}
	return fmt.Sprintf("Reading %s, %s, %s above the floor: %s, %s, %s stops from the working stop.",
		r.Name, r.Kind, c.length(above(c.in.Setup, r.At)), c.metered(r), stop(r.Stop), over(r.Over)) + alsoStruck(r)
}

// above is the height of a point over the floor of its room, or over the ground.
func above(s *plan.Setup, p r3.Vec) float64 {
	for i := range s.Rooms {
		if r := &s.Rooms[i]; inRing(r.Inside, plain(p)) {
			return p.Z - r.Base
		}
	}
	return p.Z - s.Ground
}

// inRing says whether a point lies in a ring, by the number of sides a ray crosses.
func inRing(ring []r2.Vec, p r2.Vec) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

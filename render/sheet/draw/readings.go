package draw

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// readings marks what the meter reads.
type readings struct{ *Drawing }

// mark draws the mark of a reading and returns its box.
func (c readings) mark(p Pad, kind term.Meter, at r2.Vec, r *meter.Reading) r2.Box {
	c.used("reading:" + string(kind))
	return symbols.DrawMeter(p.of("reading:"+r.Name, c.ReadingAlt(r)).canvas, p.symbols(), symbols.MeterKind(kind), at).Box()
}

// drawReadings draws the marks of faces and meters, and returns the notes that go beside them.
func (c readings) drawReadings(p Pad, v layout.View) []placeable {
	var notes []placeable
	for i := range c.In.Faces {
		f := &c.In.Faces[i]
		if f.Mark {
			continue // the mark has its name there, and the list its figures
		}
		if section.Lit(f.Key) {
			notes = append(notes, c.faceNote(p, v, f.Key, faceWords{c.OwnerPrefix(f), section.Stop(f.Key.Stop), "key", ""}, nil))
		}
		if section.Lit(f.Fill) {
			words, struck := faceWords{c.OwnerPrefix(f), section.Stop(f.Fill.Stop), "fill", ""}, []string(nil)
			if section.Lit(f.Key) {
				words.under = unit.FormatRelativeStops(-f.Contrast, "key")
				struck = section.When(f.Key.Struck() || f.Fill.Struck(), words.under)
			}
			notes = append(notes, c.faceNote(p, v, f.Fill, words, struck))
		}
	}
	for i := range c.In.Readings {
		r := &c.In.Readings[i]
		if where := v.Flat(targetOf(c.In.Setup, r)); r.Person == "" && box.Contains(v.Panel, where) {
			notes = append(notes, c.meterNote(p, where, r))
		}
	}
	return notes
}

// faceWords are those beside one side of a face: whose it is, its stop, which side, and how far it is under the
// other.
type faceWords struct{ who, figure, side, under string }

// faceNote marks one side of a face at the edge of the head, the way that side faces. Its words may
// not stand on the body, and are led out of it.
func (c readings) faceNote(p Pad, v layout.View, r *meter.Reading, words faceWords, struck []string) placeable {
	out := plan.InPlan(r.Facing)
	if n := r2.Norm(out); n > 0 {
		out = r2.Scale(1/n, out)
	}
	c.used("reading:face")
	mark := symbols.DrawFaceSide(p.of("reading:"+r.Name, c.ReadingAlt(r)).canvas, p.symbols(), headOf(c.In.Setup, v, r), box.Bearing(out), v.Scale)
	return &note{object: "reading:" + r.Name, layer: ink.Readings, style: c.Pad.reading(), forms: c.faceForms(words),
		struck: append(struck, section.When(r.StopsStruck(), words.figure)...), anchor: box.Middle(mark.Body[2], mark.Body[3]), body: mark.Box(), toward: &out, priority: 6, leader: 44, led: true, reportMissing: true}
}

// headOf is the axis of the head that a reading is of, on paper.
func headOf(s *plan.Setup, v layout.View, r *meter.Reading) r2.Vec {
	for i := range s.People {
		if who := &s.People[i]; who.Name == r.Person {
			return v.Paper(who.At)
		}
	}
	return v.Flat(r.At)
}

// faceForms are the ways to say a reading, fullest first: the figure large, and below it whose it is and how far under the
// other. Where the list of faces stands right below, the leader to the head tells whose it is; elsewhere nobody could use
// it without the name.
func (c readings) faceForms(w faceWords) []noteForm {
	figure := w.figure + " " + w.side
	if c.Terse && !c.Second {
		w.who = ""
	}
	forms := []noteForm{{figure, section.Joined(", ", w.who, w.under)}}
	if w.under != "" {
		forms = append(forms, noteForm{figure, w.who})
	}
	if w.who != "" { // its leader says whose it is
		forms = append(forms, noteForm{words: figure})
	}
	return forms
}

// targetOf is the place a reading is of: of a spot meter what it looks at, not where it looks from.
func targetOf(s *plan.Setup, r *meter.Reading) r3.Vec {
	for i := range s.Meters {
		if m := &s.Meters[i]; m.Name == r.Name && r.Kind == term.SpotMeter {
			return m.At
		}
	}
	return r.At
}

// meterNote marks a meter of the scene.
func (c readings) meterNote(p Pad, where r2.Vec, r *meter.Reading) placeable {
	body := c.mark(p, r.Kind, where, r)
	return &note{object: "reading:" + r.Name, layer: ink.Readings, style: c.Pad.plan(), forms: noteForms(r.Name+" "+c.Metered(r), c.Metered(r)),
		struck: section.When(r.Struck(), c.Metered(r)), anchor: where, body: body, priority: 1.5, linePenalty: 2, leader: 30, led: true}
}

package kit

import (
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// hangDoors hangs the doors of the choice on the head. Where they cut its light the size of the lens shows: what counted
// as a point is a disc then.
func (b *builder) hangDoors(u *Unit) {
	opened := b.choice.Doors
	if opened == nil {
		return
	}
	h := &b.head
	if h.Class != term.Lensed && h.Class != term.Bare && h.Class != term.Panel || h.Source.Opening.Form == photometry.Tube {
		b.fault(opened.Span, CodeNoDoors, "leave them out, or cut its light with a flag", "no barn doors go on %s", nameWithModifier(u.Name, b.choice.Modifier))
		return
	}
	width, height := h.Aperture, h.Aperture
	switch o := &h.Source.Opening; o.Form {
	case photometry.Point:
		*o = photometry.Opening{Form: photometry.Disc, Width: h.Aperture}
	case photometry.Rectangle:
		width, height = o.Width, o.Height
	}
	doors := usualDoors(width, height)
	if u.Doors != nil {
		doors = *u.Doors
	}
	h.Doors = &HungDoors{doors, *opened}
}

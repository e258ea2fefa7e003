package scenes

import "fmt"

// plain is a source without a unit, of about so many lumens; face says whether it has to have a flat opening.
func (w *writer) plain(lumens float64, face bool) string {
	lm := fmt.Sprintf("lumens: %.0f", lumens*w.between(0.5, 2))
	kind := w.whole(0, 7)
	if face {
		kind = w.whole(3, 5)
	}
	switch kind {
	case 0:
		return "{" + lm + ", shape: " + w.one("uniform", "cosine") + "}"
	case 1:
		return fmt.Sprintf("{%s, beam: %d}", lm, w.whole(15, 100))
	case 2:
		beam := w.whole(12, 70)
		return fmt.Sprintf("{%s, beam: %d, field: %d}", lm, beam, int(float64(beam)*w.between(1.4, 2.2))+1)
	case 3:
		return fmt.Sprintf("{%s, face: [%g, %g]}", lm, w.between(0.3, 1.6), w.between(0.3, 1.4))
	case 4:
		beam := w.whole(45, 110)
		return fmt.Sprintf("{%s, face: [%g, %g], beam: %d, field: %d}", lm, w.between(0.3, 1.4), w.between(0.3, 1.2), beam, int(float64(beam)*w.between(1.35, 1.8)))
	case 5:
		return fmt.Sprintf("{%s, disc: %g}", lm, w.between(0.3, 1.5))
	case 6:
		return fmt.Sprintf("{%s, tube: %g}", lm, w.between(0.4, 1.5))
	}
	return fmt.Sprintf("{%s, sphere: %g}", lm, w.between(0.2, 0.8))
}

// unit is a unit of the catalogue with what goes before it.
func (w *writer) unit() string {
	modifiers := []string{"reflector-30", "reflector-55", "honeycomb-30", "fresnel-lens", "projection-36", "softbox-60", "softbox-90",
		"softbox-120", "softbox-120x30", "softbox-90-grid", "softbox-120-grid", "octabox-90", "octabox-150", "octabox-150-grid", "frame-120",
		"lantern-60", "lantern-90"}
	switch w.whole(0, 9) {
	case 0, 1, 2, 3:
		return "unit: " + w.one("led-point-150-bicolour", "led-point-300-daylight", "led-point-600-bicolour") + ", modifier: " + w.one(modifiers...)
	case 4:
		return "unit: " + w.one("soft-panel-200", "soft-panel-400") + w.one("", ", modifier: panel-grid")
	case 5:
		return "unit: led-panel-100" + w.one("", ", modifier: panel-softbox", ", modifier: panel-grid")
	case 6:
		return "unit: " + w.one("fresnel-tungsten-300", "fresnel-tungsten-650", "fresnel-tungsten-1000") + ", focus: " + w.one("spot", "flood", "40 %")
	case 7:
		return "unit: " + w.one("led-tube-60", "led-tube-120", "lantern-100")
	case 8:
		return "unit: " + w.one("open-tungsten-650", "discharge-575")
	}
	return "unit: " + w.one("practical-bulb", "practical-ceiling", "paper-lantern-60", "practical-table")
}

// head is what a light is: a plain source, a measured one, or a unit.
func (w *writer) head(lumens float64, face bool) string {
	if face || w.chance(0.5) {
		return "output: " + w.plain(lumens, face)
	}
	if w.chance(0.15) {
		return "output: {ies: " + w.one("batwing.ies", "updown.ies", "flood.ies") + "}"
	}
	return w.unit()
}

// trim is what is done to a light: its level and gels.
func (w *writer) trim() string {
	text := ""
	if w.chance(0.4) {
		text += fmt.Sprintf(", level: %d %%", w.whole(10, 100))
	}
	if w.chance(0.3) {
		text += ", gels: [" + w.one("1/2 CTO", "full CTO", "1/4 CTB", "full CTB", "1/4 plus green", "moonlight blue", "straw", "steel blue", "1/2 minus green") + "]"
	}
	if w.chance(0.2) {
		text += fmt.Sprintf(", roll: %d", w.whole(0, 180))
	}
	return text
}

// aim is where a light in a room points.
func (w *writer) aim(r *room) string {
	if len(w.people) > 0 && w.chance(0.4) {
		return w.one(w.people...)
	}
	switch w.whole(0, 4) {
	case 0:
		return "down"
	case 1:
		return fmt.Sprintf("{pan: %d, tilt: %d}", w.whole(0, 359), w.whole(-60, 40))
	case 2:
		return w.one("up", "down", "down")
	}
	return w.point(r, 0.2, 1.6)
}

// point is a point in a room between two heights.
func (w *writer) point(r *room, low, high float64) string {
	return fmt.Sprintf("[%.3f, %.3f, %g]", r.x+w.between(0.25, r.wide-0.25), r.y+w.between(0.25, r.deep-0.25), w.between(low, high))
}

// lamp hangs a light in a room.
func (w *writer) lamp(r *room) {
	at := fmt.Sprintf("[%.3f, %.3f]", r.x+w.between(0.4, r.wide-0.4), r.y+w.between(0.4, r.deep-0.4))
	w.light(fmt.Sprintf("%s, at: %s, height: %g, aim: %s", w.head(4000, false), at, w.between(0.6, min(2.4, r.height-0.25)), w.aim(r)))
}

func (w *writer) light(text string) {
	w.add("lights", "l%d: {%s%s, mount: %s}", w.count("lights"), text, w.trim(), w.one("hand", "floor", "stand"))
}

// practical puts a lamp on the first piece of furniture.
func (w *writer) practical() {
	w.add("lights", "l%d: {unit: practical-table, at: {top: f0}}", w.count("lights"))
}

// board puts a card or a flag into a room, half of them beside somebody.
func (w *writer) board(r *room) {
	if len(w.people) > 0 && w.chance(0.5) {
		w.add("grip", "g%d: {%s: [%g, %g], at: {by: %s, turn: %d own-%s, distance: %g}}", w.count("grip"), w.one("card", "card", "flag"), w.between(0.5, 1.2), w.between(0.5, 1.2),
			w.one(w.people...), w.whole(20, 110), w.one("left", "right"), w.between(0.5, 1.1))
		return
	}
	at := fmt.Sprintf("[%.3f, %.3f]", r.x+w.between(0.5, r.wide-0.5), r.y+w.between(0.5, r.deep-0.5))
	surface := ""
	if w.chance(0.3) {
		surface = ", surface: " + w.one("paint", "white", "grey", "terracotta")
	}
	w.add("grip", "g%d: {%s: [%g, %g], at: %s, height: %g, faces: %d, tilt: %d%s}", w.count("grip"), w.one("card", "flag"), w.between(0.4, 1.2), w.between(0.4, 1.2),
		at, w.between(0.9, 1.6), w.whole(0, 359), w.whole(-40, 40), surface)
}

// meters puts meters into a room that face all ways.
func (w *writer) meters(r *room, n int) {
	for range n {
		w.meter(w.point(r, 0.3, min(2, r.height-0.2)), w.facing())
	}
}

func (w *writer) meter(at, facing string) {
	w.add("meters", "m%d: {%s: %s, facing: %s}", w.count("meters"), w.one("flat", "flat", "dome"), at, facing)
}

// facing is a direction.
func (w *writer) facing() string {
	if w.chance(0.3) {
		return w.one("up", "down", "0", "90", "180", "270")
	}
	return fmt.Sprintf("{pan: %d, tilt: %d}", w.whole(0, 359), w.whole(-60, 80))
}

package scenes

import (
	"fmt"
	"strings"
)

// cloth writes a room with lamps behind cloth, and projection spots on cards and furniture.
func cloth(w *writer) {
	w.paints()
	r := w.room("den", 0, 0, w.between(3.4, 5.5), w.between(3.2, 5))
	if w.chance(0.35) {
		dressedWindow(w, r)
	}
	w.furnish(r, w.whole(0, 2))
	if w.chance(0.4) {
		w.person(r)
	}
	for range w.whole(1, 2) {
		w.throughCloth(r)
	}
	if w.chance(0.6) {
		w.projection(r)
	}
	if w.chance(0.3) {
		w.add("lights", "l%d: {%s, at: [%.3f, %.3f], height: %g, aim: {pan: %d, tilt: %d}, diffusion: %s, mount: hand}", w.count("lights"), frontal(w, 2500),
			w.between(0.6, r.wide-0.6), w.between(0.6, r.deep-0.6), w.between(0.8, 1.9), w.whole(0, 359), w.whole(-40, 20), clothName(w))
	}
	w.meters(r, w.whole(3, 5))
}

// clothName picks a cloth of any kind.
func clothName(w *writer) string {
	return w.one("full-diffusion", "half-diffusion", "quarter-diffusion", "silk", "muslin", "sheer", "light-frost", "full-grid-cloth")
}

// frontal is a plain source that shines from one side.
func frontal(w *writer, lumens float64) string {
	lm := fmt.Sprintf("lumens: %.0f", lumens*w.between(0.5, 2))
	if w.chance(0.5) {
		beam := w.whole(16, 60)
		return fmt.Sprintf("output: {%s, beam: %d, field: %d}", lm, beam, beam+w.whole(4, 30))
	}
	return fmt.Sprintf("output: {%s, face: [%g, %g]}", lm, w.between(0.2, 0.8), w.between(0.2, 0.6))
}

// throughCloth puts a lamp behind one frame or two, a net at times, so close at times that it makes a hot spot, and a meter before
// the cloth.
func (w *writer) throughCloth(r *room) {
	x, y, z := w.between(1.1, r.wide-1.1), w.between(1.1, r.deep-1.1), w.between(1.1, 1.6)
	bearing := w.whole(0, 359)
	frame := func(at string, size float64) {
		w.add("grip", "g%d: {frame: [%g, %.3f], at: %s, height: %g, faces: %d, cloth: %s}", w.count("grip"), size, w.between(0.5, 1)*size, at, z, bearing, clothName(w))
	}
	frame(along(x, y, 0, 0), w.between(0.6, 1.5))
	if w.chance(0.3) {
		frame(along(x, y, w.between(0.15, 0.5), bearing), w.between(0.6, 1.5))
	}
	back := w.between(0.3, 1)
	w.light(fmt.Sprintf("%s, at: %s, height: %g, aim: g%d", frontal(w, 4000), along(x, y, back, bearing+180), z+w.between(-0.2, 0.3), w.count("grip")-1))
	w.meter(strings.TrimSuffix(along(x, y, w.between(0.6, 1.1), bearing+w.whole(-25, 25)), "]")+fmt.Sprintf(", %g]", z+w.between(-0.2, 0.2)), fmt.Sprint((bearing+180)%360))
}

// projection sends a projection spot to a card or into the room, with cuts and patterns in its gate.
func (w *writer) projection(r *room) {
	x, y, z := w.between(0.8, r.wide-0.8), w.between(0.8, r.deep-0.8), w.between(1.2, 2.1)
	aim := w.point(r, 0.3, 1.4)
	if w.chance(0.5) {
		bearing := w.whole(0, 359)
		aim = fmt.Sprintf("g%d", w.count("grip"))
		w.add("grip", "%s: {card: [%g, %g], at: %s, height: %g, faces: %d}", aim, w.between(0.3, 0.8), w.between(0.3, 0.8), along(x, y, w.between(0.7, 1.4), bearing), w.between(0.8, 1.5),
			(bearing+180+w.whole(-30, 30))%360)
	}
	gate := ""
	if w.chance(0.6) {
		var cuts []string
		for i := range w.whole(1, 3) {
			cuts = append(cuts, fmt.Sprintf("{angle: %d, depth: %d %%}", 90*i+w.whole(-15, 15), w.whole(10, 45)))
		}
		gate += ", cuts: [" + strings.Join(cuts, ", ") + "]"
	}
	if w.chance(0.35) {
		gate += fmt.Sprintf(", breakup: {open: %d %%, grain: %d %%, seed: %d}", w.whole(25, 70), w.whole(8, 25), w.whole(1, 99))
	}
	beam := w.whole(10, 40)
	w.light(fmt.Sprintf("output: {lumens: %d, beam: %d, field: %.1f}, at: [%g, %g], height: %g, aim: %s, focus: %s%s", w.whole(800, 3000), beam, float64(beam)*1.12, x, y, z, aim,
		w.one("sharp", "soft", "20 %", "50 %"), gate))
}

// dressedWindow hangs a curtain into a window, with a lamp outside.
func dressedWindow(w *writer, r *room) {
	w.add("openings", "w0: {window: den.left, width: %g, dressing: [{cloth: %s, drawn: [%d %%, %d %%]}]}", w.between(0.8, 1.6), w.one("sheer", "silk", "muslin"),
		w.whole(20, 50), w.whole(10, 50))
	w.light(fmt.Sprintf("%s, at: {opening: w0, out: %g, along: %g}, height: %g, aim: %s", frontal(w, 20000), w.between(0.8, 2), w.between(-0.4, 0.4), w.between(1.2, 2.4), w.point(r, 0.5, 1.4)))
}

package scenes

import (
	"fmt"
	"math"
	"strings"
)

// along is a place so far from (x, y) by a bearing.
func along(x, y, distance float64, bearing int) string {
	sin, cos := math.Sincos(float64(bearing) * math.Pi / 180)
	return fmt.Sprintf("[%.3f, %.3f]", x+distance*sin, y+distance*cos)
}

// crowded puts a lamp into a room with something close to it.
func (w *writer) crowded(r *room) {
	x, y, z := w.between(1, r.wide-1), w.between(1, r.deep-1), w.between(1, 1.9)
	pan := w.whole(0, 359)
	aim := fmt.Sprintf("{pan: %d, tilt: %d}", pan, w.whole(-40, 20))
	switch w.whole(0, 4) {
	case 0:
		w.hotCard(x, y, z, pan)
	case 1:
		w.hotCard(x, y, z, pan)
		aim = fmt.Sprint(pan)
	case 2:
		w.lanternBetween(x, y, z)
		return
	case 3:
		w.besideLamp(x, y, z)
		return
	default: // a lamp near a wall
		x = w.between(0.2, 0.45)
		aim = fmt.Sprintf("{pan: %d, tilt: %d}", w.whole(200, 340), w.whole(-30, 30))
	}
	w.light(fmt.Sprintf("%s, at: [%g, %g], height: %g, aim: %s", w.head(3000, w.chance(0.5)), x, y, z, aim))
}

// hotCard puts a card 20 to 60 cm before a lamp that points along a bearing, or a flag over a part of it.
func (w *writer) hotCard(x, y, z float64, pan int) {
	kind, faces := w.one("card", "card", "flag"), pan+180+w.whole(-40, 40)
	w.add("grip", "g%d: {%s: [%g, %g], at: %s, height: %g, faces: %d}", w.count("grip"), kind, w.between(0.3, 1), w.between(0.3, 1),
		along(x, y, w.between(0.2, 0.6), pan+w.whole(-50, 50)), max(0.5, z+w.between(-0.4, 0.4)), (faces+360)%360)
}

// lanternBetween puts boxes close to either side of a sphere, which they nearly cover.
func (w *writer) lanternBetween(x, y, z float64) {
	size := w.between(0.3, 0.7)
	for i := range w.whole(1, 3) {
		bearing := i*120 + w.whole(0, 60)
		w.add("furniture", "n%d: {box: [%g, 0.1, %.3f], at: %s, turn: %d, material: %s}", i, w.between(0.4, 1), z+w.between(-0.2, 0.4),
			along(x, y, size/2+w.between(0.1, 0.3), bearing), bearing, w.one("white", "black", "paint"))
	}
	w.light(fmt.Sprintf("output: {lumens: %d, sphere: %g}, at: [%g, %g], height: %g", w.whole(1000, 8000), size, x, y, z))
}

// besideLamp puts a box beside a soft lamp, so that the plane of its side cuts the lamp.
func (w *writer) besideLamp(x, y, z float64) {
	wide, size := w.between(0.4, 1.2), w.between(0.5, 1.6)
	gap := w.between(0.15, 0.6)
	height := min(z-0.1, w.between(0.6, 1.4))
	w.add("furniture", "n0: {box: [%g, %g, %.3f], at: [%.3f, %.3f], material: %s}", wide, w.between(0.4, 1), height, x+wide/2+w.between(-0.4, 0.4)*size, y-gap-0.4,
		w.one("white", "paint", "lime"))
	w.light(fmt.Sprintf("output: {lumens: %d, face: [%g, %g]}, at: [%g, %g], height: %g, aim: %s", w.whole(2000, 10000), size, w.between(0.4, 1.4), x, y, z, w.one("180", "down", "{pan: 180, tilt: -45}")))
}

// closeMeters puts meters 10 to 30 cm before walls, or over the ground.
func (w *writer) closeMeters(r *room, open bool) {
	for range w.whole(2, 3) {
		gap := w.between(0.1, 0.3)
		h := w.between(0.3, 1.7)
		across, deep := w.between(0.3, r.wide-0.3), w.between(0.3, r.deep-0.3)
		at, facing := fmt.Sprintf("[%g, %g, %g]", across, deep, gap), w.one("up", "down")
		switch side := w.whole(0, 3); {
		case open:
		case side == 0:
			at, facing = fmt.Sprintf("[%g, %g, %g]", gap, deep, h), w.one("90", "270")
		case side == 1:
			at, facing = fmt.Sprintf("[%.3f, %g, %g]", r.wide-gap, deep, h), w.one("90", "270")
		case side == 2:
			at, facing = fmt.Sprintf("[%g, %.3f, %g]", across, r.deep-gap, h), w.one("0", "180")
		}
		w.meter(at, strings.TrimSpace(facing))
	}
}

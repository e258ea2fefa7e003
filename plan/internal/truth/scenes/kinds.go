package scenes

import "fmt"

// writers write the scene of each kind.
var writers = map[Kind]func(w *writer){Inside: inside, Window: window, Doorway: doorway, Clutter: clutter, Cloth: cloth}

// inside writes a room or two with lamps and furniture in them.
func inside(w *writer) {
	w.paints()
	w.home()
	r := &w.rooms[0]
	w.furnish(r, w.whole(1, 5))
	for range w.whole(0, 2) {
		w.person(r)
	}
	for range w.whole(1, 4) {
		w.lamp(r)
	}
	if w.chance(0.2) {
		w.practical()
	}
	if w.chance(0.3) {
		w.camera(r)
	}
	for range w.whole(0, 2) {
		w.board(r)
	}
	w.meters(r, w.whole(3, 6))
}

// home writes a room that is no box, or a plain one, sometimes with a hall beside it.
func (w *writer) home() {
	if w.chance(0.3) {
		r := w.angular("den")
		if w.chance(0.5) {
			w.window("w0", r, 0)
		}
		return
	}
	r := w.room("den", 0, 0, w.between(2.6, 6.5), w.between(2.4, 5.5))
	if w.chance(0.6) {
		w.window("w0", r, w.whole(0, 1))
	}
	if w.chance(0.4) {
		w.way("d0", r, 2)
		w.room("hall", r.wide+r.wall, 0, w.between(1.2, 3), r.deep)
	}
}

// window writes a room lit through its windows.
func window(w *writer) {
	w.paints()
	r := w.room("den", 0, 0, w.between(2.8, 6), w.between(2.6, 5))
	w.window("w0", r, 0)
	if w.chance(0.4) {
		w.window("w1", r, 1)
	}
	if w.chance(0.4) {
		w.add("site", "ground: %g", w.between(-0.8, 0))
	}
	w.furnish(r, w.whole(0, 4))
	if w.chance(0.6) {
		w.person(r)
	}
	for range w.whole(1, 2) {
		opening := fmt.Sprintf("{opening: w%d, out: %g, along: %g}", w.whole(0, w.count("openings")-1), w.between(0.6, 4), w.between(-0.8, 0.8))
		w.light(fmt.Sprintf("%s, at: %s, height: %g, aim: %s", w.head(20000, w.chance(0.4)), opening, w.between(1, 3), w.point(r, 0.5, 1.4)))
	}
	if w.chance(0.4) {
		w.board(r)
	}
	w.meters(r, w.whole(2, 3))
	for range w.whole(1, 2) { // fill: facing away from the window
		w.meter(w.point(r, 0.6, 1.7), fmt.Sprint(w.whole(60, 120)))
	}
}

// doorway writes a dark room beside a lit one.
func doorway(w *writer) {
	w.paints()
	lit := w.room("lit", 0, 0, w.between(2.6, 5), w.between(2.6, 4.5))
	w.way("d0", lit, 2)
	wide := lit.wide
	w.room("dark", wide+lit.wall, 0, w.between(2, 4.5), lit.deep)
	lit, dark := &w.rooms[0], &w.rooms[1]
	w.furnish(lit, w.whole(0, 2))
	w.furnish(dark, w.whole(0, 3))
	if w.chance(0.5) {
		w.person(dark)
	}
	for range w.whole(1, 2) {
		w.lamp(lit)
	}
	if w.chance(0.3) {
		w.board(dark)
	}
	w.meters(dark, w.whole(3, 5))
}

// clutter writes things close to lamps and to meters, in a room or on open ground.
func clutter(w *writer) {
	w.paints()
	open := w.chance(0.2)
	r := &room{wide: 4, deep: 3.5, height: 2.6}
	if !open {
		r = w.room("den", 0, 0, w.between(3, 5), w.between(2.8, 4.5))
	}
	w.crowded(r)
	if w.chance(0.4) {
		w.lamp(r)
	}
	w.furnish(r, w.whole(1, 3))
	w.closeMeters(r, open)
	w.meters(r, w.whole(1, 3))
}

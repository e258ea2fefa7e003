package scenes

import (
	"fmt"
	"strings"
)

// paints writes materials of the scene's own, one with a colour.
func (w *writer) paints() {
	w.add("materials", "paint: {reflectance: %g, colour: %s}", w.between(0.2, 0.6), w.one(`"#c8a080"`, `"#90b0a0"`, "[0.36, 0.35]", "3800 K", "[0.30, 0.34]", `"#b07868"`))
	w.add("materials", "lime: {reflectance: %g}", w.between(0.5, 0.88))
}

func (w *writer) wallMaterial() string {
	return w.one("paint", "lime", "plaster", "white", "grey", "cream", "sage", "terracotta", "brick", "light-grey", "dark-grey", "black", "navy")
}

// surfaces are the materials of a room, some left to the defaults.
func (w *writer) surfaces() string {
	text := ""
	if w.chance(0.7) {
		text += ", walls: " + w.wallMaterial()
	}
	if w.chance(0.6) {
		text += ", floor: " + w.one("parquet", "carpet", "light-wood", "dark-wood", "concrete", "lime", "tile-white")
	}
	if w.chance(0.4) {
		text += ", ceiling: " + w.one("white", "lime", "grey", "paint", "black")
	}
	return text
}

// room writes a plain room at a corner.
func (w *writer) room(name string, x, y, wide, deep float64) *room {
	r := room{name: name, x: x, y: y, wide: wide, deep: deep, height: w.between(2.3, 3.3), wall: 0.15,
		walls: []string{"left", "top", "right", "bottom"}, lengths: []float64{deep, wide, deep, wide}}
	height := fmt.Sprint(r.height)
	if w.chance(0.2) {
		height = fmt.Sprintf("{low: %g, high: %g, toward: %s}", r.height, r.height+w.between(0.3, 1.2), w.one(r.walls...))
	}
	base := ""
	if x > 0 && w.chance(0.2) {
		base = fmt.Sprintf(", base: %g", w.between(-0.3, 0.3))
	}
	w.add("rooms", "%s: {at: [%.3f, %.3f], size: [%g, %g], height: %s%s%s}", name, x, y, wide, deep, height, base, w.surfaces())
	w.rooms = append(w.rooms, r)
	return &w.rooms[len(w.rooms)-1]
}

// angular writes a room of corners, or of an outline with a recess.
func (w *writer) angular(name string) *room {
	wide, deep := w.between(3, 6), w.between(2.8, 5)
	r := room{name: name, wide: wide, deep: deep, height: w.between(2.3, 3.2), wall: 0.15}
	if w.chance(0.5) {
		cut, back := w.between(0.3, 0.4)*wide, w.between(0.3, 0.45)*deep
		cut, back = float64(int(cut*100))/100, float64(int(back*100))/100
		w.add("rooms", "%s: {outline: [right %g, up %.3f, left %.3f, up %.3f, left %.3f, down %g], height: %g%s}",
			name, wide, deep-back, cut, back, wide-cut, deep, r.height, w.surfaces())
		r.walls, r.lengths = []string{"w1", "w2", "w5", "w6"}, []float64{wide, deep - back, wide - cut, deep}
	} else {
		shift := w.between(-0.5, 0.8)
		w.add("rooms", "%s: {corners: [{a: [0, 0]}, {b: [%g, 0]}, {c: [%.3f, %g]}, {d: [0, %g]}], height: %g%s}",
			name, wide, wide-shift, deep, deep, r.height, w.surfaces())
		r.walls, r.lengths = []string{"a-b", "c-d", "d-a"}, []float64{wide, wide - shift, deep}
	}
	w.rooms = append(w.rooms, r)
	return &w.rooms[len(w.rooms)-1]
}

// window writes a window into a wall of a room.
func (w *writer) window(name string, r *room, wall int) {
	width := w.between(0.6, min(2, r.lengths[wall]-0.6))
	text := fmt.Sprintf("window: %s.%s, width: %g", r.name, r.walls[wall], width)
	if w.chance(0.5) {
		text += fmt.Sprintf(", along: %g", w.between(0.2, r.lengths[wall]-width-0.2))
	}
	if w.chance(0.4) {
		text += fmt.Sprintf(", sill: %g, head: %g", w.between(0.2, 1.1), w.between(1.6, 2.2))
	}
	if w.chance(0.5) {
		text += fmt.Sprintf(", panes: [%d, %d]", w.whole(1, 3), w.whole(1, 2))
	}
	if w.chance(0.3) {
		text += ", glass: " + w.one("glass-double", "glass-tinted")
	}
	w.add("openings", "%s: {%s}", name, text)
}

// way writes a door or a gap into a wall, away from its ends.
func (w *writer) way(name string, r *room, wall int) {
	along := w.between(0.3, max(0.31, r.lengths[wall]-1.4))
	if w.chance(0.5) {
		w.add("openings", "%s: {gap: %s.%s, along: %g, width: %g, head: %g}", name, r.name, r.walls[wall], along, w.between(0.7, 1.1), w.between(1.9, 2.2))
		return
	}
	w.add("openings", "%s: {door: %s.%s, along: %g, ajar: %d, swing: %s, hinge: %s}", name, r.name, r.walls[wall], along,
		w.whole(40, 95), w.one("in", "out"), w.one("left", "right"))
}

// furnish puts pieces of furniture into a room.
func (w *writer) furnish(r *room, pieces int) {
	for range pieces {
		w.piece(r)
	}
}

// piece puts one piece of furniture into a room, a third of them against a wall.
func (w *writer) piece(r *room) {
	at := fmt.Sprintf("[%.3f, %.3f]", r.x+w.between(0.6, r.wide-0.6), r.y+w.between(0.6, r.deep-0.6))
	turn := w.whole(0, 3) * 90
	if len(r.walls) > 0 && w.chance(0.35) {
		wall := w.whole(0, len(r.walls)-1)
		at = fmt.Sprintf("{wall: %s.%s, along: %g, in: 0}", r.name, r.walls[wall], w.between(0.5, r.lengths[wall]-0.5))
	} else if w.chance(0.5) {
		turn = w.whole(0, 359)
	}
	size := w.shape()
	more := ""
	if w.chance(0.7) {
		more += ", material: " + w.one("paint", "white", "dark-wood", "black", "linen", "terracotta", "navy", "lime")
	}
	if w.chance(0.1) && !strings.HasPrefix(size, "stairs") {
		more += fmt.Sprintf(", lift: %g", w.between(0.1, 0.8))
	}
	w.add("furniture", "f%d: {%s, at: %s, turn: %d%s}", w.count("furniture"), size, at, turn, more)
}

// shape is a piece of furniture of any kind.
func (w *writer) shape() string {
	switch w.whole(0, 5) {
	case 0:
		return fmt.Sprintf("box: [%g, %g, %g]", w.between(0.3, 1.4), w.between(0.3, 0.8), w.between(0.3, 1.9))
	case 1:
		return fmt.Sprintf("cylinder: [%g, %g]", w.between(0.2, 0.7), w.between(0.4, 1.8))
	case 2:
		return fmt.Sprintf("table: [%g, %g, %g]", w.between(0.7, 1.8), w.between(0.5, 0.9), w.between(0.45, 0.78))
	case 3:
		return fmt.Sprintf("sofa: [%g, %g, %g]", w.between(1.2, 2.1), w.between(0.8, 0.95), w.between(0.7, 0.9))
	case 4:
		return fmt.Sprintf("stairs: [%g, %g, %g]", w.between(0.7, 1), w.between(0.8, 1.6), w.between(0.5, 1.1))
	}
	return fmt.Sprintf("deck: [%g, %g, %g]", w.between(0.8, 1.6), w.between(0.8, 1.4), w.between(0.2, 0.5))
}

// person puts someone into a room.
func (w *writer) person(r *room) {
	name := []string{"ada", "noor", "ines"}[len(w.people)]
	text := fmt.Sprintf("at: [%.3f, %.3f], faces: %d", r.x+w.between(0.7, r.wide-0.7), r.y+w.between(0.7, r.deep-0.7), w.whole(0, 359))
	if w.chance(0.5) {
		text += ", pose: " + w.one("seated", "crouching", "lying", "propped")
	}
	w.add("people", "%s: {%s}", name, text)
	w.people = append(w.people, name)
}

// camera puts a camera into a room, and sometimes a spot that is read from it.
func (w *writer) camera(r *room) {
	w.add("cameras", "A: {at: [%.3f, %.3f], height: %g, lens: 35 mm}", r.x+w.between(0.5, r.wide-0.5), r.y+w.between(0.5, r.deep-0.5), w.between(0.8, 1.7))
	if w.chance(0.5) {
		w.add("meters", "m%d: {spot: %s, from: A}", w.count("meters"), w.point(r, 0.1, 1.8))
	}
}

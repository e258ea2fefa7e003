package draw

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// Overview is the set of a day in few strokes: its rooms by name, and where cameras, lights and people of all set-ups are.
type Overview struct {
	rooms    []plan.Room
	walls    []plan.WallPiece
	openings [][4]r2.Vec
	spots    []spot
	setups   []string
}

// spot is something that stands in one place in some set-ups.
type spot struct {
	section.Mark
	in []string // the set-ups
}

// oneSpot is how close two marks of one thing count as one place, m; and as looking one way, of unit vectors.
const oneSpot = 0.15

// OverviewOf gathers what stands where in all set-ups.
func OverviewOf(all []section.Digest) Overview {
	o := Overview{}
	for i := range all {
		d := &all[i]
		o.setups = append(o.setups, d.Name)
		for k := range d.Rooms {
			r := &d.Rooms[k]
			if !slices.ContainsFunc(o.rooms, func(have plan.Room) bool { return have.Name == r.Name }) {
				o.rooms = append(o.rooms, *r)
				o.walls = append(o.walls, wallsOf(d.Walls, r.Name)...)
			}
		}
		for _, q := range d.Openings {
			if !slices.Contains(o.openings, q) {
				o.openings = append(o.openings, q)
			}
		}
		for _, m := range d.Marks {
			o.add(m, d.Name)
		}
	}
	return o
}

// wallsOf are the pieces of a room's walls.
func wallsOf(walls []plan.WallPiece, room string) []plan.WallPiece {
	return slices.DeleteFunc(slices.Clone(walls), func(w plan.WallPiece) bool { return w.Room != room || w.Opening != "" })
}

// add puts a mark to those of the same thing in the same place.
func (o *Overview) add(m section.Mark, setup string) {
	for i := range o.spots {
		s := &o.spots[i]
		if s.Kind == m.Kind && s.Tag == m.Tag && r2.Norm(r2.Sub(s.At, m.At)) < oneSpot && r2.Norm(r2.Sub(s.Way, m.Way)) < oneSpot {
			s.in = append(s.in, setup)
			return
		}
	}
	o.spots = append(o.spots, spot{m, []string{setup}})
}

// Extent is what it takes on the set, m.
func (o *Overview) Extent() r2.Box {
	g := box.Bounds{}
	for i := range o.walls {
		g.All(o.walls[i].Outline, 0)
	}
	for i := range o.rooms {
		g.All(o.rooms[i].Inside, 0)
	}
	for i := range o.spots {
		const about = 0.4 // of a thing about its middle
		g.Point(o.spots[i].At, about)
	}
	return g.Box()
}

// Draw draws the overview to a view.
func (o *Overview) Draw(p Pad, v layout.View) {
	var pieces [][]r2.Vec
	for i := range o.walls {
		pieces = append(pieces, v.All(o.walls[i].Outline))
	}
	walls := p.On(ink.Walls)
	for _, q := range pieces {
		walls.cutGround(q)
	}
	walls.cutOutline(Medium, pieces)
	for _, q := range o.openings {
		walls.outline(Hair, p.Look.Ink, &p.Look.Paper, v.All(q[:])...)
	}
	o.label(p, v)
	const under = 2.8 // mm under the panel
	p.Text(box.At(v.Panel.Min.X+layout.Pads, v.Panel.Min.Y-under), overviewKey, p.Quiet(), ink.Left)
}

// OverviewKeyHigh is the room under the panel of an overview, mm, for what explains its signs.
const OverviewKeyHigh = 5

// overviewKey explains the signs.
const overviewKey = "Disc: light; ring: person; wedge: camera, which opens the way it looks. With its set-ups where those are not all (…: no room). Not to measure from."

// label marks what stands, and letters it and the rooms where there is a place.
func (o *Overview) label(p Pad, v layout.View) {
	st, room := p.Small(), p.place()
	var labels []carto.Label
	var words [][]string
	for i := range o.spots {
		s := &o.spots[i]
		half := s.draw(p, v)
		own := []string{s.words(o.setups), s.short(o.setups)}
		at := v.Paper(s.At)
		l := carto.Label{Anchor: at, Body: box.Of(at.X-half, at.Y-half, at.X+half, at.Y+half)}
		for _, w := range own {
			const leader = 30 // mm
			l.Forms = append(l.Forms, carto.Form{Size: r2.Vec{X: st.Width(w) + 0.8, Y: st.Cap + 1}, Leader: leader})
		}
		labels, words = append(labels, l), append(words, own)
	}
	placed := carto.Place(labels, carto.PlaceOptions{Area: box.Inset(v.Panel, 1, 1), Gap: 0.8, Obstacles: o.edges(v), Rounds: stripRounds})
	tags := p.On(ink.Tags)
	var taken []carto.Obstacle
	for i, at := range placed {
		taken = append(taken, hard(labels[i].Body))
		if !at.On {
			continue
		}
		if at.Leads() {
			tags.Line(Hair, p.Look.Quiet, at.Leader[0], at.Leader[1])
			taken = append(taken, carto.Obstacle{Outline: at.Leader[:]})
		}
		middle := r2.Scale(0.5, r2.Add(at.Box.Min, at.Box.Max))
		tags.Text(underMiddle(middle, st.Cap, 0), words[i][at.Form], st, ink.Centre)
		taken = append(taken, hard(at.Box))
	}
	for i := range o.rooms {
		taken = append(taken, o.nameRoom(p, v, &o.rooms[i], room, taken)...)
	}
}

// edges are the walls and openings, which lettering keeps clear of.
func (o *Overview) edges(v layout.View) (edges []carto.Obstacle) {
	for i := range o.walls {
		edges = append(edges, carto.Obstacle{Outline: v.All(o.walls[i].Outline)})
	}
	for _, q := range o.openings {
		edges = append(edges, carto.Obstacle{Outline: v.All(q[:])})
	}
	return edges
}

// nameRoom letters the name of a room in the first place that is free, and returns what that takes: a room over another has the same places.
func (o *Overview) nameRoom(p Pad, v layout.View, r *plan.Room, st style, taken []carto.Obstacle) []carto.Obstacle {
	for _, n := range roomNames(v, r, st) {
		if b := (carto.Obstacle{Outline: ink.TurnedBox(n.at, st.boxOf(n.s), 0)}); !meets(b, taken) {
			p.On(ink.Notes).Text(underMiddle(n.at, st.Cap, 0), n.s, st, ink.Centre)
			return []carto.Obstacle{b}
		}
	}
	return nil
}

// words say what stands there, and in which set-ups where that is not in all.
func (s *spot) words(setups []string) string {
	without := slices.DeleteFunc(slices.Clone(setups), func(name string) bool { return slices.Contains(s.in, name) })
	switch {
	case len(without) == 0:
		return s.Tag
	case len(without) < len(s.in):
		return s.Tag + " all but " + strings.Join(without, ", ")
	}
	return s.Tag + " " + strings.Join(s.in, ", ")
}

// short says what stands there, and by three dots that it is not there in all set-ups: alone the tag would say that it is.
func (s *spot) short(setups []string) string {
	if len(s.in) == len(setups) {
		return s.Tag
	}
	return s.Tag + " …"
}

// draw marks a spot: a disc for a light, a wedge that points the way a camera looks, a ring for a person. It returns how far that reaches, mm.
func (s *spot) draw(p Pad, v layout.View) float64 {
	const light, camera, person = 1.1, 2.2, 1.6 // mm
	at := v.Paper(s.At)
	p = p.On(ink.Symbols).of(s.object(), "")
	switch s.Kind {
	case section.LightMark:
		p.outline(0, p.Look.Ink, &p.Look.Ink, ring(at, light)...)
		return light
	case section.PersonMark:
		p.outline(Thin, p.Look.Ink, &p.Look.Paper, ring(at, person)...)
		return person
	}
	along := s.Way
	if n := r2.Norm(along); n > 0 {
		along = r2.Scale(camera/n, along)
	} else {
		along = r2.Vec{Y: camera}
	}
	side := r2.Vec{X: -along.Y, Y: along.X}
	p.outline(Thin, p.Look.Ink, &p.Look.Paper, r2.Sub(at, along), r2.Add(r2.Add(at, along), r2.Scale(0.6, side)), r2.Sub(r2.Add(at, along), r2.Scale(0.6, side)))
	return camera
}

// object is the thing that a mark stands for.
func (s *spot) object() string {
	return [...]string{"light:", "camera:", "person:"}[s.Kind] + s.Tag
}

// ring is a circle as a polygon.
func ring(about r2.Vec, radius float64) []r2.Vec {
	const corners = 24
	points := make([]r2.Vec, corners)
	for i := range points {
		points[i] = r2.Add(about, r2.Scale(radius, ink.Direction(360*float64(i)/corners)))
	}
	return points
}

package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// revisions marks on the plan what is not as on the sheet before: a cloud round what changed, and where something stood that is gone or has moved its
// outline of then.
type revisions struct{ *Drawing }

// cloud is what a cloud stands round.
type cloud struct {
	object, alt string
	round       []r2.Vec // mm
	gone        []r2.Vec // the outline of what is there no more; nil: it is there
}

// lines are what differs; none where nobody asks or the whole set-up is new.
func (c revisions) lines() []change.Line {
	if c.In.Since == nil {
		return nil
	}
	return c.In.Since.Lines
}

// clouds are those of a plan, in the order of the list.
func (c revisions) clouds(v layout.View) (all []cloud) {
	lines := c.lines()
	for i := range lines {
		l := &lines[i]
		before := c.In.Since.Setup
		here := cloud{object: "revision:" + string(l.Sort) + ":" + l.Name, alt: c.In.Setup.Numbered(l.Name) + " is not as on the sheet before."}
		if l.Part(change.Goes) != nil {
			here.alt = before.Numbered(l.Name) + " was here on the sheet before."
			if body := ghosts(c).bodyBefore(before, l); body != nil {
				here.gone = body(v)
			}
			if l.Sort == change.Room { // what of it lies on this paper
				here.gone = ink.ClipPolygon(v.All(before.RoomNamed(l.Name).Inside), box.Corners(v.Panel))
			}
			here.round = slices.Concat(here.gone, placeOf(before, l, v))
			all = append(all, here)
			continue
		}
		if l.Sort == change.Room {
			all = append(all, c.wallClouds(v, l)...)
			continue
		}
		here.round = slices.Concat(c.bodyNow(l), placeOf(c.In.Setup, l, v))
		all = append(all, here)
	}
	return slices.DeleteFunc(all, func(q cloud) bool {
		return len(q.round) == 0 || !box.Contains(v.Panel, centreOf(q.round, r2.Vec{}))
	})
}

// bodyNow is the symbol of a thing as it is drawn; nil where there is no symbol.
func (c revisions) bodyNow(l *change.Line) []r2.Vec {
	s, first := c.In.Setup, 0
	for _, drawn := range [...]struct { // in the order of drawThings
		sort change.Sort
		n    int
		name func(i int) string
	}{
		{change.Person, len(s.People), func(i int) string { return s.People[i].Name }},
		{change.Camera, len(s.Cameras), func(i int) string { return s.Cameras[i].Name }},
		{change.Light, len(s.Lights), func(i int) string { return s.Lights[i].Name }},
		{change.Grip, len(s.Grip), func(i int) string { return s.Grip[i].Name }},
	} {
		for i := range drawn.n {
			if drawn.sort == l.Sort && drawn.name(i) == l.Name {
				return c.Stands[first+i].Body
			}
		}
		first += drawn.n
	}
	for i := range s.Furniture {
		if l.Sort == change.Furniture && s.Furniture[i].Name == l.Name {
			return c.furniture[i].Body
		}
	}
	return nil
}

// placeOf is where something is that has no symbol of its own: an opening, a mark of tape, a meter, an outlet; nil of what has no place.
func placeOf(s *plan.Setup, l *change.Line, v layout.View) []r2.Vec {
	switch l.Sort {
	case change.Opening:
		return v.All(s.OpeningNamed(l.Name).Plan())
	case change.Mark:
		return []r2.Vec{v.Paper(s.Post(l.Name).At)}
	case change.Meter:
		for i := range s.Meters {
			if m := &s.Meters[i]; m.Name == l.Name {
				return []r2.Vec{v.Flat(m.At)}
			}
		}
	case change.Circuit:
		for i := range s.Circuits {
			if x := &s.Circuits[i]; x.Name == l.Name && x.Outlet != nil {
				return []r2.Vec{v.Paper(*x.Outlet)}
			}
		}
	}
	return nil
}

// wallClouds are those round what of the walls of a room stands elsewhere than before, or is another thickness.
func (c revisions) wallClouds(v layout.View, l *change.Line) (all []cloud) {
	is := c.In.Setup.RoomNamed(l.Name)
	for i := range is.Walls {
		w := &is.Walls[i]
		name := is.Name + "." + w.Name
		for _, s := range stretchesNew(w, c.In.Since.Setup.WallNamed(name)) {
			all = append(all, cloud{object: "revision:wall:" + name, alt: "The wall " + name + " is not as on the sheet before.", round: v.All(w.Slab(s[0], s[1], 0, w.Thickness))})
		}
	}
	return all
}

// wallEnd is how much of a wall that ends sooner than before is marked, m: where it ends.
const wallEnd = 0.1

// stretchesNew are the parts of a wall, from and to along it, m, that did not stand before: the ends of one that is longer or shorter, and all of one that
// stands in another line or is another thickness. was may be nil.
func stretchesNew(w, was *plan.Wall) (parts [][2]float64) {
	long := w.Length()
	if was == nil || was.Thickness != w.Thickness || math.Abs(r2.Dot(r2.Sub(was.Left, w.Left), w.Outward)) >= change.Unmoved || math.Abs(r2.Dot(r2.Sub(was.Right, w.Left), w.Outward)) >= change.Unmoved {
		return [][2]float64{{0, long}}
	}
	from, to := r2.Dot(r2.Sub(was.Left, w.Left), w.Rightward()), r2.Dot(r2.Sub(was.Right, w.Left), w.Rightward())
	if to <= 0 || from >= long {
		return [][2]float64{{0, long}}
	}
	if math.Abs(from) >= change.Unmoved {
		parts = append(parts, [2]float64{0, max(from, wallEnd)})
	}
	if math.Abs(to-long) >= change.Unmoved {
		parts = append(parts, [2]float64{min(to, long-wallEnd), long})
	}
	return parts
}

// soft are the lines of the clouds, which labels avoid where they can.
func (c revisions) soft(v layout.View) (all []carto.Obstacle) {
	for _, q := range c.clouds(v) {
		_, around := cloudRings(q.round)
		all = append(all, cloudLines(around)...)
	}
	return all
}

// cloudLines are the lines of a cloud.
func cloudLines(around []r2.Vec) (all []carto.Obstacle) {
	feet := cloudFeet(around)
	for i := range feet {
		all = append(all, soft(costCloud, feet[i], feet[(i+1)%len(feet)]))
	}
	return all
}

// draw draws the clouds, the outlines of what is gone, and of what moved those that find room, as ghosts do. It returns the paper that they take.
func (c revisions) draw(p Pad, v layout.View, taken, throws []carto.Obstacle) (own []carto.Obstacle) {
	p = p.On(ink.Revisions)
	p.canvas = p.canvas.Within(box.Corners(v.Panel)...)
	for _, q := range c.clouds(v) {
		feet, around := cloudRings(q.round)
		on := p.of(q.object, q.alt)
		if len(q.gone) > 2 {
			on.canvas.Draw(ghostDashed(p.Look.revisionPen()), ink.Polygon(q.gone...))
			c.used("gone")
		}
		on.canvas.Draw(p.Look.revisionPen(), cloudPath(feet))
		c.used("revised")
		own = append(own, carto.Obstacle{Outline: around, Leaders: true})
	}
	if lines := c.lines(); len(lines) > 0 {
		stood := ghosts(c).stood(c.In.Since.Setup, lines, "on the sheet before")
		was, drawn := ghosts(c).drawAll(p, v, stood, slices.Concat(taken, own), throws, p.Look.revisionPen())
		if own = append(own, was...); drawn > 0 {
			c.used("gone")
		}
	}
	return own
}

// revisionPen draws what is not as on the sheet before.
func (t *Theme) revisionPen() ink.Pen {
	if t.Plain {
		return ink.Pen{Colour: t.Ink, Width: Medium, Round: true}
	}
	return ink.Pen{Colour: t.Alarm, Width: Thin, Round: true}
}

// cloudSign is a cloud in the legend, goneSign the outline of what was there.
func cloudSign(p Pad, b r2.Box) {
	const half = 1.2
	m := box.Middle(b.Min, b.Max)
	feet, _ := cloudRings(box.Corners(box.Of(m.X-half, m.Y-0.2, m.X+half, m.Y+0.2)))
	p.canvas.Draw(p.Look.revisionPen(), cloudPath(feet))
}

func goneSign(p Pad, b r2.Box) {
	m := box.Middle(b.Min, b.Max)
	p.canvas.Draw(ghostDashed(p.Look.revisionPen()), ink.Polygon(box.Corners(box.Of(m.X-2*ghostHalf, m.Y-ghostHalf, m.X+2*ghostHalf, m.Y+ghostHalf))...))
}

// signs are the lines of the legend that the clouds may need.
func (c revisions) signs(keys map[string]bool) {
	lines := c.lines()
	keys["revised"] = len(lines) > 0
	for i := range lines {
		keys["gone"] = keys["gone"] || lines[i].Part(change.Goes) != nil || lines[i].Part(change.Place) != nil
	}
}

// bar stands in the margin beside a row that is not as on the sheet before: of some lines of lists, down from the top of the row.
func bar(p Pad, x, top float64, lines int) {
	const left, air = 1.6, 0.4
	st := p.listed(p.Look.Ink)
	low := top - RowAir - st.Cap - st.Leading()*float64(lines-1) - air
	p.of("revised", "").Line(Thick, p.Look.revisionPen().Colour, box.At(x-left, top-RowAir+air), box.At(x-left, low))
}

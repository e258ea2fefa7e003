package draw

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// legend explains the symbols that the plan shows.
type legend struct{ *Drawing }

// sign is one entry of the legend.
type sign struct {
	key, name string
	draw      func(p Pad, b r2.Box) // inside a box
}

// The legend stands in three columns of signs with their names, and below them the lines.
const (
	legendColumns = 3
	signWide      = 8.6 // mm
	lineSignWide  = 6.8
	signGap       = 1.0 // before its name, and after it
	signHigh      = 5.5
	signPitch     = 5.9
	linePitch     = 3.9
	namePitch     = 3.0
)

// rows are the signs of the symbols that the plan shows, and no others. How many there are is known when
// the plan is drawn, which is before the collar is; the room for them is taken before that.
func (c legend) rows() []Row {
	signs, lines := c.expectedSigns()
	return append(c.rowsOf(signs, signPitch, signWide, c.signs), c.rowsOf(lines, linePitch, lineSignWide, c.lines)...)
}

// rowsOf are rows for as many signs as are expected.
func (c legend) rowsOf(expected int, pitch, wide float64, shown func() []sign) (rows []Row) {
	for i := range (expected + legendColumns - 1) / legendColumns {
		rows = append(rows, Row{Height: pitch, Draw: func(p Pad, x, top float64) {
			signs := shown()
			for j := i * legendColumns; j < min(len(signs), (i+1)*legendColumns); j++ {
				c.drawSign(p, &signs[j], x+float64(j%legendColumns)*layout.Measure/legendColumns, top, box.At(wide, pitch-signPitch+signHigh))
			}
		}})
	}
	return rows
}

// signs are those of the symbols in use, in the order of the catalogue.
func (c legend) signs() []sign {
	var all []sign
	for _, e := range symbols.Catalogue() {
		if e.Key == "throw" { // it has a line of its own
			continue
		}
		if as, shown := c.explained(e.Key); shown {
			all = append(all, signOf(e, e.Name, as))
		}
		if as, shown := c.uses[e.Key+offMark]; shown {
			off := signOf(e, e.Name+", off", as)
			off.key += offMark
			all = append(all, off)
		}
	}
	return all
}

// lines are the signs of the lines in use.
func (c legend) lines() []sign {
	return slices.DeleteFunc(c.lineSigns(), func(l sign) bool { _, shown := c.explained(l.key); return !shown })
}

// explained says whether the legend holds a symbol, and how it looks on the plan.
func (c legend) explained(kind string) (as example, yes bool) {
	as, yes = c.uses[kind]
	return as, yes || slices.Contains(c.also, kind)
}

// signOf is the sign of an entry of the catalogue as the plan shows it, or as it always looks.
func signOf(e symbols.Entry, name string, as example) sign {
	if as == nil {
		as = e.Draw
	}
	mayTurn := strings.HasPrefix(e.Key, "mount:") || strings.HasPrefix(e.Key, "person:")
	return sign{e.Key, name, func(p Pad, b r2.Box) { p.example(as, b, mayTurn) }}
}

// example draws a symbol in the middle of a box, as large as goes into it: on its side where it may lie
// so and then comes out larger, and shrunk where it has a least size.
func (p Pad) example(as example, b r2.Box, mayTurn bool) {
	scale, shrunk := as.fitting(box.Width(b), box.Height(b), p.Face)
	angle := 0.0
	if mayTurn {
		if s, less := as.fitting(box.Height(b), box.Width(b), p.Face); s*less > scale*shrunk*1.2 {
			scale, shrunk, angle = s, less, 90
		}
	}
	own := as.box(scale, p.Face)
	centre := r2.Scale(shrunk, box.Middle(own.Min, own.Max))
	turned := r2.Add(r2.Scale(centre.X, ink.Direction(angle+90)), r2.Scale(centre.Y, ink.Direction(angle)))
	p.canvas = p.canvas.At(r2.Sub(box.Middle(b.Min, b.Max), turned), angle, shrunk)
	drawFlat(p, func(q Pad) { as(q.canvas, q.symbols(), scale) })
}

// box is round all that is drawn at a scale.
func (as example) box(scale float64, letters ink.Measure) r2.Box {
	var page ink.Page
	as(ink.NewCanvas(&page, ink.Symbols), symbols.Look{}, scale)
	return page.Bounds(letters).Box
}

// fitting is the largest scale at which a symbol goes into a box, mm for a metre, and by how much it has
// to be shrunk where even the smallest does not.
func (as example) fitting(w, h float64, letters ink.Measure) (scale, shrunk float64) {
	const largest, least = 20.0, 0.5
	for scale = largest; ; scale *= 0.95 {
		own := as.box(scale, letters)
		shrunk = math.Min(1, math.Min(w/box.Width(own), h/box.Height(own)))
		if shrunk == 1 || scale < least {
			return scale, shrunk
		}
	}
}

// drawFlat makes what is drawn a part of the collar: a symbol draws on the layers of the plan, and in
// the legend it has to stay when those are switched off.
func drawFlat(p Pad, draw func(Pad)) {
	n := len(p.page.Items)
	draw(p)
	for i := range p.page.Items[n:] {
		p.page.Items[n+i].Layer = ink.Collar
	}
}

// tungsten is the light of the examples.
func tungsten() colour.RGB { return colour.White{Kelvin: 3200}.RGB() }

// legendRoom is the room for the name of a sign so wide, mm.
func legendRoom(wide float64) float64 { return layout.Measure/legendColumns - wide - 2*signGap }

// drawSign draws one entry with its name beside it, in up to two lines.
func (c legend) drawSign(p Pad, s *sign, x, top float64, size r2.Vec) {
	st := p.Small()
	b := box.Of(x, top-size.Y, x+size.X, top)
	s.draw(p.of("legend:"+s.key, ""), b)
	set := c.Set(s.name, st, legendRoom(size.X), 2)
	y := (b.Min.Y+b.Max.Y)/2 + (namePitch*float64(len(set)-1)-st.Cap)/2
	for i, l := range set {
		p.Text(box.At(x+size.X+signGap, y-namePitch*float64(i)), l, st, ink.Left)
	}
}

// ghostWords name the ghosts in the legend, with how many of what moved has one where that is not all of it: the longest words that its line holds.
func (c *Drawing) ghostWords() string {
	drawn, moved := c.shown.ghosts[0], c.shown.ghosts[1]
	if drawn == moved {
		return "moved from"
	}
	said := fmt.Sprintf("%d of %d", drawn, moved)
	if drawn == 0 { // the sign stands for nothing on the plan: the words say why
		said = "no room"
	}
	for _, before := range [...]string{"moved, ", "from, "} {
		if c.Pad.Small().Width(before+said) <= legendRoom(lineSignWide) {
			return before + said
		}
	}
	return said
}

// ticked draws a hair line with a slanting tick at either end.
func (p Pad) ticked(c ink.Colour, width float64, a, b, tick r2.Vec) {
	p.Line(Hair, c, a, b)
	for _, end := range [...]r2.Vec{a, b} {
		p.Line(width, c, r2.Sub(end, tick), r2.Add(end, tick))
	}
}

// colourOf is the colour of the first light of which the drawing shows a line of beams, which the legend shows that line in.
func (c legend) colourOf(line string) colour.RGB {
	if l := c.lightOf[line]; l != nil {
		return section.LampColour(l)
	}
	return tungsten()
}

// lineSigns are the lines that the catalogue of symbols does not hold.
func (c legend) lineSigns() []sign {
	half, tenth, stub := c.colourOf(beamHalf), c.colourOf(beamTenth), c.colourOf(beamStub)
	line := func(draw func(p Pad, from, to r2.Vec)) func(Pad, r2.Box) {
		return func(p Pad, b r2.Box) {
			y := (b.Min.Y + b.Max.Y) / 2
			draw(p, r2.Vec{X: b.Min.X, Y: y}, r2.Vec{X: b.Max.X, Y: y})
		}
	}
	return []sign{
		{"throw", "throw", line(func(p Pad, a, b r2.Vec) {
			p.canvas.DoubleArrow(p.Look.throwPen(), throwHead, a, b)
		})},
		{"tape", "tapes", line(func(p Pad, a, b r2.Vec) { p.ticked(p.Look.Place, Hair, a, b, box.At(0.7, 0.7)) })},
		{beamHalf, "beam 50 %", line(func(p Pad, a, b r2.Vec) {
			if p.Look.Glow > 0 {
				band := p.band(half)
				p.Rect(box.Of(a.X, a.Y-bandWide, b.X, a.Y), 0, band, &band)
			}
			p.canvas.Polyline(p.Look.beamPen(p.beam(half)), a, b)
		})},
		{beamTenth, "beam 10 %", line(func(p Pad, a, b r2.Vec) { p.canvas.Polyline(p.Look.fieldPen(p.beam(tenth)), a, b) })},
		{beamStub, "direction", line(func(p Pad, a, b r2.Vec) {
			p.canvas.Arrow(ink.Pen{Colour: p.beam(stub), Width: Medium}, throwHead, a, b)
		})},
		{"view", "view", line(func(p Pad, a, b r2.Vec) { p.canvas.Polyline(p.Look.viewPen(), a, b) })},
		{"size", "clear size", line(func(p Pad, a, b r2.Vec) {
			tick := box.At(sizeTick/2, sizeTick/2)
			a.X, b.X = a.X+sizeTick, b.X-sizeTick
			p.ticked(p.Look.Ink, Thin, a, b, tick)
		})},
		{"outline", "stands before", func(p Pad, b r2.Box) {
			p.canvas.Draw(ink.Pen{Colour: p.Look.Ink, Width: Medium}, ink.RoundRect(b.Min, b.Max, 0.6))
		}},
		{"height", "height", line(func(p Pad, a, b r2.Vec) {
			p.Line(Hair, p.Look.Ink, box.At(a.X, a.Y-0.6), box.At(a.X+heightTick, a.Y-0.6), box.At(b.X, b.Y+0.6))
		})},
		{"match", "match line", line(func(p Pad, a, b r2.Vec) { p.dashed(Thick, p.Look.Ink, []float64{3, 0.7, 1, 0.7}, a, b) })},
		{"ghost", c.ghostWords(), line(ghostSign)},
		{"revised", "revised", cloudSign},
		{"gone", "was here", goneSign},
		{"walk:farthest", "farthest off", func(p Pad, b r2.Box) { diamond(p, box.Middle(b.Min, b.Max)) }},
		{"brightest", "most light", func(p Pad, b r2.Box) { p.cross(box.Middle(b.Min, b.Max)) }},
		{"cliff", "hard edge", line(func(p Pad, a, b r2.Vec) {
			p.Line(Medium, p.Look.Contour, a, b)
			for x := a.X + 0.6; x < b.X; x += 1.2 {
				p.Line(Hair, p.Look.Contour, r2.Vec{X: x, Y: a.Y}, r2.Vec{X: x, Y: a.Y - 0.8})
			}
		})},
	}
}

// expectedSigns counts the symbols and the lines that the plan may show: a throw, a cliff and the lines of beams are drawn only where
// they find room.
func (c legend) expectedSigns() (signs, lines int) {
	keys := c.planSigns()
	if c.In.Elevation != nil {
		keys = c.wallSigns()
	}
	isLine := map[string]bool{}
	for _, l := range c.lineSigns() {
		isLine[l.key] = true
	}
	for key, yes := range keys {
		switch {
		case !yes || key == "":
		case isLine[key]:
			lines++
		default:
			signs++
		}
	}
	return signs, lines
}

// wallSigns are those of a wall.
func (c legend) wallSigns() map[string]bool {
	keys := map[string]bool{"size": true, "height": true, "outline": true, "brightest": c.In.Field != nil, "cliff": c.In.Field != nil}
	if f, ok := OnWall(c.In); ok {
		lines, _ := Wall(c).rimsOn(f)
		keys[beamHalf] = len(lines) > 0
		for _, r := range c.readingsOn(f) {
			keys["reading:"+string(r.Kind)] = true
		}
	}
	return keys
}

// planSigns are those of a plan.
func (c legend) planSigns() map[string]bool {
	in, s, keys := c.In, c.In.Setup, c.thingSigns()
	for i := range s.Openings {
		keys[openingKind(&s.Openings[i])] = true
		keys["opening:escape"] = keys["opening:escape"] || s.Openings[i].Escape
		for k := range s.Openings[i].Dressing {
			keys[dressingKind(&s.Openings[i].Dressing[k])] = true
		}
	}
	for i := range in.Readings {
		if r := &in.Readings[i]; r.Person == "" {
			keys["reading:"+string(r.Kind)] = true
		}
	}
	keys["reading:face"] = len(in.Faces) > 0
	keys["camera"], keys["view"] = len(s.Cameras) > 0, len(in.Views) > 0
	keys[beamHalf], keys[beamTenth] = len(in.Beams) > 0, len(in.Beams) > 0
	keys["cliff"], keys["size"] = in.Field != nil, len(s.Rooms) > 0
	keys["tape"] = slices.ContainsFunc(s.Lights, func(l plan.Light) bool { return len(l.Placing) > 0 }) ||
		slices.ContainsFunc(s.Grip, func(g plan.Grip) bool { return len(g.Placing) > 0 })
	keys[beamStub] = slices.ContainsFunc(in.Beams, func(b section.Beam) bool { return !c.whole[b.Light] })
	keys["walk:farthest"] = len(in.Walks) > 0
	keys["cable"] = slices.ContainsFunc(s.Circuits, func(x plan.Circuit) bool { return x.Outlet != nil })
	keys["ghost"] = len(ghosts(c).moved()) > 0
	revisions(c).signs(keys)
	keys["match"] = c.Tiles.Parts() > 1
	return keys
}

// thingSigns are those of what stands.
func (c legend) thingSigns() map[string]bool {
	s, keys := c.In.Setup, map[string]bool{}
	for i := range s.Lights {
		l := &s.Lights[i]
		keys[lightKind(s, l)], keys[mountKind(holdOf(l))], keys["throw"] = true, true, true
	}
	for i := range s.Grip {
		keys[gripKind(&s.Grip[i])], keys[mountKind(symbols.Hold(s.Grip[i].Mount.Kind))] = true, true
	}
	for i := range s.People {
		keys["person:"+string(s.People[i].Pose)] = true
		keys["mark"] = keys["mark"] || len(s.People[i].Marks) > 0
		keys["walk"] = keys["walk"] || s.People[i].Walk != nil
	}
	for i := range s.Cameras {
		keys["track"] = keys["track"] || s.Cameras[i].Track != nil
	}
	keys["line"] = s.Line != nil
	for i := range s.Furniture {
		keys["furniture:"+string(s.Furniture[i].Kind)] = true
	}
	return keys
}

// figure is what a section shows beside its words, as rows.
func (c *Drawing) figure(s *section.Section) []Row {
	switch s.Figure {
	case section.LevelFigure:
		rows := []Row{maps{c}.keyBar(section.KeyOf(c.In, c.In.Maps()...))}
		if section.IsOfColours(c.In) {
			rows = append(rows, maps{c}.hueBar())
		}
		return rows
	case section.WalkFigure:
		return []Row{c.walkRow(s.Walk)}
	case section.CueFigure:
		return c.cueRows(s.Cues)
	case section.SignFigure:
		return legend{c}.rows()
	}
	return nil
}

// Block lays a section out with its figure.
func (c *Drawing) Block(s *section.Section) *Block { return c.Typesetter.Block(s, c.figure(s)) }

package change

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// upright is the share of the height of an axis from which on what is round about it has no right.
const upright = 0.999

// light is the state of a light.
func (w *written) light(s *plan.Setup, l *plan.Light) Thing {
	h := &l.Head
	t := Thing{Sort: Light, Name: l.Name, Tag: l.Tag, by: w.placed[l.Name], at: w.aimed(l), on: l.Mount.On, hot: hotMinutes(s, l), lowFoot: l.Base,
		ground: l.Mount.Foot / 2, hands: handsOfLight(l)}
	t.Facts = []Fact{
		{Unit, unitOf(l)}, {Wears, wears(h, &l.Choice)}, {Bulb, bulbOf(l.Choice.Bulb)},
		{Focus, focusOf(h)}, {Scrims, Value{Words: term.Words(h.Scrims)}}, {Doors, doorsOf(h.Doors)}, {Cuts, cutsOf(h)}, {Pattern, patternOf(h)},
		{Hold, holdOf(&l.Mount)}, {Place, placeOf(l.Frame.At, l.Base, &l.Mount)}, {Aim, aimOf(l)},
		{Level, Value{Figures: []float64{math.Max(l.Level, 0)}}}, {White, whiteOf(l)}, {Gels, Value{Words: l.Gels}}, {Cloth, Value{Words: l.Diffusion}},
		{Feed, words(l.Circuit)}, {Dimmer, dimmerOf(l)}, {Plays, playOf(l.Play)}, {Note, words(l.Note)},
	}
	return t
}

func dimmerOf(l *plan.Light) Value {
	d := &l.Dimming
	if d.Hertz > 0 {
		return words(string(d.Kind) + " at " + unit.FormatNumber(d.Hertz) + " Hz")
	}
	return words(string(d.Kind))
}

func playOf(p *plan.Play) Value {
	if p == nil {
		return Value{}
	}
	return Value{Words: []string{string(p.Kind)}, Figures: []float64{p.Low, p.High, p.Rate}}
}

func unitOf(l *plan.Light) Value {
	v := Value{Words: []string{l.Head.UnitLabel}, Figures: []float64{float64(l.Count)}}
	if u := l.Head.Unit; u != nil {
		v.Words[0] = u.Name
	} else {
		v.Figures = append(v.Figures, l.Head.Source.Flux)
	}
	return v
}

func wears(h *kit.Head, c *kit.Choice) (v Value) {
	for _, m := range h.Modifiers {
		v.Words = append(v.Words, m.Name)
	}
	if s := c.Shade; s != nil {
		v.Words = append(v.Words, s.Name, s.Cloth)
		v.Figures = []float64{s.Top, s.Bottom, s.Height, s.Transmittance, s.Reflectance, s.MostWatts}
	}
	return v
}

func bulbOf(b *kit.BulbChoice) Value {
	if b == nil {
		return Value{}
	}
	return Value{Words: []string{b.Name}, Figures: []float64{b.Watts, b.Lumens, b.Kelvin}}
}

func focusOf(h *kit.Head) (v Value) {
	if h.Zooms {
		v = Value{Words: []string{"zoom"}, Figures: []float64{h.Focus}}
	}
	if h.Edge != nil {
		v.Words, v.Figures = append(v.Words, "edge"), append(v.Figures, *h.Edge)
	}
	return v
}

func doorsOf(d *kit.HungDoors) Value {
	if d == nil {
		return Value{}
	}
	return Value{Figures: []float64{d.Top, d.Bottom, d.Left, d.Right, d.Opened.Turn}}
}

func cutsOf(h *kit.Head) (v Value) {
	for _, c := range h.Gate.Cuts {
		v.Figures = append(v.Figures, c.Angle, c.Depth)
	}
	return v
}

func patternOf(h *kit.Head) Value {
	b := h.Gate.Breakup
	if b == nil {
		return Value{}
	}
	return Value{Figures: []float64{b.Open, b.Grain, float64(b.Seed)}}
}

// placeOf is where a thing is, what it stands on, and where what carries it is.
func placeOf(at r3.Vec, base float64, m *plan.Mount) Value {
	v := words(m.On)
	v.Figures = figuresOf(at, plan.AtHeight(m.Base, base))
	for _, p := range m.PoleEnds {
		v.Figures = append(v.Figures, p.X, p.Y, 0)
	}
	return v
}

func holdOf(m *plan.Mount) Value {
	kind := m.Kind
	if kind == "" {
		kind = term.Stand
	}
	v := Value{Words: []string{string(kind)}, Figures: []float64{m.Arm}}
	if m.Stand != nil {
		v.Words = append(v.Words, m.Stand.Name)
	}
	return v
}

// aimOf is where a light points; nothing of one that shines all round as it stands or hangs, and that nobody aims. What is round has no right as it points straight up or down.
func aimOf(l *plan.Light) Value {
	o := l.Head.Source.Opening
	round := o.Width == o.Height && l.Head.Doors == nil && len(l.Head.Gate.Cuts) == 0
	switch {
	case l.Frame.Axis == (r3.Vec{}) || l.Head.AllRound() || !l.Aimed && (l.Head.Class == term.Lantern || l.Head.Class == term.Practical):
		return Value{}
	case round && math.Abs(l.Frame.Axis.Z) > upright:
		return Value{Figures: figuresOf(l.Frame.Axis)}
	}
	return Value{Figures: figuresOf(l.Frame.Axis, l.Frame.Right)}
}

// whiteOf is the white that a unit is set to; nothing where that is its own.
func whiteOf(l *plan.Light) Value {
	c, kelvin, duv := &l.Choice, 0.0, 0.0
	if c.White != nil && (l.Head.Unit == nil || c.White.Kelvin != l.Head.Unit.Native || c.White.Duv != 0 || c.White.Daylight) {
		kelvin, duv = c.White.Kelvin, c.White.Duv
	}
	if kelvin == 0 && c.Tint == 0 {
		return Value{}
	}
	return Value{Figures: []float64{kelvin, duv, c.Tint}}
}

// grip is the state of a piece of grip.
func (w *written) grip(g *plan.Grip) Thing {
	item := ""
	if g.Item != nil {
		item = g.Item.Name
	}
	piece := words(string(g.Kind), item)
	piece.Figures = g.Size[:]
	aim := figuresOf(g.Frame.Axis)
	if !g.Round() {
		aim = figuresOf(g.Frame.Axis, g.Frame.Right)
	}
	return Thing{Sort: Grip, Name: g.Name, Tag: g.Tag, by: w.placed[g.Name], at: w.looks[g.Name], on: g.Mount.On, lowFoot: g.Base, ground: g.Mount.Foot / 2, hands: handsOfGrip(g),
		Facts: []Fact{
			{Piece, piece}, {Cloth, words(g.Cloth)}, {Surface, words(g.Surface)}, {Hold, holdOf(&g.Mount)}, {Place, placeOf(g.Frame.At, g.Base, &g.Mount)},
			{Aim, Value{Figures: aim}}, {Note, words(g.Note)},
		}}
}

// camera is the state of a camera. What it is set to is a fact of its own only where that is not what all are set to.
func (w *written) camera(m *plan.Camera, all *plan.Exposure) Thing {
	own := settings(&m.Exposure)
	if Settings.same(own, settings(all)) {
		own = Value{}
	}
	lens := words(m.Filters.Names)
	lens.Figures = []float64{m.Lens, m.Squeeze}
	format := words(m.Sensor)
	format.Figures = []float64{m.Aspect}
	track := Value{}
	if m.Track != nil {
		track.Figures = planFigures(m.Track.Corners)
	}
	return Thing{Sort: Camera, Name: m.Name, Tag: m.Name, by: w.placed[m.Name], at: w.lookedAt(m), lowFoot: m.Base, ground: plan.CameraLength, Facts: []Fact{
		{Place, Value{Figures: figuresOf(m.Frame.At)}}, {Aim, Value{Figures: figuresOf(m.Frame.Axis)}}, {Lens, lens}, {Format, format}, {Track, track}, {Settings, own},
	}}
}

// settings are those of an exposure.
func settings(x *plan.Exposure) Value {
	white := x.SetTo()
	return Value{Figures: []float64{x.Stop.Written, x.ISO, x.FPS, x.Seconds, math.Round(white.Kelvin), math.Round(white.Duv*1e4) / 1e4, x.Range.Over, x.Range.Under}}
}

// piece is the state of a piece of furniture.
func (w *written) piece(f *plan.Furniture) Thing {
	piece := words(string(f.Kind))
	piece.Figures = f.Size[:]
	piece.Figures = append(piece.Figures[:3:3], f.Seat(), float64(f.Steps()))
	place := words(w.spots[f.Name].On)
	place.Figures = figuresOf(plan.AtHeight(f.At, f.Z0))
	return Thing{Sort: Furniture, Name: f.Name, Tag: f.Name, by: w.placed[f.Name], on: w.spots[f.Name].On, lowFoot: f.Base, ground: math.Hypot(f.Size[0], f.Size[1]) / 2, hands: handsOfPiece(f),
		Facts: []Fact{{Piece, piece}, {Surface, words(f.Material)}, {Place, place}, {Turn, Value{Figures: []float64{f.Turn}}}}}
}

// opening is the state of what of an opening a crew can change in a room that stands.
func opening(o *plan.Opening) Thing {
	cloth := Value{}
	for i := range o.Dressing {
		d := &o.Dressing[i]
		cloth.Words = append(cloth.Words, strings.Trim(d.Cloth, " "))
		cloth.Figures = append(cloth.Figures, d.A.X, d.A.Y, d.B.X, d.B.Y, d.Foot, d.Top, d.Slat, d.Tilt)
	}
	return Thing{Sort: Opening, Name: o.Name, Tag: o.Name, Facts: []Fact{
		{Leaf, Value{Figures: []float64{o.Ajar}}}, {Glass, words(o.Glass)}, {Gels, Value{Words: o.Gels}}, {Cloth, cloth},
	}}
}

// person is the state of somebody.
func (w *written) person(p *plan.Person) Thing {
	walk := Value{}
	if p.Walk != nil {
		walk.Figures = planFigures(p.Walk.Corners)
	}
	return Thing{Sort: Person, Name: p.Name, Tag: p.Name, by: w.placed[p.Name], at: w.looks[p.Name], lowFoot: p.Base, Facts: []Fact{
		{Place, standing(p.At, p.Base)}, {Pose, words(string(p.Pose))}, {Turn, Value{Figures: []float64{p.Faces}}}, {Walk, walk},
		{Wardrobe, Value{Figures: []float64{p.Skin, p.Clothes}}},
	}}
}

// mark is the state of a mark: tape on the floor, and how somebody is there.
func mark(m *plan.Mark) Thing {
	return Thing{Sort: Mark, Name: m.Name, Tag: m.Name, lowFoot: m.Base, Facts: []Fact{
		{Place, standing(m.At, m.Base)}, {Pose, words(string(m.Pose))}, {Turn, Value{Figures: []float64{m.Faces}}},
	}}
}

func standing(at r2.Vec, base float64) Value {
	return Value{Figures: figuresOf(plan.AtHeight(at, base))}
}

// circuit is the state of a circuit.
func circuit(c *plan.Circuit) Thing {
	feed := words(string(c.Kind))
	direct := 0.0
	if c.Direct {
		direct = 1
	}
	feed.Figures = []float64{c.Volts, c.Breaker, c.Rule, c.Already, direct}
	if c.Outlet != nil {
		feed.Figures = append(feed.Figures, c.Outlet.X, c.Outlet.Y)
	}
	return Thing{Sort: Circuit, Name: c.Name, Tag: c.Name, Facts: []Fact{{Feed, feed}}}
}

package change

import (
	"math"
	"slices"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// The aspects that a sheet says and no crew changes between set-ups. Their words are ready to print, and their figures are lengths, m, where
// nothing else is said.
const (
	Number    Aspect = "number"     // words: that on the plan
	Role      Aspect = "role"       // words: each role, and of whom
	Seen      Aspect = "seen"       // words: in whose pictures it is meant to be
	StandsFor Aspect = "stands for" // words: what it passes for
	Data      Aspect = "data"       // figures: what its unit gives and takes, cd, lm, W, kg, shares: by the kit or a file of measured light
	Margin    Aspect = "margin"     // figures: a share of the frame's width
	Metered   Aspect = "metered"    // words: the receptor that stops are read by; figures: its constant
	Form      Aspect = "form"       // words: what an opening is, and in which wall
	Along     Aspect = "along"      // from the left end of its wall
	Across    Aspect = "width"
	Sill      Aspect = "sill" // over the floor of its room
	Head      Aspect = "head" // likewise
	Panes     Aspect = "panes"
	Hinged    Aspect = "hinge"
	Escape    Aspect = "escape"
	Stature   Aspect = "stature" // of the crown, standing, and of the eyes as they are
	Facing    Aspect = "facing"  // figures: a unit vector; words: of a spot its camera
	On        Aspect = "on"      // words: what a cue goes on
	Over      Aspect = "over"    // words: how long it takes; figures: s
	Cued      Aspect = "lights"  // words: each light that moves; figures: levels and whites, shares and K
	Shape     Aspect = "shape"   // the corners of a room from its first
	Ceiling   Aspect = "ceiling" // its height over the floor, at the first corner and at its highest, and its rise
	Thick     Aspect = "walls"   // how thick they are
	Surfaces  Aspect = "surfaces"
	Returns   Aspect = "returns" // figures: a share and a chromaticity
	Title     Aspect = "title"
	Maker     Aspect = "for" // words: production, location, by and for whom
	Action    Aspect = "line"
	North     Aspect = "north"  // figures: degrees
	Ground    Aspect = "ground" // its level
	Timed     Aspect = "rates"  // words: kinds of work; figures: minutes
	Follower  Aspect = "after"  // words: the set-up before it in the file
	Sequence  Aspect = "sequence"
)

// OnPaper is all that a sheet says of a set-up, also what no crew touches: the set, its meters, cues, roles, numbers. How the sheet is drawn is
// not in it: paper, scale, date, revision, units.
func OnPaper(s *plan.Setup) *State {
	out := Of(s)
	for i := range out.Things {
		t := &out.Things[i]
		t.Facts = append(t.Facts, moreOf(s, t)...)
	}
	for i := range s.Meters {
		out.Things = append(out.Things, meterOf(&s.Meters[i]))
	}
	for i := range s.Rooms {
		out.Things = append(out.Things, room(s, &s.Rooms[i]))
	}
	out.Things = append(out.Things, whole(s))
	if s.Scene != nil {
		for i := range s.Scene.Materials {
			out.Things = append(out.Things, material(&s.Scene.Materials[i]))
		}
	}
	for i := range s.Uncomputed {
		if u := &s.Uncomputed[i]; !slices.ContainsFunc(out.Things, func(t Thing) bool { return t.Sort == Waiting && t.Name == u.Path }) {
			out.Things = append(out.Things, Thing{Sort: Waiting, Name: u.Path, Tag: u.Words})
		}
	}
	out.reindex()
	return out
}

// moreOf are the facts of a thing beside those that a crew changes.
func moreOf(s *plan.Setup, t *Thing) []Fact {
	switch t.Sort {
	case Light:
		return moreOfLight(s, s.LightNamed(t.Name))
	case Grip:
		return []Fact{{Number, words(t.Tag)}}
	case Camera:
		return []Fact{{Margin, Value{Figures: []float64{s.CameraNamed(t.Name).Room}}}}
	case Exposure:
		return []Fact{{Metered, Value{Words: []string{string(s.Exposure.Meter)}, Figures: []float64{s.Exposure.Constant}}}}
	case Opening:
		return moreOfOpening(s, s.OpeningNamed(t.Name))
	case Person, Mark:
		p := s.Post(t.Name)
		facts := []Fact{{Stature, Value{Figures: []float64{p.Height, p.Eyes - p.Base}}}}
		if t.Sort == Person {
			facts = append(facts, Fact{Seen, seen(&p.Seen)})
		}
		return facts
	}
	return nil
}

func moreOfLight(s *plan.Setup, l *plan.Light) []Fact {
	var roles, stands Value
	for _, r := range l.Roles {
		roles.Words = append(roles.Words, ofWhom(string(r.Role), r.Person.Name))
	}
	if f := l.StandsFor; f != nil {
		stands = words(f.Light, f.Opening)
		if f.White != nil {
			stands.Words = append(stands.Words, unit.FormatKelvin(f.White.Kelvin))
		}
	}
	return []Fact{{Number, words(l.Tag)}, {Role, roles}, {Seen, seen(&l.Seen)}, {StandsFor, stands}, {Data, dataOf(l)}}
}

func ofWhom(role, person string) string {
	if person == "" {
		return role
	}
	return role + " of " + person
}

func seen(s *plan.Seen) Value {
	switch {
	case !s.Written:
		return Value{}
	case !s.Meant:
		return words("in no picture")
	case len(s.By) == 0:
		return words("in all pictures")
	}
	return Value{Words: s.By}
}

// sampled are the directions in which the light of a unit is compared, degrees off its axis: inside and outside of any beam.
var sampled = []float64{0, 3, 8, 15, 25, 40, 60, 85, 120, 175}

// dataOf is what the catalogue or a file of measured light says of what a head gives and takes: the same words of a scene may mean another lamp.
func dataOf(l *plan.Light) Value {
	h := &l.Head
	v := Value{Figures: []float64{h.Source.Flux, h.Source.Opening.Width, h.Source.Opening.Height, h.Watts, h.Mass, h.PowerFactor, h.Inrush, h.White.Kelvin, h.White.Duv}}
	for i := range l.RelativeOutput {
		v.Figures = append(v.Figures, l.RelativeOutput[i])
	}
	if d := h.Source.Distribution; d != nil {
		for _, off := range sampled {
			sin, cos := math.Sincos(off * math.Pi / 180)
			v.Figures = append(v.Figures, d.Candela(r3.Vec{X: sin, Z: -cos}), d.Candela(r3.Vec{Y: sin, Z: -cos}))
		}
	}
	return v
}

func moreOfOpening(s *plan.Setup, o *plan.Opening) []Fact {
	along, floor := 0.0, 0.0
	if r := s.RoomNamed(o.Room); r != nil {
		floor = r.Base
	}
	if w := s.WallNamed(o.Room + "." + o.Wall); w != nil {
		along = r2.Dot(r2.Sub(o.Left, w.Left), w.Rightward())
	}
	lengths := func(m float64) Value { return Value{Figures: []float64{m}} }
	var panes, hinge, escape Value
	if o.Kind == term.Window {
		panes = words(strconv.Itoa(o.Panes[0]) + " × " + strconv.Itoa(o.Panes[1]))
	}
	if o.Kind == term.Door {
		hinge = words(either(o.HingeLeft, "left", "right"), either(o.SwingIn, "in", "out"))
	}
	if o.Escape {
		escape = words("a way out")
	}
	return []Fact{{Form, words(string(o.Kind) + " in " + o.Room + "." + o.Wall)}, {Along, lengths(along)}, {Across, lengths(o.Width())}, {Sill, lengths(o.Sill - floor)}, {Head, lengths(o.Head - floor)},
		{Panes, panes}, {Hinged, hinge}, {Escape, escape}}
}

func either(is bool, yes, no string) string {
	if is {
		return yes
	}
	return no
}

func cue(q *plan.Cue) Thing {
	over := words(q.OverWords())
	over.Figures = []float64{q.Over}
	var moves Value
	for i := range q.Moves {
		m := &q.Moves[i]
		words, white := m.Light+" "+unit.FormatPercent(m.To.Level), colour.White{}
		if m.From.White != m.To.White {
			white = m.To.White
			words += " " + unit.FormatKelvin(white.Kelvin)
		}
		moves.Words = append(moves.Words, words)
		moves.Figures = append(moves.Figures, m.To.Level, white.Kelvin, white.Duv)
	}
	return Thing{Sort: Cue, Name: q.Name, Tag: q.Name, Facts: []Fact{{On, words(q.OnWords())}, {Over, over}, {Cued, moves}}}
}

func meterOf(m *plan.Meter) Thing {
	facing := words(m.From)
	facing.Figures = figuresOf(m.Facing)
	if m.From != "" {
		facing.Figures = nil // it is turned to where its camera stands
	}
	return Thing{Sort: Meter, Name: m.Name, Tag: m.Name, Facts: []Fact{{Form, words(string(m.Kind))}, {Place, Value{Figures: figuresOf(m.At)}}, {Facing, facing}}}
}

// room is the state of a room: its shape apart from where it lies.
func room(s *plan.Setup, r *plan.Room) Thing {
	var shape, thick []float64
	for _, q := range r.Inside {
		shape = append(shape, q.X-r.Inside[0].X, q.Y-r.Inside[0].Y)
	}
	for i := range r.Walls {
		thick = append(thick, r.Walls[i].Thickness)
	}
	facts := []Fact{{Place, Value{Figures: figuresOf(plan.AtHeight(r.Inside[0], r.Base))}}, {Shape, Value{Figures: shape}},
		{Ceiling, Value{Figures: []float64{r.CeilingAt(r.Inside[0]) - r.Base, r.Top - r.Base, r.CeilingRise.X, r.CeilingRise.Y}}}, {Thick, Value{Figures: thick}}}
	return Thing{Sort: Room, Name: r.Name, Tag: r.Name, Facts: append(facts, Fact{Surfaces, surfaces(s, r.Name)})}
}

// surfaces are the materials of walls, floor and ceiling, by their names.
func surfaces(s *plan.Setup, room string) Value {
	if s.Scene == nil {
		return Value{}
	}
	for i := range s.Scene.Rooms {
		if w := &s.Scene.Rooms[i]; w.Name == room {
			var v Value
			for _, of := range [...]struct {
				what string
				is   scene.Given[string]
			}{{"walls", w.Walls}, {"floor", w.Floor}, {"ceiling", w.Ceiling}} {
				v.Words = append(v.Words, of.what+" "+of.is.Or("grey"))
			}
			return v
		}
	}
	return Value{}
}

func material(m *scene.Material) Thing {
	xy := m.Colour.Value.XY
	return Thing{Sort: Material, Name: m.Name, Tag: m.Name, Facts: []Fact{{Returns, Value{Figures: []float64{m.Reflectance.Value, xy[0], xy[1]}}}}}
}

// whole is what a sheet says of a set-up as a whole.
func whole(s *plan.Setup) Thing {
	var action, after, rates, maker Value
	if s.Line != nil {
		action = words(s.Line.People[0], s.Line.People[1])
	}
	if s.Before != nil {
		after = words(s.Before.Name)
	}
	if s.Scene != nil {
		for _, r := range s.Scene.Rates {
			rates.Words, rates.Figures = append(rates.Words, string(r.Work)), append(rates.Figures, r.Minutes)
		}
		of := &s.Scene.Sheet
		maker.Words = []string{of.Production.Value, of.Location.Value, of.By.Value, of.For.Value}
	}
	return Thing{Sort: Whole, Tag: string(Whole), Facts: []Fact{{Title, words(s.Title)}, {Sequence, words(s.Sequence)}, {Maker, maker}, {Action, action}, {North, Value{Figures: []float64{s.North}}},
		{Ground, Value{Figures: []float64{s.Ground}}}, {Timed, rates}, {Follower, after}}}
}

package symbols

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Entry is one symbol of the set, as a legend and the symbol sheet show it.
type Entry struct {
	Key   string // "light:boxed", "mount:boom", "camera": what kind of thing it stands for
	Group string // the heading that it stands under
	Name  string // "soft box"
	Words string // what it means, in a line

	draw func(c ink.Canvas, k Look, s float64) Drawn
}

// Draw draws a usual example of the symbol at a scale in mm of paper for a metre, about the origin
// of the canvas.
func (e Entry) Draw(c ink.Canvas, k Look, scale float64) Drawn { return e.draw(c, k, scale) }

// Box returns the box of all that Draw draws, in the canvas's own frame.
func (e Entry) Box(scale float64) r2.Box {
	var page ink.Page
	e.draw(ink.NewCanvas(&page, ink.Symbols), Look{}, scale)
	return page.Bounds(nil).Box
}

// Catalogue lists every symbol, in the order of the symbol sheet.
func Catalogue() []Entry {
	var all []Entry
	for _, part := range [][]Entry{lights(), mounts(), grips(), people(), openings(), furniture(), marks()} {
		all = append(all, part...)
	}
	return all
}

// amber is the light of the examples: tungsten as a daylight camera sees it.
var amber = ink.Colour{R: 244, G: 176, B: 106}

// lampSizes are usual widths and heights of emitting faces, and of heads, m.
var lampSizes = map[Class][2]r2.Vec{
	Bare:      {{X: 0.18, Y: 0.18}, {X: 0.20, Y: 0.25}},
	Lensed:    {{X: 0.20, Y: 0.20}, {X: 0.22, Y: 0.30}},
	Projected: {{X: 0.09, Y: 0.09}, {X: 0.12, Y: 0.40}},
	Boxed:     {{X: 0.90, Y: 0.90}, {X: 0.12, Y: 0.35}},
	Linear:    {{X: 1.20, Y: 0.04}, {}},
	Panel:     {{X: 0.60, Y: 0.30}, {}},
	Lantern:   {{X: 0.65, Y: 0.65}, {}},
	Practical: {{X: 0.30, Y: 0.30}, {}},
}

// example is a usual lamp of a class, aimed up the paper, its body about the origin.
func example(class Class, k Look, s float64) Lamp {
	if k.Sample == (ink.Colour{}) {
		k.Sample = amber
	}
	size := lampSizes[class]
	return Lamp{Class: class, Face: r2.Scale(s, size[0]), Body: r2.Scale(s, size[1]), Colour: k.Sample}
}

func lights() []Entry {
	names := map[Class][2]string{
		Bare:      {"open face", "a bowl or a bare bulb, no lens"},
		Lensed:    {"lensed", "a lens before it, spot to flood"},
		Projected: {"profile", "throws the image of its gate"},
		Boxed:     {"soft box", "a soft face on a box"},
		Linear:    {"tube", "a linear source"},
		Panel:     {"panel", "a flat array of emitters"},
		Lantern:   {"lantern", "a soft sphere, light all round"},
		Practical: {"practical", "a lamp of the set"},
	}
	var out []Entry
	for _, class := range Classes() {
		n := names[class]
		out = append(out, Entry{"light:" + string(class), "Lights", n[0], n[1], func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawLight(c, k, example(class, k, s))
		}})
	}
	return append(out, lightStates()...)
}

// lightStates are the lights that look otherwise by how they are used: those that point down or up, and one that is off.
func lightStates() []Entry {
	state := func(key, name, words string, class Class, with func(l *Lamp)) Entry {
		return Entry{"light:" + key, "Lights from above, and dark", name, words, func(c ink.Canvas, k Look, s float64) Drawn {
			l := example(class, k, s)
			with(&l)
			return DrawLight(c, k, l)
		}}
	}
	down, up := func(l *Lamp) { l.Tilt = -90 }, func(l *Lamp) { l.Tilt = 90 }
	round := func(tilt float64) func(l *Lamp) { return func(l *Lamp) { l.Tilt, l.Round = tilt, true } }
	return []Entry{
		state("down", "pointing down", "its head before its light", Lensed, down),
		state("up", "pointing up", "its light toward you", Lensed, up),
		state("down-soft", "soft box, down", "its face covers this ground", Boxed, down),
		state("up-soft", "soft box, up", "its face covers this ground", Boxed, up),
		state("down-round", "round box, down", "its face covers this ground", Boxed, round(-90)),
		state("up-round", "round box, up", "its face covers this ground", Boxed, round(90)),
		state("down-panel", "panel, down", "its back with its fins", Panel, down),
		state("up-panel", "panel, up", "its emitters toward you", Panel, up),
		state("bulb", "bare bulb", "a practical without a shade", Practical, func(l *Lamp) { l.Face, l.Naked = vec(0, 0), true }),
		state("off", "off", "any light: open, and struck through", Lensed, func(l *Lamp) { l.Off = true }),
	}
}

// exampleMount is a lensed lamp on a mount.
func exampleMount(hold Hold, k Look, s float64) Lamp {
	l := example(Lensed, k, s)
	l.Mount = Mount{Hold: hold, Footprint: 0.8 * s}
	switch hold {
	case Boom:
		l.Mount.Base = vec(0, -0.8*s)
	case Clamp:
		l.Mount.Base = vec(0, -0.5*s)
	case Pole:
		l.Mount.Ends = [2]r2.Vec{vec(-0.6*s, -0.14*s), vec(0.6*s, -0.14*s)}
	case Floor:
		l.Mount.Footprint = 0.55 * s
		l.Mount.Base = vec(0, -0.14*s)
	case Lift:
		l.Mount.Footprint, l.Mount.Depth = 0.8*s, 1.28*s
		l.Mount.Base = vec(0, -0.2*s)
	case Wall:
		l.Mount.Base = vec(0, -0.55*s)
	}
	return l
}

// MountSign returns the sign of a hold alone, without a usual lamp on it.
func MountSign(hold Hold) func(c ink.Canvas, k Look, s float64) Drawn {
	return func(c ink.Canvas, k Look, s float64) Drawn {
		l := exampleMount(hold, k, s)
		b := brush{c, k}.on(ink.Symbols)
		if hold == InHand {
			return Drawn{Body: b.hand(0)}
		}
		return Drawn{Rest: b.mount(l.Mount, l.At, 0)}
	}
}

func mounts() []Entry {
	names := map[Hold][2]string{
		Stand:  {"stand", "with the ground its legs take"},
		Boom:   {"boom", "arm, base and counterweight"},
		Clamp:  {"clamp", "on what it is clamped to"},
		Pole:   {"pole", "braced from wall to wall"},
		Floor:  {"floor", "on a low plate"},
		Lift:   {"lift", "a platform that rises"},
		Wall:   {"wall", "on a wall plate"},
		InHand: {"hand", "held by somebody"},
		Hung:   {"ceiling", "hangs over the floor"},
	}
	var out []Entry
	for _, hold := range Holds() {
		n := names[hold]
		out = append(out, Entry{"mount:" + string(hold), "Mounts", n[0], n[1], func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawLight(c, k, exampleMount(hold, k, s))
		}})
	}
	return out
}

func grips() []Entry {
	names := map[GripKind][2]string{
		Flag:   {"flag", "stops light"},
		Card:   {"white card", "sends light back to where its ends point"},
		Frame:  {"frame", "light passes through its cloth"},
		Net:    {"net", "takes a part of the light"},
		Silver: {"silver", "sends light back hard"},
	}
	var out []Entry
	for _, kind := range GripKinds() {
		n := names[kind]
		out = append(out, Entry{"grip:" + string(kind), "Grip", n[0], n[1], func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawGrip(c, k, Grip{Kind: kind, Size: vec(1.0*s, 1.0*s)})
		}})
		if kind == Card {
			out = append(out, Entry{"grip:black", "Grip", "black card", "keeps light from coming back", func(c ink.Canvas, k Look, s float64) Drawn {
				return DrawGrip(c, k, Grip{Kind: kind, Size: vec(1.0*s, 1.0*s), Black: true})
			}})
		}
	}
	return out
}

func people() []Entry {
	names := map[Pose]string{
		Standing: "from above; the dark point is the nose", Seated: "thighs forward", Propped: "against a rest, legs out",
		Lying: "on the back, face up", Crouching: "knees drawn up",
	}
	var out []Entry
	for _, pose := range Poses() {
		out = append(out, Entry{"person:" + string(pose), "People and camera", string(pose), names[pose], func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawPerson(c, k, Person{Pose: pose, Scale: s})
		}})
	}
	return append(out, Entry{"camera", "People and camera", "camera", "the shade opens to what it sees", func(c ink.Canvas, k Look, s float64) Drawn {
		return DrawCamera(c, k, Camera{At: vec(0, 0.15*s), Scale: s})
	}})
}

// exampleOpening is an opening of a width in a piece of wall, seen from inside, which lies below it.
func exampleOpening(o Opening, s, width float64) func(c ink.Canvas, k Look) Drawn {
	const wall = 0.15
	o.Left, o.Right, o.Out = vec(-width/2*s, 0), vec(width/2*s, 0), vec(0, wall*s)
	return func(c ink.Canvas, k Look) Drawn {
		b := brush{c, k}.on(ink.Walls)
		stub := 0.12 * s
		b.Rect(b.solid(), r2.Sub(o.Left, vec(stub, 0)), r2.Add(o.Left, o.Out))
		b.Rect(b.solid(), o.Right, r2.Add(r2.Add(o.Right, o.Out), vec(stub, 0)))
		return DrawOpening(c, k, o)
	}
}

func openings() []Entry {
	entry := func(key, name, words string, width float64, o Opening) Entry {
		return Entry{key, "Openings", name, words, func(c ink.Canvas, k Look, s float64) Drawn { return exampleOpening(o, s, width)(c, k) }}
	}
	return []Entry{
		entry("opening:window", "window", "its panes and its sill", 1.0, Opening{Kind: Window, Panes: 2}),
		entry("opening:casement", "window ajar", "with what it swings over", 0.8, Opening{Kind: Window, HingeLeft: true, SwingIn: true, Ajar: 50}),
		entry("opening:door", "door", "its leaf, and what it swings over", 0.8, Opening{Kind: Door, HingeLeft: true, SwingIn: true, Ajar: 70}),
		entry("opening:gap", "gap", "open; wall above it", 0.9, Opening{Kind: Gap}),
		entry("opening:escape", "way out", "keep it clear", 0.9, Opening{Kind: Gap, Escape: true}),
		dressed("dressing:curtain", "curtain", "of a cloth that the list names", false),
		dressed("dressing:blind", "blind", "its slats on their cords", true),
	}
}

// dressed is a window with a curtain or a blind.
func dressed(key, name, words string, blind bool) Entry {
	return Entry{key, "Openings", name, words, func(c ink.Canvas, k Look, s float64) Drawn {
		d := exampleOpening(Opening{Kind: Window, Panes: 1}, s, 0.8)(c, k)
		hung := Dressing{A: vec(-0.45*s, -0.1*s), B: vec(0.45*s, -0.1*s), Blind: blind}
		DrawDressing(c, k, hung)
		return d
	}}
}

func furniture() []Entry {
	type example struct {
		words string
		size  r2.Vec // m
	}
	examples := map[FurnitureKind]example{
		Box:      {"its outline", vec(1.0, 0.5)},
		Cylinder: {"its centre marked", vec(0.6, 0.6)},
		Table:    {"the legs under it dashed", vec(1.2, 0.7)},
		Sofa:     {"back, arms and seats", vec(1.4, 0.85)},
		Stairs:   {"the arrow points up", vec(0.8, 1.3)},
		Deck:     {"a platform that bears", vec(1.2, 0.9)},
		Mirror:   {"a ray off its glass", vec(1.0, 0.03)},
	}
	var out []Entry
	for _, kind := range FurnitureKinds() {
		e := examples[kind]
		out = append(out, Entry{"furniture:" + string(kind), "Furniture", string(kind), e.words, func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawFurniture(c, k, Furniture{Kind: kind, Size: r2.Scale(s, e.size), Scale: s, Steps: 7})
		}})
	}
	return out
}

func marks() []Entry {
	words := map[MeterKind]string{Flat: "light on a plane", Dome: "the incident dome", Spot: "what the camera sees there"}
	var out []Entry
	for _, kind := range MeterKinds() {
		out = append(out, Entry{"reading:" + string(kind), "Marks", string(kind) + " reading", words[kind], func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawMeter(c, k, kind, vec(0, 0))
		}})
	}
	return append(out,
		Entry{"reading:face", "Marks", "side of a face", "a stroke on the head: no meter stands there", func(c ink.Canvas, k Look, s float64) Drawn {
			return sides(c, k, s)
		}},
		Entry{"mark", "Marks", "mark", "tape where somebody stops", func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawMark(c, k, vec(0, 0), 0)
		}},
		Entry{"walk", "Marks", "walk", "a tick at each place that is read", exampleWalk},
		Entry{"track", "Marks", "track", "a sleeper every metre; in outline the camera at its end", exampleTrack},
		Entry{"line", "Marks", "line of action", "through two heads", exampleLine},
		Entry{"cable", "Marks", "cable", "from its outlet, the shortest way on the floor", exampleCable},
		Entry{"throw", "Marks", "throw", "from lamp to aim, in true length", func(c ink.Canvas, k Look, s float64) Drawn {
			DrawThrow(c, k, vec(-9, -3), vec(9, 3), 0, 0)
			return Drawn{}
		}},
		Entry{"north", "Marks", "north", "of the world, not of the sheet", func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawNorth(c, k, vec(0, 0), 20, 14)
		}},
		Entry{"scale-bar", "Marks", "scale bar", "a metre and its halves", func(c ink.Canvas, k Look, s float64) Drawn {
			return DrawScaleBar(c, k, vec(-s/2, -0.8), s/4, 4)
		}})
}

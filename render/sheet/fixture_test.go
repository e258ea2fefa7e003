package sheet

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
	"scrimshaw/render/carto"
)

func given(s string) scene.Given[string] { return scene.Given[string]{V: s, Set: true} }

// quad is a rectangle by its corners.
func quad(x0, y0, x1, y1 float64) []r2.Vec {
	return []r2.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// kitchen is a set-up made by hand: a room of 4.2 m by 3.6 m with a window in its left wall, a
// door, a table, one person, one camera and three lights.
func kitchen() *plan.Setup {
	sc := &scene.Scene{Site: &scene.Site{}}
	sc.Sheet = scene.Sheet{Production: given("Low Water"), Location: given("Quay house, ground floor"),
		Revision: given("B"), For: given("electric, grip"), By: given("M. Aldous")}
	s := &plan.Setup{
		Name: "2", Title: "The kitchen, late afternoon", Scene: sc, North: 24, FaceHeight: 1.2,
		Rooms: []plan.Room{{Name: "kitchen", Inside: quad(0, 0, 4.2, 3.6), Top: 2.6}},
		Exposure: plan.Exposure{ISO: 800, FPS: 24, Seconds: 1.0 / 48, Degrees: 180,
			Stop: scene.Stop{Written: 2.8, N: 2 * math.Sqrt2}, White: colour.White{Kelvin: 4300}, Meter: "dome", Constant: 340},
	}
	s.Walls = []plan.WallPiece{
		{Outline: quad(-0.2, -0.2, 4.4, 0), Room: "kitchen", Wall: "bottom"},
		{Outline: quad(-0.2, 3.6, 4.4, 3.8), Room: "kitchen", Wall: "top"},
		{Outline: quad(-0.2, 0, 0, 1.1), Room: "kitchen", Wall: "left"},
		{Outline: quad(-0.2, 2.5, 0, 3.6), Room: "kitchen", Wall: "left"},
		{Outline: quad(-0.2, 1.1, 0, 2.5), Room: "kitchen", Wall: "left", Opening: "street", Z1: 0.9},
		{Outline: quad(4.2, 0, 4.4, 0.4), Room: "kitchen", Wall: "right"},
		{Outline: quad(4.2, 1.2, 4.4, 3.6), Room: "kitchen", Wall: "right"},
	}
	s.Openings = []plan.Opening{
		{Name: "street", Kind: "window", Room: "kitchen", Wall: "left", Left: r2.Vec{X: 0, Y: 1.1}, Right: r2.Vec{X: 0, Y: 2.5},
			Outward: r2.Vec{X: -1}, Depth: 0.2, Sill: 0.9, Head: 2.1, Panes: [2]int{2, 2}},
		{Name: "hall", Kind: "door", Room: "kitchen", Wall: "right", Left: r2.Vec{X: 4.2, Y: 1.2}, Right: r2.Vec{X: 4.2, Y: 0.4},
			Outward: r2.Vec{X: 1}, Depth: 0.2, Head: 2, HingeLeft: false, SwingIn: true, Ajar: 70},
	}
	s.Furniture = []plan.Furniture{
		{Name: "table", Kind: "table", At: r2.Vec{X: 2.7, Y: 2.9}, Size: [3]float64{1.4, 0.8, 0.75}, Z1: 0.75,
			Parts: []plan.Part{{Kind: "top", Outline: quad(2, 2.5, 3.4, 3.3)}}},
		{Name: "dresser", Kind: "box", At: r2.Vec{X: 1.9, Y: 0.25}, Size: [3]float64{1.4, 0.5, 0.9}, Z1: 0.9,
			Parts: []plan.Part{{Kind: "body", Outline: quad(1.2, 0, 2.6, 0.5)}}},
	}
	s.People = []plan.Person{{Name: "ruth", At: r2.Vec{X: 1.9, Y: 1.9}, Pose: "seated", Height: 1.7, Crown: 1.3, Eyes: 1.2, Faces: 130,
		Face: plan.Frame{At: r3.Vec{X: 1.98, Y: 1.84, Z: 1.2}, Axis: r3.Vec{X: 0.766, Y: -0.643}}}}
	s.Cameras = []plan.Camera{{Name: "A", Frame: plan.Frame{At: r3.Vec{X: 3.6, Y: 0.6, Z: 1.25}, Axis: r3.Unit(r3.Vec{X: -1.62, Y: 1.24}), Right: r3.Unit(r3.Vec{X: 1.24, Y: 1.62})},
		Height: 1.25, Lens: 35, Sensor: "Super 35, cropped to 2.39:1", Gate: [2]float64{24.9, 10.4}, Aspect: 2.39, HAOV: 39.2, VAOV: 16.9}}
	s.Lights = []plan.Light{
		fixtureLight("1", "day", r3.Vec{X: -2.2, Y: 2.3, Z: 2.5}, r3.Vec{X: 1.98, Y: 1.84, Z: 1.2}, term.Lensed, "600 W LED point", "lens 25", 0.2, 5600, 1),
		fixtureLight("2", "soft", r3.Vec{X: 1.1, Y: 3.1, Z: 2.0}, r3.Vec{X: 1.98, Y: 1.84, Z: 1.2}, term.Boxed, "300 W LED point", "softbox 0.9 m", 0.9, 4300, 0.35),
		fixtureLight("3", "lamp", r3.Vec{X: 3.1, Y: 2.9, Z: 1.15}, r3.Vec{X: 1.98, Y: 1.84, Z: 1.2}, term.Practical, "table lamp 40 W", "", 0.2, 2700, 1),
	}
	s.Lights[0].Gels = []string{"1/2 CTO"}
	s.Lights[0].Note = "two bags, tie off"
	s.Lights[0].Placing = []plan.Dimension{{From: "street, outside", Metres: 2.0}, {From: "kitchen.top", Metres: 1.3}}
	s.Lights[1].Placing = []plan.Dimension{{From: "kitchen.left", Metres: 1.1}, {From: "kitchen.top", Metres: 0.5}}
	s.Grip = []plan.Grip{{Name: "black", Tag: "G1", Kind: "flag", Size: [2]float64{1.2, 1.2}, Surface: "black", Height: 1.4,
		Frame:   plan.Frame{At: r3.Vec{X: 2.6, Y: 1.2, Z: 1.4}, Axis: r3.Unit(r3.Vec{X: -0.7, Y: 0.7}), Right: r3.Unit(r3.Vec{X: 0.7, Y: 0.7})},
		Placing: []plan.Dimension{{From: "kitchen.bottom", Metres: 1.2}, {From: "kitchen.right", Metres: 1.6}}}}
	s.Meters = []plan.Meter{{Name: "table-top", Kind: plan.FlatMeter, At: r3.Vec{X: 2.4, Y: 2.9, Z: 0.76}, Facing: r3.Vec{Z: 1}}}
	s.Assumed = assume("lights.day", "aim", "ruth", "lights.lamp", "level", "100 %", "rooms.kitchen", "walls", "0.5 reflectance",
		"rooms.kitchen", "ceiling", "0.8", "rooms.kitchen", "floor", "0.2", "openings.street", "head", "2.10 m",
		"people.ruth", "height", "1.70 m", "cameras.A", "sensor", "Super 35, cropped to 16:9")
	return s
}

// assume lists assumptions from triples of words.
func assume(words ...string) (all []plan.Assumption) {
	for ; len(words) >= 3; words = words[3:] {
		all = append(all, plan.Assumption{Thing: words[0], What: words[1], Value: words[2]})
	}
	return all
}

func fixtureLight(tag, name string, from, to r3.Vec, class term.Class, label, modifier string, wide, kelvin, level float64) plan.Light {
	axis := r3.Unit(r3.Sub(to, from))
	right := r3.Unit(r3.Cross(axis, r3.Vec{Z: 1}))
	white := colour.White{Kelvin: kelvin}
	return plan.Light{Name: name, Path: "lights." + name, Tag: tag, Frame: plan.Frame{At: from, Axis: axis, Right: right},
		AimPoint: to, Throw: r3.Norm(r3.Sub(to, from)), Level: level, White: white, Drive: white.RGB().Scale(level), Height: from.Z,
		Mount: plan.Mount{Kind: "stand", Base: r2.Vec{X: from.X, Y: from.Y}, Foot: 1},
		Head: kit.Head{Class: class, UnitLabel: label, ModifierLabel: modifier, RGB: white.RGB(), White: white,
			Source: photometry.Source{Opening: photometry.Opening{Form: photometry.Disc, Width: wide, Height: wide}}}}
}

// glow is a made-up field: a sum of spots over the room, dark behind the dresser.
func glow(s *plan.Setup) carto.Grid {
	const step = 0.05
	g := carto.Grid{Origin: r2.Vec{X: step / 2, Y: step / 2}, Step: step, NX: 84, NY: 72}
	g.Value = make([]float32, g.NX*g.NY)
	g.Mask = make([]uint64, (len(g.Value)+63)/64)
	for n := range g.Value {
		at := g.At(n%g.NX, n/g.NX)
		for i := range s.Lights {
			l := &s.Lights[i]
			d := r3.Sub(r3.Vec{X: at.X, Y: at.Y}, l.Frame.At)
			r := r3.Norm(d)
			spread := r3.Dot(d, l.Frame.Axis) / r
			g.Value[n] += float32(6000 * l.Level * math.Pow(math.Max(spread, 0), 8) / (r * r) * -d.Z / r)
		}
		g.Value[n] += 6
		if at.X > 1.2 && at.X < 2.6 && at.Y < 0.5 {
			g.Mask[n>>6] |= 1 << (n & 63)
		}
	}
	return g
}

func f64(v float64) *float64 { return &v }

// example is the kitchen with results.
func example() Input {
	s := kitchen()
	key := meter.Reading{Name: "ruth.key", Person: "ruth", Kind: "flat", At: r3.Vec{X: 1.98, Y: 1.84, Z: 1.2}, Facing: r3.Vec{X: 0, Y: 1}, Lux: f64(238), Stop: f64(2.85), Over: f64(0.02), CCT: f64(3340)}
	fill := meter.Reading{Name: "ruth.fill", Person: "ruth", Kind: "flat", At: r3.Vec{X: 1.98, Y: 1.84, Z: 1.2}, Facing: r3.Vec{X: 1, Y: 0}, Lux: f64(52), Stop: f64(1.33), Over: f64(-2.2), CCT: f64(4010)}
	dome := meter.Reading{Name: "ruth.dome.A", Person: "ruth", Kind: "dome", At: r3.Vec{X: 1.98, Y: 1.84, Z: 1.2}, Lux: f64(120), Stop: f64(2), Over: f64(-1)}
	top := meter.Reading{Name: "table-top", Kind: "flat", At: r3.Vec{X: 2.4, Y: 2.9, Z: 0.76}, Lux: f64(410), Stop: f64(3.7), Over: f64(0.8)}
	return Input{
		Setup: s, Readings: []meter.Reading{key, fill, dome, top},
		Faces: []Face{{Person: "ruth", Key: &key, Fill: &fill, Domes: []*meter.Reading{&dome}, Contrast: 2.19}},
		Field: &Field{Name: "Illuminance on the floor", Grid: glow(s)},
		Inset: &Field{Name: "Incident dome at 1.20 m, at each point turned toward A", Grid: glow(s)},
		Beams: []Beam{
			{Light: "day", Half: []r2.Vec{{X: -2.2, Y: 2.3}, {X: 0, Y: 1.3}, {X: 2.9, Y: 0}, {X: 4.2, Y: 0}, {X: 4.2, Y: 2.2}, {X: 0, Y: 2.25}},
				Tenth: []r2.Vec{{X: -2.2, Y: 2.3}, {X: 0, Y: 1.1}, {X: 2.2, Y: 0}, {X: 4.2, Y: 0}, {X: 4.2, Y: 2.7}, {X: 0, Y: 2.4}}},
		},
		Views:     []View{{Camera: "A", Outline: []r2.Vec{{X: 3.6, Y: 0.6}, {X: 0, Y: 1.2}, {X: 0, Y: 3.6}, {X: 1.1, Y: 3.6}}}},
		Watch:     []string{"Stand of 2 is 0.3 m outside frame left: do not pan past 6°.", "1 is outside, 2.7 m high: two bags; wind over 8 m/s: take it down."},
		Cautions:  []string{"1, 2, 3: Mains: earth leakage protection, cables out of the wet and off the walkways.", "1: Overhead: safety bonds, bags on the high leg, nobody under it while it moves.", "Local codes and licensed practice come first."},
		Unchecked: []string{"Floor load, house wiring, wind."},
	}
}

package sheet

import (
	"fmt"
	"math"
	"math/rand"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/internal/fixture"
)

// crowd is a made-up set-up of one room with many things in it, some of them on top of each other.
func crowd(seed int64, lights int) Input {
	rng := rand.New(rand.NewSource(seed))
	w, h := 3+rng.Float64()*5, 2.5+rng.Float64()*4
	s := fixture.Kitchen()
	s.Rooms = []plan.Room{{Name: "hall", Inside: fixture.Quad(0, 0, w, h), Top: 2.6}}
	s.Walls = []plan.WallPiece{
		{Outline: fixture.Quad(-0.2, -0.2, w+0.2, 0)}, {Outline: fixture.Quad(-0.2, h, w+0.2, h+0.2)},
		{Outline: fixture.Quad(-0.2, 0, 0, h)}, {Outline: fixture.Quad(w, 0, w+0.2, h)},
	}
	s.Openings, s.Furniture, s.Grip, s.Lights, s.People, s.Meters = nil, nil, nil, nil, nil, nil
	s.Title = words1(rng, 2+rng.Intn(9))
	in := Input{Setup: s, Cautions: fixture.Example().Cautions, Unchecked: fixture.Example().Unchecked}
	inside := func() r2.Vec { return r2.Vec{X: rng.Float64() * w, Y: rng.Float64() * h} }
	for i := range 1 + rng.Intn(4) {
		crowdPerson(&in, rng, i, inside())
	}
	classes := []term.Class{term.Bare, term.Lensed, term.Projected, term.Boxed, term.Linear, term.Panel, term.Lantern, term.Practical}
	for i := range lights {
		from := inside()
		if rng.Intn(3) == 0 {
			from = r2.Vec{X: -0.3 - rng.Float64()*2, Y: rng.Float64() * h}
		}
		to := s.People[rng.Intn(len(s.People))].Face.At
		l := fixture.Light(fmt.Sprint(i+1), fmt.Sprintf("l%d", i+1), r3.Vec{X: from.X, Y: from.Y, Z: 0.5 + rng.Float64()*2.5}, to,
			classes[rng.Intn(len(classes))], words1(rng, 2), words1(rng, 1+rng.Intn(2)), 0.05+rng.Float64(), 2500+rng.Float64()*4000, rng.Float64())
		l.Placing = []plan.Dimension{{From: "hall.left", Metres: from.X}, {From: "hall.bottom", Metres: from.Y}}
		if rng.Intn(3) == 0 {
			l.Note = words1(rng, 3+rng.Intn(12))
		}
		s.Lights = append(s.Lights, l)
	}
	crowdThings(&in, rng, inside)
	own := rand.New(rand.NewSource(seed))
	crowdWalks(&in, own, func() r2.Vec { return r2.Vec{X: own.Float64() * w, Y: own.Float64() * h} })
	for i := range rng.Intn(12) {
		s.Assumed = append(s.Assumed, plan.Assumption{Thing: fmt.Sprintf("lights.l%d", i+1), What: words1(rng, 1), Value: words1(rng, 2)})
	}
	for range rng.Intn(6) {
		in.Warnings = append(in.Warnings, words1(rng, 4+rng.Intn(25))+".")
	}
	in.Field = &Field{Name: "Illuminance on the floor", Grid: fixture.Glow(s)}
	if seed%3 == 0 {
		in.Field.Uncomputed = []plan.Uncomputed{fixture.Scrims, fixture.Filter}
	}
	return in
}

// crowdWalks gives half of the people marks, and lets a third of them walk.
func crowdWalks(in *Input, rng *rand.Rand, inside func() r2.Vec) {
	var cameras []string
	for i := range in.Setup.Cameras {
		cameras = append(cameras, in.Setup.Cameras[i].Name)
	}
	for i := range in.Setup.People {
		p := &in.Setup.People[i]
		for k := range rng.Intn(3) {
			p.Marks = append(p.Marks, plan.Mark{Name: fmt.Sprintf("%s.m%d", p.Name, k+1), At: inside(), Pose: term.Standing, Eyes: 1.6, Faces: 360 * rng.Float64()})
		}
		if rng.Intn(3) == 0 {
			in.Walks = append(in.Walks, fixture.Walk(p, cameras, func(int, int) float64 { return 3 * rng.NormFloat64() }, inside(), inside(), inside()))
		}
	}
}

// crowdThings puts flags, boxes and meters into a set-up.
func crowdThings(in *Input, rng *rand.Rand, inside func() r2.Vec) {
	s := in.Setup
	for i := range rng.Intn(6) {
		p := inside()
		axis := r3.Unit(r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64()})
		s.Grip = append(s.Grip, plan.Grip{Name: fmt.Sprintf("g%d", i+1), Tag: fmt.Sprintf("G%d", i+1), Kind: "flag", Size: [2]float64{0.3 + rng.Float64(), 1}, Height: 1.5,
			Frame: plan.Frame{At: r3.Vec{X: p.X, Y: p.Y, Z: 1.5}, Axis: axis, Right: r3.Cross(axis, r3.Vec{Z: 1})}})
	}
	for i := range rng.Intn(5) {
		p := inside()
		s.Furniture = append(s.Furniture, plan.Furniture{Name: fmt.Sprintf("thing-%d", i+1), Kind: "box", At: p, Size: [3]float64{0.8, 0.5, 0.8}, Z1: 0.8,
			Parts: []plan.Part{{Kind: "body", Outline: fixture.Quad(p.X-0.4, p.Y-0.25, p.X+0.4, p.Y+0.25), Z1: 0.8}}})
	}
	for i := range rng.Intn(4) {
		p := inside()
		in.Readings = append(in.Readings, meter.Reading{Name: fmt.Sprintf("meter-%d", i+1), Kind: "flat", At: r3.Vec{X: p.X, Y: p.Y, Z: 1}, Lux: fixture.Number(rng.Float64() * 900), Stop: fixture.Number(2), Over: fixture.Number(-0.4)})
	}
}

func crowdPerson(in *Input, rng *rand.Rand, i int, at r2.Vec) {
	name := fmt.Sprintf("person-%d", i+1)
	poses := term.Poses
	faces := rng.Float64() * 360
	sin, cos := math.Sincos(faces * math.Pi / 180)
	p := plan.Person{Name: name, At: at, Pose: poses[rng.Intn(len(poses))], Height: 1.7, Eyes: 1.5, Faces: faces,
		Face: plan.Frame{At: r3.Vec{X: at.X + 0.1*sin, Y: at.Y + 0.1*cos, Z: 1.5}, Axis: r3.Vec{X: sin, Y: cos}}}
	in.Setup.People = append(in.Setup.People, p)
	side := func(part string, turn, lux float64) *meter.Reading {
		s, c := math.Sincos((faces + turn) * math.Pi / 180)
		return &meter.Reading{Name: name + "." + part, Person: name, Kind: "flat", At: p.Face.At, Facing: r3.Vec{X: s, Y: c}, Lux: &lux,
			Stop: fixture.Number(math.Sqrt(lux / 20)), Over: fixture.Number(0), CCT: fixture.Number(4000)}
	}
	in.Faces = append(in.Faces, Face{Person: name, Key: side("key", -45, 100+rng.Float64()*900), Fill: side("fill", 45, 10+rng.Float64()*90), Contrast: 1 + rng.Float64()*4})
}

// words1 is a run of made-up words.
func words1(rng *rand.Rand, n int) string {
	stock := []string{"soft", "window", "600 W", "point", "lens 25", "daylight", "panel", "the", "stairs", "softbox", "1.2 m", "honeycomb", "of", "quay", "upper"}
	s := ""
	for i := range n {
		if i > 0 {
			s += " "
		}
		s += stock[rng.Intn(len(stock))]
	}
	return s
}

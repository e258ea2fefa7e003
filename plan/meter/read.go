package meter

import (
	"math"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
	"scrimshaw/plan/pending"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Set is the readings of one set-up.
type Set struct {
	Scene       string // the scene's title
	Setup       string // "" where the scene has no set-ups
	Readings    []Reading
	Faces       []Face // of people whose key side has light, where they are and at their marks
	Walks       []Walk
	Cameras     []shot.Shot  // what each sees
	Tracks      []Track      // of the cameras that move
	Pictures    []Picture    // how that lies from its grey; nil where no study looked
	Reflections []Reflection // that cameras see of equipment
	Flares      []Flare      // lamps that shine onto lenses
	Flickers    []Flicker    // of the cameras, where lamps go up and down
	Feet        bool         // lengths are printed in feet
	Lesson      *Lesson      // nil until package teach adds one
	StandIns    []StandIn    // lights that pass for something, in the order of the lights
	Cues        *Cues        // nil where the set-up has none
	Stages      []Stage      // after each of its cues; nil until a study looks
	Played      []Played     // what lights do that change by themselves
	InHand      []InHand     // what the lights that are up have in hand, in their order; nil until a study looks
}

// Stage is a set-up with its lights as a cue leaves them, and what a camera and a face get of it then.
type Stage struct {
	Setup *plan.Setup
	Set   Set // without walks, catchlights and what surrounds faces
}

// Read takes the ordered readings from a basis whose first points are the requests' receptors.
func Read(s *plan.Setup, requests []Request, b *light.Basis, levels light.Levels) Set {
	set := ReadPoints(s, requests, b, levels)
	set.Cameras = shot.Of(s)
	for i := range set.Faces {
		f := &set.Faces[i]
		key, fill := set.Named(f.Person+".key"), set.Named(f.Person+".fill")
		if p := s.Post(f.Person); p != nil {
			f.Skin, f.Clothes = toneOf(key, fill, p.Skin), toneOf(key, fill, p.Clothes)
		}
		f.Crossed = isCrossed(s, f.Person, key, fill)
		f.Views = viewsOf(s, f.Person, f.Side, key, fill)
	}
	set.Tracks = tracksOf(s, set.Faces)
	set.Flickers = flickersOf(s, set.Readings, levels)
	return set
}

// ReadPoints is Read for the readings and the two sides of faces alone, without what cameras make of them.
func ReadPoints(s *plan.Setup, requests []Request, b *light.Basis, levels light.Levels) Set {
	set := Set{Scene: s.Title, Setup: s.Name, Feet: s.Feet}
	r := reader{namer: NamerOf(s), basis: b, levels: levels, figures: pending.Of(s, levels)}
	for start := 0; start < len(requests); {
		end := start + 1
		for end < len(requests) && requests[end].Person != "" && requests[end].Person == requests[start].Person {
			end++
		}
		readings := make([]Reading, 0, end-start)
		for i := start; i < end; i++ {
			readings = append(readings, r.read(i, &requests[i]))
		}
		if person := requests[start].Person; person != "" {
			var f *Face
			if readings, f = arrangeFace(person, readings); f != nil {
				set.Faces = append(set.Faces, *f)
			}
		}
		set.Readings = append(set.Readings, readings...)
		start = end
	}
	return set
}

type reader struct {
	namer  Namer
	basis  *light.Basis
	levels light.Levels

	figures *pending.Figures
}

// read turns receptor i into a reading.
func (r *reader) read(i int, o *Request) Reading {
	total, shares := r.basis.Point(i, r.levels)
	if total.Y() < minLight {
		total = colour.RGB{}
	}
	reading := Reading{Name: o.Name, Person: o.Person, Receptor: i, Kind: o.Kind, At: o.Receptor.At, Facing: o.Receptor.Axis}
	reading.setLevel(total.Y(), o.Exposure)
	if total.Y() > 0 {
		reading.setChromaticity(colour.XY(total))
		reading.Error = FiniteOrNil(r.basis.Error(i, r.levels) / total.Y())
	}
	for t, share := range shares {
		if y := share.Y(); y >= minLight {
			reading.add(r.namer.Share(&r.basis.Terms[t], y))
		}
	}
	reading.Uncomputed = append(r.figures.At(reading.contributions(), o.positions()...), r.figures.Stops(o.Camera)...)
	return reading
}

// setLevel fills in the figures that a total stands for, lx or cd/m²; what has no meaning stays nil.
func (reading *Reading) setLevel(y float64, x plan.Exposure) {
	exposure := x.Metered()
	working := x.Stop.N
	if reading.Kind == term.SpotMeter {
		reading.Luminance = &y
		reading.Over = FiniteOrNil(exposure.SpotOver(y, working))
		return
	}
	fc := y / unit.Footcandle
	reading.Lux, reading.Footcandles = &y, &fc
	reading.Over = FiniteOrNil(exposure.Over(y, working))
	if y > 0 {
		reading.Stop = FiniteOrNil(exposure.Number(y))
	}
}

// add puts a share with what came the same way: a window may have several panes.
func (reading *Reading) add(s Share) {
	for i := range reading.Shares {
		t := &reading.Shares[i]
		if t.Light == s.Light && t.Path == s.Path && t.From == s.From && slices.Equal(t.Via, s.Via) {
			t.Lux += s.Lux
			return
		}
	}
	reading.Shares = append(reading.Shares, s)
}

// setChromaticity fills in the chromaticity and, near the locus, the colour temperature.
func (reading *Reading) setChromaticity(xy [2]float64) {
	reading.XY = &xy
	kelvin, duv := colour.CCT(xy)
	reading.Duv = &duv
	if math.Abs(duv) <= colour.MaxDuv {
		reading.CCT = &kelvin
	}
}

// Named returns the reading of that name, or nil.
func (s *Set) Named(name string) *Reading {
	for i := range s.Readings {
		if s.Readings[i].Name == name {
			return &s.Readings[i]
		}
	}
	for i := range s.Walks {
		if r := s.Walks[i].named(name); r != nil {
			return r
		}
	}
	return nil
}

// FaceOf returns how a person's face is lit, or nil where both of its sides are dark.
func (s *Set) FaceOf(person string) *Face {
	for i := range s.Faces {
		if s.Faces[i].Person == person {
			return &s.Faces[i]
		}
	}
	return nil
}

// WalkOf returns somebody's walk, or nil.
func (s *Set) WalkOf(person string) *Walk {
	for i := range s.Walks {
		if s.Walks[i].Person == person {
			return &s.Walks[i]
		}
	}
	return nil
}

// StandInOf returns how a light passes for something, or nil.
func (s *Set) StandInOf(light string) *StandIn {
	for i := range s.StandIns {
		if s.StandIns[i].Light == light {
			return &s.StandIns[i]
		}
	}
	return nil
}

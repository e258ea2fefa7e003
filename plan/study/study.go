// Package study is one set-up with its light computed: it runs the stations in order, from the
// solids to the readings and the fields, and keeps what each of them made, so that a changed
// level starts at the last of them.
package study

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/cue"
	"scrimshaw/plan/inhand"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/passing"
	"scrimshaw/plan/pending"
)

// Step is the spacing of the lattices on the floor, m, where Options do not say.
const Step = 0.05

// Options say how much is computed. The zero value computes everything but what surrounds faces.
type Options struct {
	Step         float64 // spacing of the lattices, m; 0 is the default
	Workers      int     // goroutines; 0: one a core. The results are the same bits for any number
	Quality      light.Quality
	ReadingsOnly bool               // no fields, wedges or views
	Around       bool               // what surrounds faces, too: how steady their light is, and what cameras see behind heads
	AroundHeads  bool               // of what surrounds faces that alone, and no more of what cameras see
	InHand       bool               // what lights have in hand, too: for that the catalogue is searched and cameras are looked through
	Fixed        bool               // the levels stay as they are: fields are summed over the lights, which many of them make worth while
	Planes       []Plane            // more fields; none: those that the scene asks for
	Memory       *Memory            // what set-ups that were run before left, where they have the same solids; nil for nothing
	Progress     func(done float64) // called from time to time with the share that is done, 0 to 1; may be nil
}

// Memory is what one set-up leaves for the next, where both have the same solids: their World, and the light of what did not
// move. Readings and fields are the same bits with and without. The zero value is empty; it is for set-ups that are run one
// after the other.
type Memory struct {
	light, around light.Memory
}

// ofLight is the memory of the light that readings and fields are of; nil without one.
func (m *Memory) ofLight() *light.Memory {
	if m == nil {
		return nil
	}
	return &m.light
}

// ofSurroundings is that of the light about faces and in pictures: of one set-up alone, where there is no other, for both ask
// for the same.
func (m *Memory) ofSurroundings() *light.Memory {
	if m == nil {
		return &light.Memory{}
	}
	return &m.around
}

// Study is a set-up with its light.
type Study struct {
	Setup    *plan.Setup
	World    *light.World
	Basis    *light.Basis
	Levels   light.Levels
	Requests []meter.Request
	OnWalks  []meter.Request // what is read along walks; their receptors come after those of Requests
	Readings meter.Set
	Fields   []Field // the floors, lowest first, then the faces, the first person's floor first, then the planes asked for
	Beams    []Beam
	Rims     []light.Rim // of the images that projection spots throw, to half their light
	Views    []View
	Bounces  []Bounce // of lights that are sent to a surface for what comes off it

	around   *surroundings // nil where nobody asked
	pictures *pictures     // likewise
	lenses   *lenses
}

// Bounce is the way of a light that is sent to a surface for what comes off it: where its axis lands, and on to the face of
// whom it lights.
type Bounce struct {
	Light, Off, To string  // the names of the light, the surface and the person
	At, Face       r3.Vec  // m
	On             float64 // from the surface to the face, m
}

// Run computes a set-up. It stops with the context's error when that is cancelled.
func Run(ctx context.Context, setup *plan.Setup, o Options) (*Study, error) {
	world, err := build(ctx, setup, o, o.Memory.ofLight())
	if err != nil {
		return nil, err
	}
	s := &Study{Setup: setup, World: world, Requests: meter.Requests(setup), OnWalks: meter.WalkRequests(setup)}
	targets := light.Targets{Points: meter.Receptors(slices.Concat(s.Requests, s.OnWalks))}
	if !o.ReadingsOnly {
		if len(o.Planes) == 0 {
			o.Planes = scenePlane(setup)
		}
		if s.Fields, err = fields(setup, o.step(), o.Planes); err != nil {
			return nil, err
		}
		for i := range s.Fields {
			targets.Lattices = append(targets.Lattices, s.Fields[i].Lattice)
		}
	}
	levels := light.LevelsOf(setup.Lights)
	if o.Fixed {
		targets.Fixed = levels
	}
	if s.Basis, err = world.Basis(ctx, light.Emitters(setup), targets); err != nil {
		return nil, fmt.Errorf("the light of %q: %w", setup.Title, err)
	}
	s.Basis.Forget() // lamps of a study do not move
	if o.Around || o.AroundHeads || statesRange(setup) {
		if err := s.lookAround(ctx, o); err != nil {
			return nil, err
		}
	}
	if s.lenses, err = lensesOf(ctx, setup, s.World, func() (*light.World, error) { return draft(ctx, setup, o) }); err != nil {
		return nil, err
	}
	s.Relevel(levels)
	if o.InHand {
		hand := inhand.Lit{Setup: setup, Levels: levels, Requests: s.Requests, Readings: &s.Readings}
		if s.Readings.InHand, err = hand.Of(ctx); err != nil {
			return nil, err
		}
	}
	if !o.ReadingsOnly {
		s.trace()
	}
	return s, nil
}

// lookAround reads what lies about faces, and what cameras see. It is printed to tenths of a stop, so the light is a draft.
func (s *Study) lookAround(ctx context.Context, o Options) error {
	world, err := draft(ctx, s.Setup, o)
	if err != nil {
		return err
	}
	if s.around, err = aroundFaces(ctx, s.Setup, world); err != nil {
		return err
	}
	if o.Around || statesRange(s.Setup) {
		s.pictures, err = lookThrough(ctx, s.Setup, world)
	}
	return err
}

// draft makes the world of a set-up for what is printed to tenths of a stop.
func draft(ctx context.Context, s *plan.Setup, o Options) (*light.World, error) {
	o.Quality, o.Progress = light.Draft, nil
	return build(ctx, s, o, o.Memory.ofSurroundings())
}

// build makes the world of a set-up, by what a memory has of its solids where that is not nil.
func build(ctx context.Context, s *plan.Setup, o Options, m *light.Memory) (*light.World, error) {
	return light.Build(ctx, &s.Set, light.Options{Workers: o.Workers, Quality: o.Quality, Bodies: &s.Bodies, Slender: s.Bars(), Progress: o.Progress, Memory: m})
}

func (o Options) step() float64 {
	if o.Step > 0 {
		return o.Step
	}
	return Step
}

// Relevel computes readings and fields again for other levels, gels or colours. Nothing moves, so
// it costs no more than sums. The fields of a study with fixed levels stay as they are.
func (s *Study) Relevel(d light.Levels) {
	s.Levels = d
	s.Readings = s.judged(s.Setup, d)
	s.Readings.Walks = meter.ReadWalks(s.Setup, s.OnWalks, len(s.Requests), s.Basis, d)
	nameSpots(s.Setup, s.World, s.Requests, &s.Readings)
	eyes{s.Setup, s.World.BVH(), d}.look(&s.Readings)
	s.around.read(d, &s.Readings)
	(&cue.Lit{Setup: s.Setup, Basis: s.Basis, Levels: d, Requests: s.Requests}).Read(&s.Readings)
	s.stages()
	figures := pending.Of(s.Setup, d)
	for i := range s.Fields {
		f := &s.Fields[i]
		s.Basis.Field(i, s.fieldLevels(), f.Lux)
		room, _, _ := strings.Cut(f.Name, ".")
		f.Uncomputed = append(figures.Over(room), figures.Stops("")...)
	}
}

// judged reads what a review judges at some levels: faces and meters, what cameras make of them, what lamps pass for, and what shows in
// pictures and on lenses. The setup is that of the study, with its lights at those levels.
func (s *Study) judged(setup *plan.Setup, levels light.Levels) meter.Set {
	set := meter.Read(setup, s.Requests, s.Basis, levels)
	lit := passing.Lit{Setup: setup, BVH: s.World.BVH(), Basis: s.Basis, Levels: levels, Requests: s.Requests, Readings: &set}
	set.StandIns = lit.StandIns()
	s.pictures.read(levels, &set)
	s.lenses.read(levels, &set)
	return set
}

// stages reads likewise what there is after each cue.
func (s *Study) stages() {
	for i := range s.Setup.Cues {
		settings := cue.After(s.Setup, i+1)
		setup := settings.Setup(s.Setup)
		s.Readings.Stages = append(s.Readings.Stages, meter.Stage{Setup: setup, Set: s.judged(setup, settings.Levels(s.Setup, s.Levels))})
	}
}

// Around is the basis of what is metered around faces, and which of its receptors read what; nil where nobody looked.
func (s *Study) Around() (*light.Basis, []meter.Around) {
	if s.around == nil {
		return nil, nil
	}
	return s.around.basis, s.around.looks()
}

// After is the study as it is after a cue: readings of the levels and colours that its lights have then, without fields, which stay those of
// the set-up. It is nil where there is no cue of that name. The basis is that of the study.
func (s *Study) After(name string) *Study {
	i := slices.IndexFunc(s.Setup.Cues, func(q plan.Cue) bool { return q.Name == name })
	if i < 0 {
		return nil
	}
	settings := cue.After(s.Setup, i+1)
	after := *s
	after.Setup, after.Fields = settings.Setup(s.Setup), nil
	after.Relevel(settings.Levels(s.Setup, s.Levels))
	return &after
}

// fieldLevels are the levels to ask the basis for fields at.
func (s *Study) fieldLevels() light.Levels {
	if !s.fixed() {
		return s.Levels
	}
	one := colour.RGB{1, 1, 1}
	return light.Levels{light.FromPoints: one, light.FromFaces: one, light.FromSurfaces: one}
}

func (s *Study) fixed() bool { return s.Basis.Targets().Fixed != nil }

// Size is how many values of light the study holds, four bytes each.
func (s *Study) Size() int {
	n := s.Basis.PointValues()
	if s.around != nil {
		n += s.around.basis.PointValues()
	}
	if s.pictures != nil {
		n += s.pictures.basis.PointValues()
	}
	for i := range s.Fields {
		n += len(s.Fields[i].Lux)
	}
	for _, all := range [...][][][]float32{s.Basis.Fields, s.Basis.Reflected} {
		for _, fields := range all {
			for _, values := range fields {
				n += len(values)
			}
		}
	}
	return n
}

// Floor returns the field of the floor that covers the most points, or nil.
func (s *Study) Floor() *Field { return s.largest(OnFloor) }

// Face returns the field at face height over the floor of the first person, or nil where there is nobody.
func (s *Study) Face() *Field {
	for i := range s.Fields {
		if f := &s.Fields[i]; f.Kind == AtFace {
			return f
		}
	}
	return nil
}

// Level returns the field on the level plane that covers the most points, or nil where none was asked for.
func (s *Study) Level() *Field { return s.largest(OnPlane) }

func (s *Study) largest(kind Kind) *Field {
	var best *Field
	most := -1
	for i := range s.Fields {
		f := &s.Fields[i]
		if f.Kind != kind {
			continue
		}
		if n := f.points(); n > most {
			best, most = f, n
		}
	}
	return best
}

package study

import (
	"cmp"
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/pending"
	"scrimshaw/plan/solid"
)

// placesAcross is at how many places across a frame a picture is looked at; as far apart up it. What is smaller than the way from
// one to the next may be missed.
const placesAcross = 32

// picture is what a camera sees, place by place, left to right and from the top down.
type picture struct {
	camera *plan.Camera
	looks  []look
	lamps  []frame.Sight // that are meant to be in it
}

// look is what is seen at one place of a frame.
type look struct {
	x, y    float64 // from -1 at the left and lower edges to 1
	line    light.Sightline
	name    string // of what the light comes from; "" of nothing
	through string // the opening that it is seen through
	person  bool
}

// statesRange says whether a camera of a set-up says what it holds, so that something may clip or sink.
func statesRange(s *plan.Setup) bool {
	return slices.ContainsFunc(s.Cameras, func(c plan.Camera) bool { return c.Exposure.Range.Known() })
}

// pictures are those of all cameras of a set-up. They have a basis of their own, for the same reason as what surrounds faces.
type pictures struct {
	setup *plan.Setup
	all   []picture
	basis *light.Basis
}

// lookThrough lights the pictures of a set-up.
func lookThrough(ctx context.Context, s *plan.Setup, world *light.World) (*pictures, error) {
	p := pictures{setup: s, all: picturesOf(s, world)}
	var points []light.Receptor
	for i := range p.all {
		points = append(points, p.all[i].receptors()...)
	}
	var err error
	if p.basis, err = ownBasis(ctx, s, world, points, "the pictures"); err != nil {
		return nil, err
	}
	return &p, nil
}

// read reads the pictures into a set of readings.
func (p *pictures) read(levels light.Levels, into *meter.Set) {
	if p == nil {
		return
	}
	next := 0
	point := func() colour.RGB {
		total, _ := p.basis.Point(next, levels)
		next++
		return total
	}
	for i := range p.all {
		into.Pictures = append(into.Pictures, p.all[i].read(point, p.setup, levels, into))
	}
}

// picturesOf are the pictures of all cameras of a set-up.
func picturesOf(s *plan.Setup, world *light.World) (all []picture) {
	shown := frame.Lamps(s)
	seen := beholder{setup: s, skins: sheetsOf(s)}
	for i := range s.Cameras {
		c := &s.Cameras[i]
		p := picture{camera: c}
		wide, high := lens.HalfTangent(c.Gate[0]*max(c.Squeeze, 1), c.Lens), lens.HalfTangent(c.Gate[1], c.Lens)
		rows := min(max(1, int(math.Round(placesAcross*high/wide))), placesAcross)
		for row := range rows {
			for column := range placesAcross {
				x, y := 2*(float64(column)+0.5)/placesAcross-1, 1-2*(float64(row)+0.5)/float64(rows)
				way := r3.Add(c.Frame.Axis, r3.Add(r3.Scale(x*wide, c.Frame.Right), r3.Scale(y*high, c.Frame.Up())))
				p.looks = append(p.looks, seen.look(world, x, y, light.Receptor{At: c.Frame.At, Axis: r3.Unit(way), Response: light.Radiance}))
			}
		}
		p.lamps = slices.DeleteFunc(slices.Clone(shown), func(l frame.Sight) bool { return l.Camera != c.Name })
		all = append(all, p)
	}
	return all
}

// beholder names what is seen in a set-up.
type beholder struct {
	setup *plan.Setup
	skins map[solid.ID]*solid.Skin // of sheets
}

// look looks along the axis of a receptor.
func (s *beholder) look(world *light.World, x, y float64, r light.Receptor) look {
	one := look{x: x, y: y, line: light.Sight(world, &r)}
	one.name = s.setup.Names[one.line.Last]
	if !one.line.Ends {
		one.name = ""
	}
	one.person = slices.ContainsFunc(s.setup.People, func(p plan.Person) bool { return one.line.Ends && slices.Contains(p.Own, one.line.Last) })
	for _, id := range one.line.Met {
		skin := s.skins[id]
		if skin == nil {
			continue
		}
		cloth := skin.Scatters() && (skin.Diffuse.Y() >= skin.Direct.Y() || !one.line.Ends)
		if cloth || !skin.Clear() { // a cloth that one does not see through, or a mirror
			one.name, one.person = s.setup.Names[id], false
			break
		}
	}
	if o := s.firstOpening(r.At, r.Axis, one.line.At, one.line.Ends); o != nil {
		one.through = o.Name
	}
	return one
}

// firstOpening is the first opening whose hole a ray goes through: up to where it ends, where it does.
func (s *beholder) firstOpening(from, way, end r3.Vec, ends bool) (first *plan.Opening) {
	least := math.Inf(1)
	if ends {
		least = r3.Norm(r3.Sub(end, from))
	}
	for i := range s.setup.Openings {
		o := &s.setup.Openings[i]
		speed := r2.Dot(plan.InPlan(way), o.Outward)
		if speed == 0 {
			continue
		}
		far := o.Depth // of the face of the wall that the ray leaves by: what ends within the hole is the wall's, or closes it
		if speed < 0 {
			far = 0
		}
		t := (r2.Dot(r2.Sub(o.Middle(), plan.InPlan(from)), o.Outward) + far) / speed
		at := r3.Add(from, r3.Scale(t, way))
		across := math.Abs(r2.Dot(r2.Sub(plan.InPlan(at), o.Middle()), o.Rightward()))
		if t > 0 && t < least && across < o.Width()/2 && at.Z > o.Sill && at.Z < o.Head {
			least, first = t, o
		}
	}
	return first
}

// receptors are those of all places of a picture.
func (p *picture) receptors() (all []light.Receptor) {
	for i := range p.looks {
		for _, part := range p.looks[i].line.Parts {
			all = append(all, part.Receptor)
		}
	}
	return all
}

// read reads a picture; point is the light of the next receptor.
func (p *picture) read(point func() colour.RGB, s *plan.Setup, levels light.Levels, set *meter.Set) meter.Picture {
	exposure, working := p.camera.Exposure.Metered(), p.camera.Exposure.Stop.N
	out := meter.Picture{Camera: p.camera.Name, Range: p.camera.Exposure.Range, Places: len(p.looks)}
	var all tally
	for i := range p.looks {
		l := &p.looks[i]
		luminance := 0.0
		for _, part := range l.line.Parts {
			luminance += point().Times(part.Gain).Y()
		}
		if !l.person {
			all.add(l, luminance)
		}
	}
	for i := range all {
		out.Surfaces = append(out.Surfaces, all[i].surface(func(luminance float64) *float64 {
			return meter.FiniteOrNil(exposure.SpotOver(luminance, working))
		}, out.Range, len(p.looks)))
	}
	slices.SortStableFunc(out.Surfaces, func(a, b meter.Surface) int { return cmp.Compare(b.Share, a.Share) })
	for i := range p.lamps {
		out.Lamps = append(out.Lamps, p.lampSeen(&p.lamps[i], s, levels))
	}
	out.Uncomputed = p.uncomputed(s, levels)
	out.Judge(s, set)
	return out
}

// lampSeen is how bright a lamp looks at some levels.
func (p *picture) lampSeen(shown *frame.Sight, s *plan.Setup, levels light.Levels) meter.LampSeen {
	l := s.LightNamed(shown.Name)
	seen := meter.LampSeen{Light: l.Name, Numbered: l.Numbered(), Where: shown.ShownAt, Share: shown.Shown}
	if luminance := frame.Luminance(l, levels[l.Name].Y(), p.camera.Frame.At); luminance > 0 {
		seen.Luminance = &luminance
		seen.Over = meter.FiniteOrNil(p.camera.Exposure.Metered().SpotOver(luminance, p.camera.Exposure.Stop.N))
	}
	return seen
}

// uncomputed are the keys that could change a picture: of lights that are up, and of where it looks.
func (p *picture) uncomputed(s *plan.Setup, levels light.Levels) []plan.Uncomputed {
	figures, given := pending.Of(s, levels), map[string]float64{}
	for name, level := range levels {
		given[name] = level.Y()
	}
	places := []r3.Vec{p.camera.Frame.At}
	for i := range p.looks {
		places = append(places, p.looks[i].line.At)
	}
	if len(s.Uncomputed) == 0 {
		return nil
	}
	return append(figures.At(given, places...), figures.Stops(p.camera.Name)...)
}

// tally gathers what is seen by what it is.
type tally []tallied

// tallied are the places of a picture that show one thing.
type tallied struct {
	name, through string
	looks         []*look
	luminance     []float64 // cd/m²
}

func (t *tally) add(l *look, luminance float64) {
	for i := range *t {
		if one := &(*t)[i]; one.name == l.name && one.through == l.through {
			one.looks, one.luminance = append(one.looks, l), append(one.luminance, luminance)
			return
		}
	}
	*t = append(*t, tallied{l.name, l.through, []*look{l}, []float64{luminance}})
}

// surface sums up one thing; stops is how far a luminance lies from grey.
func (t *tallied) surface(stops func(float64) *float64, holds lens.Range, places int) meter.Surface {
	s := meter.Surface{Name: t.name, Through: t.through, Share: float64(len(t.looks)) / float64(places)}
	sum, most, least := 0.0, 0, 0
	for i, luminance := range t.luminance {
		sum += luminance
		if luminance > t.luminance[most] {
			most = i
		}
		if luminance < t.luminance[least] {
			least = i
		}
		switch over := stops(luminance); {
		case t.name == "": // there is nothing that could sink
		case over == nil && holds.Under > 0 || over != nil && holds.Sinks(*over):
			s.Sunk += 1 / float64(places)
		case over != nil && holds.Clips(*over):
			s.Clipped += 1 / float64(places)
		}
	}
	s.Mean, s.Most, s.Least = stops(sum/float64(len(t.looks))), stops(t.luminance[most]), stops(t.luminance[least])
	s.MostAt, s.LeastAt = frame.PlaceOf(t.looks[most].x, t.looks[most].y), frame.PlaceOf(t.looks[least].x, t.looks[least].y)
	return s
}

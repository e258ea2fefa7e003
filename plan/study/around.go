package study

import (
	"context"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/solid"
)

// mostAround is how many people are looked around: who stands in a crowd is not lit by themselves.
const mostAround = 12

// besideHead is how far from the axis of a head a camera looks past it, m: a hand's breadth past the ear.
const besideHead = 0.16

// surroundings are what is metered around faces. For the light near a face the person's own body is not there, as for the face. It
// has a world and a basis of its own, so that readings are the same bits whether or not it is metered, and at draft, which is
// closer than the tenths of a stop that it is printed to.
type surroundings struct {
	faces []surrounding
	basis *light.Basis
}

// surrounding is what is metered around one face.
type surrounding struct {
	person *plan.Person
	near   []light.Receptor // domes as the face's own, a little off it, meter.NearPlaces of them; none without a camera
	behind []past
}

// past is a look of a camera past a head.
type past struct {
	camera  *plan.Camera
	picture meter.Side
	spot    light.Receptor
	surface string // "" where nothing stands
}

// aroundFaces lights what is metered around the faces of a set-up.
func aroundFaces(ctx context.Context, s *plan.Setup, world *light.World) (*surroundings, error) {
	all := surroundings{faces: facesOf(s, world.BVH())}
	var err error
	if all.basis, err = ownBasis(ctx, s, world, all.receptors(), "the light about faces"); err != nil {
		return nil, err
	}
	return &all, nil
}

// ownBasis lights points in a basis of their own, so that readings are the same bits whether or not they are asked for. what names them in an error.
func ownBasis(ctx context.Context, s *plan.Setup, world *light.World, points []light.Receptor, what string) (*light.Basis, error) {
	basis, err := world.Basis(ctx, light.Emitters(s), light.Targets{Points: points})
	if err != nil {
		return nil, fmt.Errorf("%s of %q: %w", what, s.Title, err)
	}
	basis.Forget()
	return basis, nil
}

// facesOf says what to meter around the faces of a set-up.
func facesOf(s *plan.Setup, bvh *solid.BVH) (all []surrounding) {
	look, posts := eyes{setup: s, bvh: bvh}, s.CameraPosts()
	for i := range s.People[:min(len(s.People), mostAround)] {
		p := &s.People[i]
		one := surrounding{person: p}
		for k := range posts {
			c := &posts[k]
			way := r3.Sub(p.Face.At, c.Frame.At)
			if r3.Dot(way, c.Frame.Axis) <= 0 || !look.sees(c.Frame.At, p) {
				continue
			}
			if one.near == nil {
				one.near = nearFace(p, r3.Scale(-1, r3.Unit(way)))
			}
			one.behind = append(one.behind, pastHead(s, bvh, p, c, meter.PictureLeft), pastHead(s, bvh, p, c, meter.PictureRight))
		}
		all = append(all, one)
	}
	return all
}

// nearFace are domes at a face and at the ends of two ways across it, from ear to ear and along the nose, turned to the camera.
func nearFace(p *plan.Person, toCamera r3.Vec) (all []light.Receptor) {
	for _, off := range [...]r3.Vec{{}, p.Face.Right, r3.Scale(-1, p.Face.Right), p.Face.Axis, r3.Scale(-1, p.Face.Axis)} {
		at := r3.Add(p.Face.At, r3.Scale(meter.SteadyWithin/2, off))
		all = append(all, light.Receptor{At: at, Axis: toCamera, Response: light.Dome, Skip: p.Own})
	}
	return all
}

// pastHead is the look of a camera past one side of a head.
func pastHead(s *plan.Setup, bvh *solid.BVH, p *plan.Person, c *plan.Camera, picture meter.Side) past {
	aside := besideHead
	if picture == meter.PictureLeft {
		aside = -aside
	}
	head := r3.Vec{X: p.At.X, Y: p.At.Y, Z: p.Eyes}
	axis := r3.Unit(r3.Sub(r3.Add(head, r3.Scale(aside, c.Frame.Right)), c.Frame.At))
	look := past{camera: c, picture: picture, spot: light.Receptor{At: c.Frame.At, Axis: axis, Response: light.Radiance}}
	if hit, met := bvh.FirstOpaque(c.Frame.At, axis, nil); met {
		look.surface = s.Names[hit.ID]
	}
	return look
}

// receptors are those of all surroundings, one after the other.
func (all *surroundings) receptors() (out []light.Receptor) {
	for i := range all.faces {
		out = append(out, all.faces[i].near...)
		for k := range all.faces[i].behind {
			out = append(out, all.faces[i].behind[k].spot)
		}
	}
	return out
}

// looks say which receptors read what.
func (all *surroundings) looks() (out []meter.Around) {
	next := 0
	for i := range all.faces {
		f := &all.faces[i]
		var one meter.Around
		for k := range f.near {
			one.Near[k] = next + k
		}
		next += len(f.near)
		for k := 0; k < len(f.behind); k += 2 {
			one.Person, one.Camera, one.Left, one.Right = f.person.Name, f.behind[k].camera.Name, next, next+1
			out = append(out, one)
			next += 2
		}
	}
	return out
}

// read reads the surroundings into the faces.
func (all *surroundings) read(levels light.Levels, into *meter.Set) {
	if all == nil {
		return
	}
	next := 0
	take := func() float64 {
		total, _ := all.basis.Point(next, levels)
		next++
		return total.Y()
	}
	for i := range all.faces {
		all.faces[i].read(take, into)
	}
}

// read reads one face; take is the light of the next receptor.
func (one *surrounding) read(take func() float64, into *meter.Set) {
	var near []float64
	for range one.near {
		near = append(near, take())
	}
	f := into.FaceOf(one.person.Name)
	if f != nil {
		f.Steadiness = meter.SteadinessOf(near)
	}
	for k := range one.behind {
		luminance := take()
		if f != nil {
			one.behind[k].tell(into, f, luminance)
		}
	}
}

// tell adds what a camera sees behind a head to its view of the face.
func (b *past) tell(set *meter.Set, f *meter.Face, luminance float64) {
	for i := range f.Views {
		v := &f.Views[i]
		if v.Camera != b.camera.Name {
			continue
		}
		exposure := b.camera.Exposure.Metered()
		told := meter.Behind{Picture: b.picture, Surface: b.surface, Luminance: luminance}
		if luminance > 0 {
			told.Over = meter.FiniteOrNil(exposure.SpotOver(luminance, b.camera.Exposure.Stop.N))
			if cheek := cheekOf(set, f, v, b.picture); cheek != nil {
				told.Cheek = meter.FiniteOrNil(lens.Stops(luminance * math.Pi / (lens.Grey * *cheek)))
			}
		}
		v.Behind = append(v.Behind, told)
	}
}

// cheekOf is the light on the cheek of a face that a camera sees on one side, lx; nil where it sees the head in profile.
func cheekOf(set *meter.Set, f *meter.Face, v *meter.View, picture meter.Side) *float64 {
	if v.Key != meter.PictureLeft && v.Key != meter.PictureRight {
		return nil
	}
	side := ".fill"
	if v.Key == picture {
		side = ".key"
	}
	if r := set.Named(f.Person + side); r != nil {
		return r.Lux
	}
	return nil
}

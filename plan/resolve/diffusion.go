package resolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
)

// Where diffusion hangs before a head: on the face of a soft one, and before a lens on its doors (common practice).
const (
	beforeFace = 0.02 // m
	beforeLens = 0.15 // m
	pastFace   = 70   // degrees from the axis: what leaves a face at more misses the cloth on it
)

// clipDiffusion hangs cloth before a head, so large that the beam goes through it: several layers lie on each other, and
// count as one.
func (r *lightPass) clipDiffusion(written *scene.Light, l *plan.Light) {
	if len(written.Diffusion) == 0 {
		return
	}
	if l.Head.AllRound() {
		r.notComputed(scene.Wrapped, "lights."+written.Name, written.Diffusion[0].Span)
		return
	}
	var layers []kit.Cloth
	for _, ref := range written.Diffusion {
		if c := r.kit.ClothOf(ref.Name); c != nil { // else the loader has said so
			layers, l.Diffusion = append(layers, *c), append(l.Diffusion, c.Name)
		}
	}
	if len(layers) == 0 {
		return
	}
	c := kit.Layers(layers)
	out, width, height := clothBefore(l)
	inner := clothSkin(&c)
	outer := inner
	slices.Reverse(layers)
	outer.Reflect = grey(kit.Layers(layers).Reflect)
	at := r3.Add(l.Frame.At, r3.Scale(out, l.Frame.Axis))
	right, up := r3.Scale(width/2, l.Frame.Right), r3.Scale(height/2, l.Frame.Up())
	r.sheet(l.Name+"."+layers[0].Name, []r3.Vec{
		r3.Sub(r3.Sub(at, right), up), r3.Sub(r3.Add(at, right), up), r3.Add(r3.Add(at, right), up), r3.Add(r3.Sub(at, right), up),
	}, inner, outer)
}

// clothBefore is how far before a head its diffusion hangs, and its width and height, m.
func clothBefore(l *plan.Light) (out, width, height float64) {
	o := l.Head.Source.Opening
	out, angle := beforeFace, float64(pastFace)
	if o.Form == photometry.Point {
		out = beforeLens
		widest, along := photometry.BeamAngle(l.Head.Source.Distribution)
		angle = min(angle, max(widest, along)) // half as much again past each side of the field
	}
	sin, cos := plane.Sincos(angle)
	past := 2 * out * sin / cos
	return out, math.Max(o.Width, l.Head.Aperture) + past, math.Max(o.Height, min(o.Width, l.Head.Aperture)) + past
}

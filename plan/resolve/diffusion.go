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
	aroundLamp = 0.10 // m, from a lamp that shines all round, as a box about it
	pastFace   = 70   // degrees from the axis: what leaves a face at more misses the cloth on it
)

// clipDiffusion hangs cloth before a head, so large that the beam goes through it, or round one that shines all round: several
// layers lie on each other, and count as one.
func (r *lightPass) clipDiffusion(written *scene.Light, l *plan.Light) {
	var layers []kit.Cloth
	for _, ref := range written.Diffusion {
		if c := r.kit.ClothOf(ref.Name); c != nil { // else the loader has said so
			layers, l.Diffusion = append(layers, *c), append(l.Diffusion, c.Name)
		}
	}
	if len(layers) == 0 || l.Head.Source.Distribution == nil { // a head that is not known has no beam, and the loader has said so
		return
	}
	c := kit.Layers(layers)
	name := l.Name + "." + layers[0].Name
	inner := clothSkin(&c)
	outer := inner
	slices.Reverse(layers)
	outer.Reflect = grey(kit.Layers(layers).Reflect)
	for _, corners := range clothAbout(l) {
		r.sheet(name, corners, inner, outer)
	}
}

// clothAbout are the corners of the cloth on a head, each piece with its front to the lamp.
func clothAbout(l *plan.Light) [][]r3.Vec {
	right, up, axis := l.Frame.Right, l.Frame.Up(), l.Frame.Axis
	o := l.Head.Source.Opening
	var half [3]float64 // of a box of cloth, along right, up and axis
	switch {
	case o.Form == photometry.Lampshade:
		half = [3]float64{o.Width / 2, o.Width / 2, o.Height / 2}
	case o.Form == photometry.Tube:
		half = [3]float64{o.Width / 2, o.Height / 2, o.Height / 2}
	case l.Head.AllRound():
		half = [3]float64{o.Width / 2, o.Width / 2, o.Width / 2}
	default:
		out, width, height := clothBefore(l)
		return [][]r3.Vec{piece(r3.Add(l.Frame.At, r3.Scale(out, axis)), r3.Scale(width/2, right), r3.Scale(height/2, up))}
	}
	across, over, ahead := r3.Scale(half[0]+aroundLamp, right), r3.Scale(half[1]+aroundLamp, up), r3.Scale(half[2]+aroundLamp, axis)
	var all [][]r3.Vec
	for _, side := range [][3]r3.Vec{{ahead, across, over}, {across, over, ahead}, {over, ahead, across}} {
		all = append(all, piece(r3.Add(l.Frame.At, side[0]), side[1], side[2]),
			piece(r3.Sub(l.Frame.At, side[0]), side[2], side[1]))
	}
	return all
}

// piece is a piece of cloth about a place by half its sides: seen with the first to the right and the second up, one looks at its
// front.
func piece(at, right, up r3.Vec) []r3.Vec {
	low, high := r3.Sub(at, up), r3.Add(at, up)
	return []r3.Vec{r3.Sub(low, right), r3.Add(low, right), r3.Add(high, right), r3.Sub(high, right)}
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

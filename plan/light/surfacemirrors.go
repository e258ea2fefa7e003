package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/solid"
)

// mirroredLamp is a lamp as the surfaces of the set see it, straight and by mirrors.
type mirroredLamp struct {
	straight *surfaceLamp
	images   []surfaceImage
	boards   []surfaceBoard
	sights   [][]radiosity.Visibility // by worker: of the patch it looks at, straight and by each mirror
}

// surfaceImage is a lamp as a mirror shows it to surfaces.
type surfaceImage struct {
	*mirror
	lamp *surfaceLamp
}

// surfaceLampOf is a lamp as surfaces see it.
func (w *World) surfaceLampOf(l *lamp) radiosity.Lamp {
	straight := w.newSurfaceLamp(l)
	if len(l.images) == 0 && len(l.boards) == 0 {
		return straight
	}
	b := &mirroredLamp{straight: straight, sights: make([][]radiosity.Visibility, parallel.Workers(w.workers, math.MaxInt))}
	for i := range l.images {
		m := &l.images[i]
		b.images = append(b.images, surfaceImage{m.mirror, m.w.newSurfaceLamp(m.l)})
	}
	for i := range l.boards {
		b.boards = append(b.boards, surfaceBoard{&l.boards[i], straight})
	}
	for i := range b.sights {
		b.sights[i] = make([]radiosity.Visibility, 1+len(b.images)+len(b.boards))
	}
	return b
}

// SetPatch implements radiosity.Lamp.
func (b *mirroredLamp) SetPatch(worker int, corners []r3.Vec, normal r3.Vec) radiosity.Visibility {
	sights := b.sights[worker]
	sights[0] = b.straight.SetPatch(worker, corners, normal)
	most := sights[0]
	for i := range b.images {
		sights[i+1] = b.images[i].setPatch(worker, corners, normal)
		most = max(most, sights[i+1])
	}
	for i := range b.boards {
		n := 1 + len(b.images) + i
		sights[n] = b.boards[i].setPatch(worker, corners, normal)
		most = max(most, sights[n])
	}
	return most
}

// setPatch makes ready for the image of what of a patch lies before the mirror.
func (m *surfaceImage) setPatch(worker int, corners []r3.Vec, normal r3.Vec) radiosity.Visibility {
	before := m.Before(corners)
	if before == nil {
		return radiosity.Hidden
	}
	return m.lamp.SetPatch(worker, m.Images(before), m.Turned(normal))
}

// Flux implements radiosity.Lamp.
func (b *mirroredLamp) Flux(worker int, figure []r3.Vec, closely bool) (sum colour.RGB) {
	sights := b.sights[worker]
	if sights[0] != radiosity.Hidden {
		sum = b.straight.Flux(worker, figure, closely)
	}
	for i := range b.images {
		m := &b.images[i]
		if sights[i+1] == radiosity.Hidden {
			continue
		}
		if before := m.Before(figure); before != nil {
			sum = sum.Add(m.Factor.Times(m.lamp.Flux(worker, m.Images(before), closely)))
		}
	}
	for i := range b.boards {
		if sights[1+len(b.images)+i] != radiosity.Hidden {
			sum = sum.Add(b.boards[i].flux(worker, figure, closely))
		}
	}
	return sum
}

// Light implements radiosity.Lamp.
func (b *mirroredLamp) Light(worker int, at, normal r3.Vec) colour.RGB {
	sum := b.straight.Light(worker, at, normal)
	for i := range b.images {
		if m := &b.images[i]; m.shows(at) {
			sum = sum.Add(m.Factor.Times(m.lamp.Light(worker, m.Image(at), m.Turned(normal))))
		}
	}
	for i := range b.boards {
		sum = sum.Add(b.boards[i].light(worker, &Receptor{At: at, Axis: normal}))
	}
	return sum
}

// EmitRays implements radiosity.Lamp. What meets a mirror lands nowhere.
func (b *mirroredLamp) EmitRays(land func(h solid.Hit, at r3.Vec, flux colour.RGB) bool) (all bool) {
	return b.straight.EmitRays(land)
}

package carto

import "gonum.org/v1/gonum/spatial/r2"

// Options say how true and how calm lines are drawn. Lengths marked mm are on paper and count
// only where Scale is given; the zero value draws the bare contours of the lattice.
type Options struct {
	Measure Measure

	Scale     float64 // mm of paper for one unit of the lattice: 20 for metres at 1:50; 0: no paper
	Smoothing float64 // mm: smoothing moves no point of a line further than this
	Tolerance float64 // mm: dropping vertices moves no line further than this
	Speck     float64 // mm: rings less than this across, thin ones, and clipped corners shorter, are left out

	// Probe reads the field anywhere, in the lattice's units. Where two neighbours differ by more
	// than Jump stops a hard shadow edge is looked for with it, to within Edge units of the lattice;
	// 0 takes an eighth of a stop, which contours of one stop show as a step, and a fortieth of the lattice's step (1.25 mm at 5 cm). A shadow narrower
	// than a step may be passed by.
	Probe      func(r2.Vec) float64
	Jump, Edge float64
}

// Paper returns the options of a printed map at a scale in mm of paper for one unit of the
// lattice: smoothing within 0.15 mm and dropping of vertices within 0.015 mm, which a line 0.18 mm
// wide hides, and no speck under 2 mm.
func Paper(scale float64) Options {
	return Options{Scale: scale, Smoothing: 0.15, Tolerance: 0.015, Speck: 2}
}

// withDefaults fills in what zero stands for, and drops paper lengths where there is no paper.
func (o Options) withDefaults(step float64) Options {
	if o.Jump <= 0 {
		o.Jump = 0.125
	}
	if o.Edge <= 0 {
		o.Edge = step / 40
	}
	if o.Scale <= 0 {
		o.Scale, o.Smoothing, o.Tolerance, o.Speck = 1, 0, 0, 0
	}
	return o
}

// setting is an option of some kind of drawing, and what it is where it is left out or below 0.
type setting struct {
	option *float64
	usual  float64
}

// fillIn sets what was left out.
func fillIn(all ...setting) {
	for _, s := range all {
		if *s.option <= 0 {
			*s.option = s.usual
		}
	}
}

package study_test

import (
	"testing"
	"time"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// receptorsOf are the orders as the tracer knows them.
func receptorsOf(orders []meter.Order) []truth.Receptor {
	all := make([]truth.Receptor, len(orders))
	for i := range orders {
		r := &orders[i].Receptor
		all[i] = truth.Receptor{At: r.At, Axis: r.Axis, Skip: r.Skip}
		switch r.Weight {
		case light.Dome:
			all[i].Weight = truth.Dome
		case light.Radiance:
			all[i].Weight = truth.Spot
		}
	}
	return all
}

// parts are the direct and the reflected light of receptor i of a study.
func parts(s *study.Study, i int) (direct, reflected colour.RGB) {
	_, shares := s.Basis.Point(i, s.Drive)
	for k, share := range shares {
		if s.Basis.Terms[k].Path == light.Reflected {
			reflected = reflected.Add(share)
		} else {
			direct = direct.Add(share)
		}
	}
	return direct, reflected
}

func compareWithTruth(t *testing.T, s *plan.Setup) {
	orders := meter.Orders(s)
	start := time.Now()
	values := truth.Trace(s, receptorsOf(orders), truth.Options{})
	t.Logf("traced in %v", time.Since(start))
	lit := run(t, s, study.Options{ReadingsOnly: true})
	for i := range orders {
		v := &values[i]
		d, r := parts(lit, i)
		t.Logf("%-14s direct %9.4f truth %9.4f ± %.4f   reflected %9.4f truth %9.4f ± %.4f  (%d)", orders[i].Name,
			d.Y(), v.Direct.Y, v.Direct.YSE, r.Y(), v.Reflected.Y, v.Reflected.YSE, v.Paths)
	}
}

func TestKnownTruths(t *testing.T) {
	compareWithTruth(t, resolve(t, `scrimshaw: 1
rooms: {k: {size: [4, 3.4], height: 2.5}}
openings: {w: {window: k.left, width: 0.8}}
lights: {fr: {output: {lumens: 20000, face: [2.4, 2.4]}, at: [-1.35, 1.7], height: 1.5, aim: 90}}
meters: {fill: {flat: [2.4, 1.7, 1.5], facing: 90}, side: {flat: [1.4, 0.6, 1.4], facing: 180}}
`))
	compareWithTruth(t, resolve(t, `scrimshaw: 1
furniture: {bx: {box: [1, 1, .75], at: [0, 0], material: white}}
lights: {top: {output: {lumens: 8000, face: [1.5, 1.5]}, at: [0, -.5], height: 2.2, aim: down}}
meters: {side: {flat: [0, -.9, .5], facing: 0}}
`))
}

package study_test

import (
	"fmt"
	"math"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
)

// Tinted glass leaves half of what clear glass does (the catalogue), of all light that comes by one window: straight or
// returned, whatever part of the lamp is seen and whatever hides the rest of it, where both pass as much from everywhere: from
// aside tinted glass takes more than clear.
func TestTintedGlassHalvesAll(t *testing.T) {
	const room = `
rooms: {den: {size: [4, 3.4], height: 2.6, walls: plaster}}
openings: {w: {window: den.left, width: 1.2, sill: 0.3, glass: %s}}
%s`
	for name, rest := range map[string]string{
		"a table that cuts the lamp's light": `
lights: {l: {output: {lumens: 20000, face: [2, 2]}, at: {opening: w, out: 1}, height: 0.7, aim: 90}}
furniture: {f: {box: [1.4, 1.4, 0.95], at: [1.2, 1.7]}}
meters: {top: {flat: [1.3, 1.7, 0.96], facing: up}, end: {flat: [1.95, 1.7, 0.5], facing: 90}, dome: {dome: [1.3, 1.7, 1], facing: up}}
`,
		"a person whose side cuts it": `
lights: {l: {output: {lumens: 18540, face: [0.63, 0.67]}, at: {opening: w, out: 0.84, along: -0.25}, height: 1.48, aim: [0.47, 1.39, 1.2]}}
people: {ada: {at: [0.97, 1.62], faces: 170, pose: seated}}
meters: {floor: {flat: [0.48, 2.23, 0.01], facing: up}, side: {flat: [0.48, 2.23, 0.67], facing: 86}}
`,
		"a point": `
lights: {l: {output: {lumens: 18540, beam: 40, field: 60}, at: {opening: w, out: 1.5, along: 0.4}, height: 1.9, aim: [2, 1.5, 0.9]}}
furniture: {f: {table: [1.2, 0.9, 0.7], at: [1.9, 1.6]}}
meters: {under: {flat: [1.9, 1.6, 0.1], facing: up}, wall: {flat: [3.9, 1.6, 1], facing: 270}}
`,
	} {
		for q, most := range map[light.Quality]float64{light.Draft: 0.01, light.Normal: 0.002} { // their panes return a little, and not alike
			t.Run(fmt.Sprint(name, " ", q), func(t *testing.T) {
				clear := run(t, withPlainGlass(t, fmt.Sprintf(room, "glass", rest)), study.Options{ReadingsOnly: true, Quality: q})
				tinted := run(t, withPlainGlass(t, fmt.Sprintf(room, "glass-tinted", rest)), study.Options{ReadingsOnly: true, Quality: q})
				for i, r := range clear.Readings.Readings {
					other := tinted.Readings.Readings[i]
					if share := *other.Lux / *r.Lux; !(math.Abs(share-0.5) <= most) {
						t.Errorf("%s: %.4g lx behind tinted glass is %.4f of %.4g lx behind clear glass, want half", r.Name, *other.Lux, share, *r.Lux)
					}
				}
			})
		}
	}
}

// withPlainGlass is a set-up whose glass passes as much from everywhere.
func withPlainGlass(t *testing.T, text string) *plan.Setup {
	s := laidOut(t, "scrimshaw: 1\n"+text)
	for i := range s.Set.Sheets {
		s.Set.Sheets[i].Front.Glass, s.Set.Sheets[i].Back.Glass = nil, nil
	}
	return s
}

package resolve

import "testing"

// A light and a piece of grip stand on the stand that the scene names, and a named piece has the size of the catalogue.
func TestNamedStandsAndGrip(t *testing.T) {
	s := resolved(t, `people: {ruth: {at: [0, 0]}}
lights:
  a: {unit: led-point-300-daylight, at: [2, 0], height: 2, stand: c-stand}
  b: {unit: led-point-300-daylight, at: [2, 2], height: 2}
  c: {unit: fresnel-tungsten-650, at: [2, 4], height: 2, focus: spot, modifier: snoot}
grip:
  f: {flag: floppy-120x120, at: [1, 2], stand: low-c-stand}
  g: {card: [1, 0.5], at: [1, 3]}
`)
	for i, want := range []struct {
		stand  string
		chosen bool
		foot   float64
	}{{"c-stand", true, 0.95}, {"light-stand", false, 1.0}, {"light-stand", false, 1.0}} {
		if m := s.Lights[i].Mount; m.Stand.Name != want.stand || m.Chosen != want.chosen || m.Foot != want.foot {
			t.Errorf("light %d is on %+v, want %+v", i, m, want)
		}
	}
	flag, card := s.Grip[0], s.Grip[1]
	if flag.Size != [2]float64{1.2, 2.4} || flag.Item.Name != "floppy-120x120" || flag.Mount.Stand.Name != "low-c-stand" || flag.Mount.Foot != 0.85 {
		t.Errorf("flag %+v", flag)
	}
	if card.Size != [2]float64{1, 0.5} || card.Item != nil || card.Mount.Stand != nil || card.Mount.Foot != 1.0 {
		t.Errorf("card %+v", card)
	}
}

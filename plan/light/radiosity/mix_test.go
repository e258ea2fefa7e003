package radiosity

import (
	"testing"

	"scrimshaw/plan/colour"
)

// What several lamps make hot stands side by side in a mix, at their levels: each patch has its own parts and their power. A lamp that is
// off, and one of whose light next to nothing is hot, bring none; looks are four at most.
func TestHotPartsOfAMix(t *testing.T) {
	lamp := func(own ...float64) (h hotParts) { // two parts a patch, of 2 m² each
		sum := 0.0
		for i, v := range own {
			h.parts = append(h.parts, hotPart{area: 2, own: colour.RGB{v, 0, v}})
			sum += 4 * v
			h.upTo = append(h.upTo, sum)
			if i%2 == 1 {
				h.patches = append(h.patches, hotPatch{from: i - 1, to: i + 1, power: -1})
			}
		}
		h.all = sum
		return h
	}
	weak := lamp(1, 1)
	weak.all = 1e3
	s := &Solution{hot: []hotParts{lamp(1, 2, 3, 4), lamp(9, 9), weak, lamp(10, 20)}}
	all := s.mixHot([]colour.RGB{{1, 1, 1}, {}, {1, 1, 1}, {0.5, 1, 0.25}})
	if len(all.parts) != 6 || len(all.patches) != 3 || all.looks != 2 {
		t.Fatalf("%d parts, %d patches, %g looks", len(all.parts), len(all.patches), all.looks)
	}
	upTo := []float64{4, 12, 24, 40, 40 + 2*7.5, 40 + 6*7.5}
	for i, want := range upTo {
		if all.upTo[i] != want {
			t.Errorf("up to part %d there are %g lm, want %g", i, all.upTo[i], want)
		}
	}
	for i, want := range []struct {
		from, to int
		power    float64
	}{{0, 2, 12}, {2, 4, 28}, {4, 6, 45}} {
		if p := all.patches[i]; p.from != want.from || p.to != want.to || p.power != want.power {
			t.Errorf("patch %d has parts %d to %d of %g lm, want %+v", i, p.from, p.to, p.power, want)
		}
	}
	if all.all != 85 || s.hot[0].patches[0].power != -1 {
		t.Errorf("%g lm in all", all.all)
	}
	many := &Solution{hot: []hotParts{lamp(1, 1), lamp(1, 1), lamp(1, 1), lamp(1, 1), lamp(1, 1)}}
	one := colour.RGB{1, 1, 1}
	if got := many.mixHot([]colour.RGB{one, one, one, one, one}).looks; got != 4 {
		t.Errorf("%g looks at five lamps", got)
	}
}

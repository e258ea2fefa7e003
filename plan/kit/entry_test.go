package kit

import (
	"math"
	"testing"
)

// One cloth is itself; two let through what a beam sent to and fro between them adds up to, and what neither lets
// through nor throws back they take in: never less than nothing. Turned over they let through the same.
func TestLayers(t *testing.T) {
	c, err := Shipped()
	if err != nil {
		t.Fatal(err)
	}
	for _, first := range c.Cloth {
		a := *first
		if got := Layers([]Cloth{a}); got != a {
			t.Errorf("%s alone is %+v", a.Name, got)
		}
		for _, second := range c.Cloth {
			b := *second
			both, turned := Layers([]Cloth{a, b}), Layers([]Cloth{b, a})
			through, back := bounced(a, b)
			if !(math.Abs(both.Direct+both.Diffuse-through) <= 1e-9) || !(math.Abs(both.Reflect-back) <= 1e-9) {
				t.Errorf("%s and %s: %g through and %g back, want %g and %g", a.Name, b.Name, both.Direct+both.Diffuse, both.Reflect, through, back)
			}
			if !(math.Abs(both.Direct-a.Direct*b.Direct) <= 1e-15) || both.Diffuse < 0 || through+back > 1 {
				t.Errorf("%s and %s: %+v", a.Name, b.Name, both)
			}
			if !(math.Abs(turned.Direct+turned.Diffuse-through) <= 1e-9) {
				t.Errorf("%s and %s turned over let %g through, want %g", a.Name, b.Name, turned.Direct+turned.Diffuse, through)
			}
		}
	}
}

// bounced follows light between two cloths until it is gone.
func bounced(a, b Cloth) (through, back float64) {
	back = a.Reflect
	between := a.Direct + a.Diffuse
	for range 200 {
		through += between * (b.Direct + b.Diffuse)
		between *= b.Reflect
		back += between * (a.Direct + a.Diffuse)
		between *= a.Reflect
	}
	return through, back
}

package radiosity

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// Light within a patch is uneven by a twentieth where a shadow may have its edge, and by three tenths anywhere; what is not in the
// air does not count.
func TestUnevenPatches(t *testing.T) {
	for _, c := range []struct {
		lux  [4]float32
		edge float64
		bare bool // the last element is not in the air
		want bool
	}{
		{[4]float32{1, 2, 2, 2}, -1, false, true}, {[4]float32{2, 2, 2, 1.39}, -1, false, true}, {[4]float32{2, 2, 2, 1.41}, -1, false, false},
		{[4]float32{2, 2, 2, 0}, -1, true, false}, {[4]float32{2, 2, 2, 2}, 0.101, false, true}, {[4]float32{2, 2, 2, 2}, 0.099, false, false},
		{[4]float32{}, -1, false, false}, {[4]float32{}, 0, false, false},
	} {
		for _, channels := range []int{1, 3} {
			tr := handmade(channels, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 1}, 2, 1, 0.5))
			d := &directSolver{t: tr, channels: channels, lux: make(directLux, 12*channels), edges: []float64{-1, -1, c.edge}}
			for k, v := range c.lux {
				d.lux[(8+k)*channels+channels/2] = v
			}
			if c.bare {
				tr.patches[2].area[3] = 0
			}
			if got := d.uneven(); got[1] || got[2] != c.want {
				t.Errorf("%+v: uneven %v", c, got)
			}
		}
	}
}

// Patches are looked at again that the edge of a shadow may put off by a share of all the light, or of what is read: by how far their
// own elements are apart, or where something shades them by how far they are from those beside them.
func TestEdgesOfShadows(t *testing.T) {
	lit := func(means ...float32) (lux directLux) {
		lux = make(directLux, 4)
		for _, m := range means {
			lux = append(lux, m, m, m, m)
		}
		return lux
	}
	for _, c := range []struct {
		name       string
		means      []float32 // of three by two patches of 1 m²
		edges      []float64
		importance []float64
		limit      float64
		want       []int
	}{
		{"by themselves", []float32{10, 10, 10, 10, 10, 10}, []float64{-1, 3, -1, -1, -1, 7, -1}, nil, 0.1, []int{5}},
		{"no edges", []float32{10, 0, 10, 10, 0, 10}, []float64{-1, -1, -1, -1, -1, -1, -1}, nil, 0.01, nil},
		{"beside in a row", []float32{10, 4, 4, 10, 10, 10}, []float64{-1, -1, 0, -1, -1, -1, -1}, nil, 0.1, []int{2}},
		{"beside in a column", []float32{10, 10, 4, 10, 10, 10}, []float64{-1, -1, -1, -1, -1, -1, 0}, nil, 0.1, []int{6}},
		{"below in a column", []float32{4, 10, 10, 10, 10, 10}, []float64{-1, -1, -1, -1, 0, -1, -1}, nil, 0.1, []int{4}},
		{"not beside at the ends of rows", []float32{10, 10, 9, 4, 4, 4}, []float64{-1, -1, -1, 0, -1, -1, -1}, nil, 0.125, nil},
		{"what is read", []float32{10, 10, 10, 10, 10, 10}, []float64{-1, -1, 2, 2, -1, -1, -1}, []float64{0, 0.25, 0.75, 0.01, 0, 0, 0}, 0.1, []int{2}},
	} {
		tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 3}, r3.Vec{Y: 2}, 3, 2, 0.5))
		tr.quality.Edge = c.limit
		for s, v := range c.importance {
			tr.patches[s].importance = v
		}
		d := &directSolver{t: tr, channels: 1, lux: lit(c.means...), edges: c.edges}
		if got := d.shadowEdges(); !slices.Equal(got, c.want) {
			t.Errorf("%s: patches %v are looked at again, want %v", c.name, got, c.want)
		}
	}
}

// thrown is a lamp that throws some rays at places of a face.
type thrown struct {
	slope
	to    []r3.Vec
	parts []float64
}

func (l *thrown) EmitRays(land func(solid.Hit, r3.Vec, colour.RGB) bool) bool {
	for i, at := range l.to {
		if !land(solid.Hit{ID: 1, Normal: r3.Vec{Z: 1}}, at, grey(l.parts[i])) {
			return false
		}
	}
	return true
}

// What lands is brought up to what was sent, or where most of it was missed put where the rays of the lamp fall; nothing is done where
// some of it lands nowhere that counts.
func TestStraightLightIsBalanced(t *testing.T) {
	for _, c := range []struct {
		name string
		lux  float32 // of all elements but one, 1 m² in all
		open bool
		want map[int]float32
	}{
		{"nearly all", 4, false, map[int]float32{4: 5, 8: 5, 11: 5}},
		{"little", 1, false, map[int]float32{4: 8, 8: 0, 11: 32}}, // 1 lm of 0.125 m², and 4
		{"not all lands", 1, true, map[int]float32{4: 1, 8: 1, 11: 1}},
	} {
		for _, channels := range []int{1, 3} {
			tr := handmade(channels, boardFace(t, r3.Vec{}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 2, 1, 0.5))
			tr.slots[0] = 0
			if c.open {
				tr.slots[2] = 0
			}
			d := &directSolver{t: tr, channels: channels, lux: make(directLux, 12*channels), lamp: &thrown{to: []r3.Vec{{X: 0.1, Y: 0.1}, {X: 0.9, Y: 0.9}}, parts: []float64{1, 4}}}
			for e := 4 * channels; e < len(d.lux); e++ {
				d.lux[e] = c.lux
			}
			d.balance()
			for e, want := range c.want {
				for k := range channels {
					if got := d.lux[e*channels+k]; !(math.Abs(float64(got-want)) <= 1e-5) {
						t.Errorf("%s: element %d gets %g lx in channel %d, want %g", c.name, e, got, k, want)
					}
				}
			}
		}
	}
}

// What a ray brings to an element without area goes to the largest of its patch.
func TestElementWithArea(t *testing.T) {
	p := &patch{area: [4]float64{0, 0.1, 0.3, 0.2}}
	for k, want := range []int{2, 1, 2, 3} {
		if got := p.elementWithArea(k); got != want {
			t.Errorf("for element %d stands %d, want %d", k, got, want)
		}
	}
	lit := [4]colour.RGB{grey(9), grey(1), grey(4), grey(3)}
	if got := p.range4(&lit); got != 3 {
		t.Errorf("its elements are %g apart, want 3", got)
	}
	if got := p.whole(); !(math.Abs(got-0.6) <= 1e-15) {
		t.Errorf("it has %g m²", got)
	}
}

// An element of a cloth shines by what falls on the element that lies behind it, with the share that comes through.
func TestStraightLightThroughCloth(t *testing.T) {
	a, b := r3.Vec{X: 2}, r3.Vec{Y: 4}
	for _, channels := range []int{1, 3} {
		tr := handmade(channels, boardFace(t, r3.Vec{}, a, b, 3, 2, 0.4), boardFace(t, r3.Vec{}, b, a, 3, 2, 0.2))
		tr.clothOf(0, 1, 0.3, 0.6)
		d := &directSolver{t: tr, channels: channels, lux: make(directLux, 4*len(tr.patches)*channels), edges: slices.Repeat([]float64{-1}, 13)}
		d.edges[2], d.edges[3], d.edges[8] = 5, 2, 7
		apart := slices.Clone(d.edges)
		for e := 4; e < 4*len(tr.patches); e++ {
			for c := range channels {
				d.lux[e*channels+c] = float32(e * e)
			}
		}
		middle := func(e int) r3.Vec {
			p := &tr.patches[e/4]
			c := tr.mesh.faces[p.face].element4(p.x, p.y, e%4)
			return r3.Scale(0.25, r3.Add(r3.Add(c[0], c[1]), r3.Add(c[2], c[3])))
		}
		d.throughCloth()
		pairs := 0
		for e := 4; e < 4*len(tr.patches); e++ {
			for k := 4; k < 4*len(tr.patches); k++ {
				if k == e || r3.Norm(r3.Sub(middle(e), middle(k))) > 1e-9 {
					continue
				}
				pairs++
				want := float64(e*e) + tr.mesh.faces[tr.patches[e/4].face].through[0]*float64(k*k)
				for c := range channels {
					if got := float64(d.lux[e*channels+c]); !(math.Abs(got-want) <= 1e-4*want) {
						t.Errorf("element %d, with %d behind it, gets %g lx, want %g", e, k, got, want)
					}
				}
			}
		}
		for _, c := range tr.cloth {
			want := apart[c.slot]
			if apart[c.behind] > 0 {
				want = max(want, tr.mesh.faces[tr.patches[c.slot].face].through.Y()*apart[c.behind])
			}
			if !(math.Abs(d.edges[c.slot]-want) <= 1e-9) {
				t.Errorf("the elements of patch %d are %g lx apart, want %g", c.slot, d.edges[c.slot], want)
			}
		}
		if len(tr.cloth) != 12 || pairs != 48 {
			t.Errorf("%d patches have another face, %d elements another behind them", len(tr.cloth), pairs)
		}
	}
}

// A patch of cloth gets what falls on it, and of what falls behind it what comes through, from whichever side the lamp sees it.
func TestLampsSeeBothFacesOfCloth(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 1}, 1, 1, 0.4), boardFace(t, r3.Vec{}, r3.Vec{Y: 1}, r3.Vec{X: 2}, 1, 1, 0.2))
	tr.clothOf(0, 1, 0.3, 0.6)
	plain := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 1}, 1, 1, 0.4))
	for _, c := range []struct {
		hidden          [2]bool
		cloth, opaque   float64 // lm
		sight, straight Visibility
	}{
		{[2]bool{false, false}, 2 * (10 + 0.3*5), 20, Unoccluded, Unoccluded}, {[2]bool{true, false}, 2 * 0.3 * 5, 0, Unoccluded, Hidden},
		{[2]bool{false, true}, 20, 20, Unoccluded, Unoccluded}, {[2]bool{true, true}, 0, 0, Hidden, Hidden},
	} {
		lamp := &slope{lux: 10, back: 5, hidden: c.hidden}
		figure := tr.mesh.faces[0].corners
		lit, bare := tr.mesh.aim(lamp, 0, &tr.patches[1]), (*aimed)(nil)
		if lit.sight != c.sight {
			t.Errorf("%v: the cloth is seen as %d", c.hidden, lit.sight)
		}
		if got := lit.flux(figure, false)[1]; lit.sight != Hidden && math.Abs(got-c.cloth) > 1e-12 {
			t.Errorf("%v: the cloth gets %g lm, want %g", c.hidden, got, c.cloth)
		}
		if bare = plain.mesh.aim(lamp, 0, &plain.patches[1]); bare.sight != c.straight {
			t.Errorf("%v: a board is seen as %d", c.hidden, bare.sight)
		}
		var e [4]colour.RGB
		p := plain.patches[1]
		p.area[2] = 0
		if bare.sight != Hidden {
			bare.illuminate(&p, &plain.mesh.faces[0], &e, false)
			if e[0][1] != 10 || e[2] != (colour.RGB{}) || e[3][1] != 10 {
				t.Errorf("%v: elements of a board get %v", c.hidden, e)
			}
		}
	}
	at := r3.Vec{X: 1, Y: 0.5}
	if got := tr.mesh.straightAt(&slope{lux: 10, back: 5}, 0, at, 0)[0]; !(math.Abs(got-11.5) <= 1e-12) {
		t.Errorf("a place on cloth gets %g lx, want 11.5", got)
	}
	if got := plain.mesh.straightAt(&slope{lux: 10, back: 5}, 0, at, 0)[0]; got != 10 {
		t.Errorf("a place on a board gets %g lx, want 10", got)
	}
}

package radiosity

import (
	"testing"

	"scrimshaw/plan/solid"
)

// A pane that slants through a wall is passed by the rays that meet it first, and by no others: the depths of both grow
// along the lattice, each its own way.
func TestRaysPassTheNearPartOfAPane(t *testing.T) {
	const size = 16
	v := &view{nu: size, nv: size}
	square := func(depth func(x, y float64) float64) []vertex {
		return []vertex{{-1, -1, depth(-1, -1)}, {size, -1, depth(size, -1)}, {size, size, depth(size, size)}, {-1, size, depth(-1, size)}}
	}
	wall := func(x, y float64) float64 { return 10 + 0.05*x - 0.1*y }
	for name, pane := range map[string]func(x, y float64) float64{
		"deeper to the right": func(x, y float64) float64 { return 6.2 + 0.7*x },
		"deeper upward":       func(x, y float64) float64 { return 5.1 + 0.5*y },
		"deeper downward":     func(x, y float64) float64 { return 13.3 - 0.6*y + 0.2*x },
	} {
		p := &depthBuffer{m: &mesh{}, panes: []int{0}, crossing: []solid.Pane{}}
		p.reset(v)
		p.corners = square(wall)
		p.drawFace(v, 3)
		p.corners = square(pane)
		any := p.drawPane(v)
		before := 0
		for n := range size * size {
			x, y := float64(n%size), float64(n/size)
			if p.seen[n] != 3 {
				t.Fatalf("%s: the ray at (%g, %g) misses the wall", name, x, y)
			}
			if want := pane(x, y) < wall(x, y); p.passed[n] != want {
				t.Errorf("%s: the ray at (%g, %g) passes the pane: %v, want %v", name, x, y, p.passed[n], want)
			} else if want {
				before++
			}
		}
		if !any || before < size || before > size*(size-1) {
			t.Errorf("%s: %d rays pass, which tells nothing", name, before)
		}
	}
}

package frame_test

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/frame"
)

// The angle off the frame is the least to any direction of its edge, as found by looking along that; and the shade that is
// offered stands between every place of the lens and every place of the lamp, and before nothing that the frame shows.
func TestGlareOfRandomScenes(t *testing.T) {
	shaded, seen := 0, 0
	for seed := int64(0); shaded < 40; seed++ {
		setup := laidOut(t, stage(seed<<16))
		if setup == nil {
			continue
		}
		for _, g := range frame.Glares(setup) {
			c, l := setup.CameraNamed(g.Camera), setup.LightNamed(g.Light)
			b := newBrute(setup, c)
			way := r3.Unit(r3.Sub(l.Frame.At, c.Frame.At))
			least := math.Inf(1)
			const n = 4000
			for i := range 4 * n {
				s := 2*float64(i%n)/n - 1
				x, y := [...]float64{s, s, -1, 1}[i/n], [...]float64{-1, 1, s, s}[i/n]
				least = min(least, math.Acos(min(1, r3.Dot(way, r3.Unit(b.ray(x, y)))))*180/math.Pi)
			}
			if h := b.clip(l.Frame.At); math.Abs(h[0]) < h[3] && math.Abs(h[1]) < h[3] {
				least = 0
			}
			if !(math.Abs(g.OffFrame-least) <= 0.03) {
				t.Errorf("seed %d: %s lies %.3f° off the frame of %s, and along its edge %.3f°", seed, g.Light, g.OffFrame, g.Camera, least)
			}
			if g.InFrame {
				seen++
			}
			if g.Shade != nil {
				shaded++
				shades(t, seed, b, &g, frame.OpeningOf(l))
			}
		}
	}
	if seen == 0 {
		t.Error("no lamp lies in a frame")
	}
}

// shades holds one shade to rays.
func shades(t *testing.T, seed int64, b *brute, g *frame.Glare, opening []frame.Body) {
	d := rand.New(rand.NewSource(seed))
	c := b.camera
	radius := c.Lens / 1000 / 2 / c.Exposure.Stop.N
	up := r3.Cross(c.Frame.Right, c.Frame.Axis)
	meets := func(from, way r3.Vec) bool {
		far := (g.Shade.Ahead - r3.Dot(r3.Sub(from, c.Frame.At), c.Frame.Axis)) / r3.Dot(way, c.Frame.Axis)
		off := r3.Sub(r3.Add(from, r3.Scale(far, way)), g.Shade.Middle)
		return math.Abs(r3.Dot(off, c.Frame.Right)) < g.Shade.Width/2+1e-9 && math.Abs(r3.Dot(off, up)) < g.Shade.Height/2+1e-9
	}
	var points []r3.Vec
	for i := range opening {
		points = append(points, pointsOf(&opening[i])...)
	}
	if len(points) == 0 {
		points = []r3.Vec{b.setup.LightNamed(g.Light).Frame.At}
	}
	for range 300 {
		r, turn := radius*math.Sqrt(d.Float64()), 2*math.Pi*d.Float64()
		from := r3.Add(c.Frame.At, r3.Add(r3.Scale(r*math.Cos(turn), c.Frame.Right), r3.Scale(r*math.Sin(turn), up)))
		p, q := points[d.Intn(len(points))], points[d.Intn(len(points))]
		s := d.Float64()
		if len(opening) == 1 && opening[0].Radius > 0 {
			s = 0.5 // a cube about a ball is wider than that
			p, q = opening[0].Middle, opening[0].Middle
		}
		if !meets(from, r3.Sub(r3.Add(r3.Scale(s, p), r3.Scale(1-s, q)), from)) {
			t.Errorf("seed %d: %s shines past its shade %+v on the %s of %s", seed, g.Light, *g.Shade, g.Shade.Side, g.Camera)
			return
		}
		if meets(from, b.ray(2*d.Float64()-1, 2*d.Float64()-1)) {
			t.Errorf("seed %d: the shade of %s shows in %s: %+v", seed, g.Light, g.Camera, *g.Shade)
			return
		}
	}
}

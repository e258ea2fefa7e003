package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// Rays go out of a lamp in rings about its axis, of so many each, every other ring turned by half a step; their weights add up to its light by 2 pi.
func TestRaysLeaveALampInRings(t *testing.T) {
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1, Y: 2, Z: 3}, r3.Vec{X: 2, Y: -1, Z: 0.5}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Uniform{}}}
	b := surfaceLampOf(t, &solid.Set{}, e)
	n, last := 0, 0.0
	sum := b.eachRay(func(o, d r3.Vec, weight float64) bool {
		ring, k := n/emitRound, n%emitRound
		angle := math.Acos(r3.Dot(d, e.Frame.Axis))
		if k == 0 && angle <= last || k > 0 && math.Abs(angle-last) > 1e-7 {
			t.Errorf("ray %d of ring %d goes %g rad aside, the one before %g", k, ring, angle, last)
		}
		last = angle
		turn := 2 * math.Pi * float64(k) / emitRound
		if ring%2 == 1 {
			turn += math.Pi / emitRound
		}
		if got := math.Atan2(r3.Dot(d, e.Frame.Up()), r3.Dot(d, e.Frame.Right)); !(math.Abs(math.Remainder(got-turn, 2*math.Pi)) <= 1e-6) || o != e.Frame.At {
			t.Errorf("ray %d of ring %d goes out at %v, turned by %g rad, want %g", k, ring, o, got, turn)
		}
		n++
		return true
	})
	if n != emitRings*emitRound || !(math.Abs(2*math.Pi*sum-1000) <= 1e-9) {
		t.Errorf("%d rays weigh %g", n, sum)
	}
	if part := b.eachRay(func(_, _ r3.Vec, _ float64) bool { n++; return false }); n != emitRings*emitRound+1 || !(part > 0 && part < sum/100) {
		t.Errorf("after a no %d more rays were sent, in all %g", n-emitRings*emitRound, part)
	}
}

// Rays tell where all of a lamp's light lands only where it does: not where a wall is missing, clear or a mirror, nor where no surface takes it up.
func TestRaysLandInAClosedRoom(t *testing.T) {
	grey := colour.RGB{0.5, 0.5, 0.5}
	clear := solid.Skin{Direct: colour.RGB{0.9, 0.9, 0.9}}
	for name, c := range map[string]struct {
		wall  *solid.Skin // nil where there is none
		takes bool
		want  bool
	}{
		"closed": {&solid.Skin{Reflect: grey}, true, true}, "not taken up": {&solid.Skin{Reflect: grey}, false, false}, "open": {nil, true, false},
		"clear": {&clear, true, false}, "a mirror": {&solid.Skin{Reflect: grey, Mirror: 1}, true, false},
	} {
		s := shell(4, 3, 2.5, grey)
		if c.wall == nil {
			s.Sheets = s.Sheets[:5]
		} else {
			s.Sheets[5].Front, s.Sheets[5].Back = *c.wall, *c.wall
		}
		e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 2, Y: 1, Z: 1}, r3.Vec{Y: 2, Z: 1}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.3, 0.2)}}
		flux := 0.0
		all := surfaceLampOf(t, s, e).EmitRays(func(h solid.Hit, at r3.Vec, part colour.RGB) bool {
			flux += part.Y()
			if on := math.Min(math.Min(math.Abs(at.X*(4-at.X)), math.Abs(at.Y*(3-at.Y))), math.Abs(at.Z*(2.5-at.Z))); on > 1e-9 {
				t.Errorf("%s: a ray lands in the air, at %v", name, at)
			}
			return c.takes
		})
		if all != c.want || c.want && math.Abs(flux-1000) > 1e-6 {
			t.Errorf("%s: all has landed: %v, %g lm", name, all, flux)
		}
	}
}

// Rays of a face start all over it, those of each ring at as many of its points; none goes behind it, and their weights go ahead and aside as the light of
// a cosine does.
func TestRaysStartAllOverAFace(t *testing.T) {
	e := Emitter{Frame: looking(r3.Vec{Z: 2}, r3.Vec{X: 1, Y: 2}), Source: photometry.Source{Flux: math.Pi, Distribution: photometry.Cosine{}, Opening: face(0.6, 0.4)}}
	b := surfaceLampOf(t, &solid.Set{}, e)
	starts, all := map[r3.Vec]bool{}, map[r3.Vec]bool{}
	rays := 0
	var mean, square r3.Vec
	sum := b.eachRay(func(o, d r3.Vec, weight float64) bool {
		own, at := b.l.local(d), b.l.local(r3.Sub(o, b.l.at))
		mean = r3.Add(mean, r3.Scale(weight, own))
		square = r3.Add(square, r3.Scale(weight, r3.Vec{X: own.X * own.X, Y: own.Y * own.Y, Z: own.Z * own.Z}))
		if !(math.Abs(at.X) <= 0.3) || !(math.Abs(at.Y) <= 0.2) || !(math.Abs(at.Z) <= 1e-12) || own.Z < 0 {
			t.Errorf("a ray starts at %v of the opening along %v", at, own)
		}
		starts[o], all[o] = true, true
		if rays++; rays%emitRound == 0 {
			if len(starts) < emitRound*3/4 {
				t.Errorf("the last %d rays start at %d points", emitRound, len(starts))
			}
			clear(starts)
		}
		return true
	})
	if len(all) < len(b.points)*3/4 {
		t.Errorf("all rays start at %d points of %d", len(all), len(b.points))
	}
	close(t, "sum of weights", sum, 0.5, 0.01)
	close(t, "ahead", mean.Z/sum, 2./3, 0.01)
	close(t, "squares to the right", square.X/sum, 0.25, 0.01)
	close(t, "squares up", square.Y/sum, 0.25, 0.01)
}

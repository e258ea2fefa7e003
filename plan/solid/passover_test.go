package solid

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// What is seen of a figure in a body is the same whether or not the shadows that miss the body were passed over, and where one
// hides the body nothing is seen of any.
func TestPassingOverShadowsChangesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	b := benchmarkSet(40)
	var past []int32
	for i := range b.parts {
		past = append(past, int32(i))
	}
	fewer, hid := 0, 0
	for range 3000 {
		from, middle, size := randomPoint(r), randomPoint(r), 0.02+0.2*r.Float64()
		corner := func(x, y, z float64) r3.Vec { return r3.Add(middle, r3.Vec{X: size * x, Y: size * y, Z: size * z}) }
		var body []r3.Vec
		for i := range 8 {
			body = append(body, corner(float64(2*(i&1)-1), float64(2*(i>>1&1)-1), float64(2*(i>>2)-1)))
		}
		figure := []r3.Vec{corner(-0.5, -0.7, r.Float64()), corner(0.8, -0.2, r.Float64()), corner(0.1, 0.9, r.Float64())}
		one, two := Viewer{BVH: b}, Viewer{BVH: b}
		want := slices.Clone(one.Visible(from, figure, past, true))
		two.LookFrom(from, past, true)
		before := len(two.shadows)
		if two.PassOver(body) {
			hid++
			if len(want) > 0 {
				t.Fatalf("a body about %v counts as hidden from %v, and %d parts of a figure in it are seen", middle, from, len(want))
			}
			continue
		}
		if len(two.shadows) < before {
			fewer++
		}
		if got := two.See(figure); len(got)+len(want) > 0 && !reflect.DeepEqual(got, want) {
			t.Fatalf("%d parts are seen of a figure about %v from %v, want the same %d", len(got), middle, from, len(want))
		}
	}
	if fewer < 1000 || hid < 100 {
		t.Errorf("shadows were passed over %d times and hid all %d times: too few to tell", fewer, hid)
	}
}

// What stopped one way is looked at first for the next, and changes nothing of what that meets: side by side, the other way round, and past
// solids that are left out.
func TestWaysSideBySide(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 2))
	b := benchmarkSet(40)
	var last Stopper
	stopped, again := 0, 0
	for range 300 {
		from, to := randomPoint(r), randomPoint(r)
		skip := []ID{b.parts[r.IntN(len(b.parts))].id}
		if last.number > 0 && r.IntN(4) == 0 {
			skip[0] = b.parts[last.number-1].id
		}
		for range 10 {
			aside := r3.Vec{X: 0.1 * r.NormFloat64(), Y: 0.1 * r.NormFloat64(), Z: 0.1 * r.NormFloat64()}
			before := last
			want, blocked := b.Segment(from, r3.Add(to, aside), skip, nil)
			got, stops := b.SegmentAgain(&last, from, r3.Add(to, aside), skip, nil)
			if stops != blocked || !reflect.DeepEqual(got, want) {
				t.Fatalf("from %v to %v it is stopped: %v, past %d panes; alone %v, past %d", from, to, stops, len(got), blocked, len(want))
			}
			if stops {
				stopped++
				if last == before {
					again++
				}
			}
			from, to = to, from
		}
	}
	if again < 300 || again == stopped {
		t.Errorf("of %d ways that are stopped %d are by what stopped the last: too few to tell", stopped, again)
	}
}

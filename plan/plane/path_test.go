package plane

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// wander is a random path.
func wander(rng *rand.Rand, corners int) (path []r2.Vec) {
	for range corners {
		path = append(path, r2.Vec{X: 6 * rng.Float64(), Y: 6 * rng.Float64()})
	}
	return path
}

// Places along random paths lie on them, as far from the start as a tape says that is laid in small steps.
func TestOnPath(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for range 50 {
		path := wander(rng, 2+rng.Intn(4))
		long := PathLength(path)
		last, _ := OnPath(path, 0)
		sum, step := 0.0, long/5000
		for i := 1; i <= 5000; i++ {
			at, way := OnPath(path, float64(i)*step)
			sum += r2.Norm(r2.Sub(at, last))
			last = at
			if !(math.Abs(r2.Norm(way)-1) <= 1e-12) {
				t.Fatalf("the way has length %g", r2.Norm(way))
			}
		}
		if end := path[len(path)-1]; !SamePoint(last, end) || sum > long+1e-9 || sum < long-4*step {
			t.Errorf("of %g m, %g m end at %v, want %v", long, sum, last, end)
		}
		for _, past := range []float64{long, long + 1} {
			if at, _ := OnPath(path, past); !SamePoint(at, path[len(path)-1]) {
				t.Errorf("%g m along lies %v", past, at)
			}
		}
	}
}

// The steps along a path hold its corners and both ends, and are no longer than asked.
func TestAlongSteps(t *testing.T) {
	path := []r2.Vec{{}, {X: 0.25}, {X: 0.25, Y: 1}}
	steps := AlongSteps(path, 0.1)
	if want := 1 + 3 + 10; len(steps) != want || steps[0] != 0 || !(math.Abs(steps[3]-0.25) <= 1e-12) || !(math.Abs(steps[len(steps)-1]-1.25) <= 1e-12) {
		t.Errorf("steps are %v", steps)
	}
	for i := 1; i < len(steps); i++ {
		if d := steps[i] - steps[i-1]; !(d > 0 && d <= 0.1+1e-9) {
			t.Errorf("a step is %g", d)
		}
	}
}

// Where random paths cross a line is where a walker in small steps changes sides.
func TestPathCrossings(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	crossed := 0
	for range 200 {
		path, ends := wander(rng, 2+rng.Intn(4)), wander(rng, 2)
		line := Through(ends[0], ends[1])
		var want []float64
		const n = 20000
		step := PathLength(path) / n
		was := line.Distance(path[0])
		for i := 1; i <= n; i++ {
			at, _ := OnPath(path, float64(i)*step)
			if is := line.Distance(at); was*is < 0 {
				want, was = append(want, float64(i)*step), is
			}
		}
		got := PathCrossings(path, line)
		if len(got) != len(want) {
			t.Fatalf("crosses at %v, want %v", got, want)
		}
		for i := range got {
			crossed++
			if !(math.Abs(got[i]-want[i]) <= step+1e-9) {
				t.Errorf("crosses at %g, want %g", got[i], want[i])
			}
		}
	}
	if crossed < 50 {
		t.Errorf("%d crossings try too little", crossed)
	}
	axis := Through(r2.Vec{}, r2.Vec{X: 1})
	for _, c := range []struct {
		name string
		path []r2.Vec
		want []float64
	}{
		{"touches with a corner", []r2.Vec{{Y: 1}, {X: 1}, {X: 2, Y: 1}}, nil},
		{"crosses at a corner", []r2.Vec{{Y: 1}, {}, {Y: -1}}, []float64{1}},
		{"runs along it and leaves on the other side", []r2.Vec{{Y: 1}, {}, {X: 2}, {X: 2, Y: -1}}, []float64{1}},
		{"starts on it", []r2.Vec{{}, {Y: 1}}, nil},
	} {
		if got := PathCrossings(c.path, axis); len(got) != len(c.want) || len(got) > 0 && math.Abs(got[0]-c.want[0]) > 1e-12 {
			t.Errorf("a path that %s crosses at %v, want %v", c.name, got, c.want)
		}
	}
}

// Two paths cross where they come nearest in small steps of both.
func TestPathsCross(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	met := 0
	for range 100 {
		a, b := wander(rng, 3), wander(rng, 3)
		onA, onB, cross := PathsCross(a, b)
		if !cross {
			for i := range 400 {
				p, _ := OnPath(a, PathLength(a)*float64(i)/400)
				q, _ := OnPath(a, PathLength(a)*float64(i+1)/400)
				for k := 1; k < len(b); k++ {
					if _, _, hit := PathsCross([]r2.Vec{p, q}, b[k-1:k+1]); hit {
						t.Errorf("paths that cross in part do not as a whole")
					}
				}
			}
			continue
		}
		met++
		p, _ := OnPath(a, onA)
		q, _ := OnPath(b, onB)
		if r2.Norm(r2.Sub(p, q)) > 1e-9 {
			t.Errorf("they cross at %v and at %v", p, q)
		}
		if _, _, before := PathsCross(append(a[:0:0], a[0], p), b); onA > 1e-6 && onA < PathLength(a[:2]) && before {
			if again, _, _ := PathsCross([]r2.Vec{a[0], p}, b); again < onA-1e-9 {
				t.Errorf("they first cross %g along, not %g", again, onA)
			}
		}
	}
	if met < 30 {
		t.Errorf("%d crossings try too little", met)
	}
}

package plane

import (
	"container/heap"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// A box in the way is gone round by its nearer corners: from (-1, 0) to (2, 0.2) past the unit square moved down by 0.4 over two corners at the top.
func TestShortestPathRoundABox(t *testing.T) {
	box := []r2.Vec{{X: 0, Y: -0.6}, {X: 1, Y: -0.6}, {X: 1, Y: 0.4}, {X: 0, Y: 0.4}}
	path, ok := ShortestPath(r2.Vec{X: -1}, r2.Vec{X: 2, Y: 0.2}, [][]r2.Vec{box})
	if want := math.Hypot(1, 0.4) + 1 + math.Hypot(1, 0.2); !ok || len(path) != 4 || !(math.Abs(Perimeter(path)-r2.Norm(r2.Sub(path[0], path[3]))-want) <= 1e-12) {
		t.Errorf("the way is %v, %v: want %g long", path, ok, want)
	}
	inside, ok := ShortestPath(r2.Vec{X: -1}, r2.Vec{X: 0.5}, [][]r2.Vec{box})
	if ok {
		t.Errorf("a way into a box: %v", inside)
	}
	touching, ok := ShortestPath(r2.Vec{Y: 0.4}, r2.Vec{X: 1, Y: 0.4}, [][]r2.Vec{box})
	if !ok || len(touching) != 2 {
		t.Errorf("along an edge the way is %v", touching)
	}
}

// On random floors the way is as long as the shortest over a fine lattice says, within what steps in 32 directions are longer than a line, and it enters nothing.
func TestShortestPathByLattice(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 18))
	ways, closed := 0, 0
	for n := range 40 {
		rings := randomRings(r)
		from, to := r2.Vec{X: 0.04, Y: 0.04}, r2.Vec{X: 3.96, Y: 3.96}
		path, ok := ShortestPath(from, to, rings)
		lattice := latticeWay(from, to, rings)
		if ok != !math.IsInf(lattice, 1) {
			closed++ // a gap narrower than the lattice
			continue
		}
		if !ok {
			continue
		}
		ways++
		length := 0.0
		for i := 1; i < len(path); i++ {
			length += r2.Norm(r2.Sub(path[i], path[i-1]))
			for s := range 200 {
				p := r2.Add(path[i-1], r2.Scale(float64(s)/200, r2.Sub(path[i], path[i-1])))
				for _, ring := range rings {
					if Contains(p, ring, 1e-4) {
						t.Fatalf("floor %d: the way enters a ring at %v", n, p)
					}
				}
			}
		}
		if length < lattice*0.985 {
			closed++
		}
		if length > lattice+1e-9 {
			t.Errorf("floor %d: %.4f m long, over a lattice %.4f", n, length, lattice)
		}
	}
	if ways < 25 || closed > 6 {
		t.Errorf("%d ways, %d floors on which the lattice is too coarse", ways, closed)
	}
}

func randomRings(r *rand.Rand) (rings [][]r2.Vec) {
	for range 4 + r.IntN(8) {
		axes := AxesAt(360 * r.Float64())
		w, d := 0.1+0.6*r.Float64(), 0.1+0.6*r.Float64()
		ring := CounterClockwise(axes.Rectangle(r2.Vec{X: 0.5 + 3*r.Float64(), Y: 0.5 + 3*r.Float64()}, -w, w, -d, d))
		if !Contains(r2.Vec{X: 0.04, Y: 0.04}, ring, -0.05) && !Contains(r2.Vec{X: 3.96, Y: 3.96}, ring, -0.05) {
			rings = append(rings, ring)
		}
	}
	return rings
}

// latticeWay is the length of the shortest way over the points of a lattice of 2 cm, in steps of up to 3 of them, which reaches a little past the corners of the floor.
func latticeWay(from, to r2.Vec, rings [][]r2.Vec) float64 {
	const step, first, n = 0.04, -25, 151
	point := func(i int) r2.Vec {
		return r2.Vec{X: from.X + step*float64(first+i%n), Y: from.Y + step*float64(first+i/n)}
	}
	free := make([]bool, n*n)
	for i := range free {
		free[i] = true
		for _, ring := range rings {
			free[i] = free[i] && !Contains(point(i), ring, 0)
		}
	}
	start := -first + n*-first
	end := start + int(math.Round((to.X-from.X)/step)) + n*int(math.Round((to.Y-from.Y)/step))
	far := make([]float64, n*n)
	for i := range far {
		far[i] = math.Inf(1)
	}
	far[start] = 0
	q := &queue{{start, 0}}
	for q.Len() > 0 {
		at := heap.Pop(q).(reached)
		if at.i == end {
			return at.far
		}
		if at.far > far[at.i] {
			continue
		}
		for dx := -4; dx <= 4; dx++ {
			for dy := -4; dy <= 4; dy++ {
				x, y := at.i%n+dx, at.i/n+dy
				if gcd(dx, dy) != 1 || x < 0 || y < 0 || x >= n || y >= n || !free[x+n*y] {
					continue
				}
				k, d := x+n*y, at.far+step*math.Hypot(float64(dx), float64(dy))
				if d < far[k] && isFree(point(at.i), point(k), rings) {
					far[k] = d
					heap.Push(q, reached{k, d})
				}
			}
		}
	}
	return math.Inf(1)
}

func isFree(a, b r2.Vec, rings [][]r2.Vec) bool {
	for _, ring := range rings {
		if Enters(a, b, ring) {
			return false
		}
	}
	return true
}

func gcd(a, b int) int {
	if a < 0 {
		a = -a
	}
	if b < 0 {
		b = -b
	}
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

type reached struct {
	i   int
	far float64
}

type queue []reached

func (q queue) Len() int           { return len(q) }
func (q queue) Less(i, k int) bool { return q[i].far < q[k].far }
func (q queue) Swap(i, k int)      { q[i], q[k] = q[k], q[i] }
func (q *queue) Push(x any)        { *q = append(*q, x.(reached)) }
func (q *queue) Pop() any {
	last := (*q)[len(*q)-1]
	*q = (*q)[:len(*q)-1]
	return last
}

// A grown ring is that far from the ring all round: its edges lie at the distance, and no corner is farther than a cut corner of a square is.
func TestGrown(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 18))
	for range 50 {
		ring := CounterClockwise(AxesAt(360*r.Float64()).Rectangle(r2.Vec{X: r.Float64()}, -r.Float64()-0.1, 1, -1, r.Float64()+0.1))
		grown := Grown(ring, 0.15)
		if len(grown) != 8 || Area(grown) <= 0 || !IsConvex(grown) {
			t.Fatalf("grown to %v", grown)
		}
		for i, p := range grown {
			q := grown[(i+1)%len(grown)]
			if d := r2.Norm(r2.Sub(Nearest(p, ring), p)); d < 0.15-1e-9 || d > 0.15*1.09 {
				t.Errorf("a corner is %g m off", d)
			}
			if middle := r2.Scale(0.5, r2.Add(p, q)); !(math.Abs(r2.Norm(r2.Sub(Nearest(middle, ring), middle))-0.15) <= 1e-9) {
				t.Errorf("an edge is %g m off", r2.Norm(r2.Sub(Nearest(middle, ring), middle)))
			}
		}
	}
}

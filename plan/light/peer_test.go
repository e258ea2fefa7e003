//go:build peer

package light

import (
	"bufio"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// The comparison with a general ray tracer that .ci/compare-embree runs: TestPeerScene writes the
// reference scene for it, TestPeerRatios reads what it made and prints the ratios. The folder is
// given after -args -peer.
var peerFolder = flag.String("peer", "", "folder that is shared with the other program")

// peerScenes are the scenes by how many boxes they have beyond the 55 solids.
var peerScenes = []int{0, 1945}

func peerFile(boxes int, ending string) string {
	return filepath.Join(*peerFolder, fmt.Sprintf("%d.%s", 55+boxes, ending))
}

func TestPeerScene(t *testing.T) {
	for _, boxes := range peerScenes {
		f, err := os.Create(peerFile(boxes, "scene"))
		if err != nil {
			t.Fatal(err)
		}
		w := bufio.NewWriter(f)
		s, floor := reference(boxes)
		writeTriangles(w, s)
		fmt.Fprintln(w, floor.Origin.X, floor.Origin.Y, floor.Origin.Z, floor.U.X, floor.NU, floor.NV)
		lights := referenceLamps()
		fmt.Fprintln(w, len(lights))
		faces, tubes, bundle := Draft.points()
		for i := range lights {
			writeLamp(w, newLamp(&lights[i], faces, tubes, bundle))
		}
		if err := w.Flush(); err != nil {
			t.Fatal(err)
		}
		f.Close()
	}
}

func writeTriangles(w *bufio.Writer, s *solid.Set) {
	var corners []r3.Vec
	fan := func(ring []r3.Vec) {
		for i := 2; i < len(ring); i++ {
			corners = append(corners, ring[0], ring[i-1], ring[i])
		}
	}
	for i := range s.Prisms {
		if c, ok := prismCaster(&s.Prisms[i]); ok {
			for _, side := range c.sides() {
				fan(side.base)
			}
		}
	}
	for i := range s.Sheets {
		fan(s.Sheets[i].Corners)
	}
	fmt.Fprintln(w, len(corners))
	for _, c := range corners {
		writeVec(w, c)
	}
}

func writeVec(w *bufio.Writer, v r3.Vec) { fmt.Fprintf(w, "%.9g %.9g %.9g\n", v.X, v.Y, v.Z) }

// shapeOf is the number that the peer knows a distribution by, with its gain, cd, the inverse tangents of its cut-off
// angles, and a table of its intensity, cd, against sin(t/2), the last entry twice.
func shapeOf(l *lamp) (kind int, gain float64, grid [2]float64, table []float64) {
	switch d := l.shape.(type) {
	case photometry.Cosine:
		return 0, l.flux / math.Pi, grid, nil
	case photometry.Uniform:
		return 1, l.flux / (4 * math.Pi), grid, nil
	case photometry.TubeCosine:
		return 2, l.flux / (math.Pi * math.Pi), grid, nil
	case photometry.Grid:
		_, across, along, gain := d.Parts()
		return 4, gain * l.flux / math.Pi, [2]float64{1 / across, 1 / along}, nil
	case interface{ At(angle float64) float64 }: // alike all round the axis
		for k := range peerSteps + 1 {
			table = append(table, l.flux*d.At(2*math.Asin(float64(k)/peerSteps)))
		}
		return 3, 0, grid, append(table, table[peerSteps])
	}
	return -1, 0, grid, nil
}

// peerSteps is how many steps the peer's tables have.
const peerSteps = 2048

func writeLamp(w *bufio.Writer, l *lamp) {
	oneSided := 0
	if l.onesided {
		oneSided = 1
	}
	kind, gain, grid, table := shapeOf(l)
	fmt.Fprintln(w, kind, oneSided, gain, grid[0], grid[1])
	writeVec(w, l.axis)
	writeVec(w, l.right)
	writeVec(w, l.up)
	fmt.Fprintln(w, len(table))
	for _, v := range table {
		fmt.Fprintln(w, v)
	}
	points := l.points
	if l.opening.Form == photometry.Point {
		points = []r3.Vec{l.at}
	}
	fmt.Fprintln(w, len(points))
	for _, p := range points {
		writeVec(w, p)
	}
}

// busy is the time that the process has computed, which other programs on the machine do not count
// in.
func busy() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

func TestPeerRatios(t *testing.T) {
	for _, boxes := range peerScenes {
		theirTime, theirs := readPeer(t, peerFile(boxes, "field"))
		s, floor := reference(boxes)
		lights := referenceLamps()
		d := Levels{}
		for _, e := range lights {
			d[e.Name] = [3]float64{1, 1, 1}
		}
		run := func(w *World, times int) (time.Duration, []float64) {
			least := time.Hour
			out := make([]float32, floor.NU*floor.NV)
			for range times {
				start := busy()
				b := basis(t, w, lights, Targets{Lattices: []Lattice{floor}})
				least = min(least, busy()-start)
				b.Field(0, d, out)
			}
			values := make([]float64, len(out))
			for n, v := range out {
				values[n] = float64(v)
			}
			return least, values
		}
		best := build(t, s, Options{Direct: true, Quality: Fine})
		best.faces, best.tubes = 6844, 2048 // twice a Fibonacci number
		_, want := run(best, 1)
		fmt.Printf("%d solids, %d points, one core, computing time\n", 55+boxes, len(want))
		mean, p95 := errorsOf(theirs, want)
		fmt.Printf("  Embree, 16 rays at a time, every sample: %7.1f ms   error %.2f %% mean, %.1f %% p95\n", 1e3*theirTime, 100*mean, 100*p95)
		for _, q := range []Quality{Draft, Normal} {
			took, ours := run(build(t, s, Options{Direct: true, Quality: q, Workers: 1}), 8)
			mean, p95 := errorsOf(ours, want)
			fmt.Printf("  shadows drawn, %-6s:                    %7.1f ms   error %.2f %% mean, %.1f %% p95   %.1f times the speed\n",
				q, took.Seconds()*1e3, 100*mean, 100*p95, theirTime/took.Seconds())
		}
	}
}

// TestGoals prints what the engine takes on two cores, as shares of the time that the ray tracer takes for the
// direct light of one plane on one, and its errors.
func TestGoals(t *testing.T) {
	theirTime, _ := readPeer(t, peerFile(0, "field"))
	share := func(took time.Duration) string {
		return fmt.Sprintf("%6.1f ms, %.2f of the ray tracer's", took.Seconds()*1e3, took.Seconds()/theirTime)
	}
	hard, floor, lights := glazed(t)
	best := build(t, hard, Options{Direct: true})
	best.faces, best.tubes = 65536, 65536
	mean, p95 := errorsOf(everyLamp(t, build(t, hard, Options{Direct: true, Workers: 2}), lights, floor), everyLamp(t, best, lights, floor))
	took := least(20, func() {
		basis(t, build(t, hard, Options{Direct: true, Workers: 2}), lights, Targets{Lattices: []Lattice{floor}})
	})
	fmt.Printf("normal, panes and measured light, two cores: %s, error %.2f %% mean, %.2f %% p95\n", share(took), 100*mean, 100*p95)

	furnished, floor := furnishedReference()
	w := build(t, furnished, Options{Workers: 2})
	var lamps []*readyLamp
	var all []int
	for i, e := range referenceLamps() {
		lamps, all = append(lamps, &readyLamp{emitter: e, lamp: w.newLamp(&e)}), append(all, i)
	}
	took = least(8, func() {
		b := &Basis{targets: Targets{Lattices: []Lattice{floor}}, columns: make([]column, len(lamps)), Lights: make([]string, len(lamps))}
		if err := w.reflect(t.Context(), b, lamps, all, &progress{total: 1}); err != nil {
			t.Fatal(err)
		}
	})
	fmt.Printf("reflected light of 12 lamps in colour, two cores: %s\n", share(took))

	dressed, floor, lights := clothed()
	took = least(8, func() {
		basis(t, build(t, dressed, Options{Workers: 2}), lights, Targets{Lattices: []Lattice{floor}})
	})
	fmt.Printf("normal, four cloths before 12 lamps, two cores: %s\n", share(took))
}

// clothed is the reference set, black, with a frame of cloth 0.5 m before each of its four boxes.
func clothed() (*solid.Set, Lattice, []Emitter) {
	s, floor := reference(0)
	lights := referenceLamps()
	silk := solid.Skin{Direct: colour.RGB{0.2, 0.2, 0.2}, Diffuse: colour.RGB{0.4, 0.4, 0.4}, Reflect: colour.RGB{0.3, 0.3, 0.3}}
	for n, e := range lights[4:8] {
		f := &e.Frame
		at, right, up := r3.Add(f.At, r3.Scale(0.5, f.Axis)), r3.Scale(0.6, f.Right), r3.Scale(0.6, f.Up())
		s.Sheets = append(s.Sheets, solid.Sheet{ID: solid.ID(4000000 + n), Name: fmt.Sprintf("cloth%d", n), Front: silk, Back: silk, Corners: []r3.Vec{
			r3.Sub(r3.Sub(at, right), up), r3.Sub(r3.Add(at, right), up), r3.Add(r3.Add(at, right), up), r3.Add(r3.Sub(at, right), up)}})
	}
	return s, floor, lights
}

// least is the shortest of some runs.
func least(times int, run func()) time.Duration {
	shortest := time.Hour
	for range times {
		start := time.Now()
		run()
		shortest = min(shortest, time.Since(start))
	}
	return shortest
}

func readPeer(t *testing.T, name string) (seconds float64, field []float64) {
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := bufio.NewReader(f)
	if _, err := fmt.Fscan(r, &seconds); err != nil {
		t.Fatal(err)
	}
	for {
		var v float64
		if _, err := fmt.Fscan(r, &v); err != nil {
			return seconds, field
		}
		field = append(field, v)
	}
}

package light

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// lookingGlass is what a test's mirror reflects.
const lookingGlass = 0.8

// glass is a sheet that mirrors from its front.
func glass(s solid.Sheet, rho float64) solid.Sheet {
	s.Front, s.Back = solid.Skin{Reflect: colour.RGB{rho, rho, rho}, Mirror: 1}, solid.Skin{}
	return s
}

// inMirror is a place in the mirror x = 0.
func inMirror(p r3.Vec) r3.Vec { return r3.Vec{X: -p.X, Y: p.Y, Z: p.Z} }

// A mirror as wide as the set shows each lamp as the same lamp, mirrored, behind all that is mirrored, does: receptors to a
// millionth, fields as closely as fields are.
func TestMirrorIsTheMirroredLamp(t *testing.T) {
	r := rand.New(rand.NewPCG(81, 82))
	away := func(p r3.Vec) r3.Vec { return r3.Add(p, r3.Vec{X: 3}) }
	for range cases(12, 2) {
		s, lights := moved(room(r), away, false), lamps(r)
		var images []Emitter
		both := Levels{}
		for i := range lights {
			e := &lights[i]
			e.Frame.At = away(e.Frame.At)
			f := plan.Frame{At: inMirror(e.Frame.At), Axis: inMirror(e.Frame.Axis), Right: r3.Scale(-1, inMirror(e.Frame.Right))}
			images = append(images, Emitter{Name: e.Name + "'", Frame: f, Source: e.Source})
			both[e.Name], both[e.Name+"'"] = colour.RGB{1, 1, 1}, colour.RGB{lookingGlass, lookingGlass, lookingGlass}
		}
		floor := floorAt(3.013, 0.017, 0, 8, 31)
		to := Targets{Lattices: []Lattice{floor}}
		for range 40 {
			axis := r3.Unit(r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()})
			to.Points = append(to.Points, Receptor{At: r3.Vec{X: 3 + 8*r.Float64(), Y: 8 * r.Float64(), Z: 2 * r.Float64()}, Axis: axis, Response: Response(r.IntN(2))})
		}
		twice := &solid.Set{Prisms: append(s.Prisms, moved(s, inMirror, true).Prisms...), Sheets: append(s.Sheets, moved(s, inMirror, true).Sheets...)}
		wall := glass(solid.Sheet{ID: 9999, Corners: []r3.Vec{{Y: -60, Z: -60}, {Y: 60, Z: -60}, {Y: 60, Z: 60}, {Y: -60, Z: 60}}}, lookingGlass)
		mirroring := &solid.Set{Prisms: s.Prisms, Sheets: append([]solid.Sheet{wall}, s.Sheets...)}
		o := Options{Direct: true}
		got, want := basis(t, build(t, mirroring, o), lights, to), basis(t, build(t, twice, o), append(images, lights...), to)
		seen := 0.0
		for i := range to.Points {
			a, shares := got.Point(i, both)
			b, _ := want.Point(i, both)
			close(t, fmt.Sprint("receptor ", i), a.Y(), b.Y(), 1e-6)
			for k := range shares {
				if got.Terms[k].Path == Mirrored {
					seen += shares[k].Y()
				}
			}
		}
		if seen == 0 {
			t.Error("nothing comes by the mirror")
		}
		a, b := make([]float32, floor.NU*floor.NV), make([]float32, floor.NU*floor.NV)
		got.Field(0, both, a)
		want.Field(0, both, b)
		for n := range a {
			close(t, fmt.Sprint("point ", n), float64(a[n]), float64(b[n]), 2e-3)
		}
	}
}

// What a mirror shows ends with its edge, and what stands before it is seen once and stands in the way twice.
func TestMirrorEndsWithItsEdge(t *testing.T) {
	// From (1, 0, 0) by the mirror x = 0 to (1, y, 0): over (0, y/2, 0).
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1}, r3.Vec{}), Source: photometry.FromCandela(100, photometry.Uniform{}, photometry.Opening{})}
	square := glass(solid.Sheet{ID: 1, Corners: []r3.Vec{{Y: -0.5, Z: -0.5}, {Y: 0.5, Z: -0.5}, {Y: 0.5, Z: 0.5}, {Y: -0.5, Z: 0.5}}}, 1)
	post := func(x, y float64) solid.Prism {
		return solid.Prism{ID: 2, Base: box(x, y, 0.05, 0.05, 0), Z0: -1, Z1: 1}
	}
	for _, c := range []struct {
		y      float64
		posts  []solid.Prism
		comes  bool
		reason string
	}{
		{0.999, nil, true, "just within the edge"}, {1.001, nil, false, "just beyond it"}, {-0.999, nil, true, "within the other edge"},
		{0.8, []solid.Prism{post(0.5, 0.2)}, false, "a post on the way to the mirror"}, {0.8, []solid.Prism{post(0.5, 0.6)}, false, "a post on the way from it"},
		{0.8, []solid.Prism{post(-0.5, 0.2)}, true, "a post behind the mirror"}, {0.8, []solid.Prism{post(0.5, 1.2)}, true, "a post aside"},
	} {
		at := Receptor{At: r3.Vec{X: 1, Y: c.y}, Axis: r3.Unit(r3.Vec{X: -1, Y: -c.y / 2})}
		b := basis(t, build(t, &solid.Set{Prisms: c.posts, Sheets: []solid.Sheet{square}}, Options{}), []Emitter{e}, Targets{Points: []Receptor{at}})
		want := 0.0
		if c.comes {
			want = 100 / (4 + c.y*c.y)
		}
		close(t, c.reason, by(b, 0, Mirrored).Y(), want, 1e-12)
	}
}

// A lamp that the plane of a mirror cuts shows what lies before it.
func TestMirrorCutsALamp(t *testing.T) {
	wall := glass(solid.Sheet{ID: 1, Corners: []r3.Vec{{Y: -9, Z: -9}, {Y: 9, Z: -9}, {Y: 9, Z: 9}, {Y: -9, Z: 9}}}, 1)
	at := Receptor{At: r3.Vec{X: 0.7, Y: 1.5, Z: 0.2}, Axis: r3.Vec{Y: -1}}
	lamp := func(x, width float64) Emitter {
		return Emitter{Name: "a", Frame: looking(r3.Vec{X: x}, r3.Vec{X: x, Y: 1}),
			Source: photometry.Source{Flux: 1000 * width, Distribution: photometry.Cosine{}, Opening: face(width, 0.4)}}
	}
	whole := basis(t, build(t, &solid.Set{Sheets: []solid.Sheet{wall}}, Options{}), []Emitter{lamp(0.1, 0.6)}, Targets{Points: []Receptor{at}})
	half := basis(t, build(t, &solid.Set{Sheets: []solid.Sheet{wall}}, Options{}), []Emitter{lamp(0.2, 0.4)}, Targets{Points: []Receptor{at}})
	close(t, "what lies before it", by(whole, 0, Mirrored).Y(), by(half, 0, Mirrored).Y(), 1e-9)
}

// A room with a wall that is all mirror is half of a room of twice its length with two lamps, reflected light and all.
func TestMirroredRoomIsTwiceTheRoom(t *testing.T) {
	const rho, width, depth, height = 0.6, 3.0, 4.0, 2.5
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 1.2, Y: 1.5, Z: 1.4}, r3.Vec{X: 3, Y: 3, Z: 1}),
		Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}, Opening: face(0.4, 0.4)}}
	other := e
	other.Name, other.Frame.At.X, other.Frame.Axis.X, other.Frame.Right = "b", -1.2, -e.Frame.Axis.X, r3.Vec{X: e.Frame.Right.X, Y: -e.Frame.Right.Y, Z: -e.Frame.Right.Z}
	single := shell(width, depth, height, colour.RGB{rho, rho, rho})
	wall := glass(solid.Sheet{ID: 99, Corners: []r3.Vec{{X: 1e-4}, {X: 1e-4, Y: depth}, {X: 1e-4, Y: depth, Z: height}, {X: 1e-4, Z: height}}}, 1)
	single.Sheets = append(single.Sheets, wall)
	double := moved(shell(2*width, depth, height, colour.RGB{rho, rho, rho}), func(p r3.Vec) r3.Vec { return r3.Add(p, r3.Vec{X: -width}) }, false)
	points := []Receptor{{At: r3.Vec{X: 1.5, Y: 2, Z: 1}, Axis: up}, {At: r3.Vec{X: 2.5, Y: 1, Z: 1.5}, Axis: r3.Vec{X: -1}}, {At: r3.Vec{X: 0.3, Y: 3, Z: 0.4}, Axis: r3.Vec{Y: 1}, Response: Dome}}
	floor := floorAt(0.213, 0.217, 0, 2.5, 21)
	to := Targets{Points: points, Lattices: []Lattice{floor}}
	one, two := basis(t, build(t, single, Options{}), []Emitter{e}, to), basis(t, build(t, double, Options{}), []Emitter{e, other}, to)
	all := Levels{"a": {1, 1, 1}, "b": {1, 1, 1}}
	for i := range points {
		a, _ := one.Point(i, all)
		b, _ := two.Point(i, all)
		close(t, fmt.Sprint("receptor ", i), a.Y(), b.Y(), 5e-3)
		close(t, fmt.Sprint("reflected at ", i), by(one, i, Reflected).Y(), by(two, i, Reflected).Y(), 1e-2)
	}
	a, b := make([]float32, floor.NU*floor.NV), make([]float32, floor.NU*floor.NV)
	one.ReflectedField(0, all, a)
	two.ReflectedField(0, all, b)
	mean := 0.0
	for n := range a {
		mean += math.Abs(float64(a[n]/b[n])-1) / float64(len(a))
	}
	if mean > 0.02 {
		t.Errorf("reflected light on the floor is %.2f %% off in the mean", 100*mean)
	}
}

// The light of mirrors that hang and lean in a furnished room: fields as receptors have it.
func TestMirrorFieldsAgreeWithReceptors(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(91, 92))
	for scene := range cases(14, 7) {
		s, lights := room(r), lamps(r)
		for k := range 2 {
			at := r3.Vec{X: 1 + 6*r.Float64(), Y: 1 + 6*r.Float64(), Z: 0.8 + r.Float64()}
			s.Sheets = append(s.Sheets, glass(sheetAt(solid.ID(900+k), at, 2*math.Pi*r.Float64(), 1+r.Float64(), 1.2, 1.4), lookingGlass))
		}
		floor := latticeOf(scene)
		to := Targets{Lattices: []Lattice{floor}}
		var index []int
		w := build(t, s, Options{Direct: true})
		for range 150 {
			i, j := r.IntN(floor.NU), r.IntN(floor.NV)
			if _, in := w.bvh.Inside(floor.At(i, j)); !in {
				to.Points = append(to.Points, floor.Receptor(i, j))
				index = append(index, j*floor.NU+i)
			}
		}
		b := basis(t, w, lights, to)
		all := Levels{}
		for _, e := range lights {
			all[e.Name] = colour.RGB{1, 1, 1}
		}
		field := make([]float32, floor.NU*floor.NV)
		b.Field(0, all, field)
		off, sum := 0.0, 0.0
		for p, n := range index {
			want, _ := b.Point(p, all)
			off += math.Abs(float64(field[n]) - want.Y())
			sum += want.Y()
		}
		if off > 0.01*sum {
			t.Errorf("scene %d: the field is %.2f %% off", scene, 100*off/sum)
		}
	}
}

// A lamp shines on a mirror where some of it lies before that by more than was asked, and a face only where some of the mirror lies before the face.
func TestWhatShinesOnAMirror(t *testing.T) {
	m := &solid.Mirror{Corners: []r3.Vec{{Y: -1, Z: -1}, {Y: 1, Z: -1}, {Y: 1, Z: 1}, {Y: -1, Z: 1}}, Plane: solid.Plane{N: r3.Vec{X: 1}}}
	ball := photometry.Opening{Form: photometry.Sphere, Width: 0.4}
	for _, c := range []struct {
		name   string
		o      photometry.Opening
		at     r3.Vec
		aim    r3.Vec
		before float64
		want   bool
	}{
		{"a point before", photometry.Opening{}, r3.Vec{X: 1}, r3.Vec{X: 2}, 0, true},
		{"a point behind", photometry.Opening{}, r3.Vec{X: -1}, r3.Vec{}, 0, false},
		{"a point not far enough before", photometry.Opening{}, r3.Vec{X: 1}, r3.Vec{}, 1, false},
		{"half a ball", ball, r3.Vec{X: -0.1}, r3.Vec{X: 1}, 0, true},
		{"a ball behind", ball, r3.Vec{X: -0.21}, r3.Vec{X: 1}, 0, false},
		{"a face toward it", face(1, 1), r3.Vec{X: 2}, r3.Vec{}, 0, true},
		{"a face away from it", face(1, 1), r3.Vec{X: 2}, r3.Vec{X: 3}, 0, false},
		{"a face that sees an edge of it", face(1, 1), r3.Vec{X: 0.5, Y: 0.9}, r3.Vec{X: 0.5, Y: 2}, 0, true},
		{"a face beside it that sees none", face(1, 1), r3.Vec{X: 0.5, Y: 1.1}, r3.Vec{X: 0.5, Y: 2}, 0, false},
		{"a face behind that leans over its plane", face(1, 1), r3.Vec{X: -0.2, Y: -3}, r3.Vec{X: -0.2}, 0, true},
		{"a face behind", face(1, 1), r3.Vec{X: -0.6, Y: -3}, r3.Vec{X: -0.6}, 0, false},
	} {
		e := Emitter{Frame: looking(c.at, c.aim), Source: photometry.Source{Flux: 1, Distribution: photometry.Lambertian(c.o.Form), Opening: c.o}}
		if got := shinesOn(newLamp(&e, 1, 1, 1), m, c.before); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A patch behind one mirror is lit by the next one as if that were alone: by the lamp's image, by hand. A board before a mirror, or behind it, in the list of
// a set leaves both what they are.
func TestMirrorsOneAfterTheOther(t *testing.T) {
	level := glass(solid.Sheet{ID: 1, Corners: []r3.Vec{{X: -1.6, Y: -0.1, Z: 1}, {X: -1.4, Y: -0.1, Z: 1}, {X: -1.4, Y: 0.1, Z: 1}, {X: -1.6, Y: 0.1, Z: 1}}}, lookingGlass)
	wall := glass(solid.Sheet{ID: 2, Corners: []r3.Vec{{X: 2, Y: 3}, {X: 2, Y: -3}, {X: 2, Y: -3, Z: 4}, {X: 2, Y: 3, Z: 4}}}, lookingGlass)
	silvered := silver(solid.Sheet{ID: 3, Corners: []r3.Vec{{X: -4, Y: 8}, {X: -4, Y: 9}, {X: -4, Y: 9, Z: 1}, {X: -4, Y: 8, Z: 1}}}, 0.8, 12)
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 0.5, Z: 2}, r3.Vec{X: 0.5}), Source: photometry.FromCandela(1000, photometry.Uniform{}, photometry.Opening{})}
	corners, normal := tile(0, 0, 0.02, 1)
	for name, sheets := range map[string][]solid.Sheet{"the far one first": {level, wall}, "last": {wall, level}, "a board first": {silvered, level, wall}, "a board between": {level, silvered, wall}} {
		w := build(t, &solid.Set{Sheets: sheets}, Options{Workers: 1})
		if len(w.mirrors) != 2 || len(w.boards) != len(sheets)-2 {
			t.Fatalf("%s: %d mirrors and %d boards", name, len(w.mirrors), len(w.boards))
		}
		lamp := w.surfaceLampOf(w.newLamp(&e))
		lamp.SetPatch(0, corners, normal)
		straight, image := 0.5*0.5+4, 3.5*3.5+4.0
		want := 1000 * (2/math.Pow(straight, 1.5) + lookingGlass*2/math.Pow(image, 1.5)) * 0.02 * 0.02
		close(t, name, lamp.Flux(0, corners, false).Y()/want, 1, 1e-3)
	}
}

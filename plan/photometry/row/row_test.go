package row_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry/row"
)

// words is how many words of receptors the rows of these tests have.
const words = 3

// lamp is a point of a lamp in space, with its frame.
type lamp struct{ at, ahead, right, up r3.Vec }

// leaning is a lamp whose axes lie along none of the world's.
func leaning() lamp {
	ahead := r3.Unit(r3.Vec{X: 0.3, Y: 0.8, Z: -0.5})
	right := r3.Unit(r3.Cross(ahead, r3.Vec{X: 0.1, Y: 0.2, Z: 1}))
	return lamp{at: r3.Vec{X: 0.4, Y: -0.3, Z: 2.1}, ahead: ahead, right: right, up: r3.Cross(right, ahead)}
}

// seen is a receptor's place in the lamp's frame: X to its right, Y up, Z ahead.
func (l *lamp) seen(p r3.Vec) r3.Vec {
	d := r3.Sub(p, l.at)
	return r3.Vec{X: r3.Dot(d, l.right), Y: r3.Dot(d, l.up), Z: r3.Dot(d, l.ahead)}
}

// receptors are a row of places, and how each responds to light.
type receptors struct {
	name        string
	start, step r3.Vec
	axis        r3.Vec  // of all of them; unless
	toward      *r3.Vec // each dome turns to a camera here
	dome        bool
}

func (r *receptors) at(i int) r3.Vec { return r3.Add(r.start, r3.Scale(float64(i), r.step)) }

func (r *receptors) axisOf(i int) r3.Vec {
	if r.toward == nil {
		return r.axis
	}
	return r3.Unit(r3.Sub(*r.toward, r.at(i)))
}

// view says how the row is seen from the lamp: products of sums of a constant and a multiple of the index, multiplied out.
func (r *receptors) view(l *lamp) (v row.View) {
	start, step := l.seen(r.start), r3.Sub(l.seen(r.at(1)), l.seen(r.start))
	v.Ahead, v.Right, v.Up = [2]float64{start.Z, step.Z}, [2]float64{start.X, step.X}, [2]float64{start.Y, step.Y}
	v.Square = [3]float64{r3.Norm2(start), 2 * r3.Dot(start, step), r3.Norm2(step)}
	v.Cos = 1
	if r.dome {
		v.Even, v.Cos = 0.5, 0.5
	}
	away := r3.Sub(r.start, l.at)
	if r.toward == nil {
		v.Fall = [3]float64{-r3.Dot(away, r.axis), -r3.Dot(r.step, r.axis)}
		v.Lean = make([]float64, row.Word)
		for i := range v.Lean {
			v.Lean[i] = 1
		}
		return v
	}
	camera := r3.Sub(*r.toward, r.start)
	v.Fall = [3]float64{-r3.Dot(away, camera), r3.Dot(away, r.step) - r3.Dot(r.step, camera), r3.Norm2(r.step)}
	for i := range words * row.Word {
		v.Lean = append(v.Lean, 1/r3.Norm(r3.Sub(*r.toward, r.at(i))))
	}
	return v
}

// lux is what receptor i gets, by the inverse square law alone: an intensity is asked for in one direction, as a unit
// vector to the lamp's right, up and ahead.
func (r *receptors) lux(l *lamp, i int, candela func(r3.Vec) float64) float64 {
	way := r3.Sub(r.at(i), l.at)
	cos := -r3.Dot(r3.Unit(way), r.axisOf(i))
	if r.dome {
		cos = (1 + cos) / 2
	}
	return candela(r3.Unit(l.seen(r.at(i)))) * max(0, cos) / r3.Norm2(way)
}

// rowsOf are rows that cross the lamp's light, on planes and on domes. The plane of the lamp cuts the second, so that
// some of its receptors lie behind; the far end of the last looks away from the lamp.
func rowsOf() (all []receptors) {
	camera := r3.Vec{X: -2, Y: 1.5, Z: 1.2}
	for _, dome := range []bool{false, true} {
		all = append(all,
			receptors{name: "floor", start: r3.Vec{X: -3, Y: 1}, step: r3.Vec{X: 0.04, Y: 0.01}, axis: r3.Vec{Z: 1}, dome: dome},
			receptors{name: "across", start: r3.Vec{X: -1, Y: -4, Z: 1.3}, step: r3.Vec{X: 0.01, Y: 0.05, Z: 0.002}, axis: r3.Unit(r3.Vec{X: 0.2, Y: -0.4, Z: 0.8}), dome: dome})
	}
	return append(all, receptors{name: "toward a camera", start: r3.Vec{X: -4, Y: 0.5, Z: 1.1}, step: r3.Vec{X: 0.05, Y: 0.01}, toward: &camera, dome: true})
}

// mask leaves receptors out in no regular way, other ones in each word.
func mask(w int) uint64 {
	return [words]uint64{0x8000_0000_0000_0001, 0xB5C3_9A6E_1F27_D048, ^uint64(0)}[w]
}

// intensities are what the kernels are made of, as plain functions of a direction, cd; allowed is how far a kernel may be
// off, of the intensity and of its peak.
type intensities struct {
	name             string
	kernel           row.Kernel
	candela          func(d r3.Vec) float64
	peak             float64 // cd
	ofItself, ofPeak float64
}

// exact is what rounding leaves.
const exact = 1e-11

// before gives nothing behind the plane of the lamp.
func before(candela func(r3.Vec) float64) func(r3.Vec) float64 {
	return func(d r3.Vec) float64 {
		if d.Z <= 0 {
			return 0
		}
		return candela(d)
	}
}

func everyKernel() []intensities {
	cosine := func(d r3.Vec) float64 { return 700 * max(0, d.Z) }
	uniform := func(r3.Vec) float64 { return 90 }
	line := func(d r3.Vec) float64 { return 250 * math.Sin(math.Acos(d.X)) }
	// A grid lets pass what its cells leave open: across them by 1 - tan a/tan 50°, along them by 1 - tan a/tan 35°.
	tan50, tan35 := math.Tan(50*math.Pi/180), math.Tan(35*math.Pi/180)
	cells := before(func(d r3.Vec) float64 {
		return 700 * d.Z * max(0, 1-math.Abs(d.X/d.Z)/tan50) * max(0, 1-math.Abs(d.Y/d.Z)/tan35)
	})
	// A beam of which the intensity halves 12° and 0.5° off its axis.
	beam := func(half float64) func(float64) float64 {
		return func(t float64) float64 { return 5000 * math.Exp2(-math.Pow(t/(half*math.Pi/180), 2)) }
	}
	round := func(at func(float64) float64) func(r3.Vec) float64 {
		return func(d r3.Vec) float64 { return at(math.Acos(max(-1, min(1, d.Z)))) }
	}
	// Light that differs all round, and lm to scale it by.
	lopsided := func(d r3.Vec) float64 { return (2 + d.X - 0.5*d.Y*d.Z + 0.3*d.Z) / 1000 }
	const flux = 800
	cd := func(d r3.Vec) float64 { return flux * lopsided(d) }
	inFrame := func(d r3.Vec) float64 { return lopsided(r3.Vec{X: d.X, Y: d.Y, Z: -d.Z}) }
	byParts := func(right, up, ahead float64) float64 { return lopsided(r3.Vec{X: right, Y: up, Z: ahead}) }
	return []intensities{
		{"cosine", row.Cosine(700, true), cosine, 700, exact, exact},
		{"cosine, two sides", row.Cosine(700, false), cosine, 700, exact, exact},
		{"uniform", row.Uniform(90, false), uniform, 90, exact, exact},
		{"uniform, one side", row.Uniform(90, true), before(uniform), 90, exact, exact},
		{"line", row.Line(250, false), line, 250, exact, exact},
		{"line, one side", row.Line(250, true), before(line), 250, exact, exact},
		{"grid", row.CosineGrid([2]float64{1 / tan50, 1 / tan35}, 700), cells, 700, exact, exact},
		{"general", row.General(inFrame, flux, false), cd, 2.6, exact, exact},
		{"general, one side", row.General(inFrame, flux, true), before(cd), 2.6, exact, exact},
		// Tables: straight lines between entries are 2e-4 off at most, below a thousandth of the peak of that.
		{"beam", row.Axial(beam(12), 5000, false), round(beam(12)), 5000, 2e-4, 2e-7},
		{"pencil", row.Axial(beam(0.5), 5000, false), round(beam(0.5)), 5000, 2e-4, 2e-7},
		{"wide beam, one side", row.Axial(beam(80), 5000, true), before(round(beam(80))), 5000, 2e-4, 2e-7},
		// Maps of cells of a degree in numbers of 24 bits.
		{"measured", row.Measured(byParts, flux, false), cd, 2.6, 5e-4, 0},
		{"measured, one side", row.Measured(byParts, flux, true), before(cd), 2.6, 5e-4, 0},
	}
}

// Every kernel gives what its intensities say, receptor by receptor: those of its mask, on top of what is there, times
// its scale.
func TestKernelsFollowTheInverseSquareLaw(t *testing.T) {
	const scale, there = 0.25, 3
	l := leaning()
	for _, k := range everyKernel() {
		for _, r := range rowsOf() {
			name := fmt.Sprintf("%s, %s, dome %v", k.name, r.name, r.dome)
			v := r.view(&l)
			lit := 0
			for w := range words {
				var got [row.Word]float64
				for i := range got {
					got[i] = there
				}
				k.kernel.Add(&got, mask(w), w, &v, scale)
				for i := range got {
					n := w*row.Word + i
					want, unit := there+0.0, 0.0
					if mask(w)>>i&1 != 0 {
						want += scale * r.lux(&l, n, k.candela)
						unit = scale * r.lux(&l, n, func(r3.Vec) float64 { return 1 })
					}
					if want > there {
						lit++
					}
					if off := math.Abs(got[i] - want); off > k.ofItself*(want-there)+k.ofPeak*k.peak*unit+exact {
						t.Fatalf("%s: receptor %d: %.12g lx, want %.12g", name, n, got[i]-there, want-there)
					}
				}
			}
			if lit < 20 && k.name != "pencil" {
				t.Errorf("%s: only %d receptors are lit, which tests little", name, lit)
			}
		}
	}
}

// A pencil is met: its row goes through its axis, so that the receptors lie close about it.
func TestPencilIsFoundOnItsAxis(t *testing.T) {
	l := leaning()
	at := func(angle float64) float64 { return 5000 * math.Exp2(-math.Pow(angle/(0.5*math.Pi/180), 2)) }
	r := receptors{step: r3.Scale(0.002, l.right), axis: r3.Scale(-1, l.ahead)}
	r.start = r3.Sub(r3.Add(l.at, r3.Scale(3, l.ahead)), r3.Scale(32, r.step))
	v := r.view(&l)
	var got [row.Word]float64
	row.Axial(at, 5000, true).Add(&got, ^uint64(0), 0, &v, 1)
	for i, lux := range got {
		angle := math.Atan(0.002 * float64(i-32) / 3)
		want := at(angle) * math.Pow(math.Cos(angle), 3) / 9
		if !(math.Abs(lux-want) <= 2e-4*want+2e-7*5000/9) {
			t.Errorf("receptor %d: %g lx, want %g", i, lux, want)
		}
	}
}

// A receptor in the very point that shines gets nothing from it, and its neighbours keep theirs.
func TestAReceptorInTheLampItself(t *testing.T) {
	l := lamp{ahead: r3.Vec{X: 1}, right: r3.Vec{Y: 1}, up: r3.Vec{Z: 1}}
	for _, k := range everyKernel() {
		for _, dome := range []bool{false, true} {
			r := receptors{start: r3.Vec{X: -1}, step: r3.Vec{X: 0.5}, axis: r3.Vec{X: -1}, dome: dome}
			v := r.view(&l)
			var got [row.Word]float64
			k.kernel.Add(&got, 0b1111, 0, &v, 1)
			if got[2] != 0 {
				t.Errorf("%s, dome %v: %g lx in the lamp itself", k.name, dome, got[2])
			}
			want := k.candela(r3.Vec{Z: 1}) / 0.25
			if !(math.Abs(got[3]-want) <= k.ofItself*want+exact) {
				t.Errorf("%s, dome %v: %g lx half a metre ahead, want %g", k.name, dome, got[3], want)
			}
		}
	}
}

package radiosity

// tent is two steps of four and of two points: over it every set of directions counts the same, and
// its middle is a point.
var tent = [5]float32{1, 2, 2, 2, 1}

// smooth lends each point what its neighbours see, in rows and then in columns, not beyond a point
// without data or something that stands between. spare is memory to use again.
func (f *frame) smooth(plane, spare []float32) []float32 {
	if len(spare) < len(plane) {
		spare = make([]float32, len(plane))
	}
	spare = spare[:len(plane)]
	for j := range f.NV {
		f.line(spare, plane, j*f.NU, 1, f.NU, f.cuts.u)
	}
	for i := range f.NU {
		f.line(plane, spare, i, f.NU, f.NV, f.cuts.v)
	}
	return spare
}

// line smooths the points start, start + step, ... of a plane, run by run of those with data.
func (f *frame) line(to, from []float32, start, step, count int, cuts []uint64) {
	for i := 0; i < count; {
		n := start + i*step
		if f.blankAt(n) {
			to[n] = 0
			i++
			continue
		}
		end := i + 1
		for end < count && !f.blankAt(start+end*step) && !set(cuts, start+(end-1)*step) {
			end++
		}
		smoothRun(to, from, start+i*step, step, end-i)
		i = end
	}
}

func (f *frame) blankAt(n int) bool { return set(f.Mask, n) }

// smoothRun smooths a run. At its ends the four points there stand in, each set of directions once, and the
// slope between them and the four that lie two points farther in is carried on.
func smoothRun(to, from []float32, start, step, count int) {
	at := func(i int) float32 { return from[start+i*step] }
	four := func(i int) float32 { return (at(i) + at(i+1) + at(i+2) + at(i+3)) * 0.25 }
	for i := range count {
		n := start + i*step
		switch {
		case i >= 2 && i < count-2:
			to[n] = (from[n-2*step] + from[n+2*step] + 2*(from[n-step]+from[n]+from[n+step])) * 0.125
		case count < 6:
			to[n] = shortRun(at, i, count)
		case i < 2:
			a := four(0)
			to[n] = max(0, a+(float32(i)-1.5)*(four(2)-a)*0.5)
		default:
			a := four(count - 4)
			to[n] = max(0, a+(float32(count-1-i)-1.5)*(four(count-6)-a)*0.5)
		}
	}
}

// shortRun is point i of a run too short for slopes.
func shortRun(at func(int) float32, i, count int) float32 {
	var sum, weight float32
	for k, w := range tent {
		if d := i + k - 2; d >= 0 && d < count {
			sum += w * at(d)
			weight += w
		}
	}
	return sum / weight
}

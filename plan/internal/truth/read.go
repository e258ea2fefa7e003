package truth

import (
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"scrimshaw/plan/colour"
)

// batches is how many times every part is estimated, each by a scramble of its own.
const batches = 16

// The first samples of a batch, and the most that direct light takes.
const (
	firstSamples = 256
	maxDirect    = 1 << 12
)

// worthLooking is the share of the reflected light that a leg may bring without being looked along each time.
const worthLooking = 0.1

// surely is how many standard errors a figure is never off by.
const surely = 4

// estimate is a part as it grows: the sums of its batches over so many samples.
type estimate struct {
	sums [batches]colour.RGB
	each int // samples a batch
	gain colour.RGB
}

// grow doubles the samples.
func (e *estimate) grow(seed uint64, sample func(p *points) colour.RGB) {
	more := max(firstSamples, e.each)
	for b := range batches {
		key := mix(seed + uint64(b))
		for i := range more {
			p := newPoints(key, uint32(e.each+i))
			e.sums[b] = e.sums[b].Add(sample(&p))
		}
	}
	e.each += more
}

// batch is the mean of a batch.
func (e *estimate) batch(b int) colour.RGB {
	return e.sums[b].Scale(1 / float64(max(1, e.each))).Times(e.gain)
}

// bare is the luminous quantity before the gain.
func (e *estimate) bare() (y float64) {
	for b := range batches {
		y += e.sums[b].Y()
	}
	return y / float64(batches*max(1, e.each))
}

// partOf is the mean of batches and its standard error.
func partOf(batch func(b int) colour.RGB) (p Part) {
	for b := range batches {
		p.RGB = p.RGB.Add(batch(b).Scale(1.0 / batches))
	}
	p.Y = p.RGB.Y()
	for b := range batches {
		v := batch(b)
		for c := range v {
			p.SE[c] += (v[c] - p.RGB[c]) * (v[c] - p.RGB[c])
		}
		p.YSE += (v.Y() - p.Y) * (v.Y() - p.Y)
	}
	const scale = batches * (batches - 1)
	for c := range p.SE {
		p.SE[c] = math.Sqrt(p.SE[c] / scale)
	}
	p.YSE = math.Sqrt(p.YSE / scale)
	return p
}

// reading is a receptor and the estimates of its two parts.
type reading struct {
	*set
	r            Receptor
	seed         uint64
	direct, back estimate
	worth        float64
}

// read estimates the light at one receptor until it is close enough.
func (s *set) read(r Receptor, o Options, index uint64) Value {
	gain := colour.RGB{1, 1, 1}
	if r.Response == Spot {
		r, gain = s.resolveSpot(r)
		r.Response = Flat
	}
	e := reading{set: s, r: r, seed: mix(mix(o.Seed) + index), direct: estimate{gain: gain}, back: estimate{gain: gain}}
	e.growDirect()
	e.growBack()
	for {
		v := e.value()
		aim := o.Error * v.Total.Y
		switch more := e.back.each*batches*2 <= o.Most; {
		case math.Hypot(v.Direct.YSE, v.Reflected.YSE) <= aim, v.Total.Y+surely*v.Total.YSE < o.Dark:
			return v
		case e.direct.each < maxDirect && (v.Direct.YSE > aim/2 || !more):
			e.growDirect()
		case more:
			e.growBack()
		default:
			return v
		}
	}
}

// value is what is known by now.
func (e *reading) value() Value {
	return Value{
		Direct: partOf(e.direct.batch), Reflected: partOf(e.back.batch), Paths: e.back.each * batches,
		Total: partOf(func(b int) colour.RGB { return e.direct.batch(b).Add(e.back.batch(b)) }),
	}
}

func (e *reading) growDirect() {
	e.direct.grow(e.seed, func(p *points) (sum colour.RGB) {
		for _, l := range e.lamps {
			n := p.next()
			sum = sum.Add(e.set.direct(l, &e.r, n, &p.plain))
		}
		return sum
	})
}

func (e *reading) growBack() {
	e.worth = worthLooking * e.back.bare()
	e.back.grow(mix(e.seed), func(p *points) colour.RGB { return e.reflected(e.r, p, e.worth) })
}

// each calls do for 0 to n-1 on several goroutines.
func each(workers, n int, do func(i int)) {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	var next atomic.Int64
	var done sync.WaitGroup
	for range min(workers, n) {
		done.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	done.Wait()
}

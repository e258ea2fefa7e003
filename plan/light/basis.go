package light

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// Basis holds lux (or cd/m2) at Drive {1, 1, 1}. Points[t][i] is term t at receptor i by channel of
// AP1, before the receptor's Gains. A field sums the terms of one light: Fields[l][k] is what light l (in
// the order of the emitters) gives straight to lattice k, one value a point, or where a tinted pane
// colours some of it three planes of values one after the other, for the channels of AP1.
// Reflected[l][k] is what comes back of it, likewise, or nil where nothing does.
//
// A Basis is not changed by use and may be used by many goroutines.
type Basis struct {
	Lights    []string
	Terms     []Term // by light in the order of the emitters: direct, without panes first, then reflected
	Points    [][]colour.RGB
	Fields    [][][]float32
	Reflected [][][]float32
	Gains     []colour.RGB // by receptor: {1, 1, 1}; of a Radiance, from the illuminance to the luminance

	targets Targets
	resolve []Receptor // the targets' points, with Radiance resolved to a surface
	columns []column
	doubt   doubt
	closer  *radiosity.Transport // likewise for the receptors alone, by more rays; nil where fewer do
	returns *radiosity.Transport // how surfaces and targets see each other; nil without reflected light
}

// column is all that one light gives.
type column struct {
	terms  []Term
	points [][]colour.RGB
	fields [][]float32
	back   [][]float32 // reflected, by lattice
	spread []float64   // by receptor, lx: see Basis.Error; nil without reflected light
}

// Basis computes what each light gives to the targets at a drive of {1, 1, 1}. Names of lights
// must differ. It stops early, with the context's error, when that is cancelled.
func (w *World) Basis(ctx context.Context, lights []Emitter, to Targets) (*Basis, error) {
	return w.basis(ctx, nil, lights, to, nil)
}

// Rebase computes a basis again for the same targets after some lights have moved or changed, or
// are new. Lights that are not named in moved and were in the old basis keep their columns.
func (w *World) Rebase(ctx context.Context, old *Basis, lights []Emitter, moved ...string) (*Basis, error) {
	return w.basis(ctx, old, lights, old.targets, moved)
}

// Forget lets go of how surfaces see each other, which is most of the memory of a basis and which only Rebase
// asks for: it works that out anew then. No other goroutine may use the basis meanwhile.
func (b *Basis) Forget() { b.returns, b.closer = nil, nil }

func (w *World) basis(ctx context.Context, old *Basis, lights []Emitter, to Targets, moved []string) (*Basis, error) {
	if err := check(lights, &to); err != nil {
		return nil, err
	}
	b := &Basis{targets: to, columns: make([]column, len(lights)), doubt: w.doubt}
	if old != nil {
		b.resolve, b.Gains, b.returns, b.closer = old.resolve, old.Gains, old.returns, old.closer
	} else {
		w.resolve(b)
	}
	var fresh []int
	for i := range lights {
		b.Lights = append(b.Lights, lights[i].Name)
		if k := old.column(lights[i].Name); k >= 0 && !slices.Contains(moved, lights[i].Name) {
			b.columns[i] = old.columns[k]
		} else {
			fresh = append(fresh, i)
		}
	}
	lamps := make([]*lamp, len(lights))
	err := parallel.For(ctx, w.workers, len(fresh), func(_, k int) {
		l := newLamp(&lights[fresh[k]], w.faces, w.tubes, w.bundle)
		if len(to.Lattices) > 0 {
			l.kernel = photometry.RowKernel(photometry.Source{Flux: l.flux, Distribution: l.shape, Opening: l.opening}, l.onesided)
		}
		lamps[fresh[k]] = l
	})
	if err != nil {
		return nil, err
	}
	p := w.progress(len(fresh), &to)
	if err := w.points(ctx, b, lamps, fresh); err != nil {
		return nil, err
	}
	p.step(1)
	if err := w.fields(ctx, b, lamps, fresh, p); err != nil {
		return nil, err
	}
	if err := w.reflect(ctx, b, lamps, fresh, p); err != nil {
		return nil, err
	}
	b.assemble()
	return b, nil
}

// check finds what would make a basis meaningless.
func check(lights []Emitter, to *Targets) error {
	seen := map[string]bool{}
	for i := range lights {
		if seen[lights[i].Name] {
			return fmt.Errorf("light: two lights are named %q", lights[i].Name)
		}
		seen[lights[i].Name] = true
	}
	for i := range to.Lattices {
		l := &to.Lattices[i]
		if l.NU <= 0 || l.NV <= 0 || l.Weight == Radiance {
			return fmt.Errorf("light: lattice %d has %d by %d points of weight %d", i, l.NU, l.NV, l.Weight)
		}
		if l.Toward != nil && l.Weight != Dome {
			return fmt.Errorf("light: lattice %d is turned to a place; only domes are", i)
		}
	}
	return nil
}

// resolve finds the surfaces that spot meters look at.
func (w *World) resolve(b *Basis) {
	for i := range b.targets.Points {
		r, gain := b.targets.Points[i], colour.RGB{1, 1, 1}
		if r.Weight == Radiance {
			r, gain = w.surface(&r)
		}
		b.resolve, b.Gains = append(b.resolve, r), append(b.Gains, gain)
	}
}

// column is the index of a light's column, -1 where there is none.
func (b *Basis) column(light string) int {
	if b == nil {
		return -1
	}
	return slices.Index(b.Lights, light)
}

// points traces the fresh lights to the receptors.
func (w *World) points(ctx context.Context, b *Basis, lamps []*lamp, fresh []int) error {
	n := len(b.resolve)
	traced := make([][]share, len(fresh)*n)
	tracers := make([]tracer, parallel.Workers(w.workers, len(traced)))
	err := parallel.For(ctx, w.workers, len(traced), func(worker, i int) {
		t := &tracers[worker]
		t.BVH = w.bvh
		traced[i] = slices.Clone(t.light(lamps[fresh[i/n]], &b.resolve[i%n]))
	})
	for k, i := range fresh {
		b.columns[i].collect(b.Lights[i], traced[k*n:(k+1)*n])
	}
	return err
}

// collect makes terms of the shares of each receptor.
func (c *column) collect(light string, traced [][]share) {
	for _, shares := range traced {
		for _, s := range shares {
			if c.find(s.via) < 0 {
				c.terms = append(c.terms, Term{Light: light, Path: Direct, Via: s.via, Filter: s.filter})
			}
		}
	}
	slices.SortFunc(c.terms, func(a, b Term) int {
		return cmp.Or(cmp.Compare(len(a.Via), len(b.Via)), slices.Compare(a.Via, b.Via))
	})
	c.points = make([][]colour.RGB, len(c.terms))
	for t := range c.points {
		c.points[t] = make([]colour.RGB, len(traced))
	}
	for i, shares := range traced {
		for _, s := range shares {
			c.points[c.find(s.via)][i] = s.filter.Scale(s.value)
		}
	}
}

// find is the index of the term by its panes, -1 where there is none.
func (c *column) find(via []solid.ID) int {
	return slices.IndexFunc(c.terms, func(t Term) bool { return slices.Equal(t.Via, via) })
}

// fields computes the fresh lights on the lattices.
func (w *World) fields(ctx context.Context, b *Basis, lamps []*lamp, fresh []int, p *progress) error {
	masks, _ := w.masks.Get().(*[]uint64)
	if masks == nil {
		masks = new([]uint64)
	}
	defer w.masks.Put(masks)
	for k := range b.targets.Lattices {
		lat := &b.targets.Lattices[k]
		var g *grid
		if lat.drawable() {
			g = newGrid(lat, w.bvh.Epsilon())
		}
		for _, i := range fresh {
			var values []float32
			var err error
			if g != nil {
				values, *masks, err = w.drawnField(ctx, g, lamps[i], *masks)
			} else {
				values, err = w.tracedField(ctx, lat, lamps[i])
			}
			if err != nil {
				return err
			}
			b.columns[i].fields = append(b.columns[i].fields, values)
			p.step(1)
		}
	}
	return nil
}

// drawnField draws shadows. It gives back the memory of the masks.
func (w *World) drawnField(ctx context.Context, g *grid, l *lamp, masks []uint64) ([]float32, []uint64, error) {
	f := w.newField(g, l, masks)
	if err := f.shadows(ctx, w.workers); err != nil {
		return nil, nil, err
	}
	values, err := f.sum(ctx, w.workers)
	return values, f.masks, err
}

// tracedField traces every point of a lattice whose receptors do not lie in its plane.
func (w *World) tracedField(ctx context.Context, lat *Lattice, l *lamp) ([]float32, error) {
	channels := 1
	if w.tinted {
		channels = 3
	}
	size := lat.NU * lat.NV
	out := make([]float32, channels*size)
	tracers := make([]tracer, parallel.Workers(w.workers, lat.NV))
	err := parallel.For(ctx, w.workers, lat.NV, func(worker, j int) {
		t := &tracers[worker]
		t.BVH = w.bvh
		r := Receptor{Weight: lat.Weight, Skip: lat.Skip}
		for i := range lat.NU {
			if lat.Masked(i, j) {
				continue
			}
			r.At = lat.At(i, j)
			r.Axis = lat.Axis(r.At)
			var sum colour.RGB
			for _, s := range t.light(l, &r) {
				sum = sum.Add(s.filter.Scale(s.value))
			}
			for c := range channels {
				out[c*size+j*lat.NU+i] = float32(sum[c])
			}
		}
	})
	return out, err
}

// assemble lays the columns side by side.
func (b *Basis) assemble() {
	b.Fields = make([][][]float32, len(b.columns))
	b.Reflected = make([][][]float32, len(b.columns))
	for i := range b.columns {
		c := &b.columns[i]
		b.Terms = append(b.Terms, c.terms...)
		b.Points = append(b.Points, c.points...)
		b.Fields[i], b.Reflected[i] = c.fields, c.back
	}
}

// Point returns the light at receptor i and the share of each term, in the order of Terms: lux, or
// cd/m² for a Radiance, by its Y.
func (b *Basis) Point(i int, d Drive) (total colour.RGB, shares []colour.RGB) {
	shares = make([]colour.RGB, len(b.Terms))
	for t := range b.Terms {
		term := &b.Terms[t]
		shares[t] = d[term.Light].Times(b.Points[t][i]).Times(b.Gains[i])
		total = total.Add(shares[t])
	}
	return total, shares
}

// Field sums the light on lattice k, lx, into dst, which must hold its NU by NV points, row by
// row.
func (b *Basis) Field(k int, d Drive, dst []float32) { b.field(k, d, dst, true) }

// Back is Field for reflected light alone.
func (b *Basis) Back(k int, d Drive, dst []float32) { b.field(k, d, dst, false) }

func (b *Basis) field(k int, d Drive, dst []float32, direct bool) {
	l := &b.targets.Lattices[k]
	dst = dst[:l.NU*l.NV]
	clear(dst)
	var gains []float32
	var planes [][]float32
	add := func(values []float32, drive colour.RGB) {
		switch len(values) {
		case 0:
		case len(dst):
			gains, planes = append(gains, float32(drive.Y())), append(planes, values)
		default:
			for c := range drive {
				var channel colour.RGB
				channel[c] = drive[c]
				gains = append(gains, float32(channel.Y()))
				planes = append(planes, values[c*len(dst):(c+1)*len(dst)])
			}
		}
	}
	for i, name := range b.Lights {
		if drive := d[name]; drive != (colour.RGB{}) {
			if direct {
				add(b.Fields[i][k], drive)
			}
			if len(b.Reflected[i]) > 0 {
				add(b.Reflected[i][k], drive)
			}
		}
	}
	sum(dst, planes, gains)
}

// sum adds planes to dst, four at a time.
func sum(dst []float32, planes [][]float32, gains []float32) {
	for ; len(planes) >= 4; planes, gains = planes[4:], gains[4:] {
		a, b, c, e := planes[0][:len(dst)], planes[1][:len(dst)], planes[2][:len(dst)], planes[3][:len(dst)]
		ga, gb, gc, ge := gains[0], gains[1], gains[2], gains[3]
		for n := range dst {
			dst[n] += ga*a[n] + gb*b[n] + (gc*c[n] + ge*e[n])
		}
	}
	for k, plane := range planes {
		plane, gain := plane[:len(dst)], gains[k]
		for n := range dst {
			dst[n] += gain * plane[n]
		}
	}
}

// Targets returns what the basis was computed for.
func (b *Basis) Targets() Targets { return b.targets }

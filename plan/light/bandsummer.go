package light

import (
	"math/bits"
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry/row"
)

// bandSummer is where one goroutine sums bands of rows.
type bandSummer struct {
	f              *field
	channels       int
	rasteriser     *rasteriser
	width          int           // of a row of sums: whole words
	sums           [3][]float64  // by channel: the light of a band of rows
	row            []float64     // the light of the whole opening on a row
	partly         []uint64      // the points of the band that see part of the opening
	halfSeen       []uint64      // those of them that see at least half of it
	mostlySeen     []uint64      // those of these that do through the same panes
	littleSeen     []uint64      // those that see so little of it, or part of it past cloth, that they are traced
	hiddenLight    []float64     // what is hidden from those
	hidden         []wideCounter // by word of the band: how many points of the opening are
	shares         []partial
	counts         []smallCounter // by share, of one word
	hiddenCount    smallCounter   // of the points of most
	through        [][]uint64     // by point of a bundle and pane: the points of the band that see the one through the other
	transmittances []colour.RGB   // likewise: what the pane passes
	mixedPanes     []int          // the panes that some points of the band see only part of what they see through
	panesBefore    [][]int        // by point of a bundle: those of them that are before it for some of the band
	portions       []portion
	glass          glassWays // that those look through
	view           row.View  // of the row from the point of the lamp that is summed
	tracer         tracer    // of points that see little of the opening
	between        []int32   // what may stand between the lamp and some of those
}

// partial is what the points of the band that see part of the opening get of it through panes of a factor.
type partial struct {
	factor colour.RGB
	sums   []float64
}

// portion is some points of a word and the factor of the panes that they look through.
type portion struct {
	points uint64
	factor colour.RGB
	glass  int // the last of those that are of glass
}

func newBandSummer(f *field, channels int) *bandSummer {
	g := f.g
	width := g.words * 64
	d := &bandSummer{f: f, channels: channels, rasteriser: newRasteriser(g), width: width, row: make([]float64, width)}
	for c := range channels {
		d.sums[c] = make([]float64, band*width)
	}
	d.partly, d.mostlySeen, d.hiddenLight = make([]uint64, band*g.words), make([]uint64, band*g.words), make([]float64, band*width)
	d.littleSeen, d.halfSeen = make([]uint64, band*g.words), make([]uint64, band*g.words)
	d.hidden = make([]wideCounter, band*g.words)
	d.through = make([][]uint64, f.largest*len(f.panes))
	for i := range d.through {
		d.through[i] = make([]uint64, band*g.words)
	}
	d.transmittances = make([]colour.RGB, len(d.through))
	d.panesBefore = make([][]int, f.largest)
	d.between = []int32{}
	d.tracer.BVH, d.tracer.quick = f.w.bvh, true
	d.share(colour.RGB{1, 1, 1})
	return d
}

// line is row r of a band of sums.
func (d *bandSummer) line(sums []float64, r int) []float64 { return sums[r*d.width : (r+1)*d.width] }

// splitByPanes splits the points of word w of row j by the panes that they see everything through.
func (d *bandSummer) splitByPanes(points uint64, j, w int, but []int) {
	f := d.f
	d.glass = d.glass[:0]
	d.portions = append(d.portions[:0], portion{points, colour.RGB{1, 1, 1}, noGlass})
	for i := range f.panes {
		through := f.panes[i].all[j*f.g.words+w] & points
		if through != 0 && !slices.Contains(but, i) {
			d.filterPortions(through, f.panes[i].caster.transmittance(f.points[0].at), f.ifGlass(i))
		}
	}
}

// filterRow passes the light of the row, at the points of word w of row j, through the panes before them.
func (d *bandSummer) filterRow(points uint64, j, w, from int) {
	f := d.f
	d.splitByPanes(points, j, w, nil)
	for c := range d.channels {
		sums := d.line(d.sums[c], j-from)
		for _, p := range d.portions {
			for rest := p.points; rest != 0; rest &= rest - 1 {
				i := w<<6 + bits.TrailingZeros64(rest)
				sums[i] = d.row[i] * p.factor[c] * f.fromAside(d.glass, p.glass, i, j)
			}
		}
	}
}

// filterPortions splits the portions of a word by a pane before some of its points; glass is its number, or noGlass.
func (d *bandSummer) filterPortions(through uint64, passing colour.RGB, glass int) {
	for i := range d.portions { // as they were
		both := d.portions[i].points & through
		if both == 0 {
			continue
		}
		factor := d.portions[i].factor.Times(passing)
		behind := portion{both, factor, d.glass.add(glass, d.portions[i].glass)}
		if d.portions[i].points &^= both; d.portions[i].points == 0 {
			d.portions[i] = behind
		} else {
			d.portions = append(d.portions, behind)
		}
	}
}

// total sums the shares of point n of the band, all of them seen through panes of a factor; whole is the
// light of the whole opening, without end where it is not known; mixed is what of the light that comes through panes before a part of it passes
// from aside.
func (d *bandSummer) total(n int, whole float64, factor colour.RGB, mixed float64) {
	sum := 0.0
	for i := range d.shares {
		sum += d.shares[i].sums[n]
	}
	scale := 1.0
	if sum > whole {
		scale = whole / sum
	}
	for i := range d.shares {
		s := &d.shares[i]
		passes := scale
		if i > 0 { // the first is what comes through none
			passes *= mixed
		}
		for c := range d.channels {
			d.sums[c][n] += passes * factor[c] * s.factor[c] * s.sums[n]
		}
	}
}

// share is the index of the sums of a factor.
func (d *bandSummer) share(factor colour.RGB) int {
	for i := range d.shares {
		if d.shares[i].factor == factor {
			return i
		}
	}
	d.shares = append(d.shares, partial{factor, make([]float64, band*d.width)})
	d.counts = append(d.counts, smallCounter{})
	return len(d.shares) - 1
}

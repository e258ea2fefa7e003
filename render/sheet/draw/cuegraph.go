package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// cueGraph is how the key sides of some faces go over time: stops from the working stop, a line a face.
type cueGraph struct {
	stopPlot
	cues   *meter.Cues
	curves []meter.Curve
}

// Sizes of the graph beside those of a walk's, mm.
const (
	mostNameWide = 16.0 // of the name of a face at the end of its line
	mostCueRows  = 3    // of the names of cues below the axis
	fadeBar      = 0.9  // how thick the bar of a fade is
	cueNameGap   = 1.2  // between names of cues in a row
	nameAir      = 1.6  // before the name of a face
	nameDash     = 6.0  // of the line of a face, beside its name where there are several
)

// cueRows are the graphs of the key sides, as many faces in each as there are lines to tell apart.
func (c *Drawing) cueRows(all *meter.Cues) (rows []Row) {
	for first := 0; first < len(all.Curves); first += len(graphDashes) {
		rows = append(rows, c.cueRow(all, all.Curves[first:min(first+len(graphDashes), len(all.Curves))]))
	}
	return rows
}

// cueRow is one graph as a row of the collar.
func (c *Drawing) cueRow(all *meter.Cues, curves []meter.Curve) Row {
	st := c.Pad.listed(c.Pad.Look.Quiet)
	g := cueGraph{cues: all, curves: curves, stopPlot: stopPlot{low: -1, high: 1, pitch: pitchOf(st), long: all.Axis.End}}
	wide := 0.0 // of the longest name
	for i := range curves {
		wide = math.Max(wide, math.Min(mostNameWide, st.Width(curves[i].Person)))
		for _, at := range curves[i].Points {
			v := shownOver(at.Over)
			g.low, g.high = min(g.low, int(math.Floor(v))), max(g.high, int(math.Ceil(v)))
		}
	}
	wide += g.beforeName()
	g.high += max(0, int(math.Ceil((st.Leading()*float64(len(curves))-g.pitch*float64(g.high-g.low))/g.pitch)))
	tall := g.pitch * float64(g.high-g.low)
	g.plot = box.Of(graphLeft, 0, layout.Measure-wide-2.4, tall)
	labels := g.labels(st)
	foot := graphTick + graphAir + st.Leading()*float64(labels.rows)
	return Row{Height: tall + st.Cap/2 + foot, Draw: func(p Pad, x, top float64) {
		top -= st.Cap / 2
		g.plot = box.Of(x+graphLeft, top-tall, x+layout.Measure-wide-2.4, top)
		p = p.of("graph:cues", "Stops from the working stop over time, at the key side of each face.")
		g.stops(p, st)
		g.times(p, st, labels)
		g.lines(p, st)
	}}
}

// beforeName is what stands between the end of the lines and the names, mm: with several lines, where they may end at one height, a piece of its own
// line before each name.
func (g *cueGraph) beforeName() float64 {
	if len(g.curves) == 1 {
		return 0
	}
	return nameDash + nameAir
}

// cueLabels are the names of the cues below the axis: the row of each, -1 where it has no room, and how many rows there are.
type cueLabels struct {
	row  []int
	rows int
}

// label names a cue below the axis, with its time where the axis has one, else with how long its fade is.
func (g *cueGraph) label(i int) string {
	q := g.cues.States[i+1].Cue
	switch {
	case g.cues.Axis.Timed:
		return q.Name + " " + unit.FormatNumber(*q.Seconds) + " s"
	case q.Fades():
		return q.Name + " " + unit.FormatNumber(q.Over) + " s"
	}
	return q.Name
}

// labels give every name the first row in which it has room.
func (g *cueGraph) labels(st style) cueLabels {
	out := cueLabels{row: make([]int, len(g.cues.Axis.Start))}
	var free [mostCueRows]float64
	for i, start := range g.cues.Axis.Start {
		x, wide := g.at(start, 0).X-g.plot.Min.X, st.Width(g.label(i))
		out.row[i] = -1
		for row := range free {
			if x >= free[row] && x+wide <= layout.Measure-graphLeft {
				out.row[i], free[row], out.rows = row, x+wide+cueNameGap, max(out.rows, row+1)
				break
			}
		}
	}
	return out
}

// times draws when each cue goes: a line through the plot, a bar along the foot as long as its fade, and its name.
func (g *cueGraph) times(p Pad, st style, labels cueLabels) {
	foot := g.plot.Min.Y
	p.Line(Hair, p.Look.Quiet, g.plot.Min, box.At(g.plot.Max.X, foot))
	for i, start := range g.cues.Axis.Start {
		from, to := g.at(start, 0).X, g.at(start+g.cues.States[i+1].Cue.Over, 0).X
		p.Line(Hair, p.Look.Quiet, box.At(from, foot-graphTick), box.At(from, g.plot.Max.Y))
		if to > from {
			p.Rect(box.Of(from, foot-fadeBar/2, to, foot+fadeBar/2), 0, p.Look.Quiet, &p.Look.Quiet)
		}
		if row := labels.row[i]; row >= 0 {
			p.Text(box.At(from, foot-graphTick-graphAir/2-st.Cap-st.Leading()*float64(row)), g.label(i), st, ink.Left)
		}
	}
}

// lines draws a line a face, with its name at the end.
func (g *cueGraph) lines(p Pad, st style) {
	ends := make([]float64, len(g.curves))
	for i := range g.curves {
		var line []r2.Vec
		for _, at := range g.curves[i].Points {
			line = append(line, g.at(at.Seconds, shownOver(at.Over)))
		}
		p.dashed(Medium, p.Look.Ink, graphDashes[i], line...)
		ends[i] = line[len(line)-1].Y
	}
	ends = keptApart(ends, st.Leading(), g.plot.Min.Y+st.Cap/2, g.plot.Max.Y-st.Cap/2)
	for i := range g.curves {
		name, x := st.inked(p.Look.Ink), g.plot.Max.X+nameAir
		if before := g.beforeName(); before > 0 {
			p.dashed(Medium, p.Look.Ink, graphDashes[i], box.At(x, ends[i]), box.At(x+nameDash, ends[i]))
			x += before
		}
		p.Text(box.At(x, ends[i]-st.Cap/2), name.Ellipsis(g.curves[i].Person, mostNameWide), name, ink.Left)
	}
}

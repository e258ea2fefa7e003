package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// barDepth is how deep the bars between panes of glass are, m (common practice).
const barDepth = 0.04

// bars is what the bars between panes are called after their opening.
const bars = "bars"

// barring puts bars along the glass of an opening, from a point of the plan on.
type barring struct {
	*wallPass
	o            *plan.Opening
	from, along  r2.Vec
	width, whole float64 // of a bar, and of the opening, m
}

// hangBars puts the bars between the panes of an opening into the set: those that stand, and those that lie between them.
func (r *wallPass) hangBars(o *plan.Opening, width float64, a, b r2.Vec) {
	across, up := o.Panes[0], o.Panes[1]
	if width == 0 || across*up < 2 {
		return
	}
	g := barring{r, o, a, r2.Unit(r2.Sub(b, a)), width, r2.Norm(r2.Sub(b, a))}
	for i := 1; i < across; i++ {
		at := g.whole * float64(i) / float64(across)
		g.bar(at-width/2, at+width/2, o.Sill, o.Head)
	}
	for k := 1; k < up; k++ {
		z := o.Sill + (o.Head-o.Sill)*float64(k)/float64(up)
		for i := range across {
			from, to := g.pane(i, across)
			g.bar(from, to, z-width/2, z+width/2)
		}
	}
}

// pane is how far along the glass pane i of so many begins and ends, between the bars that stand.
func (g *barring) pane(i, across int) (from, to float64) {
	from, to = g.whole*float64(i)/float64(across), g.whole*float64(i+1)/float64(across)
	if i > 0 {
		from += g.width / 2
	}
	if i+1 < across {
		to -= g.width / 2
	}
	return from, to
}

// bar puts one in.
func (g *barring) bar(from, to, z0, z1 float64) {
	deep := r2.Scale(barDepth/2, r2.Vec{X: -g.along.Y, Y: g.along.X})
	p, q := r2.Add(g.from, r2.Scale(from, g.along)), r2.Add(g.from, r2.Scale(to, g.along))
	base := []r2.Vec{r2.Sub(p, deep), r2.Sub(q, deep), r2.Add(q, deep), r2.Add(p, deep)}
	g.o.Bars = append(g.o.Bars, g.prism(g.o.Name+"."+bars, base, z0, z1, paint(grey(scene.DefaultLeafReflectance))))
}

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

// hangBars puts the bars between the panes of an opening into the set: those that stand, and those that lie between them.
func (r *wallPass) hangBars(o *plan.Opening, width float64, a, b r2.Vec) {
	across, up := o.Panes[0], o.Panes[1]
	if width == 0 || across*up < 2 {
		return
	}
	along := r2.Unit(r2.Sub(b, a))
	deep := r2.Scale(barDepth/2, r2.Vec{X: -along.Y, Y: along.X})
	whole, high := r2.Norm(r2.Sub(b, a)), o.Head-o.Sill
	bar := func(from, to, z0, z1 float64) {
		p, q := r2.Add(a, r2.Scale(from, along)), r2.Add(a, r2.Scale(to, along))
		base := []r2.Vec{r2.Sub(p, deep), r2.Sub(q, deep), r2.Add(q, deep), r2.Add(p, deep)}
		o.Bars = append(o.Bars, r.prism(o.Name+"."+bars, base, z0, z1, paint(grey(scene.DefaultLeafReflectance))))
	}
	for i := 1; i < across; i++ {
		at := whole * float64(i) / float64(across)
		bar(at-width/2, at+width/2, o.Sill, o.Head)
	}
	for k := 1; k < up; k++ {
		z := o.Sill + high*float64(k)/float64(up)
		for i := range across {
			from, to := whole*float64(i)/float64(across), whole*float64(i+1)/float64(across)
			if i > 0 {
				from += width / 2
			}
			if i+1 < across {
				to -= width / 2
			}
			bar(from, to, z-width/2, z+width/2)
		}
	}
}

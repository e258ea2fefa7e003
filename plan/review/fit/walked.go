package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/clash"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
)

// walked is a walk and the set about it.
type walked struct {
	*contactFinder
	walk *plan.Walk
	soft map[solid.ID]bool // what it is not held to: one's own body, cloth in openings, and equipment, which is looked at by itself
}

// walked is the walk of somebody.
func (r *contactFinder) walked(p *plan.Person) walked {
	w := walked{r, p.Walk, map[solid.ID]bool{}}
	w.pass(p.Own)
	for i := range r.out.Grip {
		w.pass(r.out.Grip[i].IDs)
	}
	for i := range r.out.Openings {
		for k := range r.out.Openings[i].Dressing {
			w.pass(r.out.Openings[i].Dressing[k].IDs)
		}
	}
	return w
}

// pass leaves solids out.
func (r walked) pass(ids []solid.ID) {
	for _, id := range ids {
		r.soft[id] = true
	}
}

// outlined is what of a solid stands between two heights, in plan.
type outlined struct {
	name string
	ring []r2.Vec // convex; of a sheet that stands upright a line there and back
}

// upright is what of the set stands between two heights.
func (r walked) upright(low, high float64) (all []outlined) {
	for i := range r.out.Set.Prisms {
		if p := &r.out.Set.Prisms[i]; !r.soft[p.ID] && min(p.Z1, high)-max(p.Z0, low) > clash.Slack {
			all = append(all, outlined{p.Name, p.Base})
		}
	}
	return append(all, r.uprightSheets(low, high)...)
}

// uprightSheets are those of them that are sheets: panes, mirrors, ceilings that come down so far.
func (r walked) uprightSheets(low, high float64) (all []outlined) {
	for i := range r.out.Set.Sheets {
		p := &r.out.Set.Sheets[i]
		if r.soft[p.ID] || r.out.LightNamed(beforeDot(p.Name)) != nil || r.climbsPast(p.Corners) {
			continue
		}
		if ring := sheetBetween(p.Corners, low, high); ring != nil {
			all = append(all, outlined{p.Name, ring})
		}
	}
	return all
}

// climbsPast says whether a walk goes up by a level sheet to a floor over it, as by a ceiling and that floor where stairs lead through them: nothing in a scene
// says where they are open.
func (r walked) climbsPast(corners []r3.Vec) bool {
	low, high := math.Inf(1), math.Inf(-1)
	for _, c := range corners {
		low, high = min(low, c.Z), max(high, c.Z)
	}
	under, over := false, false
	for _, t := range r.walk.Treads {
		under, over = under || t.Base < low-plane.Grain, over || t.Base > low-plane.Grain
	}
	return high-low < plane.Grain && under && over
}

// sheetBetween is the outline of what of a sheet lies between two heights; nil where none does.
func sheetBetween(corners []r3.Vec, low, high float64) []r2.Vec {
	var points []r2.Vec
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		if a.Z > low+clash.Slack && a.Z < high-clash.Slack {
			points = append(points, plan.InPlan(a))
		}
		for _, z := range [2]float64{low + clash.Slack, high - clash.Slack} {
			if (a.Z-z)*(b.Z-z) < 0 {
				points = append(points, plan.InPlan(r3.Add(a, r3.Scale((z-a.Z)/(b.Z-a.Z), r3.Sub(b, a)))))
			}
		}
	}
	if len(points) < 2 {
		return nil
	}
	return plane.Hull(points)
}

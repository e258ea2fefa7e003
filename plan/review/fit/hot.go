package fit

import (
	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// How far a hot head keeps from what burns, m: common practice, and about what their labels ask for. From the face of a wall, which gives
// the heat on, less will do.
const (
	hotKeeps      = 0.5
	hotKeepsWalls = 0.3
)

// hotNear warns of a hot head near a wall, a ceiling, furniture, cloth in an opening or somebody.
func hotNear(r *checker, l *plan.Light) bool {
	if !l.GetsHot() || !r.out.EverUp(l) || l.Head.Class == term.Practical || l.Head.Body == ([3]float64{}) {
		return true
	}
	name, gap, keeps := "", 0.0, 0.0
	for _, p := range body.HeadOf(l) {
		head := body.HullOf(p)
		eachBurning(r, func(what string, h *body.Hull) {
			want := report.Either(r.out.WallNamed(what) != nil, hotKeepsWalls, hotKeeps)
			if head.Apart(h, want) {
				return
			}
			if far := head.Gap(h); far > 0 && want-far > keeps-gap { // what it reaches into has a finding of its own
				name, gap, keeps = what, far, want
			}
		})
	}
	if name != "" {
		r.Warnf(r.things[l.Name].at, CodeHotNear, "move it "+r.Length(r.RoundUp(keeps-gap))+" away, or put a sheet that does not burn between", "%s is hot (%s) and %s from %s: %s is usual",
			l.Numbered(), unit.FormatPower(l.Head.Watts), r.Length(gap), name, r.Length(keeps))
	}
	return true
}

// eachBurning calls f with the pieces of what a hot head keeps from. Floors, panes and lamps do not count.
func eachBurning(r *checker, f func(what string, h *body.Hull)) {
	grip := map[string]bool{}
	for i := range r.out.Grip {
		grip[r.out.Grip[i].Name] = true
	}
	for i := range r.out.Set.Prisms {
		p := &r.out.Set.Prisms[i]
		h := body.HullOf(body.Prism(body.Whole, p.Base, p.Z0, p.Z1))
		f(p.Name, &h)
	}
	for i := range r.out.Set.Sheets {
		s := &r.out.Set.Sheets[i]
		if down := normalOf(s).Z < -0.5; down || s.Front.Scatters() && !grip[s.Name] && r.out.LightNamed(beforeDot(s.Name)) == nil {
			h := body.HullOf(body.Flat(body.Whole, s.Corners))
			f(s.Name, &h)
		}
	}
}

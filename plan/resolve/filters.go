package resolve

import (
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
)

// filters looks up what is before a lens: stops add up, and so do mireds.
func (r *cameraPass) filters(written *scene.Camera) (f plan.LensFilters, ok bool) {
	ok = true
	var names []string
	for _, ref := range written.Filter {
		does, typical, known := r.kit.BeforeLens(ref.Name)
		if !known {
			r.refuseFilter(ref)
			ok = false
			continue
		}
		stops := lens.Stops(1 / does.Transmittance)
		if typical && r.shown(written.Name) {
			r.assume(written.Path, "filter", ref.Name+" takes "+unit.FormatNumber(math.Round(stops*100)/100)+" stops, typical")
		}
		names = append(names, ref.Name)
		f.Stops, f.Stack = f.Stops+stops, append(f.Stack, does)
	}
	f.Names = strings.Join(names, " + ")
	return f, ok
}

// refuseFilter says why a name stands for no filter.
func (r *cameraPass) refuseFilter(ref scene.Ref) {
	given := scene.Given[string]{Value: ref.Name, Set: true, Span: ref.Span}
	switch message, hint := kit.NDFault(ref.Name); {
	case message != "":
		r.Errorf(ref.Span, CodeFilter, hint, "%s", message)
	case r.kit.Gel(ref.Name) != nil:
		r.Errorf(ref.Span, CodeFilter, "put it on the lights, or write an ND, a filter of `scrimshaw kit filters` or a correction gel",
			"%q colours the whole picture, and nothing is white through it", ref.Name)
	default:
		r.unknownEntry(given, "filter", append(kit.Names(r.kit.Filters), kit.Names(r.kit.Gels)...))
	}
}

// seeThrough puts filters before the lens of an exposure. A shift that leaves no white is reported with its camera.
func seeThrough(x *plan.Exposure, f *plan.LensFilters) (held bool) {
	x.Filters, x.Lost = f.Names, f.Stops
	x.White, held = colour.BeforeLens(x.Balance, f.Stack)
	return held
}

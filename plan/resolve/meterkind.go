package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// meterKind reads the kind of a meter. The loader lets no other words pass, but a scene may be made by hand.
func (r *meterPass) meterKind(m *scene.Meter) (plan.MeterKind, bool) {
	for kind := plan.FlatMeter; kind <= plan.SpotMeter; kind++ {
		if m.Kind == kind.String() {
			return kind, true
		}
	}
	r.Errorf(m.Span, source.CodeUnknownWord, "write flat, dome or spot", "%s is a meter of no kind: %q", m.Name, m.Kind)
	return 0, false
}

package plan

import (
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// MeterKind is what a meter measures.
type MeterKind uint8

// The kinds of a meter. The zero value is a flat one.
const (
	FlatMeter MeterKind = iota // illuminance on a plane
	DomeMeter                  // the incident dome
	SpotMeter                  // luminance of the first surface along a ray
)

// meterKinds are the words of a scene for the kinds, in their order.
var meterKinds = [...]string{FlatMeter: "flat", DomeMeter: "dome", SpotMeter: "spot"}

// String is the word of a scene for the kind.
func (k MeterKind) String() string {
	if int(k) < len(meterKinds) {
		return meterKinds[k]
	}
	return "unknown"
}

// meterKind reads the kind of a meter. The loader lets no other words pass, but a scene may be made by hand.
func (r *resolver) meterKind(m *scene.Meter) (MeterKind, bool) {
	for kind, word := range meterKinds {
		if m.Kind == word {
			return MeterKind(kind), true
		}
	}
	r.errorf(m.Span, source.CodeUnknownWord, "write flat, dome or spot", "%s is a meter of no kind: %q", m.Name, m.Kind)
	return 0, false
}

package resolve

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// placeMeters resolves every reading.
func (r *meterPass) placeMeters() {
	for i := range r.s.Meters {
		written := &r.s.Meters[i]
		leave := r.About(written.Path)
		if m, ok := r.meterOf(written); ok {
			r.out.Meters = append(r.out.Meters, m)
		}
		leave()
	}
}

func (r *meterPass) meterOf(written *scene.Meter) (plan.Meter, bool) {
	known := r.checkKind(written)
	at, ok := r.meterPoint(written)
	if !ok || !known {
		return plan.Meter{}, false
	}
	m := plan.Meter{Name: written.Name, Kind: written.Kind, At: at, Span: written.Span}
	if m.Kind == term.SpotMeter {
		return m, r.spotMeter(written, &m)
	}
	aim := written.Facing.Value
	if !written.Facing.Set {
		aim = r.defaultFacing(written)
	}
	t, ok := r.aimed(&aim)
	if !ok {
		return plan.Meter{}, false
	}
	m.Facing, ok = t.from(at)
	if !ok {
		r.Errorf(report.Either(written.Facing.Set, written.Facing.Span, written.Span), CodeNoAim, "face something else, or give a bearing: facing: 90", "the point to face is where %s stands", written.Name)
	}
	return m, ok
}

// defaultFacing is up for a flat meter, the first camera for a dome.
func (r *meterPass) defaultFacing(m *scene.Meter) scene.Aim {
	camera := r.firstCamera()
	if m.Kind != term.DomeMeter || camera == "" {
		r.assume(m.Path, "facing", "up")
		return scene.Aim{Form: scene.AimUp}
	}
	r.assume(m.Path, "facing", camera)
	return scene.Aim{Form: scene.AtThing, Thing: scene.Ref{Name: camera}}
}

// spotMeter looks from a camera's lens.
func (r *meterPass) spotMeter(written *scene.Meter, m *plan.Meter) bool {
	if written.From.Name == "" {
		r.reportMissing(written.Span, "add from: A", "a spot meter reads from a camera")
		return false
	}
	if _, ok := r.named(written.From, cameraKind); !ok {
		return false
	}
	lens, ok := r.pointOf(written.From)
	if !ok {
		return false
	}
	m.From, m.Lens = written.From.Name, lens
	m.Facing, ok = target{point: m.At}.from(lens)
	if !ok {
		r.Errorf(written.Span, CodeNoAim, "read another point, or from another camera", "%s points at the lens that it is seen from", written.Name)
	}
	return ok
}

// checkKind refuses an unknown kind of meter. The loader lets no other words pass, but a scene may be made by hand.
func (r *meterPass) checkKind(m *scene.Meter) bool {
	if !slices.Contains(term.Meters, m.Kind) {
		r.Errorf(m.Span, source.CodeUnknownWord, "write flat, dome or spot", "%s has an unknown kind of meter: %q", m.Name, m.Kind)
		return false
	}
	return true
}

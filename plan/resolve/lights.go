package resolve

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// hangLights resolves every light.
func (r *lightPass) hangLights() {
	tags := r.tags("lights", "")
	for i := range r.s.Lights {
		written := &r.s.Lights[i]
		leave := r.About(written.Path)
		if l, ok := r.lightOf(written); ok {
			l.Tag = written.Tag.Or(tags[written.Name])
			r.out.Lights = append(r.out.Lights, l)
		}
		leave()
	}
	r.oneTagEach()
	r.standIns()
}

func (r *lightPass) lightOf(written *scene.Light) (plan.Light, bool) {
	choice := r.choice(written)
	head, fits := r.head(written, choice)
	if written.Focus.Set && !head.Zooms && head.Edge == nil {
		r.notComputed(scene.Unfocused, "lights."+written.Name, written.Focus.Span)
	}
	upright := r.upright(written, &head)
	s, ok := r.spotOf(written.Name)
	whom := r.whom(written, s)
	aim, aims := r.lampAim(written, whom, upright, head.HangsDown)
	if !ok || !aims {
		return plan.Light{}, false
	}
	z := r.lampHeight(written, s)
	l := plan.Light{
		Name: written.Name, Path: written.Path, Head: head, Choice: choice, Level: written.Level.Or(scene.DefaultLevel),
		Height: z - s.Floor, Roles: written.Role, Note: written.Note.Value,
		Count: written.Count.Or(1), Circuit: written.Circuit.Value, Mains: r.mainsOf(written), Opening: s.Opening, Aimed: written.Aim.Set, Span: written.Span,
	}
	l.Seen = seenOf(written.Seen, written.SeenBy, head.Class == term.Practical)
	for _, gel := range written.Gels {
		l.Gels = append(l.Gels, gel.Name)
	}
	// Alike units that stand as one give their light together.
	l.RelativeOutput = head.RelativeOutput(l.Level).Scale(float64(l.Count))
	l.White = head.WhiteAt(l.Level)
	if !r.point(written, &l, plan.AtHeight(s.At, z), aim) {
		return plan.Light{}, false
	}
	if !l.Head.ApplyTilt(l.Frame.Right, l.Frame.Up(), l.Frame.Axis) {
		r.Infof(written.Span, CodeTilt, "", "%s is rolled, and its photometric file does not say how its lamp lies then; the figures take its light in the design position", l.Name)
	}
	r.assumeLight(written, &l, whom, upright)
	r.ripple(written, &l)
	held := holding{at: l.Frame.At, axis: l.Frame.Axis, spot: s, practical: head.Class == term.Practical, what: "the lamp", foot: r.footOf(written.Stand, r.usualStand(written))}
	l.Mount, l.Base, ok = r.mountOf(written.Mount, held)
	stands := r.standFor(written.Stand, r.usualStand(written), &l.Mount)
	r.liftFor(&l.Mount, head.Mass, l.Frame.Axis)
	l.Frame = fit.LaidOnWall(r.out, written, &l, l.Frame)
	l.Placing = r.placing(plan.InPlan(l.Frame.At), s)
	r.clipDiffusion(written, &l)
	return l, ok && fits && stands
}

// seenOf says whether a thing is meant to be in the picture, and of which cameras; unsaid is whether it is where nothing says so.
func seenOf(given scene.Given[bool], by []scene.Ref, unsaid bool) plan.Seen {
	s := plan.Seen{Written: given.Set, Meant: given.Or(unsaid)}
	for _, camera := range by {
		s.By = append(s.By, camera.Name)
	}
	return s
}

// head takes the unit, its modifier, gels and white from the catalogue.
func (r *lightPass) head(l *scene.Light, ch kit.Choice) (kit.Head, bool) {
	if l.Output == nil && !l.Unit.Set {
		r.reportMissing(l.Span, "add unit: and its name in the kit", "the light has no unit")
		return kit.Head{}, false
	}
	if l.Output != nil {
		return r.headOf(ch, func(ch kit.Choice, log *source.Log) (kit.Head, bool) { return r.kit.HeadOf(*l.Output, ch, log) })
	}
	return r.headOf(ch, r.kit.Head)
}

// choice is what the scene says of a light, as the catalogue is asked for it.
func (r *lightPass) choice(l *scene.Light) kit.Choice {
	ch := kit.Choice{
		Unit: l.Unit.Value, Modifier: l.Modifier.Value, Tint: l.Tint.Value, Span: l.Span,
		UnitSpan: l.Unit.Span, ModifierSpan: l.Modifier.Span, WhiteSpan: l.Colour.Span, TintSpan: l.Tint.Span,
		Path: l.Path, Setup: r.s.Setup,
	}
	if l.Focus.Set {
		ch.Focus, ch.FocusSpan, ch.FocusOfZoom = &l.Focus.Value, l.Focus.Span, l.FocusOfZoom
	}
	if l.Edge.Set {
		ch.Edge, ch.EdgeSpan = &l.Edge.Value, l.Edge.Span
	}
	if l.Level.Set {
		ch.Level, ch.LevelSpan = &l.Level.Value, l.Level.Span
	}
	r.dress(&ch, l)
	for _, gel := range l.Gels {
		ch.Gels = append(ch.Gels, kit.Gel{Name: gel.Name, Span: gel.Span})
	}
	if l.Colour.Set {
		ch.White = &colour.White{Kelvin: l.Colour.Value.Kelvin, Duv: l.Colour.Value.Duv, Daylight: l.Colour.Value.Daylight}
	}
	return ch
}

// dress puts what hangs on the lamp into the choice: barn doors, scrims, the bulb and the shade of a practical. A shade of the catalogue is a modifier.
func (r *lightPass) dress(ch *kit.Choice, l *scene.Light) {
	ch.Bulb, ch.Shade, ch.Doors, ch.Scrims = l.Bulb, l.Shade, l.Doors, l.Scrims
	if l.Shade == nil || l.Shade.Name == "" {
		return
	}
	if l.Modifier.Set && l.Modifier.Value != l.Shade.Name {
		r.Errorf(l.Shade.Span, CodeTwoShades, "keep one of them", "%s has the shade %s and the modifier %s", l.Name, l.Shade.Name, l.Modifier.Value)
		return
	}
	ch.Modifier, ch.ModifierSpan = l.Shade.Name, l.Shade.Span
}

// upright says whether a light that names no aim has none: a lamp of the set, or a lantern on its cable,
// that shines the same all round or has a shade stands or hangs as it is made, and nobody points it.
func (r *lightPass) upright(l *scene.Light, head *kit.Head) bool {
	u := r.kit.Unit(l.Unit.Value)
	return !l.Aim.Set && l.Output == nil && u != nil && (u.Class == term.Practical || u.Class == term.Lantern) && head.Upright()
}

// point gives a light its frame. One that stays keeps pointing the way it did.
func (r *lightPass) point(written *scene.Light, l *plan.Light, at r3.Vec, aim target) bool {
	if before := r.keptLight(l.Name); before != nil && !r.writtenHere(written.Node, "aim") {
		l.Frame, l.AimPoint, l.Throw = before.Frame, before.AimPoint, before.Throw
		l.Frame.At = at
		return true
	}
	axis, ok := aim.from(at)
	if !ok {
		r.Errorf(report.Either(written.Aim.Set, written.Aim.Span, written.Span), CodeNoAim, "aim it at something else, or give a bearing: aim: 90", "the point to aim at is where %s stands", l.Name)
		return false
	}
	l.Frame = plan.FrameAlong(at, axis, aim.pan, written.Roll.Value)
	if aim.dir == (r3.Vec{}) {
		l.AimPoint, l.Throw = aim.point, r3.Norm(r3.Sub(aim.point, at))
	}
	return true
}

// assumeLight lists the defaults of a light.
func (r *lightPass) assumeLight(written *scene.Light, l *plan.Light, whom string, upright bool) {
	if !written.Height.Set && r.keptLight(l.Name) == nil {
		r.assume(l.Path, "height", r.Length(l.Height))
	}
	if !written.Level.Set {
		r.assume(l.Path, "level", unit.FormatPercent(l.Level))
	}
	u := r.kit.Unit(written.Unit.Value)
	if !written.Colour.Set {
		native := float64(kit.PlainWhite)
		if u != nil {
			native = u.Native
		}
		r.assume(l.Path, "colour", unit.FormatKelvin(native)+report.Either(u != nil, ", native", ""))
	}
	if !written.Aim.Set && !upright {
		r.assume(l.Path, "aim", report.Either(whom != "" && !l.Head.HangsDown, whom, "down"))
	}
	if l.Head.Zooms && !written.Focus.Set {
		r.assume(l.Path, "focus", string(scene.DefaultFocus))
	}
	if u != nil && !written.Modifier.Set && written.Output == nil && l.Head.ModifierLabel != "" {
		r.assume(l.Path, "modifier", l.Head.ModifierLabel)
	}
}

package explain

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/term"
)

// CodeNoReading is the fault of a name that no reading has.
const CodeNoReading = "unknown-reading"

// Unknown is the fault of a name that no reading has, with the nearest of those there are.
func Unknown(name string, names []string) *source.Diagnostic {
	hint := source.Offer(name, names)
	if len(names) == 0 {
		hint = "add people or meters: the scene has no readings"
	}
	return &source.Diagnostic{Severity: source.Error, Code: CodeNoReading, Message: "there is no reading " + `"` + name + `"`, Hint: hint}
}

// Of explains a reading of a study by its name, as meter names it.
func Of(ctx context.Context, s *study.Study, name string) (*Explanation, error) {
	r := s.Readings.Named(name)
	if r == nil {
		return nil, Unknown(name, slices.Concat(meter.Names(s.Setup), meter.WalkNames(s.Setup)))
	}
	empty, err := light.Build(ctx, &solid.Set{}, light.Options{Direct: true})
	if err != nil {
		return nil, err
	}
	request := slices.Concat(s.Requests, s.OnWalks)[r.Receptor]
	x := explainer{study: s, request: &request, namer: meter.NamerOf(s.Setup), reading: r, receptor: s.Basis.Receptor(r.Receptor), gain: s.Basis.Gains[r.Receptor], empty: empty}
	e := &Explanation{Scene: s.Readings.Scene, Setup: s.Readings.Setup, Reading: *r, Place: x.place()}
	if x.spot() {
		e.Surface = x.surface()
	}
	emitters := light.Emitters(s.Setup)
	for i := range emitters {
		e.Lights = append(e.Lights, x.light(&s.Setup.Lights[i], &emitters[i]))
	}
	e.Sum = x.sum(e.Lights)
	e.Exposure = x.exposure(request.Exposure)
	return e, nil
}

// explainer knows what the explanation of one reading is made of.
type explainer struct {
	study    *study.Study
	namer    meter.Namer
	reading  *meter.Reading
	request  *meter.Request
	receptor light.Receptor // of a spot: on the surface that it looks at
	gain     colour.RGB     // from the illuminance there to the reading
	empty    *light.World   // nothing stands in it
}

func (x *explainer) spot() bool { return x.reading.Kind == term.SpotMeter }

// unit is that of the reading.
func (x *explainer) unit() string {
	if x.spot() {
		return "cd/m²"
	}
	return "lx"
}

// place says where light is read and which way that faces.
func (x *explainer) place() []Step {
	at, facing := x.receptor.At, x.receptor.Axis
	w := newWorking()
	for i, c := range [...]float64{at.X, at.Y, at.Z} {
		w.given("read at, "+[...]string{"across the sheet", "up the sheet", "height"}[i], "", c, "m", "")
	}
	for i, c := range [...]float64{facing.X, facing.Y, facing.Z} {
		w.given("facing, "+[...]string{"across", "up the sheet", "upward"}[i], [...]string{"u", "v", "w"}[i], c, "", "")
	}
	return w.steps
}

// surface names what a spot meter looks at; "" where it is seen by a mirror, or is nothing.
func (x *explainer) surface() string {
	o := x.request.Receptor
	bodies := solid.NewBVH(&x.study.Setup.Bodies)
	for _, set := range [...]*solid.BVH{bodies, x.study.World.BVH()} {
		hit, ok := set.FirstOpaque(o.At, o.Axis, o.Skip)
		if ok && r3.Norm(r3.Sub(r3.Add(o.At, r3.Scale(hit.T, o.Axis)), x.receptor.At)) < sameplace {
			return x.study.Setup.Names[hit.ID]
		}
	}
	return ""
}

// sameplace is how far, m, two places are apart that are one.
const sameplace = 1e-6

// light explains what one light gives.
func (x *explainer) light(l *plan.Light, e *light.Emitter) Light {
	out := Light{Name: l.Name, Numbered: l.Numbered(), Label: label(l)}
	level := x.study.Levels[l.Name]
	lamp := lampSteps(l, level)
	out.Lamp = lamp.steps
	if !(level.Y() > 0) {
		out.Why = "it is off"
		return out
	}
	u := x.unhidden(l, e, newWorking(lamp))
	out.Straight, out.Why = u.steps, u.why
	ways := light.Straight(x.study.World, e, &x.receptor)
	for t := range x.study.Basis.Terms {
		term := &x.study.Basis.Terms[t]
		if term.Light != l.Name {
			continue
		}
		value := level.Times(x.study.Basis.Points[t][x.reading.Receptor]).Times(x.gain).Y()
		i := slices.IndexFunc(ways, func(w light.Way) bool { return slices.Equal(w.Via, term.Via) })
		switch {
		case !(value > 0):
		case term.Path == light.Direct && i >= 0:
			out.Ways = append(out.Ways, x.way(&ways[i], newWorking(lamp, u.working), level, value, len(out.Ways)))
		default:
			out.Returned = append(out.Returned, x.namer.Share(term, value))
		}
		out.Value += max(value, 0)
	}
	if len(out.Ways) == 0 && out.Why == "" {
		out.Why = "nothing of it is seen from here"
	}
	out.Total, out.StandIn = x.total(&out), x.standIn(l.Name)
	return out
}

// label is the unit of a light and its modifier in words.
func label(l *plan.Light) string {
	if l.Head.ModifierLabel == "" {
		return l.Head.UnitLabel
	}
	return l.Head.UnitLabel + ", " + l.Head.ModifierLabel
}

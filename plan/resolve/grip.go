package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// rigGrip hangs every flag, card, frame, net and silver board into the set.
func (r *gripPass) rigGrip() {
	tags := r.tags("grip", "G")
	for i := range r.s.Grip {
		written := &r.s.Grip[i]
		leave := r.About(written.Path)
		if g, ok := r.gripOf(written); ok {
			g.Tag = tags[written.Name]
			r.out.Grip = append(r.out.Grip, g)
		}
		leave()
	}
}

func (r *gripPass) gripOf(written *scene.Grip) (plan.Grip, bool) {
	aim, faces := r.gripAim(written)
	s, ok := r.spotOf(written.Name)
	if !ok || !faces {
		return plan.Grip{}, false
	}
	z, ok := r.gripHeight(written, s)
	if !ok {
		return plan.Grip{}, false
	}
	f, ok := r.gripFrame(written, plan.AtHeight(s.At, z), aim)
	if !ok {
		return plan.Grip{}, false
	}
	size, ok := r.gripSize(written)
	if !ok {
		return plan.Grip{}, false
	}
	g := plan.Grip{
		Name: written.Name, Kind: written.Kind, Size: size, Item: r.kit.GripOf(written.Item.Value), Frame: f, Height: z - s.Floor,
		Cloth: written.Cloth.Value, Surface: written.Surface.Value, Note: written.Note.Value, Span: written.Span,
	}
	if aim.dir == (r3.Vec{}) {
		g.Target = &aim.point
	}
	if !written.Height.Set && r.keptGrip(written.Name) == nil {
		r.assume(written.Path, "height", r.Length(g.Height))
	}
	hung := r.hangSheet(written, &g)
	g.Mount, g.Base, ok = r.mountOf(written.Mount, holding{at: f.At, axis: f.Axis, spot: s, what: "the " + string(g.Kind), foot: r.footOf(written.Stand, "")})
	stands := r.standFor(written.Stand, "", &g.Mount)
	r.liftFor(&g.Mount, massOf(g.Item), f.Axis)
	g.Placing = r.placing(s.At, s)
	return g, ok && hung && stands
}

// massOf is that of a piece of the catalogue, kg; 0 where nothing says it.
func massOf(item *kit.Grip) float64 {
	if item == nil {
		return 0
	}
	return item.Mass
}

// gripSize is the size that is written, or that of the piece of the catalogue which is named.
func (r *gripPass) gripSize(written *scene.Grip) ([2]float64, bool) {
	if !written.Item.Set {
		return written.Size, true
	}
	item := r.kit.GripOf(written.Item.Value)
	switch {
	case item == nil:
		var alike []string
		for _, g := range r.kit.Grip {
			if g.Kind == written.Kind {
				alike = append(alike, g.Name)
			}
		}
		r.unknownEntry(written.Item, string(written.Kind), alike)
		return [2]float64{}, false
	case item.Kind != written.Kind:
		r.Errorf(written.Item.Span, scene.CodeWrongThing, "write "+string(item.Kind)+": "+item.Name, "%q is a %s, not a %s", item.Name, item.Kind, written.Kind)
		return [2]float64{}, false
	}
	return [2]float64{item.Width, item.Height}, true
}

// gripAim is what a piece of grip faces: the person that it stands by where it does not say, and
// down the sheet where there is nobody.
func (r *gripPass) gripAim(g *scene.Grip) (target, bool) {
	switch name := r.gripBy(g); {
	case g.Faces.Set:
		return r.aimed(&g.Faces.Value)
	case name != "":
		return r.aimed(&scene.Aim{Form: scene.AtThing, Thing: scene.Ref{Name: name}})
	}
	return r.aimed(&scene.Aim{Form: scene.AtBearing, Pan: scene.DefaultFacing})
}

// gripFrame is the frame of a sheet: its axis is the normal of its front.
func (r *gripPass) gripFrame(g *scene.Grip, at r3.Vec, aim target) (plan.Frame, bool) {
	if before := r.keptGrip(g.Name); before != nil && !r.writtenHere(g.Node, "faces") {
		f := before.Frame
		f.At = at
		return f, true
	}
	axis, ok := aim.from(at)
	if !ok {
		r.Errorf(report.Either(g.Faces.Set, g.Faces.Span, g.Span), CodeNoAim, "face something else, or give a bearing: faces: 90", "the point to face is where %s stands", g.Name)
		return plan.Frame{}, false
	}
	if g.Tilt.Set {
		axis = withTilt(axis, aim.pan, g.Tilt.Value)
	}
	return plan.FrameAlong(at, axis, aim.pan, g.Roll.Value), true
}

// withTilt is an axis of the same bearing with another tilt.
func withTilt(axis r3.Vec, pan, tilt float64) r3.Vec {
	if flat := plan.InPlan(axis); r2.Norm(flat) > 1e-9 {
		pan = plane.Bearing(flat)
	}
	return plan.Pointing(pan, tilt)
}

// hangSheet puts a piece of grip into the set with the surface that light meets. A frame without cloth is seen, and stops
// no light.
func (r *gripPass) hangSheet(written *scene.Grip, g *plan.Grip) bool {
	var skin solid.Skin
	var ok bool
	switch {
	case g.Kind != term.Frame && g.Kind != term.Net:
		skin, ok = r.gripSkin(written, g)
	case g.Kind == term.Frame && !written.Cloth.Set:
		id := r.id(g.Name)
		r.out.Bodies.Sheets = append(r.out.Bodies.Sheets, solid.Sheet{ID: id, Name: g.Name, Corners: g.Corners()})
		g.IDs = []solid.ID{id}
		return true
	default:
		skin, ok = r.gripCloth(written, g)
	}
	g.Reflects = skin.Reflect.Y()
	g.IDs = []solid.ID{r.sheet(g.Name, g.Corners(), skin, skin)}
	return ok
}

// gripCloth is what light meets at the cloth of a frame or a net: a net that names none is a single one.
func (r *gripPass) gripCloth(written *scene.Grip, g *plan.Grip) (solid.Skin, bool) {
	name := scene.DefaultNet
	if written.Cloth.Set {
		name = written.Cloth.Value
	} else {
		r.assume(written.Path, "cloth", name)
	}
	c := r.kit.ClothOf(name)
	if c == nil {
		if written.Cloth.Set {
			r.unknownEntry(written.Cloth, "cloth", kit.Names(r.kit.Cloth))
		}
		return solid.Skin{}, false
	}
	g.Cloth = name
	return clothSkin(c), true
}

// gripSkin is the surface of a flag, a card or a silver board.
func (r *gripPass) gripSkin(written *scene.Grip, g *plan.Grip) (solid.Skin, bool) {
	if written.Surface.Set {
		skin, ok := r.material(written.Surface)
		return r.polished(skin, written.Surface.Value), ok
	}
	g.Surface = map[term.Grip]string{term.Flag: scene.DefaultFlag, term.Card: scene.DefaultCard, term.Silver: scene.DefaultSilver}[g.Kind]
	if m := r.kit.Material(g.Surface); m != nil {
		return polishedSkin(m), true
	}
	return solid.Skin{}, true
}

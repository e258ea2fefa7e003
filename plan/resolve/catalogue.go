package resolve

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

func grey(y float64) colour.RGB { return colour.RGB{y, y, y} }

// paint is an opaque surface.
func paint(c colour.RGB) solid.Skin { return solid.Skin{Reflect: c} }

// surface is the skin of a room's walls, floor or ceiling.
func (r *catalogue) surface(room *plan.Room, which roomPart) solid.Skin {
	written := &r.s.Rooms[r.things[room.Name].index]
	name, y := written.Walls, scene.DefaultWallReflectance
	switch which {
	case floorPart:
		name, y = written.Floor, scene.DefaultFloorReflectance
	case ceilingPart:
		name, y = written.Ceiling, scene.DefaultCeilingReflectance
	}
	defer r.About(written.Path)()
	if skin, ok := r.material(name); ok {
		return skin
	}
	if !name.Set {
		r.assumeOnce("", string(which), "grey, reflectance "+unit.FormatNumber(y))
	}
	return paint(grey(y))
}

// material finds a surface by its name: the scene's own first, then the kit's. It is not ok where
// no name is given, or nothing bears it.
func (r *catalogue) material(name scene.Given[string]) (solid.Skin, bool) {
	if !name.Set {
		return solid.Skin{}, false
	}
	for i := range r.s.Materials {
		if m := &r.s.Materials[i]; m.Name == name.Value {
			return r.ownMaterial(m), true
		}
	}
	if m := r.kit.Material(name.Value); m != nil {
		return kitSkin(m), true
	}
	names := kit.Names(r.kit.Materials)
	for i := range r.s.Materials {
		names = append(names, r.s.Materials[i].Name)
	}
	r.unknownEntry(name, "material", names)
	return solid.Skin{}, false
}

func (r *catalogue) ownMaterial(m *scene.Material) solid.Skin {
	if !m.Colour.Set {
		return paint(grey(m.Reflectance.Value))
	}
	return paint(coloured(m.Colour.Value.XY, m.Reflectance.Value))
}

// coloured is a reflectance with the chromaticity that the surface has under daylight D65.
func coloured(xy [2]float64, y float64) colour.RGB {
	c, _ := colour.ChannelFactors(xy, colour.D65(), y)
	return c
}

// kitSkin is a material of the catalogue as light meets it.
func kitSkin(m *kit.Material) solid.Skin {
	skin := solid.Skin{Reflect: m.Colour(), Direct: grey(m.Transmittance * (1 - m.Scatter)), Diffuse: grey(m.Transmittance * m.Scatter)}
	if m.Transmittance > 0 && m.Index > 0 {
		skin.Glass = solid.NewGlass(m.Index, max(m.Sheets, 1), m.Transmittance)
	}
	return skin
}

// polished is a skin with what of it mirrors, where it is that of a flat board: on all else a shine counts as scattered.
func (r *catalogue) polished(skin solid.Skin, name string) solid.Skin {
	if m := r.kit.Material(name); m != nil && !r.isOwnMaterial(name) {
		skin.Mirror, skin.Lobe = m.Mirror, m.Lobe
	}
	return skin
}

// polishedSkin is a material of the catalogue with the polish that it has there.
func polishedSkin(m *kit.Material) solid.Skin {
	skin := kitSkin(m)
	skin.Mirror, skin.Lobe = m.Mirror, m.Lobe
	return skin
}

// isOwnMaterial says whether the scene describes a material of a name itself.
func (r *catalogue) isOwnMaterial(name string) bool {
	return slices.ContainsFunc(r.s.Materials, func(m scene.Material) bool { return m.Name == name })
}

// clothSkin is a cloth of the catalogue as light meets it, from either side.
func clothSkin(c *kit.Cloth) solid.Skin {
	return solid.Skin{Reflect: grey(c.Reflect), Direct: grey(c.Direct), Diffuse: grey(c.Diffuse)}
}

// unknownEntry logs a name that the catalogue does not hold.
func (r *catalogue) unknownEntry(name scene.Given[string], what string, names []string) {
	if r.unlisted(name.Span) {
		return
	}
	r.Errorf(name.Span, scene.CodeUnknownEntry, source.DidYouMeanOr(name.Value, names, listed(names)), "the kit has no %s %q", what, name.Value)
}

// glass finds a glass by its name.
func (r *catalogue) glass(name scene.Given[string]) (m *kit.Material, ok bool) {
	wanted := name.Or(scene.DefaultGlass)
	if m := r.kit.Material(wanted); m != nil && m.Transmittance > 0 {
		return m, true
	}
	if !name.Set { // a kit without the usual glass
		return &kit.Material{Entry: kit.Entry{Name: wanted}, Transmittance: 1}, true
	}
	var names []string
	for _, m := range r.kit.Materials {
		if m.Transmittance > 0 {
			names = append(names, m.Name)
		}
	}
	r.unknownEntry(name, "glass", names)
	return nil, false
}

// unlisted reports whether a name that the catalogue does not hold needs no fault of its own: no catalogue was
// given, which is reported once, or a kit file of the scene that may hold the name could not be read, which the
// loader has reported.
func (r *catalogue) unlisted(span source.Span) bool {
	if r.doc != nil && r.doc.KitLacks {
		return true
	}
	if len(r.kit.Units) > 0 {
		return false
	}
	if !r.missingReported {
		r.Errorf(span, CodeNoCatalogue, "resolve it with a document that was opened with a catalogue: scene.Env{Kit: …}, from kit.Shipped",
			"the document has no catalogue to look this name up in")
	}
	r.missingReported = true
	return true
}

// headOf makes the head of a choice.
func (r *catalogue) headOf(ch kit.Choice, make func(kit.Choice, *source.Log) (kit.Head, bool)) (kit.Head, bool) {
	own := &source.Log{}
	head, ok := make(ch, own)
	for _, d := range own.All() {
		switch d.Code {
		case kit.CodeUnknownUnit, kit.CodeUnknownModifier, kit.CodeUnknownGel:
			if r.unlisted(d.Span) {
				continue
			}
		}
		r.Log.Add(d)
	}
	return head, ok
}

package resolve

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
)

// What a mirror on a wall is made of: glass of a thickness before a back, m. Within a hand's breadth, m, of a wall it is known to
// face that.
const (
	glassThickness = 1e-3
	handsBreadth   = 0.1
)

// hangMirror hangs the back of a mirror, and the glass before it.
func (r *furniturePass) hangMirror(written *scene.Furniture, f *plan.Furniture) {
	glass, ok := r.mirrorGlass(written)
	if !ok {
		return
	}
	a := plane.AxesAt(f.Turn)
	w, d := f.Size[0]/2, f.Size[1]/2
	back := plan.Part{Kind: plan.BodyPart, Outline: a.Rectangle(f.At, -w, w, glassThickness-d, d), Z0: f.Z0, Z1: f.Z1}
	f.IDs = r.solids(f.Name, []plan.Part{back}, r.backing())
	left, right := a.At(f.At, -w, -d), a.At(f.At, w, -d)
	corners := []r3.Vec{{X: left.X, Y: left.Y, Z: f.Z0}, {X: right.X, Y: right.Y, Z: f.Z0}, {X: right.X, Y: right.Y, Z: f.Z1}, {X: left.X, Y: left.Y, Z: f.Z1}}
	f.IDs = append(f.IDs, r.sheet(f.Name, corners, glass, solid.Skin{}))
	if r.facesWall(f, a) {
		r.Errorf(report.Either(written.Turn.Set, written.Turn.Span, written.Span), CodeMirrorTurned,
			"leave turn out, and the mirror hangs with its back to the wall; or turn it by 180 more", "the mirror %s faces the wall that it hangs on", f.Name)
	}
}

// mirrorGlass is the skin of what mirrors.
func (r *furniturePass) mirrorGlass(f *scene.Furniture) (solid.Skin, bool) {
	if !f.Material.Set {
		if m := r.kit.Material(scene.DefaultMirror); m != nil {
			return polishedSkin(m), true
		}
		return solid.Skin{}, true // a missing catalogue has its own error
	}
	name := f.Material.Value
	skin, ok := r.material(f.Material)
	if skin = r.polished(skin, name); ok && skin.Specular() == (colour.RGB{}) {
		r.Errorf(f.Material.Span, CodeNoMirror, "leave material out, or name what mirrors: "+listed(r.mirrorNames()), "a mirror of %s mirrors nothing", name)
		return skin, false
	}
	return skin, ok
}

// mirrorNames are the materials of the catalogue that mirror all that they reflect.
func (r *furniturePass) mirrorNames() (names []string) {
	for _, m := range r.kit.Materials {
		if m.Mirror == 1 && m.Transmittance == 0 {
			names = append(names, m.Name)
		}
	}
	return names
}

// backing is the skin of the back of a mirror.
func (r *furniturePass) backing() solid.Skin {
	if m := r.kit.Material(scene.DefaultFurnitureMaterial); m != nil {
		return kitSkin(m)
	}
	return paint(grey(scene.DefaultWallReflectance))
}

// facesWall says whether the glass of a mirror in a room looks at a wall from within a hand's breadth.
func (r *furniturePass) facesWall(f *plan.Furniture, a plane.Axes) bool {
	room := r.out.RoomAt(r3.Vec{X: f.At.X, Y: f.At.Y, Z: (f.Z0 + f.Z1) / 2})
	if room == nil {
		return false
	}
	before := a.At(f.At, 0, -f.Size[1]/2-handsBreadth)
	return !room.Holds(before)
}

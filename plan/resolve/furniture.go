package resolve

import (
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// maxParts bounds the parts of all furniture.
const maxParts = 5000

// furnish stands every piece of furniture into the set.
func (r *furniturePass) furnish() {
	parts := 0
	for i := range r.s.Furniture {
		written := &r.s.Furniture[i]
		leave := r.About(written.Path)
		if f, ok := r.shape(written.Name); ok {
			if parts += len(f.Parts); parts > maxParts {
				r.Errorf(written.Span, scene.CodeTooMany, "draw a part of the set", "the scene has too many parts of furniture: it may have %d", maxParts)
				leave()
				return
			}
			if f.Kind == term.Mirror {
				r.hangMirror(written, f)
			} else {
				f.IDs = r.solids(f.Name, f.Parts, r.woodOf(written))
			}
			r.out.Furniture = append(r.out.Furniture, *f)
		}
		leave()
	}
}

// woodOf is the skin of a piece of furniture.
func (r *furniturePass) woodOf(f *scene.Furniture) solid.Skin {
	if skin, ok := r.material(f.Material); ok {
		return skin
	}
	m := r.kit.Material(scene.DefaultFurnitureMaterial)
	if f.Material.Set || m == nil {
		return paint(grey(scene.DefaultWallReflectance))
	}
	r.assumeOnce("", "furniture", scene.DefaultFurnitureMaterial)
	return kitSkin(m)
}

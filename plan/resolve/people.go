package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// populate stands every person into the set.
func (r *peoplePass) populate() {
	for i := range r.s.People {
		written := &r.s.People[i]
		leave := r.About(written.Path)
		if p, ok := r.personOf(written); ok {
			p.Own = r.body(written, &p)
			r.out.People = append(r.out.People, p)
			if len(r.out.People) == 1 {
				r.out.FaceHeight = p.Eyes
			}
		}
		leave()
	}
}

// body stands someone into the set: the head returns light as the skin does, where that is written, the rest as the
// clothes.
func (r *peoplePass) body(written *scene.Person, p *plan.Person) []solid.ID {
	clothes := paint(grey(scene.DefaultClothesReflectance))
	if written.Wears.Set {
		clothes = r.clothing(written.Wears, clothes)
		p.Clothes = clothes.Reflect.Y()
	} else {
		r.assumeOnce("", "what people wear", "grey, reflectance "+unit.FormatNumber(scene.DefaultClothesReflectance))
	}
	head := clothes
	if written.Skin.Set {
		head = r.clothing(written.Skin, clothes)
		p.Skin = head.Reflect.Y()
	}
	var ids []solid.ID
	for _, part := range p.Parts {
		skin := clothes
		if part.Kind == plan.HeadPart {
			skin = head
		}
		ids = append(ids, r.solids(p.Name, []plan.Part{part}, skin)...)
	}
	return ids
}

// clothing is a surface of someone; what is worn under it where no material bears its name.
func (r *peoplePass) clothing(s scene.Given[scene.Surface], under solid.Skin) solid.Skin {
	if s.Value.Material == "" {
		return paint(grey(s.Value.Reflectance))
	}
	if skin, ok := r.material(scene.Given[string]{Value: s.Value.Material, Set: true, Span: s.Span}); ok {
		return paint(skin.Reflect)
	}
	return under
}

func (r *peoplePass) personOf(written *scene.Person) (plan.Person, bool) {
	s, ok := r.spotOf(written.Name)
	bearing, known := r.facingOf(written.Name)
	if !ok || !known {
		return plan.Person{}, false
	}
	p := r.standingAt(written, s, bearing)
	r.assumePerson(written, p.Eyes-p.Base, bearing)
	p.Marks, p.Walk = r.marksOf(written, &p), r.walkOf(written)
	p.Seen = seenOf(written.Seen, written.SeenBy, true)
	return p, true
}

// assumePerson lists the defaults of a person. eyes is their height over the feet.
func (r *peoplePass) assumePerson(p *scene.Person, eyes, bearing float64) {
	if !p.Pose.Set {
		r.assume(p.Path, "pose", string(term.Standing))
	}
	if eyesAssumed(p) {
		r.assume(p.Path, "eyes", r.Length(eyes))
	}
	if !p.Faces.Set {
		to := r.firstCamera()
		if to == "" {
			to = unit.FormatAngle(bearing)
		}
		r.assume(p.Path, "faces", to)
	}
}

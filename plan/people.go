package plan

import (
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
)

// populate stands every person into the set.
func (r *resolver) populate() {
	for i := range r.s.People {
		written := &r.s.People[i]
		leave := r.about(written.Path)
		if p, ok := r.personOf(written); ok {
			p.Own = r.solids(p.Name, p.Parts, paint(grey(clothesReflect)))
			r.out.People = append(r.out.People, p)
			if len(r.out.People) == 1 {
				r.out.FaceHeight = p.Eyes
			}
		}
		leave()
	}
	if len(r.out.People) > 0 {
		r.assumeOnce("", "what people wear", "grey, reflectance "+unit.FormatNumber(clothesReflect))
	}
}

func (r *resolver) personOf(written *scene.Person) (Person, bool) {
	s, ok := r.spotOf(written.Name)
	bearing, known := r.facingOf(written.Name)
	if !ok || !known {
		return Person{}, false
	}
	r.assumePerson(written, bearing)
	s = r.feet(written, s)
	eyes, _ := eyesOf(written)
	p := Person{
		Name: written.Name, At: s.at, Base: s.base, Pose: written.Pose.Or("standing"),
		Height: written.Height.Or(defaultPerson), Eyes: s.base + eyes, Faces: bearing,
		Face: faceFrame(written, s, bearing), Span: written.Span,
	}
	switch p.Pose {
	case "standing":
		p.Crown = p.Base + p.Height
		if written.Eyes.Set {
			p.Crown = max(p.Crown, p.Eyes+eyesToCrown)
		}
	case "lying":
		p.Crown = p.Eyes
	default:
		p.Crown = p.Eyes + eyesToCrown
	}
	p.Parts = pose(&p)
	return p, true
}

// feet lowers someone who sits on a sofa to the floor before it: seated eye heights are counted
// from there.
func (r *resolver) feet(p *scene.Person, s spot) spot {
	if s.on == "" || p.Pose.V != "seated" && p.Pose.V != "propped" {
		return s
	}
	if f, ok := r.shape(s.on); ok && f.Kind == "sofa" {
		s.base = f.Base
	}
	return s
}

// assumePerson lists the defaults of a person.
func (r *resolver) assumePerson(p *scene.Person, bearing float64) {
	if !p.Pose.Set {
		r.assume(p.Path, "pose", "standing")
	}
	if eyes, assumed := eyesOf(p); assumed {
		r.assume(p.Path, "eyes", r.length(eyes))
	}
	if !p.Faces.Set {
		to := r.firstCamera()
		if to == "" {
			to = unit.FormatAngle(bearing)
		}
		r.assume(p.Path, "faces", to)
	}
}

// faceOf is the face of a person.
func (r *resolver) faceOf(name string) (Frame, bool) {
	p := &r.s.People[r.things[name].index]
	s, ok := r.spotOf(name)
	bearing, known := r.facingOf(name)
	if !ok || !known {
		return Frame{}, false
	}
	return faceFrame(p, r.feet(p, s), bearing), true
}

// eyesAbove is the z of a person's eyes; ok is false where there is no such person, or a fault.
func (r *resolver) eyesAbove(name string) (z float64, ok bool) {
	t, known := r.things[name]
	if !known || t.kind != aPerson {
		return 0, false
	}
	p := &r.s.People[t.index]
	s, ok := r.spotOf(name)
	if !ok {
		return 0, false
	}
	eyes, _ := eyesOf(p)
	return r.feet(p, s).base + eyes, true
}

// personAt is the name of the person that an aim means, or "".
func (r *resolver) personAt(a scene.Given[scene.Aim]) string {
	if a.Set && a.V.Form == scene.AtThing && r.isAt(a.V.Thing, aPerson) {
		return a.V.Thing.Name
	}
	return ""
}

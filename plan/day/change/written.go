package change

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
)

// written is what a scene says of who is placed by whom, by the names of things.
type written struct {
	placed, looks map[string][]string
	spots         map[string]plan.Spot
	faces         map[r3.Vec]string // who has a face at a place
}

// writtenOf reads it from a set-up; of what remains of one nothing is known of it but where things stand.
func writtenOf(s *plan.Setup) *written {
	w := &written{placed: map[string][]string{}, looks: map[string][]string{}, spots: s.Spots, faces: map[r3.Vec]string{}}
	for _, p := range s.Posts() {
		w.faces[p.Face.At] = p.Name
	}
	if s.Scene == nil {
		return w
	}
	for i := range s.Scene.Lights {
		l := &s.Scene.Lights[i]
		w.take(l.Name, l.At, l.Aim)
	}
	for i := range s.Scene.Grip {
		g := &s.Scene.Grip[i]
		w.take(g.Name, g.At, g.Faces)
	}
	for i := range s.Scene.Cameras {
		m := &s.Scene.Cameras[i]
		w.take(m.Name, m.At, m.Looks)
	}
	for i := range s.Scene.Furniture {
		f := &s.Scene.Furniture[i]
		w.take(f.Name, f.At, scene.Given[scene.Aim]{})
	}
	for i := range s.Scene.People {
		p := &s.Scene.People[i]
		w.take(p.Name, p.At, p.Faces)
	}
	return w
}

// take notes what a thing is placed by and looks at.
func (w *written) take(name string, at scene.Given[scene.Place], aim scene.Given[scene.Aim]) {
	if w.spots[name].Stays {
		return
	}
	w.placed[name] = placedBy(&at.Value)
	if aim.Set {
		w.looks[name] = append(words(aim.Value.Thing.Name).Words, placedBy(&aim.Value.Place)...)
	}
}

// placedBy are the things that a place is said by: what stands or is a person, not walls.
func placedBy(p *scene.Place) []string {
	switch p.Form {
	case scene.FromThing, scene.ByToward, scene.ByNose, scene.OnTop:
		return words(p.Thing.Name, p.Toward.Name).Words
	}
	return nil
}

// aimed are the things that a light is aimed at: what the scene says, or whose face its axis leads to.
func (w *written) aimed(l *plan.Light) []string {
	if who, known := w.faces[l.AimPoint]; known && l.Throw > 0 {
		return []string{who}
	}
	return w.looks[l.Name]
}

func (w *written) lookedAt(m *plan.Camera) []string {
	if m.Looks != "" {
		return []string{m.Looks}
	}
	return w.looks[m.Name]
}

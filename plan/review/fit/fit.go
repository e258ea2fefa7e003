// Package fit checks what needs no light: that lamps, grip, people, cameras and meters stand where they can, reach into
// nothing, have room for their stands and are of use there.
package fit

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// written is how the scene names a thing that is checked.
type written struct {
	path              string
	at, height        source.Span // of its place, and of its height
	furniture, person bool
}

// movable says whether a thing is moved rather than worked round: furniture and people.
func (w written) movable() bool { return w.furniture || w.person }

// contactFinder finds what things reach into.
type contactFinder struct {
	*report.Reporter
	out    *plan.Setup
	things map[string]written
	boxes  []r3.Box // of the prisms and the sheets of the set, once one is asked for
	told   map[toldClash]bool
}

// toldClash is a part of a thing that has been found to lie in another: each fault has one finding.
type toldClash struct {
	of   string
	part body.Part
	in   string
}

// tell notes that a part of a thing has been found to lie in another; in "" means in whatever.
func (r *contactFinder) tell(of string, part body.Part, in string) {
	r.told[toldClash{of, part, in}] = true
}

// checker looks for things that cannot stand where the scene puts them.
type checker struct {
	*contactFinder
	doc  *scene.Document
	open []inOpen // of a scene without rooms, what comes down in no breeze that is worth a line
}

// Check logs what cannot stand where the scene puts it, and what is useless where it stands. It notes which
// lights are astray. doc is the file it came from; nil for a scene that was made by hand.
func Check(doc *scene.Document, s *plan.Setup, log *source.Log) {
	r := &checker{contactFinder: newContactFinder(s, log), doc: doc}
	path := func(name string) string { return r.things[name].path }
	light := func(l *plan.Light) string { return path(l.Name) }
	runAll(r, ofLights, s.Lights, light)
	runAll(r, feedOfLights, s.Lights, light)
	runAll(r, ofGrip, s.Grip, func(g *plan.Grip) string { return path(g.Name) })
	runAll(r, holdOfLights, s.Lights, light)
	runAll(r, holdOfGrip, s.Grip, func(g *plan.Grip) string { return path(g.Name) })
	runAll(r, ofOpenings, s.Openings, func(o *plan.Opening) string { return path(o.Name) })
	runAll(r, ofFurniture, s.Furniture, func(f *plan.Furniture) string { return path(f.Name) })
	runAll(r, ofPeople, s.Posts(), func(p *plan.Person) string { return path(p.Name) })
	runAll(r, ofCameras, s.Cameras, func(c *plan.Camera) string { return path(c.Name) })
	runAll(r, ofCues, s.Cues, func(q *plan.Cue) string { return q.Path })
	runAll(r, ofMeters, s.Meters, func(m *plan.Meter) string { return path(m.Name) })
	(&collisions{r}).check()
	r.checkSheet()
	r.checkAnyLight()
	r.openGround()
}

func newContactFinder(s *plan.Setup, log *source.Log) *contactFinder {
	return &contactFinder{Reporter: &report.Reporter{Log: log, Setup: s.Name, Feet: s.Feet}, out: s, things: writtenOf(s.Scene), told: map[toldClash]bool{}}
}

// writtenOf lists the things of a scene by name. Of two that bear one name the first is meant.
func writtenOf(s *scene.Scene) map[string]written {
	things := map[string]written{}
	add := func(t *scene.Thing, w written) {
		if _, taken := things[t.Name]; !taken {
			w.path = t.Path
			things[t.Name] = w
		}
	}
	for i := range s.Rooms {
		add(&s.Rooms[i].Thing, written{})
	}
	for i := range s.Openings {
		add(&s.Openings[i].Thing, written{})
	}
	for i := range s.Furniture {
		add(&s.Furniture[i].Thing, written{at: s.Furniture[i].At.Span, furniture: true})
	}
	for i := range s.People {
		p := &s.People[i]
		add(&p.Thing, written{at: p.At.Span, person: true})
		for _, name := range p.MarkNames() {
			m := p.MarkPlaces[name]
			add(&scene.Thing{Name: p.Name + "." + name, Path: p.Path + ".marks." + name}, written{at: m.At.Span, person: true})
		}
	}
	for i := range s.Cameras {
		add(&s.Cameras[i].Thing, written{at: s.Cameras[i].At.Span, height: s.Cameras[i].Height.Span})
	}
	for i := range s.Lights {
		add(&s.Lights[i].Thing, written{at: s.Lights[i].At.Span, height: s.Lights[i].Height.Span})
	}
	for i := range s.Grip {
		add(&s.Grip[i].Thing, written{at: s.Grip[i].At.Span, height: s.Grip[i].Height.Span})
	}
	for i := range s.Meters {
		add(&s.Meters[i].Thing, written{})
	}
	return things
}

// light is a light as it was written.
func (r *contactFinder) light(name string) *scene.Light {
	for i := range r.out.Scene.Lights {
		if l := &r.out.Scene.Lights[i]; l.Name == name {
			return l
		}
	}
	return &scene.Light{}
}

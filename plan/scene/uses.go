package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

// checkNames refuses one name for two things, and, in the keys that this package alone reads,
// names that nothing bears. Places, aims and mounts of things are looked up where they are
// resolved, in package plan.
//
// elsewhere are the lights of the file that this set-up may lack: a cue of the scene may name one.
func (s *Scene) checkNames(elsewhere map[string]bool, c *source.Context) {
	order := s.things()
	checkTwice(order, c)
	order = appendNamed(order, s.Circuits, kindCircuit)
	order = appendNamed(order, s.Cues, kindCue)
	order = appendNamed(order, s.Setups, kindSetup)
	for _, u := range s.uses(elsewhere) {
		u.check(order, c)
	}
}

// use is a name that is written where one of some kinds of thing is meant.
type use struct {
	path   string // of the key it is written under
	ref    Ref
	wanted []string
}

// check refuses a name that nothing of the wanted kinds bears.
func (u use) check(order []named, c *source.Context) {
	name, _, _ := strings.Cut(u.ref.Name, ".")
	var near []string
	other := ""
	for _, n := range order {
		fits := slices.Contains(u.wanted, n.kind)
		switch {
		case n.thing.Name == name && fits:
			return
		case n.thing.Name == name:
			other = n.kind
		case fits:
			near = append(near, n.thing.Name)
		}
	}
	meant := orList(u.wanted)
	if len(u.wanted) > 3 {
		meant = "something with a place"
	}
	d := source.Diagnostic{Severity: source.Error, Code: source.CodeUnknownName, Span: u.ref.Span, Path: u.path, Setup: c.Setup,
		Message: "nothing is called " + name + ", where " + meant + " belongs", Hint: source.DidYouMean(name, near)}
	if other != "" {
		d.Code, d.Message = CodeWrongThing, name+" is "+other+", where "+meant+" belongs"
	}
	if d.Hint == "" && len(near) > 0 && len(near) <= maxOffered {
		d.Hint = "there is " + orList(near)
	}
	c.Log.Add(d)
}

// maxOffered is how many names a hint lists.
const maxOffered = 8

// standing are the kinds of thing that have a place of their own.
var standing = []string{kindFurniture, kindPerson, kindCamera, kindLight, kindGrip, kindOpening, kindMeter}

// uses lists the names in the keys that no other package looks up today.
func (s *Scene) uses(elsewhere map[string]bool) []use {
	u := &nameUses{}
	for i := range s.Lights {
		u.light(&s.Lights[i])
	}
	for i := range s.Circuits {
		u.place(s.Circuits[i].Path+".at", s.Circuits[i].At.Value)
		u.ref(s.Circuits[i].Path+".from", s.Circuits[i].From, kindCircuit)
	}
	for i := range s.People {
		u.refs(s.People[i].Path+".seen", s.People[i].SeenBy, kindCamera)
	}
	u.cues(s.Cues, elsewhere)
	for _, w := range s.Wanted {
		u.want(w)
	}
	u.refs("measured", s.MeasuredNames, kindPerson, kindMeter)
	if own := s.setup(s.Setup); own != nil {
		u.setup(own)
	}
	return u.all
}

// nameUses gathers names with what they should be of.
type nameUses struct{ all []use }

func (u *nameUses) ref(path string, r Ref, wanted ...string) {
	if r.Name != "" {
		u.all = append(u.all, use{path, r, wanted})
	}
}

func (u *nameUses) refs(path string, refs []Ref, wanted ...string) {
	for _, r := range refs {
		u.ref(path, r, wanted...)
	}
}

// place adds the names of a place by its form.
func (u *nameUses) place(path string, p Place) {
	switch p.Form {
	case AtPoint:
		return
	case AtWall:
		u.ref(path, p.Thing, kindRoom)
	case AtOpening:
		u.ref(path, p.Thing, kindOpening)
	case OnTop:
		u.ref(path, p.Thing, kindFurniture)
	case ByNose:
		u.ref(path, p.Thing, kindPerson)
	case FromThing, ByToward:
		u.ref(path, p.Thing, append([]string{kindRoom}, standing...)...)
		u.ref(path, p.Toward, append([]string{kindRoom}, standing...)...)
	}
}

func (u *nameUses) light(l *Light) {
	for _, r := range l.Role {
		u.ref(l.Path+".role", r.Person, kindPerson)
	}
	u.refs(l.Path+".seen", l.SeenBy, kindCamera)
	if l.Circuit.Set {
		u.ref(l.Path+".circuit", Ref{Name: l.Circuit.Value, Span: l.Circuit.Span}, kindCircuit)
	}
}

func (u *nameUses) cues(cues []Cue, elsewhere map[string]bool) {
	for i := range cues {
		for k := range cues[i].Lights {
			l := &cues[i].Lights[k]
			if l.Elsewhere = elsewhere[l.Light.Name]; !l.Elsewhere {
				u.ref(cues[i].Path+".lights", l.Light, kindLight)
			}
		}
	}
}

func (u *nameUses) want(w Want) {
	u.ref("wants", w.Of, kindPerson, kindMeter)
	u.ref("wants", w.Cue, kindCue)
	u.ref("wants", w.Setup, kindSetup)
}

// setup adds the names of the set-up that the scene is merged for.
func (u *nameUses) setup(s *Setup) {
	u.refs(s.Path+".camera", s.Cameras, kindCamera)
}

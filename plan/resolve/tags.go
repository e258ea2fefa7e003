package resolve

import (
	"strconv"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// tags numbers the things of a section in the order of the whole file: those of the scene, then
// those that its set-ups bring in. A light keeps its number all day, struck or not.
func (r *register) tags(section, prefix string) map[string]string {
	tags := map[string]string{}
	add := func(n *source.Node) {
		if n == nil {
			return
		}
		for i := range n.Keys {
			if name := n.Keys[i].Name; tags[name] == "" {
				tags[name] = prefix + strconv.Itoa(len(tags)+1)
			}
		}
	}
	if r.doc != nil && r.doc.Root != nil {
		add(r.doc.Root.Get(section))
		if setups := r.doc.Root.Get("setups"); setups != nil {
			for i := range setups.Keys {
				add(setups.Keys[i].Value.Get("change").Get(section))
			}
		}
	}
	// A scene that was made by hand, without a file.
	for _, name := range r.names {
		if t := r.things[name]; t.kind == sectionKind(section) && tags[name] == "" {
			tags[name] = prefix + strconv.Itoa(len(tags)+1)
		}
	}
	return tags
}

func sectionKind(section string) thingKind {
	if section == "grip" {
		return gripKind
	}
	return lightKind
}

// oneTagEach warns of a tag that two lights bear: on the plan they could not be told apart.
func (r *lightPass) oneTagEach() {
	first := map[string]*plan.Light{}
	for i := range r.out.Lights {
		l := &r.out.Lights[i]
		f, taken := first[l.Tag]
		if !taken {
			first[l.Tag] = l
			continue
		}
		leave := r.About(l.Path)
		d := r.Diagnostic(source.Warning, l.Span, CodeTagTwice, "give one of them another tag", "%s and %s are both tagged %s", f.Name, l.Name, l.Tag)
		d.Related = []source.Related{{Span: f.Span, Message: f.Name + " is here"}}
		r.Log.Add(d)
		leave()
	}
}

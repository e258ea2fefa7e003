package section

import (
	"cmp"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// changes is what the crew does between the set-up before and this one: what is new, what moves, what is set otherwise,
// what is struck. Lights come first, then grip, cameras, people and furniture.
func (c Report) changes() *Section {
	before, now := c.In.Setup.Before, c.In.Setup
	if before == nil {
		return &Section{}
	}
	t := Table{Columns: []Column{{Strong: true}, {Flexible: true}}}
	t.Entries = append(t.Entries, changed(ofThings, before.Lights, now.Lights, lightID, c.lightChanges)...)
	t.Entries = append(t.Entries, changed(ofThings, before.Grip, now.Grip, gripID, c.gripChanges)...)
	t.Entries = append(t.Entries, changed(ofCameras, before.Cameras, now.Cameras, func(m *plan.Camera) id { return id{m.Name, m.Name} }, c.cameraChanges)...)
	t.Entries = append(t.Entries, changed(ofThings, before.People, now.People, func(p *plan.Person) id { return id{p.Name, p.Name} }, c.personChanges)...)
	t.Entries = append(t.Entries, changed(ofThings, marksIn(before.People), marksIn(now.People), func(p *plan.Person) id { return id{p.Name, p.Name} }, c.personChanges)...)
	t.Entries = append(t.Entries, changed(ofThings, before.Furniture, now.Furniture, func(f *plan.Furniture) id { return id{f.Name, f.Name} }, c.pieceChanges)...)
	t.Entries = append(t.Entries, changed(ofThings, before.Openings, now.Openings, func(o *plan.Opening) id { return id{o.Name, o.Name} }, c.openingChanges)...)
	s := &Section{Title: "Changes since " + cmp.Or(before.Name, "the set-up before"), Rank: layout.Listed, Tables: []Table{t}}
	s.Words = append(s.Words, uncrossed(now)...)
	if own := exposureChanges(&before.Exposure, &now.Exposure); own != "" {
		s.Words = append(s.Words, ink.Capital(own)+".")
	}
	if len(t.Entries) == 0 && len(s.Words) == 0 {
		s.Words = []string{"Nothing: the set is as it was."}
	}
	return s
}

// uncrossed says of a reverse what it leaves where it stood, and why.
func uncrossed(now *plan.Setup) (words []string) {
	if now.Scene == nil {
		return nil
	}
	for _, u := range now.Scene.Uncrossed {
		words = append(words, "Not across: "+now.Numbered(u.Name)+" "+u.Why+".")
	}
	return words
}

// id is what a thing is called in the file, and what the crew reads on the plan.
type id struct{ name, tag string }

// How a list says that a thing was not there before, or is not there any more. A camera that does not roll is not struck.
var (
	ofThings  = [2]string{"new", "struck"}
	ofCameras = [2]string{"comes in", "goes out"}
)

// marksIn are people as they are at their marks: tape on the floor that somebody lays, and lays anew.
func marksIn(people []plan.Person) (all []plan.Person) {
	for i := range people {
		for k := range people[i].Marks {
			all = append(all, people[i].AtMark(&people[i].Marks[k]))
		}
	}
	return all
}

func lightID(l *plan.Light) id { return id{l.Name, l.Tag} }
func gripID(g *plan.Grip) id   { return id{g.Name, g.Tag} }

// changed lists what of one kind is not as before: what differs as it is listed now, then what is struck.
func changed[T any](words [2]string, before, now []T, called func(*T) id, differs func(was, is *T) []string) []Entry {
	var all []Entry
	find := func(in []T, name string) *T {
		i := slices.IndexFunc(in, func(x T) bool { return called(&x).name == name })
		if i < 0 {
			return nil
		}
		return &in[i]
	}
	for i := range now {
		is := called(&now[i])
		switch was := find(before, is.name); {
		case was == nil:
			all = append(all, Entry{Cells: []string{is.tag, words[0]}})
		default:
			if how := differs(was, &now[i]); len(how) > 0 {
				all = append(all, Entry{Cells: []string{is.tag, strings.Join(how, "; ")}})
			}
		}
	}
	for i := range before {
		if was := called(&before[i]); find(now, was.name) == nil {
			all = append(all, Entry{Cells: []string{was.tag, words[1]}})
		}
	}
	return all
}

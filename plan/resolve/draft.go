package resolve

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
)

// assume records a default that decided a number, in words that print. path is the thing's, or ""
// for the whole scene.
func (r *draft) assume(path, what, value string) {
	r.out.Assumed = append(r.out.Assumed, plan.Assumption{Thing: path, What: what, Value: value})
}

// assumeOnce records what holds for many things as one line.
func (r *draft) assumeOnce(path, what, value string) {
	key := path + "\x00" + what
	if r.assumed[key] {
		return
	}
	r.assumed[key] = true
	r.assume(path, what, value)
}

// sortAssumed brings the list into the order of the file: the scene's own, then thing by thing.
func (r *draft) sortAssumed() {
	rank := map[string]int{"": -1}
	for _, name := range r.names {
		t := r.things[name]
		rank[t.path] = t.rank
	}
	slices.SortStableFunc(r.out.Assumed, func(a, b plan.Assumption) int { return rank[a.Thing] - rank[b.Thing] })
}

// solids puts the parts of a thing into the set, one prism for each.
func (r *draft) solids(name string, parts []plan.Part, skin solid.Skin) []solid.ID {
	ids := make([]solid.ID, len(parts))
	for i, p := range parts {
		ids[i] = r.prism(name, p.Outline, p.Z0, p.Z1, skin)
	}
	return ids
}

// wall finds a wall by ROOM.WALL. Its room may be nil after an error of its own: then nothing
// more is said.
func (r *draft) wall(ref scene.Ref) (room *plan.Room, wall *plan.Wall, ok bool) {
	name, part, dotted := strings.Cut(ref.Name, ".")
	if _, ok := r.named(scene.Ref{Name: name, Span: ref.Span}, roomKind); !ok {
		return nil, nil, false
	}
	room = r.out.RoomNamed(name)
	if room == nil {
		return nil, nil, false
	}
	for i := range room.Walls {
		if dotted && room.Walls[i].Name == part {
			return room, &room.Walls[i], true
		}
	}
	r.noSuchWall(ref, room)
	return nil, nil, false
}

// noSuchWall names the walls that there are.
func (r *draft) noSuchWall(ref scene.Ref, room *plan.Room) {
	var walls []string
	for i := range room.Walls {
		walls = append(walls, room.Name+"."+room.Walls[i].Name)
	}
	hint := source.DidYouMean(ref.Name, walls)
	if hint == "" {
		hint = "the walls of " + room.Name + " are " + strings.Join(walls, ", ")
	}
	if ref.Name == room.Name {
		r.Errorf(ref.Span, CodeNoSuchWall, hint, "%s is a room; say which of its walls", ref.Name)
		return
	}
	r.Errorf(ref.Span, CodeNoSuchWall, hint, "there is no wall %s", ref.Name)
}

// id gives out the next solid's identity under the name of what it belongs to.
func (r *draft) id(name string) solid.ID {
	id := r.nextID
	r.nextID++
	r.out.Names[id] = name
	return id
}

// levels takes what the site says.
func (r *draft) levels() {
	if r.s.Site == nil {
		return
	}
	r.out.Ground = r.s.Site.Ground.Value
	r.out.North = r.s.Site.North.Value
	if hours, said := r.s.Site.Hours(); said && hours <= 0 {
		r.Errorf(r.s.Site.Until.Span, source.CodeBadValue, "write the end of the shooting after its beginning", "until %s is not after when %s", r.s.Site.Until.Value, r.s.Site.When.Value)
	} else {
		r.out.Shooting = hours
	}
}

// sheet puts a sheet into the set and returns its identity.
func (r *draft) sheet(name string, corners []r3.Vec, front, back solid.Skin) solid.ID {
	id := r.id(name)
	r.out.Set.Sheets = append(r.out.Set.Sheets, solid.Sheet{ID: id, Name: name, Corners: corners, Front: front, Back: back})
	return id
}

// prism puts a prism into the set and returns its identity.
func (r *draft) prism(name string, base []r2.Vec, z0, z1 float64, skin solid.Skin) solid.ID {
	id := r.id(name)
	r.out.Set.Prisms = append(r.out.Set.Prisms, solid.Prism{ID: id, Name: name, Base: base, Z0: z0, Z1: z1, Skin: skin})
	return id
}

// notComputed adds a key that the loader cannot know of.
func (r *draft) notComputed(l scene.Later, path string, span source.Span) {
	r.uncomputed = append(r.uncomputed, scene.Uncomputed{Later: l, Path: path + "." + l.Key, Span: span})
}

package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// openings lays out every opening and refuses those that share a hole.
func (r *wallPass) openings() {
	r.buildWalls()
	for i := range r.s.Openings {
		o := &r.s.Openings[i]
		leave := r.About(o.Path)
		if resolved, ok := r.openingOf(o); ok {
			r.out.Openings = append(r.out.Openings, resolved)
		}
		leave()
	}
	for i := range r.out.Openings {
		o := &r.out.Openings[i]
		r.through(o)
		r.holes = append(r.holes, holeOf(o))
	}
	r.checkSharedHoles()
}

func (r *wallPass) openingOf(o *scene.Opening) (plan.Opening, bool) {
	width, wide := r.widthOf(o)
	room, wall, ok := r.wall(o.Wall)
	if !ok || !wide {
		return plan.Opening{}, false
	}
	from, ok := r.alongWall(o, room, wall, width)
	if !ok {
		return plan.Opening{}, false
	}
	resolved := plan.Opening{
		Name: o.Name, Kind: o.Kind, Room: room.Name, Wall: wall.Name,
		Left: wall.On(from), Right: wall.On(from + width), Outward: wall.Outward,
		Panes:     o.Panes.Or([2]int{1, 1}),
		HingeLeft: o.Hinge.Or("left") == "left", SwingIn: o.Swing.Or("in") == "in", Ajar: o.Ajar.Value,
		Escape: o.Escape.Value, Transmittance: 1, Span: o.Span,
	}
	r.glaze(o, &resolved)
	for _, g := range o.Gels {
		resolved.Gels = append(resolved.Gels, g.Name)
	}
	if len(o.Gels) > 0 && resolved.Glass == "" {
		r.Errorf(o.Gels[0].Span, CodeGelWithoutGlass, "add glass: "+scene.DefaultGlass+", or hang a cloth as dressing", "%s has no glass to put a gel on", o.Name)
	}
	return resolved, r.sillAndHead(o, room, &resolved)
}

func (r *wallPass) widthOf(o *scene.Opening) (float64, bool) {
	switch {
	case o.Width.Set:
		return o.Width.Value, true
	case o.Kind == term.Door:
		r.assume(o.Path, "width", r.Length(scene.DefaultDoorWidth))
		return scene.DefaultDoorWidth, true
	}
	r.reportMissing(o.Span, "add width: 1.2", "%s has no width", o.Name)
	return 0, false
}

// alongWall is how far from the wall's left end an opening begins.
func (r *wallPass) alongWall(o *scene.Opening, room *plan.Room, wall *plan.Wall, width float64) (float64, bool) {
	long := wall.Length()
	name := room.Name + "." + wall.Name
	if width > long+plane.Grain {
		span := report.Either(o.Width.Span.Valid(), o.Width.Span, o.Span)
		r.Errorf(span, CodeOpeningWide, "width may be at most "+r.Length(long), "%s is %s wide, and %s is only %s long", o.Name, r.Length(width), name, r.Length(long))
		return 0, false
	}
	if !o.Along.Set {
		r.assume(o.Path, "along", "centre of "+name)
	}
	if !o.Along.Set || o.Along.Centre {
		return (long - width) / 2, true
	}
	from := o.Along.Metres
	switch over := from + width - long; {
	case from < -plane.Grain:
		r.Errorf(o.Along.Span, CodeOpeningBeyond, "count from the wall's left end, as seen from inside",
			"%s begins %s before the left end of %s", o.Name, r.Length(-from), name)
	case over > plane.Grain:
		r.Errorf(o.Along.Span, CodeOpeningBeyond, "along may be at most "+r.Length(long-width),
			"%s ends %s beyond the right end of %s, which is %s long", o.Name, r.Length(over), name, r.Length(long))
	default:
		return from, true
	}
	return 0, false
}

// sillAndHead gives an opening its heights, and checks that there is a wall around it.
func (r *wallPass) sillAndHead(o *scene.Opening, room *plan.Room, to *plan.Opening) bool {
	ceiling := min(room.CeilingAt(to.Left), room.CeilingAt(to.Right)) - room.Base
	sill, head := 0.0, min(scene.DefaultDoorHead, ceiling)
	if o.Kind == term.Window {
		sill, head = scene.DefaultWindowSill, min(scene.DefaultWindowHead, ceiling)
	}
	if !o.Sill.Set && o.Kind == term.Window {
		r.assume(o.Path, "sill", r.Length(sill))
	}
	if !o.Head.Set {
		r.assume(o.Path, "head", r.Length(head))
	}
	sill, head = o.Sill.Or(sill), o.Head.Or(head)
	to.Sill, to.Head = room.Base+sill, room.Base+head
	at := func(g scene.Given[float64]) source.Span { return report.Either(g.Span.Valid(), g.Span, o.Span) }
	switch {
	case sill < -plane.Grain:
		r.Errorf(at(o.Sill), CodeSillBelowFloor, "write sill: 0, or more", "the sill of %s is %s below the floor of %s", o.Name, r.Length(-sill), room.Name)
	case head <= sill+plane.Grain && o.Sill.Set && o.Head.Set && r.doc != nil:
		// the loader has reported it
	case head <= sill+plane.Grain:
		span := report.Either(o.Sill.Set, at(o.Sill), at(o.Head))
		r.Errorf(span, scene.CodeContradicts, "give it a head over "+r.Length(sill)+", or a sill under "+r.Length(head), "the sill of %s at %s is not below its head at %s", o.Name, r.Length(sill), r.Length(head))
	case head > ceiling+plane.Grain:
		r.Errorf(at(o.Head), CodeHeadOverCeiling, "head may be at most "+r.Length(ceiling), "the head of %s at %s is %s over the ceiling of %s, which is %s high there",
			o.Name, r.Length(head), r.Length(head-ceiling), room.Name, r.Length(ceiling))
	default:
		return true
	}
	return false
}

// cutMargin is by how much a hole is cut beyond the faces of the wall, so that no skin is left.
const cutMargin = 10 * plane.Grain

func holeOf(o *plan.Opening) hole {
	return hole{name: o.Name, room: o.Room, wall: o.Wall, ring: o.Slab(-cutMargin, o.Depth+cutMargin), z0: o.Sill, z1: o.Head}
}

// through finds how far an opening goes: through every wall without a gap between them, to the
// next room or to the outside.
func (r *wallPass) through(o *plan.Opening) {
	inset := min(0.01, o.Width()/4)
	depths := []float64{
		r.solidDepth(r2.Add(o.Left, r2.Scale(inset, o.Rightward())), o),
		r.solidDepth(o.Middle(), o),
		r.solidDepth(r2.Sub(o.Right, r2.Scale(inset, o.Rightward())), o),
	}
	// A wall that stands end on behind the opening would lead one ray astray.
	least := min(depths[0], depths[1], depths[2])
	for _, d := range depths {
		if d <= least+o.Width() {
			o.Depth = max(o.Depth, plane.Snap(d))
		}
	}
	beyond := r2.Add(o.Middle(), r2.Scale(o.Depth+1e-3, o.Outward))
	for i := range r.out.Rooms {
		room := &r.out.Rooms[i]
		if room.Holds(beyond) && plane.Overlap(room.Base, room.Top, o.Sill, o.Head) {
			o.FarRoom = room.Name
			return
		}
	}
}

// maxWallGap is the widest air in a wall that an opening still goes through, m: what is left between
// rooms that are not quite parallel.
const maxWallGap = 0.02

// solidDepth is how far wall goes on without a gap from a point of an opening's inside face
// outward, at any height of the opening.
func (r *wallPass) solidDepth(p r2.Vec, o *plan.Opening) float64 {
	var spans [][2]float64
	for _, room := range r.wallBlocks {
		for _, blocks := range room {
			for _, b := range blocks {
				if !plane.Overlap(b.z0, b.z1, o.Sill, o.Head) {
					continue
				}
				if near, far, ok := plane.Chord(p, o.Outward, b.ring); ok {
					spans = append(spans, [2]float64{near, far})
				}
			}
		}
	}
	depth := 0.0
	for grown := true; grown; {
		grown = false
		for _, s := range spans {
			if s[0] <= depth+maxWallGap && s[1] > depth+plane.Grain {
				depth, grown = s[1], true
			}
		}
	}
	return depth
}

// checkSharedHoles refuses two openings that share a hole.
func (r *wallPass) checkSharedHoles() {
	for i, b := range r.holes {
		for k, a := range r.holes[:i] {
			if !plane.Overlap(a.z0, a.z1, b.z0, b.z1) || plane.Intersection(a.ring, b.ring) == nil {
				continue
			}
			code, hint, message := CodeOpeningsOverlap, "move one of them along, or make it narrower", "%s and %s overlap in %s.%s"
			if a.room != b.room {
				code, hint = CodeOpeningTwice, "leave one of them out: an opening cuts every wall up to the next room"
				message = "%s and %s are the same hole from both sides of %s.%s"
			}
			leave := r.About(r.things[b.name].path)
			d := r.Diagnostic(source.Error, r.out.Openings[i].Span, code, hint, message, a.name, b.name, a.room, a.wall)
			d.Related = []source.Related{{Span: r.out.Openings[k].Span, Message: a.name + " is here"}}
			r.Log.Add(d)
			leave()
		}
	}
}

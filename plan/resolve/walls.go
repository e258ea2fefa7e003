package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
)

// Limits of walls.
const (
	maxMitre = 4.0 // how far a mitred corner reaches from the inside corner, in thicknesses
	maxParty = 0.6 // the widest gap between two rooms that is taken for a solid wall, m
)

// strip is the plan of wall i of a room, its corners mitred: the slab, cut at either end by the
// line that halves the corner. Where a corner is so sharp that its mitre would reach far out, it
// is cut off square.
func strip(room *plan.Room, i int) []r2.Vec {
	n := len(room.Walls)
	w := &room.Walls[i]
	spare := maxMitre * w.Thickness
	ring := w.Slab(-spare, w.Length()+spare, 0, w.Thickness)
	ring = mitre(ring, w, &room.Walls[(i+1)%n], w.Left, true)
	ring = mitre(ring, w, &room.Walls[(i+n-1)%n], w.Right, false)
	return plane.SnapRing(ring)
}

// mitre cuts the end of wall w at the corner it shares with a neighbour.
func mitre(ring []r2.Vec, w, next *plan.Wall, corner r2.Vec, left bool) []r2.Vec {
	half := r2.Add(w.Outward, next.Outward)
	if r2.Norm(half) < 1e-9 { // back to back: the wall ends square
		half = w.Outward
	}
	l := plane.Through(corner, r2.Add(corner, half))
	// Seen from inside, left of the line that leads out of the corner is its left: what belongs
	// to the wall lies to the right of its left corner and to the left of its right one.
	if left {
		l = l.Reversed()
	}
	ring = plane.Clip(ring, l)
	convex := r2.Dot(next.Outward, w.Rightward())*report.Either(left, -1.0, 1.0) > 0
	if reach := 2 * w.Thickness / r2.Norm(half); convex && reach > maxMitre*w.Thickness {
		out := r2.Unit(half)
		ring = plane.Clip(ring, plane.Line{At: r2.Add(corner, r2.Scale(maxMitre*w.Thickness, out)), Normal: r2.Scale(-1, out)})
	}
	return ring
}

// buildWalls cuts every wall from its strip, before any opening: between two rooms each wall has
// its half of the gap, no wall stands in a room, and none stands in another.
func (r *wallPass) buildWalls() {
	var standing []block
	for i := range r.out.Rooms {
		room := &r.out.Rooms[i]
		var stock [][]block
		for k := range room.Walls {
			blocks := []block{{ring: strip(room, k), z0: room.Base, z1: wallTop(room, k)}}
			if blocks[0].ring == nil {
				blocks = nil
			}
			blocks = r.shareGaps(blocks, room, k)
			blocks = r.clearRooms(blocks)
			blocks = cutAll(blocks, standing)
			standing = append(standing, blocks...)
			stock = append(stock, blocks)
		}
		r.wallBlocks = append(r.wallBlocks, stock)
	}
}

// wallTop is where the ceiling is highest along a wall.
func wallTop(room *plan.Room, k int) float64 {
	w := &room.Walls[k]
	return max(room.CeilingAt(w.Left), room.CeilingAt(w.Right))
}

// shareGaps gives a wall its half of every party gap, no less and no more: the gap to a wall back
// to back with it, where that is narrow enough to be solid.
func (r *wallPass) shareGaps(blocks []block, room *plan.Room, k int) []block {
	w := &room.Walls[k]
	for i := range r.out.Rooms {
		other := &r.out.Rooms[i]
		z0, z1 := max(room.Base, other.Base), min(wallTop(room, k), other.Top)
		if z1-z0 <= plane.Grain {
			continue
		}
		for j := range other.Walls {
			f, ok := plan.BackToBack(w, &other.Walls[j])
			both := w.Thickness + other.Walls[j].Thickness
			if !ok || f.Gap <= plane.Grain || f.Gap > max(maxParty, both) {
				continue
			}
			if f.Gap > both+plane.Grain && room.Name < other.Name {
				r.assumeOnce(r.things[room.Name].path, "wall to "+other.Name, r.Length(f.Gap)+", the gap")
			}
			blocks = shareGap(blocks, w, f, z0, z1)
		}
	}
	return blocks
}

// shareGap gives a wall its half of one gap.
func shareGap(blocks []block, w *plan.Wall, f plan.Stretch, z0, z1 float64) []block {
	half := f.Gap / 2
	beyond := w.Slab(f.From, f.To, half, half+maxMitre*w.Thickness)
	blocks = cut(blocks, beyond, z0, z1, "")
	if half > w.Thickness+plane.Grain {
		fill := []block{{ring: w.Slab(f.From, f.To, w.Thickness, half), z0: z0, z1: z1}}
		blocks = append(blocks, cutAll(fill, blocks)...)
	}
	return blocks
}

// clearRooms takes the air of every room out of blocks.
func (r *wallPass) clearRooms(blocks []block) []block {
	for i := range r.out.Rooms {
		room := &r.out.Rooms[i]
		for _, part := range room.Parts {
			blocks = cut(blocks, part, room.Base, room.Top, "")
		}
	}
	return blocks
}

// raise cuts the openings through the walls and puts what is left into the set and onto the plan.
func (r *wallPass) raise() {
	for i := range r.out.Rooms {
		room := &r.out.Rooms[i]
		skin := r.surface(room, wallsPart)
		for k := range room.Walls {
			blocks := r.wallBlocks[i][k]
			for _, h := range r.holes {
				blocks = cut(blocks, h.ring, h.z0, h.z1, h.name)
			}
			for _, b := range blocks {
				r.standWall(b, room.Name, room.Walls[k].Name, skin)
			}
		}
	}
}

func (r *wallPass) standWall(b block, room, wall string, skin solid.Skin) {
	ring := plane.SnapRing(b.ring)
	if plane.Thin(ring) {
		return
	}
	r.out.Walls = append(r.out.Walls, plan.WallPiece{
		Outline: ring, Z0: b.z0, Z1: b.z1, Room: room, Wall: wall, Opening: b.mark,
	})
	name := room + "." + wall
	r.out.Set.Prisms = append(r.out.Set.Prisms, solid.Prism{
		ID: r.id(name), Name: name, Base: ring, Z0: b.z0, Z1: b.z1, Skin: skin,
	})
}

// hole is what an opening takes out of the walls.
type hole struct {
	name, room, wall string
	ring             []r2.Vec
	z0, z1           float64
}

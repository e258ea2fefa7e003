package section

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols/ink"
)

// rooms is the list of rooms, whose clear sizes stand on dimension lines of the plan.
func (c Report) rooms() *Section {
	t := Table{Columns: []Column{{Strong: true}, {Head: "size", Align: ink.Right}, {Head: "height", Align: ink.Right}}}
	for i := range c.In.Setup.Rooms {
		r := &c.In.Setup.Rooms[i]
		t.Entries = append(t.Entries, Entry{Cells: []string{r.Name, c.roomSize(r), c.ceiling(r)}, Of: []string{thingKey(change.Room, r.Name)}})
	}
	return &Section{Title: c.measured("Rooms"), Tables: []Table{t}}
}

// roomSize is the size of a room along its own walls, and says so where that is not all of its shape.
func (c Report) roomSize(r *plan.Room) string {
	w, h := sizeAlongWalls(r)
	words := c.Bare(w) + " × " + c.Bare(h)
	if !IsRectangle(r) {
		words += " overall"
	}
	return words
}

// sizeAlongWalls is the width and depth of a room in the directions of its longest wall and across it, m; of a room
// that lies square on the sheet across and up the sheet.
func sizeAlongWalls(r *plan.Room) (wide, deep float64) {
	along := r2.Vec{X: 1}
	if !LiesSquare(r) {
		along = longestWall(r)
	}
	g := box.Bounds{}
	for _, p := range r.Inside {
		g.Point(r2.Vec{X: r2.Dot(p, along), Y: r2.Cross(along, p)}, 0)
	}
	return box.Width(g.Box()), box.Height(g.Box())
}

// LiesSquare says whether the longest wall of a room runs across or up the sheet.
func LiesSquare(r *plan.Room) bool {
	d := longestWall(r)
	return math.Min(math.Abs(d.X), math.Abs(d.Y)) < square
}

// square is the sine of an angle that counts as none.
const square = 1e-4

// longestWall is the direction of a room's longest wall.
func longestWall(r *plan.Room) r2.Vec {
	best, long := r2.Vec{X: 1}, 0.0
	for i, a := range r.Inside {
		if d := r2.Sub(r.Inside[(i+1)%len(r.Inside)], a); r2.Norm(d) > long+1e-9 {
			best, long = r2.Unit(d), r2.Norm(d)
		}
	}
	return best
}

// IsRectangle says whether a room has four walls at right angles.
func IsRectangle(r *plan.Room) bool {
	if len(r.Inside) != 4 {
		return false
	}
	for i, a := range r.Inside {
		b, c := r.Inside[(i+1)%4], r.Inside[(i+2)%4]
		if math.Abs(r2.Dot(r2.Unit(r2.Sub(b, a)), r2.Unit(r2.Sub(c, b)))) > square {
			return false
		}
	}
	return true
}

// ceiling is the height of a room; of one that slopes from its lowest to its highest, and which way it rises.
func (c Report) ceiling(r *plan.Room) string {
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range r.Inside {
		z := r.CeilingAt(p) - r.Base
		low, high = math.Min(low, z), math.Max(high, z)
	}
	if !(high-low > 0.005) {
		return c.Bare(r.Top - r.Base)
	}
	return c.Bare(low) + " to " + c.Bare(high) + ", up toward " + risesToward(r)
}

// risesToward is the wall that a ceiling rises to.
func risesToward(r *plan.Room) string {
	best, most := "", math.Inf(-1)
	for i := range r.Walls {
		if d := r2.Dot(r.CeilingRise, r.Walls[i].Outward); d > most {
			best, most = r.Walls[i].Name, d
		}
	}
	return best
}

// pieces is the list of furniture, whose heights are lettered on the plan.
func (c Report) pieces() *Section {
	t := Table{Columns: []Column{{Strong: true}, {Flexible: true}, {Head: "size", Align: ink.Right}, {Head: "height", Align: ink.Right}}}
	for i := range c.In.Setup.Furniture {
		f := &c.In.Setup.Furniture[i]
		t.Entries = append(t.Entries, Entry{Cells: []string{f.Name, string(f.Kind), c.Bare(f.Size[0]) + " × " + c.Bare(f.Size[1]), c.Bare(f.Z1 - f.Base)}, Of: []string{thingKey(change.Furniture, f.Name)}})
	}
	return &Section{Title: c.measured("Furniture"), Tables: []Table{t}}
}

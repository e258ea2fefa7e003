// Package solid is the set as geometry: vertical convex prisms and flat convex sheets, with
// the skins that light meets, and queries over them: by rays, and of what is seen of a flat figure from a point past all
// solids, which is exact (Viewer). Metres; z up. It knows no scene.
//
// # Ties
//
// A ray stops at a solid only where it runs inside it for a length; touching a corner or
// sliding along a face does not stop it. A ray that runs within a face shared by two solids,
// or through the shared rim of two sheets, would slip between them, so every solid is
// half-open: it owns the faces (a sheet: the rims) whose outward normal points to lesser x, or
// where x is nought to lesser y, then lesser z, and not the others. Exactly one of two
// neighbours owns what they share.
//
// Distances below BVH.Epsilon, a billionth of the size of the set and never less than a
// nanometre, count as nought: a ray may start and end on a surface.
package solid

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// ID names one prism or sheet of a Set. IDs are given by the maker of the Set and are unique in it.
type ID int32

// Skin is what light meets at a surface. Reflect, Direct and Diffuse are AP1 factors 0..1:
// what is reflected, what passes straight on, what passes scattered. Mirror is the share of what a sheet reflects that leaves
// it mirrored; the rest is reflected diffusely. Lobe is over how wide an angle the mirrored light is spread, between its halves,
// degrees; 0 of a flat mirror.
type Skin struct {
	Reflect, Direct, Diffuse colour.RGB
	Mirror, Lobe             float64
	Glass                    *Glass // by which less of Direct passes from aside; nil where as much does from everywhere
}

// Clear says whether some light passes the surface straight on, as through a pane of glass.
func (s *Skin) Clear() bool { return s.Direct[0] > 0 || s.Direct[1] > 0 || s.Direct[2] > 0 }

// Scatters says whether some light passes the surface scattered, as through cloth.
func (s *Skin) Scatters() bool { return s.Diffuse[0] > 0 || s.Diffuse[1] > 0 || s.Diffuse[2] > 0 }

// Prism is a vertical convex prism. Base runs counter-clockwise seen from above. Light never
// passes through a prism, whatever its skin says. Lengths are in metres.
type Prism struct {
	ID     ID
	Name   string // the thing it belongs to: "kitchen.left", "desk"
	Base   []r2.Vec
	Z0, Z1 float64
	Skin   Skin
}

// Sheet is a flat convex sheet without thickness, at any tilt. Front is the side from which
// Corners, in metres, run counter-clockwise.
type Sheet struct {
	ID          ID
	Name        string
	Corners     []r3.Vec
	Front, Back Skin
}

// Set is everything that can stop light.
type Set struct {
	Prisms []Prism
	Sheets []Sheet
}

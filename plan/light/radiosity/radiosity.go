// Package radiosity works out the light that comes back: what the surfaces of a set return,
// diffusely, to each other and to where it is read. It knows solids and colours, and asks of a lamp
// only what it gives straight to a place on a surface (Lamp).
//
// # How it is done
//
// Every face of every solid is cut into patches of about a quarter of a metre, and each patch into
// four elements. A patch gathers: its own rays, spread by the cosine, say which elements it sees
// (links.go); those of a large face are drawn together (drawn.go). An element keeps the straight light
// of its own part, so that the edge of a beam or a shadow is told to an eighth of a metre; what it gets
// from other surfaces it shares with its patch. The light is then passed on until what still changes is
// 1e-5 of what the lamp sent (solve.go), for every lamp and channel of colour at once. Last, rays from
// the places of reading find the elements that they see; on lattices the rays of one direction are drawn
// together, as an image with depth (frame.go), and neighbours lend each other what they see (smooth.go).
//
// Only patches that a receptor sees, directly or by way of other patches, are ever looked at. Rays
// that meet nothing are light that leaves the set. Places inside a solid count for nothing, so that
// a patch partly under a wardrobe is the smaller by that part; and where a sheet runs across a face, a sloping
// ceiling across a wall, the face is split, so that no patch lies on both sides of it (split.go).
//
// A single receptor is one point, and can afford more. What it reads hangs on some patches more than on others: these
// get more rays (importance.go). What is close to it is seen in cells, each lit where a ray has met it (near.go); of
// what is small and bright the form factor is found exactly (gather.go), and where the edge of a shadow runs over an
// element that matters, the light is that of the places seen. A spot of light that the rays of most patches would miss
// is looked at by name (hot.go). How far the reading may be off is told by its own rays (spread.go).
//
// Nothing is random: all rays come from one net of points (net.go), and every sum has one order, so
// that the number of goroutines leaves no trace.
package radiosity

import (
	"context"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// Quality says how finely the light is followed. Counts of rays are powers of two, but for More.
type Quality struct {
	Patch   float64 // m, the longest side of a patch
	Links   int     // rays of a patch
	More    int     // rays for each place of single receptors, shared among patches by what hangs on them
	Point   int     // rays of a single receptor
	Near    float64 // m within which a single receptor sees cells of elements
	Cell    int     // rays of a cell
	Looks   int     // from a patch at what is hot
	Edge    float64 // share of a lamp's light by which the edge of a shadow may put a patch off before it is looked at closely
	Matters float64 // share of a reading from which on the light of an element is found where it is seen
	Noise   float64 // share of a lamp's light that an element may be off by before its form factor is found exactly
	Lattice int     // rays of a point of a lattice; its neighbours' count for it, too
}

// Closer is a quality with smaller patches and more rays for single receptors.
func (q Quality) Closer() Quality {
	q.Patch, q.Links, q.More, q.Looks = q.Patch*0.6, q.Links*2, q.More*6, q.Looks*4
	return q
}

// Pattern is how a receptor weighs light by its angle to its axis.
type Pattern uint8

// The patterns.
const (
	Cosine Pattern = iota // a plane
	Dome                  // (1 + cos t)/2
)

// Receptor is a place to read at. Solids in Skip are not there.
type Receptor struct {
	At, Axis r3.Vec
	Pattern  Pattern
	Skip     []solid.ID
}

// Lattice is a grid of receptors on a plane: point (i, j) is Origin + i U + j V. Bits of Mask
// (j*NU+i) are points that are not read.
type Lattice struct {
	Origin, U, V, Axis r3.Vec
	Toward             *r3.Vec // where it is set, the place that the axis of each point, a dome's, points at
	NU, NV             int
	Pattern            Pattern
	Mask               []uint64
	Skip               []solid.ID
}

// Sight is how a lamp sees a patch.
type Sight uint8

// The sights.
const (
	Dark   Sight = iota // none of it
	Open                // all of it
	Shaded              // through what may hide some of it
)

// Lamp is a light as surfaces see it. It may be asked by several goroutines, each with its own
// number.
type Lamp interface {
	// Aim makes ready for a patch by its corners and its normal. It says how the lamp lights it.
	Aim(worker int, corners []r3.Vec, normal r3.Vec) Sight
	// Flux is what falls straight from the lamp on a flat convex part of the patch last aimed at, lm by channel, as far
	// as it lies in the air: by a place in its middle or, closely, by several.
	Flux(worker int, part []r3.Vec, closely bool) colour.RGB
	// Light is what a place on a surface gets straight from the lamp, lx by channel.
	Light(worker int, at, normal r3.Vec) colour.RGB
	// Landing sends rays out of the lamp by its own distribution, each with a part of its flux, lm by
	// channel, and gives each to land, which says whether the surface met
	// is one that counts. It says whether all of the lamp's light comes to such surfaces, through no clear sheet.
	Landing(land func(h solid.Hit, at r3.Vec, flux colour.RGB) bool) (all bool)
}

// Transport is how surfaces and receptors see each other. It depends on no lamp, is not changed by use
// and may be used by many goroutines.
type Transport struct {
	mesh     *mesh
	workers  int
	quality  Quality
	slots    []uint32 // patch of the mesh to slot; 0: none
	patches  []patch  // by slot, from 1; 0 is black
	links    []uint32 // elements that patches see
	stars    []star   // the points of the rays of a patch
	veils    []veiled // elements seen through clear sheets: they follow those of the patches
	readers  []Receptor
	places   []place
	placeOf  []int32 // by receptor
	cells    []cell
	fresh    []uint32 // patches that have been seen and not been linked
	lattices []*frame
}

// Trace follows rays through a set from receptors and lattices on, and from what they see.
func Trace(ctx context.Context, set *solid.Set, bvh *solid.BVH, q Quality, workers int, points []Receptor, lattices []Lattice) (*Transport, error) {
	t := &Transport{mesh: newMesh(set, bvh, q.Patch), workers: workers, quality: q, readers: points}
	if !t.mesh.reflects {
		return t, nil
	}
	t.group()
	if err := t.lookFromPlaces(ctx); err != nil {
		return nil, err
	}
	for i := range lattices {
		f, err := t.lookFromLattice(ctx, &lattices[i])
		if err != nil {
			return nil, err
		}
		t.lattices = append(t.lattices, f)
	}
	if err := t.link(ctx); err != nil {
		return nil, err
	}
	t.number()
	return t, nil
}

// Dark says whether no surface of the set returns any light.
func (t *Transport) Dark() bool { return !t.mesh.reflects }

// Channels is 1 where every surface and clear sheet is grey, else 3.
func (t *Transport) Channels() int { return t.mesh.channels }

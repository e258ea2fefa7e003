// Package radiosity works out the light that comes back: what the surfaces of a set return,
// diffusely, to each other and to where it is read. It knows solids and colours, and asks of a lamp
// only what it gives straight to a place on a surface (Lamp).
//
// # How it is done
//
// Every face of every solid is cut into patches of about a quarter of a metre, and each patch into
// four elements (mesh.go). A patch gathers: its own rays, spread by the cosine, say which elements it sees
// (linkpatch.go); those of a large face are drawn together (drawn.go). An element keeps the straight light
// of its own part (direct.go), so that the edge of a beam or a shadow shows to an eighth of a metre; what it gets
// from other surfaces it shares with its patch. The patches pass the light on until what still changes is
// at most 1e-4 of what the lamp sent (solver.go), for every lamp and channel of colour at once. Last, rays from
// the places of reading find the elements that they see; on lattices the rays of one direction are drawn
// together, into an item buffer with depth (frame.go), and neighbours lend each other what they see (smooth.go).
//
// The engine follows only patches that return anything (black.go) and that a receptor sees, directly or through other patches. Rays
// that meet nothing ask the environment, which is dark (environment.go); so do those of a spot meter that looks
// past all surfaces, all along its axis. Places inside a solid count for nothing, so that
// a patch partly under a wardrobe is the smaller by that part; and where a sheet runs across a face, a sloping
// ceiling across a wall, the face is split, so that no patch lies on both sides of it (split.go).
//
// A single receptor is one point, and can afford more. What it reads hangs on some patches more than on others: these
// get more rays (importance.go). It sees what is close to it in cells, each lit where a ray has met it (near.go). The form
// factor of what is small and bright is exact (gather.go), and where the edge of a shadow runs over an
// element that matters, the light is that of the places seen. The rays of most patches would miss a small spot of light,
// so each patch samples it by name (hot.go). The rays of a reading say how far it may be off (spread.go).
//
// Nothing is random: all rays come from one low-discrepancy sequence (package sobol), and every sum has one order, so
// that the number of goroutines leaves no trace.
//
// # The stations
//
// Trace links the patches (trace.go); Transport.Solve passes the light of lamps on (solve.go); Solution.Point and
// Solution.Lattice read it (readings.go, lattices.go).
package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// Quality says how finely the light is followed. Counts of rays are powers of two, but for More.
type Quality struct {
	Patch      float64 // m, the longest side of a patch
	Links      int     // rays of a patch
	More       int     // rays for each place of single receptors, shared among patches by what hangs on them
	Point      int     // rays of a single receptor
	Near       float64 // m within which a single receptor sees cells of elements
	Cell       int     // rays of a cell
	HotSamples int     // from a patch at what is hot
	Edge       float64 // share of a lamp's light by which the edge of a shadow may put a patch off before it is looked at closely
	Matters    float64 // share of a reading from which on the light of an element is found where it is seen
	Noise      float64 // share of a lamp's light that an element may be off by before its form factor is found exactly
	Lattice    int     // rays of a point of a lattice; its neighbours' count for it, too
	AllRound   int     // likewise where it looks all round, if more: they lie farther apart there
	Spare      float64 // up to how many times what rays give a lattice's points the most of what is hot is little enough for half of the looks at it
	Settled    float64 // share of a lamp's flux that a pass may still move when the solution ends, if more than residual
}

// Closer is a quality with smaller patches and more rays for single receptors, or a share of the way to that: 1 is as close as can be.
func (q Quality) Closer(share float64) Quality {
	times := func(full float64) float64 { return 1 + (full-1)*share }
	q.Patch *= times(0.6)
	if share > 0.5 {
		q.Links *= 2 // by powers of two, as the places on a patch spread evenly
	}
	q.More, q.HotSamples = int(times(6)*float64(q.More)), int(times(4)*float64(q.HotSamples))
	return q
}

// placesFullyRead is how many places are read with all rays; more places share those of so many, down to a number that still
// tells by their spread what they are off by.
const (
	placesFullyRead = 64
	leastPoint      = 512
	leastMore       = 256
	leastCell       = 16
)

// among is the quality where so many places are read.
func (q Quality) among(places int) Quality {
	for ; places > placesFullyRead; places = (places + 1) / 2 {
		q.Point = max(q.Point/2, min(q.Point, leastPoint))
		q.More = max(q.More/2, min(q.More, leastMore))
		q.Cell = max(q.Cell/2, min(q.Cell, leastCell))
		q.Near, q.Noise = q.Near/math.Sqrt2, 2*q.Noise
	}
	return q
}

// Visibility is how a lamp sees a patch.
type Visibility uint8

// The sights.
const (
	Hidden         Visibility = iota // none of it
	Unoccluded                       // all of it
	PartlyOccluded                   // through what may hide some of it
)

// Lamp is a light as surfaces see it. It may be asked by several goroutines, each with its own
// number.
type Lamp interface {
	// SetPatch makes ready for a patch by its corners and its normal. It says how the lamp lights it.
	SetPatch(worker int, corners []r3.Vec, normal r3.Vec) Visibility
	// Flux is what falls straight from the lamp on a flat convex part of the patch last aimed at, lm by channel, as far
	// as it lies in the air: by a place in its middle or, closely, by several.
	Flux(worker int, part []r3.Vec, closely bool) colour.RGB
	// Light is what a place on a surface gets straight from the lamp, lx by channel.
	Light(worker int, at, normal r3.Vec) colour.RGB
	// EmitRays sends rays out of the lamp by its own distribution, each with a part of its flux, lm by
	// channel, and gives each to land, which says whether the surface met
	// is one that counts. It says whether all of the lamp's light comes to such surfaces, through no clear sheet.
	EmitRays(land func(h solid.Hit, at r3.Vec, flux colour.RGB) bool) (all bool)
}

// OpenLamp is a lamp that takes it from who asks that nothing stands between it and a patch.
type OpenLamp interface {
	Lamp
	// SetOpenPatch is SetPatch of a part of a patch that sees all of the lamp, or as much of it as lies before it.
	SetOpenPatch(worker int, corners []r3.Vec, normal r3.Vec) Visibility
}

package radiosity_test

import (
	"context"
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// skylight lights every surface that looks up with 1000 lx, and nothing else.
type skylight struct{}

func (skylight) SetPatch(_ int, _ []r3.Vec, normal r3.Vec) radiosity.Visibility {
	if normal.Z > 0.5 {
		return radiosity.Unoccluded
	}
	return radiosity.Hidden
}

func (skylight) Flux(_ int, part []r3.Vec, _ bool) colour.RGB {
	var twice r3.Vec
	for i := 1; i+1 < len(part); i++ {
		twice = r3.Add(twice, r3.Cross(r3.Sub(part[i], part[0]), r3.Sub(part[i+1], part[0])))
	}
	flux := 1000 * r3.Norm(twice) / 2
	return colour.RGB{flux, flux, flux}
}

func (skylight) Light(_ int, _, normal r3.Vec) (e colour.RGB) {
	if normal.Z < 0.5 {
		return e
	}
	return colour.RGB{1000, 1000, 1000}
}

func (skylight) EmitRays(func(solid.Hit, r3.Vec, colour.RGB) bool) (all bool) { return false }

// A white card on open ground lights what faces it from above: half a metre over the middle of two by two
// metres it gets 0.83 of the 800 lm/m² that the card returns.
func ExampleTransport_Solve() {
	white := solid.Skin{Reflect: colour.RGB{0.8, 0.8, 0.8}}
	set := &solid.Set{Sheets: []solid.Sheet{{ID: 1, Name: "card", Front: white,
		Corners: []r3.Vec{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}}}}}
	ctx := context.Background()
	quality := radiosity.Quality{Patch: 0.25, Links: 64, Point: 8192, Lattice: 64}
	over := []receptor.Receptor{{At: r3.Vec{Z: 0.5}, Axis: r3.Vec{Z: -1}}}
	transport, err := radiosity.Trace(ctx, set, solid.NewBVH(set), quality, 0, over, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	solution, err := transport.Solve(ctx, []radiosity.Lamp{skylight{}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, light := range solution.Point(0, 0) {
		fmt.Printf("%.2f of it, from solid %d\n", light.Y()/800, solution.Keys(0)[i].From)
	}
	// Output: 0.83 of it, from solid 1
}

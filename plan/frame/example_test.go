package frame_test

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/term"
)

// A camera looks up the sheet from the origin through a 35 mm lens, and a flag reaches into its picture from the right.
func ExampleJudge() {
	s := plan.Setup{
		Cameras: []plan.Camera{{Name: "A", Lens: 35, Gate: [2]float64{24.89, 14}, HAOV: 39.2,
			Frame: plan.Frame{At: r3.Vec{Z: 1.5}, Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}}}},
		Grip: []plan.Grip{{Name: "f", Tag: "G1", Kind: term.Flag, Size: [2]float64{0.4, 0.3}, Mount: plan.Mount{Kind: term.Hand},
			Frame: plan.Frame{At: r3.Vec{X: 1.2, Y: 3, Z: 1.5}, Axis: r3.Vec{Y: -1}, Right: r3.Vec{X: -1}}}},
	}
	for _, seen := range frame.Judge(&s) {
		fmt.Printf("%s shows %s of %s: %.1f %% of the frame; %s %.2f m, or pan %.1f°\n",
			seen.Name, seen.Where, seen.Camera, 100*seen.Share, seen.Move.Way, seen.Move.Metres, seen.Pan.Degrees)
	}
	// Output:
	// f shows at the right edge of A: 0.8 % of the frame; right 0.07 m, or pan -1.5°
}

package tint_test

import (
	"fmt"

	"scrimshaw/render/carto"
	"scrimshaw/render/tint"
)

func ExampleNewScale() {
	levels := []float64{100, 200, 400} // lx, a stop apart
	s := tint.NewScale(levels, carto.Ink())
	fmt.Println(carto.Ink().Tints(4)) // of the bands
	fmt.Println(s.Tint(70.7), s.Tint(141.4), s.Tint(200), s.Tint(565.7))
	// Output:
	// [#b6b6b6 #cecece #e6e6e6 #ffffff]
	// #b6b6b6 #cecece #dadada #ffffff
}

package tint_test

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/tint"
	"scrimshaw/symbols/ink"
)

func ExampleNewScale() {
	levels := carto.StopLevels(200, 100, 400, 9) // a stop apart about 200 lx
	s := tint.NewScale(levels, carto.Night())
	fmt.Println(carto.Night().Bands(levels))
	key := s.Key(r2.Box{Max: r2.Vec{X: 40, Y: 4}}, 0, len(levels)+1)
	at := func(share float64) ink.Colour { // of the way along the key
		i := 3 * int(share*float64(key.Width))
		return ink.Colour{R: key.RGB[i], G: key.RGB[i+1], B: key.RGB[i+2]}
	}
	fmt.Println(at(0.125), at(0.375), at(0.5), at(0.875))
	// Output:
	// [#351d1c #412522 #4c2d29 #583631]
	// #351d1c #412522 #472826 #583631
}

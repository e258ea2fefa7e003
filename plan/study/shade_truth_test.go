package study_test

import (
	"fmt"
	"testing"
)

// shadeRoom is a room with a lamp on a table; meters stand under the shade, beside its foot, on the wall, the ceiling
// and the floor, and a face is near.
const shadeRoom = `scrimshaw: 1
rooms: {den: {size: [3.6, 3], height: 2.5}}
furniture: {desk: {table: [1.2, 0.8, 0.72], at: [1.2, 1.4]}, shelf: {box: [0.3, 0.8, 1.2], at: [2.2, 2.4]}}
lights: {lamp: {%s, at: {top: desk}, height: 1.12}}
meters:
  below: {flat: [1.2, 1.4, 0.73], facing: up}
  table: {flat: [1.5, 1.5, 0.73], facing: up}
  rim: {flat: [0.75, 1.2, 0.73], facing: up}
  wall: {flat: [0.01, 1.4, 1.1], facing: 90}
  wall-high: {flat: [0.01, 1.7, 2], facing: 90}
  wall-low: {flat: [1.2, 0.01, 0.6], facing: 0}
  ceiling: {flat: [1.2, 1.4, 2.49], facing: down}
  ceiling-far: {flat: [2.8, 2, 2.49], facing: down}
  floor: {flat: [2.6, 1, 0.01], facing: up}
  shadow: {flat: [3, 2.85, 0.6], facing: 180}
  near: {dome: [1.2, 0.95, 1.2], facing: 0}
`

// The light of a shade agrees with the tracer, that follows it from the bulb through the cloth, to 2 % on the table, the
// wall and the ceiling, straight and on the whole: for a taper, a wide drum, one of dark card, one that leans and
// one of metal that is aimed.
func TestShadesAgainstTruth(t *testing.T) {
	for name, lamp := range map[string]string{
		"taper":     "unit: practical-table",
		"drum":      "unit: practical-bulb, shade: drum-shade-40",
		"lined":     "unit: practical-bulb, bulb: led-806, shade: lined-shade-35",
		"leans":     "unit: practical-table, aim: {pan: 60, tilt: 50}",
		"metal":     "unit: practical-desk, aim: {pan: 120, tilt: -70}",
		"metal, up": "unit: practical-desk, bulb: tungsten-40, aim: {pan: 250, tilt: 20}",
	} {
		heldToTruth(t, name, fmt.Sprintf(shadeRoom, lamp), 0.02)
	}
}

package plan

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Camera is one camera: Frame.At is the entrance of the lens.
type Camera struct {
	Name       string
	Frame      Frame
	Base       float64 // z of what it stands on, m
	Height     float64 // of the lens above the floor of the room it belongs to, m
	Lens       float64 // mm
	Sensor     string
	Gate       [2]float64 // mm, after cropping to Aspect
	Aspect     float64    // ratio of width to height
	HAOV, VAOV float64    // angles of view across and up, degrees
	Room       float64    // margin about the frame that nothing should lie in, share of its width
	Exposure   Exposure
	Span       source.Span
}

// Exposure is resolved, with the defaults applied.
type Exposure struct {
	ISO, FPS float64 // exposure index; frames a second, 1/s
	Seconds  float64 // shutter time
	Degrees  float64 // shutter angle
	Stop     scene.Stop
	White    colour.White
	Meter    term.Meter // dome, flat
	Constant float64    // C of the incident meter, lx·s·ISO (ISO 2720)
}

package plan

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Camera is one camera: Frame.At is the entrance of the lens.
type Camera struct {
	Name       string
	Frame      Frame
	Base       float64 // z of what it stands on, m
	Height     float64 // of the lens above the floor of the room it belongs to, m
	Lens       float64 // mm
	Sensor     string
	Gate       [2]float64 // mm of the sensor that the frame takes, after cropping to Aspect
	Squeeze    float64    // of an anamorphic lens, a ratio: the frame is Gate times that across; 0 or 1: none
	Aspect     float64    // ratio of the frame's width to its height, unsqueezed
	HAOV, VAOV float64    // angles of view across and up, degrees
	Confusion  float64    // diameter of the circle that counts as a point in the gate, mm
	Readout    float64    // how much later the last row of a frame is read than its first, s
	Looks      string     // the person that it looks at; "" at something else
	Follows    string     // the thing that it turns with when that is moved in the scene; "" where it keeps its direction
	Track      *Track     // nil: it does not move
	Room       float64    // margin about the frame that nothing should lie in, share of its width
	Exposure   Exposure
	Filters    LensFilters
	Span       source.Span
}

// CameraLength is how far a camera reaches back from the entrance of its lens, m: lens, body and battery (common practice).
const CameraLength = 0.35

// LensWords names the lens: "40 mm", or "40 mm, 2× squeeze".
func (c *Camera) LensWords() string {
	if words := c.SqueezeWords(); words != "" {
		return unit.FormatLens(c.Lens) + ", " + words
	}
	return unit.FormatLens(c.Lens)
}

// SqueezeWords says that a lens is anamorphic: "2× squeeze"; "" of all others.
func (c *Camera) SqueezeWords() string {
	if c.Squeeze > 1 {
		return unit.FormatNumber(c.Squeeze) + "× squeeze"
	}
	return ""
}

// Exposure is resolved, with the defaults applied.
type Exposure struct {
	ISO, FPS float64 // exposure index; frames a second, 1/s
	Seconds  float64 // shutter time
	Degrees  float64 // shutter angle
	Stop     scene.Stop
	Balance  colour.White // that the camera is set to; none: White
	White    colour.White // that it sees as that: Balance before the filters
	Meter    term.Meter   // dome, flat
	Constant float64      // C of the incident meter, lx·s·ISO (ISO 2720)
	Filters  string       // before the lens: "ND 0.6 + polariser"; "" none
	Lost     float64      // stops that they take
	Range    lens.Range   // what the camera holds; zero: nothing says it
}

// Metered is the exposure as light becomes a stop by it: the one place where filters before a lens count.
func (x *Exposure) Metered() lens.Exposure {
	return lens.Exposure{ISO: x.ISO, Seconds: x.Seconds, Constant: x.Constant, Lost: x.Lost}
}

// SetTo is the white that the camera is set to.
func (x *Exposure) SetTo() colour.White {
	if x.Balance.Kelvin > 0 {
		return x.Balance
	}
	return x.White
}

// LensFilters are the filters before a lens, together.
type LensFilters struct {
	Names string // "ND 0.6 + polariser"; "" none
	Stops float64
	Stack []colour.Filter
}

package meter

import (
	"scrimshaw/plan/frame"
	"scrimshaw/plan/lens"
)

// jsonReflection is what a camera sees of a thing in a mirror or in glass.
type jsonReflection struct {
	Camera    string    `json:"camera"`
	In        string    `json:"in"` // the mirror, or the opening that the glass is in
	Glass     bool      `json:"glass"`
	Thing     string    `json:"thing"`
	Share     float64   `json:"share"`     // share of the frame
	Where     string    `json:"where"`     // in it
	Along     float64   `json:"along"`     // m from the start of the camera's track to where that is most; 0 of one that stands
	Returns   *float64  `json:"returns"`   // share of the light that the glass throws back; null of a mirror
	Luminance *float64  `json:"luminance"` // of the thing in the glass, where it stands out most, cd/m²; null of a mirror, and where nothing says it
	Behind    *float64  `json:"behind"`    // of what is seen through the glass there, cd/m²; null of a mirror
	Surface   *string   `json:"surface"`   // what that is; null where nothing stands there
	Keys      []jsonKey `json:"uncomputed"`
}

// jsonFlare is the light of a lamp on a lens.
type jsonFlare struct {
	Camera   string     `json:"camera"`
	Light    string     `json:"light"`
	Lux      float64    `json:"lux"`
	Along    float64    `json:"along"`    // m from the start of the camera's track to where that is most; 0 of one that stands
	OffAxis  float64    `json:"offAxis"`  // degrees
	OffFrame float64    `json:"offFrame"` // degrees; 0 within the frame
	Shade    *jsonShade `json:"shade"`    // null where none has room
	Keys     []jsonKey  `json:"uncomputed"`
}

// jsonShade is the least shade before a lens that keeps a lamp off it.
type jsonShade struct {
	Side   frame.Side `json:"side"`   // of the frame
	Ahead  float64    `json:"ahead"`  // of the lens, m
	Width  float64    `json:"width"`  // m
	Height float64    `json:"height"` // m
}

// jsonFlicker is how lamps pulse in the pictures of a camera.
type jsonFlicker struct {
	Camera string       `json:"camera"`
	Worst  jsonSwing    `json:"worst"` // of all that is read
	At     *string      `json:"at"`    // the reading; null where nothing shows
	Safe   *jsonSafe    `json:"safe"`  // shutters at which it does not; null: none
	Lamps  []jsonPulses `json:"lamps"`
}

type jsonSwing struct {
	Frames float64 `json:"frames"` // share: the most less the least from frame to frame, by the mean
	Rows   float64 `json:"rows"`   // share, from row to row
	Beat   float64 `json:"beat"`   // 1/s
}

type jsonSafe struct {
	Seconds *float64 `json:"seconds"` // null where a frame is too short
	Degrees *float64 `json:"degrees"`
	FPS     float64  `json:"fps"` // 1/s
}

type jsonPulses struct {
	Light string    `json:"light"`
	Hertz float64   `json:"hertz"` // 1/s
	Depth *float64  `json:"depth"` // share, of a sine; null of pulses
	Duty  *float64  `json:"duty"`  // share of the time, of pulses; null of a sine
	Swing jsonSwing `json:"swing"` // of its own light
}

func jsonReflections(all []Reflection) []jsonReflection {
	out := []jsonReflection{}
	for i := range all {
		r := &all[i]
		one := jsonReflection{Camera: r.Camera, In: r.In, Glass: r.Glass, Thing: r.Name, Share: Rounded(r.Share), Where: r.Where, Along: Rounded(r.Along), Keys: jsonKeys(r.Uncomputed)}
		if r.Glass {
			one.Returns, one.Luminance, one.Behind, one.Surface = RoundedOrNull(&r.Factor), orNone(r.Luminance), RoundedOrNull(&r.Behind), OrNull(r.Surface)
		}
		out = append(out, one)
	}
	return out
}

func jsonFlares(all []Flare) []jsonFlare {
	out := []jsonFlare{}
	for i := range all {
		f := &all[i]
		one := jsonFlare{Camera: f.Camera, Light: f.Light, Lux: Rounded(f.Lux), Along: Rounded(f.Along), OffAxis: Rounded(f.OffAxis), OffFrame: Rounded(f.OffFrame), Keys: jsonKeys(f.Uncomputed)}
		if s := f.Shade; s != nil {
			one.Shade = &jsonShade{Side: s.Side, Ahead: Rounded(s.Ahead), Width: Rounded(s.Width), Height: Rounded(s.Height)}
		}
		out = append(out, one)
	}
	return out
}

func jsonFlickers(all []Flicker) []jsonFlicker {
	out := []jsonFlicker{}
	for i := range all {
		f := &all[i]
		one := jsonFlicker{Camera: f.Camera, Worst: swingJSON(f.Worst), At: OrNull(f.At)}
		if s := f.Safe; s != nil {
			one.Safe = &jsonSafe{Seconds: orNone(s.Seconds), Degrees: orNone(s.Degrees), FPS: Rounded(s.FPS)}
		}
		for k := range f.Lamps {
			p := &f.Lamps[k]
			one.Lamps = append(one.Lamps, jsonPulses{Light: p.Light, Hertz: Rounded(p.Ripple.Hertz), Depth: orNone(p.Ripple.Depth), Duty: orNone(p.Ripple.Duty), Swing: swingJSON(p.Swing)})
		}
		out = append(out, one)
	}
	return out
}

func swingJSON(w lens.Swing) jsonSwing {
	return jsonSwing{Frames: Rounded(w.Frames), Rows: Rounded(w.Rows), Beat: Rounded(w.Beat)}
}

package meter

import (
	"math"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
)

// pulsing is a camera A of 24 frames a second at 180 degrees, beside one that has no shutter, and two lamps on mains of 50 Hz that are up.
func pulsing() (*plan.Setup, light.Levels, lens.Shutter) {
	shutter := lens.Shutter{FPS: 24, Seconds: 1.0 / 48, Readout: 0.01}
	x := exposure
	x.FPS, x.Seconds = shutter.FPS, shutter.Seconds
	lamp := func(name string, depth float64) plan.Light {
		return plan.Light{Name: name, Ripple: lens.Ripple{Hertz: 100, Depth: depth}}
	}
	s := &plan.Setup{Lights: []plan.Light{lamp("sun", 0), lamp("deep", 0.8), lamp("mild", 0.2), lamp("off", 0.8)},
		Cameras: []plan.Camera{{Name: "still"}, {Name: "A", Exposure: x, Readout: shutter.Readout}}}
	return s, light.Levels{"sun": white, "deep": white, "mild": white, "off": colour.RGB{}}, shutter
}

// Two lamps on mains of 50 Hz pulse a hundred times a second; a camera of 24 frames a second at 180 degrees gathers 100/48 periods of
// that. What a reading does is the sum of what its lights do, each by its share, and it is looked for where that is most.
func TestFlickerOfAReading(t *testing.T) {
	s, levels, _ := pulsing()
	lit := func(name string, sun, deep, mild float64) Reading {
		return Reading{Name: name, Shares: []Share{{Light: "sun", Lux: sun / 2}, {Light: "deep", Lux: deep}, {Light: "sun", Lux: sun / 2, Path: "reflected"}, {Light: "mild", Lux: mild}}}
	}
	readings := []Reading{{Name: "dark"}, lit("day", 90, 10, 0), lit("both", 0, 50, 50), lit("as much", 0, 70, 70), lit("some", 50, 30, 20), lit("dim", 0, 0, 100)}
	all := flickersOf(s, readings, levels)
	if len(all) != 1 || all[0].Camera != "A" || len(all[0].Lamps) != 2 {
		t.Fatalf("%+v", all)
	}
	f := all[0]
	// Of a sine the light of an exposure of n periods swings by depth x sin(pi n)/(pi n) about its mean, to both sides; frames fall anywhere in it.
	n := 100.0 / 48
	swing := func(depth float64) float64 { return 2 * depth * math.Abs(math.Sin(math.Pi*n)) / (math.Pi * n) }
	want := 0.5*swing(0.8) + 0.5*swing(0.2)
	if f.At != "both" || f.Lead != "deep" || !(math.Abs(f.Worst.Frames-want) <= 1e-3*want) || !(math.Abs(f.Worst.Rows-want) <= 1e-3*want) || !(math.Abs(f.Worst.Beat-4) <= 1e-9) {
		t.Errorf("worst %+v at %s by %s, want %v", f.Worst, f.At, f.Lead, want)
	}
	if w, lead := f.swingAt(&readings[5]); lead.Light != "mild" || !(math.Abs(w.Frames-swing(0.2)) <= 1e-3*want) {
		t.Errorf("by the mild lamp alone it is %+v, mostly by %v", w, lead)
	}
	like := Flicker{Lamps: []Pulsing{f.Lamps[0], f.Lamps[0]}}
	like.Lamps[1].Light = "mild"
	if _, lead := like.swingAt(&readings[2]); lead.Light != "deep" {
		t.Errorf("of two lamps that do as much it is mostly %s", lead.Light)
	}
	if w, lead := f.swingAt(&readings[0]); w != (lens.Swing{}) || lead != nil {
		t.Errorf("in the dark %+v flickers", w)
	}
	if f.LampNamed("mild").Ripple.Depth != 0.2 || f.LampNamed("sun") != nil {
		t.Error("a lamp is found by another's name")
	}
}

// A lamp is steady at two of its periods; a camera without a shutter sees nothing pulse, nor does one of lamps that are off.
func TestWhatEndsFlicker(t *testing.T) {
	s, levels, shutter := pulsing()
	safe := flickersOf(s, nil, levels)[0].Safe
	// Two periods take 1/50 s, which at 24 frames a second are 172.8 degrees; at 25 frames 180 degrees take them.
	if !(math.Abs(safe.Seconds-0.02) <= 1e-12) || !(math.Abs(safe.Degrees-172.8) <= 1e-9) || !(math.Abs(safe.FPS-25) <= 1e-9) || safe.Kept != 180 {
		t.Errorf("steady at %+v", safe)
	}
	if SteadyingOf(shutter, lens.Ripple{}) != nil {
		t.Error("steady light has to be steadied")
	}
	camera := s.Cameras[1]
	s.Cameras = []plan.Camera{{Name: "B", Exposure: plan.Exposure{FPS: 24}}, {Name: "C", Exposure: plan.Exposure{Seconds: 0.02}}}
	if all := flickersOf(s, nil, levels); all != nil {
		t.Errorf("cameras without a shutter see %+v", all)
	}
	s.Cameras, levels = []plan.Camera{camera}, light.Levels{"sun": white}
	if all := flickersOf(s, nil, levels); all != nil {
		t.Errorf("of lamps that are off a camera sees %+v", all)
	}
}

// What flickers is said in percent, where it is most, and what ends it; less than a tenth of a percent is said as that.
func TestFlickerInWords(t *testing.T) {
	safe := &Steadying{Seconds: 0.02, Degrees: 172.8, FPS: 25, Kept: 180}
	short := &Steadying{FPS: 50, Kept: 90}
	lamps := func(frames, rows float64) []Pulsing {
		return []Pulsing{{Numbered: "1 tube"}, {Numbered: "2 globe", Swing: lens.Swing{Frames: frames, Rows: rows}}}
	}
	for _, c := range []struct {
		f    Flicker
		want string
	}{
		{Flicker{Lamps: lamps(0.08, 0.06), Worst: lens.Swing{Frames: 0.08, Rows: 0.06, Beat: 4}, At: "ada.key", Safe: safe},
			"flicker of 1 tube, 2 globe: by 8 % from frame to frame, 4 times a second, and by 6 % from row to row, most at ada.key; none at 172.8° (1/50 s), or at 25 fps and 180°"},
		{Flicker{Lamps: lamps(0, 0.06), Worst: lens.Swing{Rows: 0.0301}, At: "table", Safe: short}, "flicker of 1 tube, 2 globe: by 3 % from row to row, most at table; none at 50 fps and 90°"},
		{Flicker{Lamps: lamps(0.3, 0), Worst: lens.Swing{Frames: 0.002, Rows: 0.0004, Beat: 0.125}, At: "table"},
			"flicker of 1 tube, 2 globe: by 0.2 % from frame to frame, 0.13 times a second, and by less than 0.1 % from row to row, most at table"},
		{Flicker{Lamps: lamps(0.3, 0), Worst: lens.Swing{Frames: 0.0009}, At: "table", Safe: short}, "flicker of 1 tube, 2 globe: less than 0.1 % of what is read; none at 50 fps and 90°"},
		{Flicker{Lamps: lamps(0.3, 0), Worst: lens.Swing{Frames: 0.3, Beat: 4}, At: "table"}, "flicker of 1 tube, 2 globe: by 30 % from frame to frame, 4 times a second, most at table"},
		{Flicker{Lamps: lamps(leastPercent, 0), Worst: lens.Swing{Rows: leastPercent}, At: "table", Safe: short}, "flicker of 1 tube, 2 globe: by 0.1 % from row to row, most at table; none at 50 fps and 90°"},
		{Flicker{Lamps: lamps(0.0005, 0.0009), Worst: lens.Swing{Frames: 0.0005}, At: "table", Safe: safe}, "flicker of 1 tube, 2 globe: none at this shutter"},
	} {
		if got := c.f.line(); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}

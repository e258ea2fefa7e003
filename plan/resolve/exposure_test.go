package resolve

import "testing"

// An exposure lasts no longer than its frame.
func TestShutterWithinFrame(t *testing.T) {
	const cam = "cameras: {A: {at: [0, 0], looks: 0, lens: 35 mm, "
	for _, c := range []struct{ name, scene, want string }{
		{"a time that fits", "exposure: {fps: 24, shutter: 1/24}", ""},
		{"the whole frame", "exposure: {fps: 23.976, shutter: 360}", ""},
		{"a time that does not", "exposure: {fps: 24, shutter: 1/10}",
			"error shutter-long a shutter of 1/10 s is open for longer than a frame lasts at 24 fps [write 1/24, the longest, or an angle up to 360°]"},
		{"at the default rate", "exposure: {shutter: 2 s}",
			"error shutter-long a shutter of 2 s is open for longer than a frame lasts at 25 fps [write 1/25, the longest, or an angle up to 360°]"},
		{"an angle over the circle", "exposure: {shutter: 400}",
			"error bad-value a shutter angle is above 0° and at most 360°, and \"400\" is not [a time is written 1/50]"},
		{"a rate of one camera", "exposure: {fps: 25, shutter: 1/50}\n" + cam + "exposure: {fps: 100}}}",
			"error shutter-long a shutter of 1/50 s is open for longer than a frame lasts at 100 fps [write 1/100, the longest, or an angle up to 360°]"},
		{"told once of a scene", "exposure: {fps: 25, shutter: 1/10}\n" + cam + "exposure: {iso: 100}}}",
			"error shutter-long a shutter of 1/10 s is open for longer than a frame lasts at 25 fps [write 1/25, the longest, or an angle up to 360°]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := warned(t, c.scene); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// The camera is set to the white of the first light also where that is off, as a lamp is that a cue brings up: to its white at full.
func TestWhiteOfALightThatIsOff(t *testing.T) {
	for _, role := range []string{"", ", role: key"} {
		s := resolved(t, "lights: {x: {unit: fresnel-tungsten-650, at: [0, 0], height: 2, aim: down, level: off"+role+"}}\ncues: {q1: {over: 2 s, lights: {x: 100 %}}}\n")
		if got := s.Exposure.White.Kelvin; got != 3200 {
			t.Errorf("%q: the white is %g K, want 3200", role, got)
		}
	}
}

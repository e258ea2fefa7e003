package section

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/unit"
)

// workingLux is the illuminance of the working stop, lx; 0 where the exposure is incomplete.
func workingLux(s *plan.Setup) float64 {
	x := s.Exposure.Metered()
	if !(x.ISO > 0 && x.Seconds > 0 && x.Constant > 0) {
		return 0
	}
	return x.Lux(s.Exposure.Stop.N)
}

// rangeWords say what a camera holds about grey: "holds 6 stops over grey, 8 under"; nothing where it does not say.
func rangeWords(x *plan.Exposure) string {
	if !x.Range.Known() {
		return ""
	}
	sides := append(When(x.Range.Over > 0, stopsInWords(x.Range.Over)+" over grey"), When(x.Range.Under > 0, unit.FormatNumber(x.Range.Under)+" under")...)
	if x.Range.Over == 0 {
		sides[0] = stopsInWords(x.Range.Under) + " under grey"
	}
	return "holds " + strings.Join(sides, ", ")
}

// stopsInWords prints a number of stops: "1 stop", "7.5 stops".
func stopsInWords(stops float64) string {
	if stops == 1 {
		return "1 stop"
	}
	return unit.FormatNumber(stops) + " stops"
}

// WhiteOf is the chromaticity that colours are seen against: the camera's white.
func WhiteOf(s *plan.Setup) [2]float64 {
	w := s.Exposure.White
	if !(w.Kelvin > 0) {
		w.Kelvin = scene.DefaultWhite
	}
	return w.XY()
}

// LampColour is the colour of a light; of one that is out, what it would be.
func LampColour(l *plan.Light) colour.RGB {
	rgb := l.RelativeOutput
	if !(rgb.Y() > 0) {
		rgb = l.Head.RGB
	}
	if !(rgb.Y() > 0) && l.White.Kelvin > 0 {
		rgb = l.White.RGB()
	}
	return rgb
}

package kit_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// TestWithoutItsScrimsAHeadIsAsItWasBefore: whole ones, half ones, and those that are added later, at a white of its own too.
func TestWithoutItsScrimsAHeadIsAsItWasBefore(t *testing.T) {
	for _, unit := range []string{"fresnel-tungsten-650", "led-fresnel-60-bicolour"} {
		white := colour.White{Kelvin: 3200}
		was := head(t, kit.Choice{Unit: unit, White: &white})
		for _, scrims := range [][]term.Scrim{nil, {term.DoubleScrim}, {term.HalfDoubleScrim, term.SingleScrim}} {
			choice := kit.Choice{Unit: unit, White: &white}
			if scrims != nil {
				choice.Scrims = &kit.ScrimChoice{Scrims: scrims}
			}
			for _, more := range [][]term.Scrim{nil, {term.SingleScrim, term.DoubleScrim}} {
				is := head(t, choice).Scrimmed(more).Unscrimmed()
				if got, want := is.Source.AxisLux(3), was.Source.AxisLux(3); !(math.Abs(got/want-1) <= 1e-12) || len(is.Scrims) > 0 {
					t.Errorf("%s with %v and %v: %g lx without them, %g before", unit, scrims, more, got, want)
				}
			}
		}
	}
}

// Scrims take half a stop and a stop, over and over; a half one takes its share of half the light.
func TestScrims(t *testing.T) {
	bare := head(t, kit.Choice{Unit: "fresnel-tungsten-650"}).Source.Flux
	for want, scrims := range map[float64][]term.Scrim{
		math.Sqrt2 / 2: {term.SingleScrim}, 0.5: {term.DoubleScrim}, 0.25: {term.DoubleScrim, term.DoubleScrim},
		(1 + math.Sqrt2/2) / 2: {term.HalfSingleScrim}, 0.75: {term.HalfDoubleScrim}, 0.75 * math.Sqrt2 / 2: {term.SingleScrim, term.HalfDoubleScrim},
		(1 + 0.25) / 2: {term.HalfDoubleScrim, term.HalfDoubleScrim},
	} {
		h := head(t, kit.Choice{Unit: "fresnel-tungsten-650", Scrims: &kit.ScrimChoice{Scrims: scrims}})
		within(t, "share past scrims", h.Source.Flux/bare, want, 1e-9)
	}
}

// Doors hang on lenses, mouths and panels, by the size of what light leaves by; a lens that was a point has its size then.
func TestDoorsHang(t *testing.T) {
	open := kit.Opened{Top: 90, Bottom: 90, Left: kit.Folded, Right: 45}
	h := head(t, kit.Choice{Unit: "fresnel-tungsten-650", Doors: &open})
	if h.Source.Opening != (photometry.Opening{Form: photometry.Disc, Width: h.Aperture}) || !(h.Doors.Frame[0] > h.Aperture) {
		t.Errorf("opening %+v behind doors %+v", h.Source.Opening, h.Doors)
	}
	plain := head(t, kit.Choice{Unit: "fresnel-tungsten-650"})
	within(t, "cd", h.Source.Intensity(r3.Vec{Z: -1}), plain.Source.Intensity(r3.Vec{Z: -1}), 1e-9)
	leaves := h.Doors.Leaves()
	if len(leaves) != 6 { // three, each with the frame behind it
		t.Fatalf("%d pieces", len(leaves))
	}
	frame, long, short := h.Doors.Frame, h.Doors.Long, h.Doors.Short
	// The upper leaf points ahead from the top of the frame; the right one leans in at half a right angle.
	for i, want := range map[int]r3.Vec{
		1: {X: long.Edge / 2, Y: frame[1] / 2, Z: h.Doors.Gap + long.Length},
		3: {X: frame[0]/2 - short.Length*math.Sqrt2/2, Y: -short.Edge / 2, Z: h.Doors.Gap + short.Length*math.Sqrt2/2},
		5: {X: -long.Edge / 2, Y: -frame[1] / 2, Z: h.Doors.Gap + long.Length},
	} {
		if far := r3.Norm(r3.Sub(leaves[i][2], want)); far > 1e-12 {
			t.Errorf("piece %d has its corner at %v, want %v", i, leaves[i][2], want)
		}
	}
	panel := head(t, kit.Choice{Unit: "led-panel-100", Doors: &open})
	if o := panel.Source.Opening; o.Form != photometry.Rectangle || !(panel.Doors.Frame[0] > o.Width && panel.Doors.Frame[1] > o.Height) {
		t.Errorf("a panel of %+v has doors of %+v", o, panel.Doors.Frame)
	}
	open.Turn = 90
	turned := head(t, kit.Choice{Unit: "fresnel-tungsten-650", Doors: &open}).Doors.Leaves()
	was := leaves[1][2]
	if far := r3.Norm(r3.Sub(turned[1][2], r3.Vec{X: was.Y, Y: -was.X, Z: was.Z})); far > 1e-12 {
		t.Errorf("turned by a quarter the upper leaf has a corner at %v, before at %v", turned[1][2], was)
	}
}

// What takes no doors and no scrims says so.
func TestAccessoriesThatDoNotFit(t *testing.T) {
	doors, scrims := &kit.Opened{Top: 40}, &kit.ScrimChoice{Scrims: []term.Scrim{term.SingleScrim}}
	for want, c := range map[string]kit.Choice{
		"no barn doors go on led-point-300-bicolour with softbox-90": {Unit: "led-point-300-bicolour", Modifier: "softbox-90", Doors: doors},
		"no barn doors go on led-tube-60":                            {Unit: "led-tube-60", Doors: doors},
		"no scrims go into soft-panel-200":                           {Unit: "soft-panel-200", Scrims: scrims},
		"no scrims go into practical-table":                          {Unit: "practical-table", Scrims: scrims},
	} {
		log := &source.Log{}
		if _, ok := shipped(t).Head(c, log); ok || len(log.All()) != 1 || !strings.Contains(log.All()[0].Message, want) || log.All()[0].Hint == "" {
			t.Errorf("%v, want %q", log.All(), want)
		}
	}
}

// A kit file says the doors of its own heads.
func TestDoorsOfAKitFile(t *testing.T) {
	log := &source.Log{}
	text := `units: {u: {doc: d, label: l, class: lensed, technology: tungsten, power: 500 W, kelvin: 3200 K, lumens: 12000, aperture: 0.15,
  outputs: {bare: {lux: 400, distance: 3 m, beam: 40}}, doors: {frame: [0.2, 0.18], gap: 0.03, long: [0.15, 0.25], short: [0.1, 0.12]}}}`
	c := shipped(t).With([]*source.File{{Name: "own.yaml", Text: []byte(text)}}, log)
	h, ok := c.Head(kit.Choice{Unit: "u", Doors: &kit.Opened{}}, log)
	want := kit.Doors{Frame: [2]float64{0.2, 0.18}, Gap: 0.03, Long: kit.Leaf{Length: 0.15, Edge: 0.25}, Short: kit.Leaf{Length: 0.1, Edge: 0.12}}
	if !ok || len(log.All()) > 0 || h.Doors.Doors != want {
		t.Errorf("%v: %+v", log.All(), h.Doors)
	}
}

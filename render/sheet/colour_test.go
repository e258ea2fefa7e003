package sheet

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/colour"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// coloured is a kitchen of which one half is lit warm and the other by the camera's white, with a little green to it
// at the far end.
func coloured(t *testing.T) Input {
	t.Helper()
	in := fixture.Example()
	in.Setup.Exposure.White = colour.White{Kelvin: 4300}
	g := &in.Field.Grid
	for n := range g.Value {
		g.Value[n] = 100
		x := (g.At(n%g.NX, n/g.NX).X - g.Origin.X) / (g.Step * float64(g.NX))
		w := colour.White{Kelvin: 1e6 / (colour.Mired(4300) + 110*math.Max(0, 1-1.5*x)), Duv: 0.008 * math.Max(0, x-0.8) / 0.2}
		in.Field.Colour = append(in.Field.Colour, w.RGB().Scale(100))
	}
	return in
}

// TestAMapOfColours: hue by the light against the camera's white, a line every 25 mired, and one where it turns green.
func TestAMapOfColours(t *testing.T) {
	in := coloured(t)
	s := sheetFor(t, in, Options{Paper: "A3", Tint: "colour", Font: fixture.Family(t)})
	page := &s.pages[0]
	if got := section.MiredLevels(&in); len(got) < 4 || got[0] != 0 || got[1] != 25 {
		t.Errorf("lines at %v mired", got)
	}
	figures := map[string]bool{}
	dashed := false
	for i := range page.Items {
		it := &page.Items[i]
		if it.Layer == ink.Contours && it.Text != nil {
			figures[it.Text.S] = true
		}
		dashed = dashed || it.Layer == ink.Contours && it.Stroke != nil && len(it.Stroke.Dash) > 0
	}
	for _, want := range []string{"+25", "+50", "+75"} {
		if !figures[want] {
			t.Errorf("no line is lettered %s, but %v", want, figures)
		}
	}
	if !dashed {
		t.Error("no line says where the light turns green")
	}
	if said := texts(page); !strings.Contains(said, "one line every 25 mired") || !strings.Contains(said, "4300 K") {
		t.Errorf("the key says\n%s", said)
	}
	checkPage(t, page, fixture.Family(t))
	checkHues(t, page, s, in)
}

// checkHues holds the hue of the ground to that of its light: yellow where it is warm, grey where it is the camera's white.
func checkHues(t *testing.T, page *ink.Page, s *sheet, in Input) {
	t.Helper()
	var ground *ink.Image
	for i := range page.Items {
		if it := &page.Items[i]; it.Layer == ink.Tint && it.Image != nil {
			ground = it.Image
		}
	}
	if ground == nil {
		t.Fatal("no ground is painted")
	}
	v, g := s.fitter.View(&s.layout), &in.Field.Grid
	yellow := func(share float64) float64 {
		p := v.Paper(g.At(int(share*float64(g.NX)), g.NY/2))
		d := r2.Sub(p, ground.Min)
		x := int(d.X / (ground.Max.X - ground.Min.X) * float64(ground.Width))
		y := int((1 - d.Y/(ground.Max.Y-ground.Min.Y)) * float64(ground.Height))
		q := ground.RGB[3*(y*ground.Width+x):]
		lch := colour.Pixel{R: q[0], G: q[1], B: q[2]}.LCH()
		return lch.C * math.Sin(lch.H*math.Pi/180)
	}
	if warm, middle, white := yellow(0.1), yellow(0.4), yellow(0.75); !(warm > middle+3 && middle > white+3 && math.Abs(white) < 4) {
		t.Errorf("the ground is %.1f, %.1f and %.1f to the yellow from warm to white", warm, middle, white)
	}
}

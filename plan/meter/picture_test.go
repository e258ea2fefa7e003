package meter

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

func stops(v float64) *float64 { return &v }

// A picture prints what takes at least a percent of the frame, with its lamps, and what clips and sinks by the range alone.
func TestPictureInWords(t *testing.T) {
	luminance := 500.0
	p := Picture{Camera: "A", Places: 576, Surfaces: []Surface{
		{Name: "den.top", Share: 0.614, Mean: stops(-1.25), Most: stops(0.5), Least: nil, MostAt: "on the left", LeastAt: "in the lower right"},
		{Name: "shed", Through: "bay", Share: 0.1, Mean: stops(2), Most: stops(2.04), Least: stops(1.96), MostAt: "on the left", LeastAt: "on the right"},
		{Name: "bay", Through: "bay", Share: 0.05, Mean: stops(3), Most: stops(4), Least: stops(1), MostAt: "in the middle", LeastAt: "in the middle"},
		{Share: 0.2, Through: "bay"},
		{Share: 0.03},
		{Name: "mote", Share: 0.004, Mean: stops(9), Most: stops(9), Least: stops(9)},
	}, Lamps: []LampSeen{{Light: "globe", Numbered: "1 globe", Where: "in the middle", Share: 0.004, Luminance: &luminance, Over: stops(6.2)},
		{Light: "far", Numbered: "2 far", Where: "on the left", Share: 0.03}}}
	text := func() string {
		var b strings.Builder
		p.table(&b)
		return b.String()
	}
	want := `  in its picture, stops from grey  of the frame  mean  brightest  darkest
  den.top                                  61 %  -1.2       +0.5     dark  brightest on the left, darkest in the lower right
  shed through bay                         10 %  +2.0       +2.0     +2.0
  bay                                       5 %  +3.0       +4.0     +1.0  both in the middle
  nothing through bay                      20 %     –          –        –  no light comes from there
  1 globe                                 0.4 %  +6.2          –        –  a lamp, in the middle, 500 cd/m²
  2 far                                     3 %     –          –        –  a lamp, on the left
`
	if got := text(); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	p.Range, p.Unjudged = lens.Range{Over: 6, Under: 8}, []string{"bo"}
	p.Beyond = []Beyond{{What: "1 globe", Light: "globe", Over: stops(6.2), Share: 0.004}, {What: "den.top", Sinks: true, Share: 0.02}}
	want += `  over the 6 stops that A holds: 1 globe 6.2 stops over grey, 0.4 % of the frame
  under the 8 stops that A holds: den.top dark, 2 % of the frame
  not judged: the faces of bo, whose skin the scene does not say
`
	if got := text(); got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	p.Uncomputed = []plan.Uncomputed{{}}
	p.Beyond = nil
	if got := text(); !strings.Contains(got, "✗ +6.2") || !strings.Contains(got, "✗ over the 6 stops that A holds: nothing that is looked at") {
		t.Errorf("nothing is marked:\n%s", got)
	}
}

// What a spot meter reads is named with what it looks past, and hand-held meters by their constants.
func TestSpotInWords(t *testing.T) {
	sees := Sees{Surface: "desk", Past: []Passed{{Name: "glass", Mirror: true}, {Name: "street"}}}
	x := plan.Exposure{ISO: 800, Seconds: 1.0 / 50, Constant: lens.DomeConstant, Stop: scene.Stop{N: 2.8284271247}}
	luminance := x.Metered().MidGrey(x.Stop.N)
	sees.SetHandHeld(2*luminance, &x)
	r := Reading{Name: "m", Over: stops(1), Sees: &sees}
	want := "m reads desk in glass through street, 1.0 over grey; a hand-held spot meter shows T4+⅔ (K = 12.5, 1.6 over T2.8) or T4+⅓ (K = 14, 1.5 over T2.8)"
	if got := r.spotInWords(); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if got, want := GreyInWords(&x), "18 % in the light of the working stop, as a spot meter of K = 19.5 has it (0.18 C ÷ π, C = 340). A hand-held one shows +0.6 stops with K = 12.5, +0.5 with K = 14"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	const held = "Key and fill: a flat disc at the face, 45° to either side of the nose. Dome: at the face, toward the camera. The stops of both are by C = "
	for _, c := range []struct {
		meter          term.Meter
		constant, with float64 // of N² = E S t / C
		want           string
	}{
		{term.DomeMeter, 340, 250, "340: a meter whose disc has C = 250 shows 0.4 stops more at key and fill."},
		{term.FlatMeter, 250, 340, "250: a meter whose dome has C = 340 shows 0.4 stops less toward the camera."},
		{term.DomeMeter, 500, 250, "500: a meter whose disc has C = 250 shows 1.0 stops more at key and fill."},
		{term.DomeMeter, 250, 250, "250."}, {term.DomeMeter, 0, 250, "0."},
	} {
		if got := HeldInWords(&plan.Exposure{Meter: c.meter, Constant: c.constant}); got != held+c.want {
			t.Errorf("got  %s\nwant %s", got, held+c.want)
		}
		number := func(constant float64) float64 { return math.Sqrt(300 * 800 / 50.0 / constant) } // that a light of 300 lx calls for
		if apart := 2 * math.Log2(number(c.with)/number(c.constant)); c.constant > 0 && c.constant != c.with && !strings.Contains(c.want, fmt.Sprintf("%.1f stops", math.Abs(apart))) {
			t.Errorf("meters of %g and %g are %.2f stops apart", c.constant, c.with, apart)
		}
	}
	dark := Reading{Name: "m", Sees: &Sees{}}
	dark.Sees.SetHandHeld(0, &x)
	if got := dark.spotInWords(); got != "m reads nothing" {
		t.Error(got)
	}
	if names := dark.Sees.json(); names.Surface != nil || names.Stop14 != nil || !slices.Equal(names.Past, []string{}) {
		t.Errorf("%+v", names)
	}
}

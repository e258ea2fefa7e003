package resolve

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// onto is a set with things that a cut can end at, and a projection spot that looks along it at 1.5 m.
const onto = "rooms: {k: {size: [5, 4]}}\nopenings: {w: {window: k.right, along: 1.4, width: 1}}\n" +
	"grip: {c: {card: [0.6, 0.6], at: [4, 2], height: 1.5, faces: 270}, wide: {card: [3, 0.6], at: [4.2, 2], height: 1.5, faces: 270}, aside: {card: [0.6, 0.6], at: [3, 3.4], height: 1.5, faces: 270}}\n" +
	"furniture: {desk: {table: [1, 0.6, 0.7], at: [0.6, 3]}}\n" +
	"lights: {k1: {unit: led-point-300-daylight, modifier: projection-30, at: [1.5, 2], height: 1.5, aim: 90, %s}}\n"

// A fault names the place of a cut, a pattern or an edge that cannot be, and says what to write.
func TestGatesThatCannotBe(t *testing.T) {
	for _, c := range []struct{ name, gate, want string }{
		{"fine", "cuts: [{depth: 30 %}, {angle: 90, to: c}, {angle: 270, to: w}], breakup: {open: 40 %}, focus: soft", ""},
		{"too deep", "cuts: [{depth: 140 %}]", `error out-of-range a depth is 0 % to 100 %, and "140 %" is not [write 100 % or less]`},
		{"five cuts", "cuts: [{depth: 1 %}, {depth: 1 %}, {depth: 1 %}, {depth: 1 %}, {depth: 1 %}]",
			"error wrong-type a list of cuts has 1 to 4 values, not 5 [write it like [{angle: 0, depth: 30 %}]]"},
		{"neither", "cuts: [{angle: 90}]", `error no-form a cut needs one of "depth" or "to" [for example depth: 30 %]`},
		{"both", "cuts: [{depth: 30 %, to: c}]", `error two-forms a cut takes "depth" or "to", and this has both "depth" and "to" [keep one of them]`},
		{"open nowhere", "breakup: {open: 0 %}", `error out-of-range an open share is 1 % to 100 %, and "0 %" is not [write 1 % or more]`},
		{"open over all", "breakup: {open: 140 %}", `error out-of-range an open share is 1 % to 100 %, and "140 %" is not [write 100 % or less]`},
		{"too fine", "breakup: {open: 40 %, grain: 1 %}", `error out-of-range a grain is 2 % to 100 %, and "1 %" is not [write 2 % or more]`},
		{"up to nothing", "cuts: [{to: cart}]", `error unknown-name nothing is called cart [there are w, desk, c, wide, aside]`},
		{"up to what is behind", "cuts: [{to: desk}]", "error not-before desk is not before k1, so that no cut can end at it [aim k1 at it, or give the cut a depth]"},
		{"up to what lies beside", "cuts: [{angle: 90, to: aside}]",
			"error cut-away aside lies beside the image of k1: a cut from the right up to it would take all light [turn its angle by 180, or aim k1 at it]"},
		{"up to what goes on", "cuts: [{angle: 90, to: wide}]",
			"warning cut-idle a cut of k1 does nothing: wide goes on past the image at the right [leave it out, or name something that ends within the image]"},
		{"all of it", "cuts: [{angle: 0, depth: 60 %}, {angle: 180, depth: 50 %}]",
			"error cut-away the cuts leave k1 no light [make them shallower: two that face each other cover less than 100 % together]"},
		{"a zoom of one that does not zoom", "focus: spot", "warning no-zoom the focus of k1 changes nothing: the catalogue has no figures by focus for led-point-300-daylight with projection-30 [leave it out, or give the unit outputs by focus in a kit file]"},
		{"two edges", "focus: [sharp, soft]", `error unknown-word a zoom is "spot" or "flood", not "sharp" [write one of these words]`},
		{"two zooms", "focus: [40 %, flood]", `error unknown-word an edge is "sharp" or "soft", not "flood" [write one of these words]`},
		{"one of a list", "focus: [soft]", "error wrong-type a zoom and an edge has 2 values, not 1 [write it like [40 %, soft]]"},
	} {
		if got := foundIn(t, fmt.Sprintf(onto, c.gate)); got != c.want {
			t.Errorf("%s: got\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
	const narrow = "lights: {p: {output: {candela: 1000, beam: 0.5, field: 170}, at: [1.5, 2], aim: 90, breakup: {open: 1 %, grain: 100 %}}}\n"
	if got, want := foundIn(t, narrow), "error cut-away the breakup leaves p no light [open more of it, or give it a finer grain]"; got != want {
		t.Errorf("a pattern that leaves nothing: got\n%s\nwant\n%s", got, want)
	}
	const unknown = "lights: {p: {unit: profile-led-150, modifier: profile-lens100, at: [1.5, 2], height: 1.5, aim: 90, focus: soft, cuts: [{depth: 30 %}], breakup: {open: 40 %}}}\n"
	if got, want := foundIn(t, unknown), `error unknown-modifier there is no modifier "profile-lens100" in the catalogue [did you mean "profile-lens-10"?]`; got != want {
		t.Errorf("a lens that nobody knows: got\n%s\nwant\n%s", got, want)
	}
	const soft = "lights: {p: {unit: soft-panel-200, at: [1.5, 2], aim: 90, %s}}\n"
	const noGate = " [take a projection spot, such as a profile head or a point source with modifier: projection-30, or shape its light with a flag before it]"
	for gate, want := range map[string]string{
		"cuts: [{depth: 30 %}]": "error no-gate p throws no image of a gate, so that there is no place for cuts in it" + noGate,
		"breakup: {open: 40 %}": "error no-gate p throws no image of a gate, so that there is no place for breakup in it" + noGate,
		"focus: sharp": "warning no-zoom the focus of p changes nothing: it throws no image that could be sharp or soft " +
			"[leave it out, or take a projection spot, such as one with the modifier projection-30]",
	} {
		if got := foundIn(t, fmt.Sprintf(soft, gate)); got != want {
			t.Errorf("%s: got\n%s\nwant\n%s", gate, got, want)
		}
	}
}

// foundIn lists the warnings and errors of a scene, without their places.
func foundIn(t *testing.T, text string) string {
	t.Helper()
	log := &source.Log{}
	doc := opened(t, text, log)
	Resolve(doc, doc.Scene("", log), log)
	var all []string
	for _, d := range log.All() {
		if d.Severity != source.Info {
			line := d.Severity.String() + " " + d.Code + " " + d.Message
			if d.Hint != "" {
				line += " [" + d.Hint + "]"
			}
			all = append(all, line)
			if !d.Span.Valid() {
				t.Errorf("%s has no place", line)
			}
		}
	}
	return strings.Join(all, "\n")
}

// A cut up to a thing lies where that ends on the side that the cut comes from: a card 2.5 m off by its half width, an opening by
// its near face.
func TestCutsEndAtThings(t *testing.T) {
	radius := math.Tan(15 * math.Pi / 180)
	for _, c := range []struct {
		cut  string
		edge float64 // the tangent of the angle from the axis
	}{
		{"{angle: 90, to: c}", 0.3 / 2.5},
		{"{angle: 0, to: c}", 0.3 / 2.5},
		{"{angle: 180, to: w}", 0.6 / 3.5},             // its sill at 0.9
		{"{angle: 270, to: w}", 0.6 / 3.5},             // its upper end on the sheet: left, seen from behind
		{"{angle: 45, to: c}", 0.3 * math.Sqrt2 / 2.5}, // by a corner
	} {
		s := resolved(t, fmt.Sprintf(onto, "cuts: ["+c.cut+"]"))
		gate := s.Lights[0].Head.Gate
		if len(gate.Cuts) != 1 {
			t.Errorf("%s: %d cuts", c.cut, len(gate.Cuts))
			continue
		}
		near(t, c.cut, radius*(1-2*gate.Cuts[0].Depth), c.edge, 1e-9)
	}
}

// The word of a focus is a zoom's or an edge's, and a projection spot that does not zoom takes a share as that of its edge.
func TestFocusOfProjectionSpots(t *testing.T) {
	for _, c := range []struct {
		modifier, focus string
		zoom, edge      float64 // -1: none
	}{
		{"projection-30", "sharp", -1, 0}, {"projection-30", "40 %", -1, 0.4}, {"projection-30", "soft", -1, 1},
		{"projection-zoom", "40 %", 0.4, -1}, {"projection-zoom", "soft", 1, 1}, {"projection-zoom", "[spot, sharp]", 0, 0}, {"projection-zoom", "[40 %, 20 %]", 0.4, 0.2},
	} {
		h := resolved(t, fmt.Sprintf("lights: {k: {unit: led-point-300-daylight, modifier: %s, at: [0, 0], aim: 90, focus: %s}}\n", c.modifier, c.focus)).Lights[0].Head
		zoom, edge := -1.0, -1.0
		if h.Zooms {
			zoom = h.Focus
		}
		if h.Edge != nil {
			edge = *h.Edge
		}
		if zoom != c.zoom || edge != c.edge {
			t.Errorf("%s, focus %s: zoom %g, edge %g", c.modifier, c.focus, zoom, edge)
		}
	}
}

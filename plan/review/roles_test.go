package review_test

import (
	"strings"
	"testing"

	"scrimshaw/plan/review"
)

// Ada stands in the dark and looks up the sheet; every lamp sends out the same all round, 2 m off at her eyes unless it says more.
func TestRolesAndEffects(t *testing.T) {
	lamp := func(name, role string, candela, at string) string {
		return "  " + name + ": {output: {candela: " + candela + ", shape: uniform}, at: " + at + ", height: 1.59, role: " + role + "}\n"
	}
	key := lamp("main", "key", "1000", "[-1.5, 1.5]")
	for _, c := range []struct{ name, people, lights, want string }{
		{"a key and its edge", "", key + lamp("rim", "edge", "1000", "[1.5, -1.5]"), ""},
		{"an edge three stops under", "", key + lamp("rim", "edge", "190", "[0, -2]"), ""},
		{"an edge that is lost", "", key + lamp("rim", "edge", "50", "[0, -2]"),
			"2 rim is an edge, and what it gives the back of the head of ada is 4.4 stops under the key side: it gives no edge | raise it by 1.4 stops or bring it nearer"},
		{"an edge behind a board", "", key + lamp("rim", "edge", "1000", "[0, -2]") + "grip: {f: {flag: [2, 2], at: [0, -1], height: 1.6, faces: ada}}\n",
			"2 rim is an edge, and none of its light reaches the back of the head of ada | aim it at the back of the head, or clear its way"},
		{"a hair light from before", "", key + lamp("top", "hair", "500", "[0.4, 1.5]"),
			"2 top is a hair light, and it lights the front of the head of ada more than the back: it gives no light on the hair | move it behind ada"},
		{"a fill from the other side", "", key + lamp("soft", "fill", "200", "[1.5, 1.5]"), ""},
		{"a fill from the key's own side", "", key + lamp("front", "fill", "200", "[0, 2]") + lamp("soft", "fill", "200", "[-1.6, 1.4]"),
			"3 soft is a fill, and it gives the fill side of ada nothing | aim it at the darker side of the face, or clear its way"},
		{"a fill that is the key", "", lamp("main", "key", "500", "[-1.5, 1.5]") + lamp("soft", "fill", "1200", "[-0.3, 2]"),
			"2 soft is a fill, and no light gives the key side of ada more | lower it, or give it the role key\n" +
				"1 main is the key, and 2 soft gives the own left side of ada 1.1 stops more | raise the key, lower the other, or give the other the role key"},
		{"a key that is flagged off", "", lamp("main", "key", "1000", "[-1.5, 1.5]") + lamp("other", "fill", "500", "[0.6, 2]") +
			"grip: {f: {flag: [1, 1], at: [-0.75, 0.75], height: 1.6, faces: ada}}\n",
			"1 main is the key, and none of its light reaches the face of ada | aim it at the face, or clear its way"},
		{"a key that is flagged off, beside a light from one side", "", lamp("main", "key", "1000", "[-1.5, 1.5]") + lamp("other", "motivation", "500", "[2, 0]") +
			"grip: {f: {flag: [1, 1], at: [-0.75, 0.75], height: 1.6, faces: ada}}\n",
			"1 main is the key, and none of its light reaches the face of ada | aim it at the face, or clear its way"},
		{"a key that is turned away, and alone", "", "  main: {output: {lux: 1000, distance: 1, beam: 20}, at: [-1.5, 1.5], height: 1.59, aim: [-3, 3, 1.59], role: key}\n",
			"1 main is the key, and none of its light reaches the face of ada | aim it at the face, or clear its way"},
		{"a key in another room", "", lamp("main", "key", "1000", "[-1.5, 1.5]") + lamp("other", "fill", "500", "[0.6, 2]") +
			"rooms: {den: {at: [-0.5, -1], size: [3, 4]}, far: {at: [-4, -1], size: [3, 4]}}\n",
			"1 main is the key, and none of its light reaches the face of ada | aim it at the face, or clear its way\n" +
				"2 other is a fill, and no light gives the key side of ada more | lower it, or give it the role key"},
		{"a key that gives a trace", "", lamp("main", "key", "0.4", "[-1.5, 1.5]") + lamp("other", "edge", "1000", "[0, 2]") + lamp("rim", "edge", "1000", "[0, -2]"),
			"1 main is the key, and none of its light reaches the face of ada | aim it at the face, or clear its way\n" +
				"2 other is an edge, and it lights the front of the head of ada more than the back: it gives no edge | move it behind ada"},
		{"an edge for one of two", ", ben: {at: [0, -4], faces: 0}", key + lamp("rim", "edge", "1000", "[0, -2]"), ""},
		{"an edge for the other one", ", ben: {at: [0, -4], faces: 0}", key + lamp("rim", "{ben: edge}", "1000", "[0, -2]"),
			"2 rim is an edge, and it lights the front of the head of ben more than the back: it gives no edge | move it behind ben"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s := lit(t, "people: {ada: {at: [0, 0], faces: 0}"+c.people+"}\nlights:\n"+c.lights)
			found := map[string]bool{}
			for _, d := range review.Check(s.Setup, &s.Readings) {
				if d.Code == review.CodeRoleEffect {
					found[d.Message+" | "+d.Hint] = true
				}
			}
			for _, want := range strings.Split(c.want, "\n") {
				if want != "" && !found[want] {
					t.Errorf("it does not say %q", want)
				}
				delete(found, want)
			}
			for said := range found {
				t.Errorf("it says %q", said)
			}
		})
	}
}

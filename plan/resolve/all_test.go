package resolve

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// The set-ups come in the order that was asked for, and one that is asked for alone still stands on the one
// before it.
func TestResolveAllInOrder(t *testing.T) {
	for _, c := range []struct {
		text        string
		asked, want []string
	}{
		{day, nil, []string{"wide", "close", "aimed"}},
		{day, []string{"aimed", "wide"}, []string{"aimed", "wide"}},
		{day, []string{"close"}, []string{"close"}},
		{"cameras: {A: {at: [0, 0], lens: 35 mm}}\n", nil, []string{""}},
	} {
		log := &source.Log{}
		var names []string
		for _, s := range ResolveAll(opened(t, c.text, log), c.asked, log) {
			names = append(names, s.Name)
			if s.Name == "close" {
				near2(t, "the key stays where the wide had it", plan.InPlan(lightOf(t, s, "key").Frame.At), r2.Vec{X: 2, Y: 3}, 1e-12)
			}
		}
		if log.Failed() || !slices.Equal(names, c.want) {
			t.Errorf("%q give %q, want %q\n%s", c.asked, names, c.want, told(log))
		}
	}
}

// An error anywhere leaves nothing to light, and the others are reported beside it.
func TestResolveAllTellsEveryFault(t *testing.T) {
	log := &source.Log{}
	doc := opened(t, `
lights: {k: {output: {candela: 1, shape: uniform}, at: [0, 0]}}
setups:
  one: {change: {lights: {k: {aim: nobody}}}}
  two: {change: {lights: {k: {aim: nowhere}}}}
`, log)
	if all := ResolveAll(doc, nil, log); all != nil {
		t.Errorf("%d set-ups in spite of errors", len(all))
	}
	var codes []string
	for _, d := range log.All() {
		if d.Severity == source.Error {
			codes = append(codes, d.Setup+" "+d.Code)
		}
	}
	if want := []string{"one unknown-name", "two unknown-name"}; !slices.Equal(codes, want) {
		t.Errorf("told %q, want %q\n%s", codes, want, told(log))
	}
	if all := ResolveAll(nil, nil, log); all != nil {
		t.Error("no file has set-ups")
	}
}

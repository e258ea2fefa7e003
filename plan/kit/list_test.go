package kit

import (
	"slices"
	"testing"
)

// A kind keeps its entries, in the plural too; any other word those that hold it.
func TestMatching(t *testing.T) {
	c, err := Shipped()
	if err != nil {
		t.Fatal(err)
	}
	all := c.List()
	want := len(c.Units) + len(c.Bulbs) + len(c.Modifiers) + len(c.Gels) + len(c.Cloth) + len(c.Stands) + len(c.Materials) + len(c.Sensors) + len(c.Filters) +
		len(c.Grip) + len(c.Items)
	if len(all) != want {
		t.Errorf("%d entries are listed of %d", len(all), want)
	}
	for word, want := range map[string]int{"gel": len(c.Gels), "Gels": len(c.Gels), "stand": len(c.Stands), "no such word": 0} {
		if got := len(Matching(all, word)); got != want {
			t.Errorf("%q keeps %d, want %d", word, got, want)
		}
	}
	for words, want := range map[string]string{"tube kit": "tube-kit-4x60", "0.6 m tubes case": "tube-kit-4x60", "poly 240": "card-240x120", "Poly Fork": "board-holder"} {
		if got := Matching(all, words); !slices.ContainsFunc(got, func(l Listed) bool { return l.Name == want }) || len(got) > 5 {
			t.Errorf("%q keeps %v, want %s and few beside", words, got, want)
		}
	}
	for _, l := range Matching(all, "tungsten") {
		if l.Kind == "unit" && l.Summary != "" {
			return
		}
	}
	t.Error("no unit is of tungsten")
}

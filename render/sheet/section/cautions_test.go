package section

import (
	"slices"
	"strconv"
	"strings"
	"testing"
)

// Numbers are said as a crew reads them: all of them by that word, three and more that run by their ends, the rest one by one.
func TestNumbersOfCautions(t *testing.T) {
	twelve := strings.Fields("1 2 3 4 5 6 7 8 9 10 11 12")
	for _, c := range []struct{ tags, lights, want string }{
		{"1 2 3 4 5 6 7 8 9 10 11 12", "", "all lights"},
		{"12 11 10 9 8 7 6 5 4 3 2 1 G2 G1", "", "all lights, G1, G2"},
		{"1 3 4 5 6 7 8 9", "", "1, 3 to 9"},
		{"10 2 9 1", "", "1, 2, 9, 10"},
		{"10 2 9 11 G3 G1 G2", "", "2, 9 to 11, G1 to G3"},
		{"1 2 3 b a", "", "1 to 3, a, b"},
		{"1 2", "1 2", "1, 2"},
		{"1", "1", "1"},
		{"key fill", "key fill back", "fill, key"},
		{"back key fill", "key fill back", "all lights"},
		{"", "", ""},
	} {
		lights := twelve
		if c.lights != "" {
			lights = strings.Fields(c.lights)
		}
		if got := tagWords(strings.Fields(c.tags), lights); got != c.want {
			t.Errorf("%q of %v: %q, want %q", c.tags, lights, got, c.want)
		}
	}
}

// On the pages of a day a caution is about all lights where it is about each of the day in one of its set-ups, not where it is about all of one set-up alone.
func TestCautionsOfADay(t *testing.T) {
	mains := func(tags string) []Caution {
		return []Caution{{Tags: strings.Fields(tags), Text: "Mains: dry."}, {Text: "Local codes come first."}}
	}
	day := []Digest{{Tags: []string{"1", "2", "3"}, Cautions: mains("1 2 3")}, {Tags: []string{"1", "2", "4"}, Cautions: append(mains("1 2"), Caution{Tags: []string{"4", "2"}, Text: "Heat: keep clear."})}}
	if got, want := DayCautions(day).Points, []string{"1 to 3: Mains: dry.", "2, 4: Heat: keep clear.", "Local codes come first."}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	day[1].Cautions = mains("1 2 4")
	if got, want := DayCautions(day).Points, []string{"All lights: Mains: dry.", "Local codes come first."}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// Things that come down at one wind are said together; of many winds the lowest are, and from which one on the rest comes down. Over a day the lowest of a
// thing counts, and set-ups with other winds have no caution of their own.
func TestWindsOfCautions(t *testing.T) {
	winds := func(speeds ...float64) (all []Wind) {
		for i, v := range speeds {
			all = append(all, Wind{strconv.Itoa(i + 1), v, strconv.FormatFloat(v, 'f', -1, 64) + " m/s"})
		}
		return all
	}
	for want, speeds := range map[string][]float64{
		"Take it down.":                                                                  nil,
		"Take it down: 1 at 9.8 m/s.":                                                    {9.8},
		"Take it down: 1 to 3 at 9.8 m/s, 4 at 12 m/s.":                                  {9.8, 9.8, 9.8, 12},
		"Take it down: 1 at 9 m/s, 2 at 8 m/s, 3 at 7 m/s, 4 at 6 m/s.":                  {9, 8, 7, 6},
		"Take it down: 5 at 5 m/s, 4, 6 at 6 m/s, 3 at 7 m/s, all others from 8 m/s on.": {9, 8, 7, 6, 5, 6},
	} {
		if got := withWinds("Take it down.", winds(speeds...)); got != want {
			t.Errorf("%v: %q, want %q", speeds, got, want)
		}
	}
	day := []Digest{{Tags: []string{"1", "2"}, Cautions: []Caution{{Tags: []string{"1"}, Text: "Down.", Winds: winds(9)}}},
		{Tags: []string{"1", "2"}, Cautions: []Caution{{Tags: []string{"1", "2"}, Text: "Down.", Winds: winds(8, 10)}}}}
	if got, want := DayCautions(day).Points, []string{"1, 2: Down: 1 at 8 m/s, 2 at 10 m/s."}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

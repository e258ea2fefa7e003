package meter

import "testing"

// A light that plays is listed at a reading that it moves by a twentieth of a stop or more, or from the dark.
func TestWherePlayShows(t *testing.T) {
	at := func(over float64) Reading { return Reading{Over: &over} }
	for _, c := range []struct {
		low, high Reading
		shows     bool
	}{
		{at(-1), at(-0.96), false}, {at(-1), at(-0.94), true}, {at(0), at(leastPlay), true}, {Reading{}, at(-8), true}, {Reading{}, Reading{}, false},
	} {
		if r := (PlayedReading{Low: c.low, High: c.high}); r.Shows() != c.shows {
			t.Errorf("from %s it shows: %v, want %v", r.SpanWords(), r.Shows(), c.shows)
		}
	}
}

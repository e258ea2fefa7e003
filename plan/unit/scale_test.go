package unit

import (
	"errors"
	"testing"

	"scrimshaw/plan/source"
)

// A plan is drawn at a scale that a rule is made for; any other is refused with the nearest.
func TestPlanScales(t *testing.T) {
	for _, c := range []struct {
		text  string
		feet  bool
		times float64
		hint  string
	}{
		{"1:50", false, 50, ""}, {`1/4"`, false, 48, ""}, {"1:50", true, 50, ""},
		{"1:33", false, 0, "did you mean 1:25?"}, {"1:33", true, 0, `did you mean 3/8"?`}, {"fifty", false, 0, "the scales are 1:10, 1:20, 1:25, 1:50, 1:100, 1:200"}, {"1:5000", false, 0, "did you mean 1:200?"},
	} {
		times, err := ParsePlanScale(c.text, c.feet)
		var f *source.Diagnostic
		errors.As(err, &f)
		if times != c.times || (f == nil) != (c.hint == "") || f != nil && f.Hint != c.hint {
			t.Errorf("%s: %v, %+v", c.text, times, f)
		}
	}
}

// A date stands year first, and is a day that there is.
func TestDates(t *testing.T) {
	for text, fine := range map[string]bool{"2031-05-14": true, "1/3/2026": false, "2031-02-30": false, "14.5.2031": false, "": false} {
		if _, err := ParseDate(text); (err == nil) != fine {
			t.Errorf("%q: %v", text, err)
		}
	}
}

package study_test

import (
	"strings"
	"testing"

	"scrimshaw/plan/study"
)

func TestParsePlane(t *testing.T) {
	s := laidOut(t, parlour)
	for text, want := range map[string]study.Plane{
		"0.75":          {Height: 0.75},
		"75 cm":         {Height: 0.75},
		"den.left":      {Wall: "den.left"},
		"wall den.top":  {Wall: "den.top"},
		"wall  den.top": {Wall: "den.top"},
	} {
		if got, err := study.ParsePlane(s, text); err != nil || got != want {
			t.Errorf("%q is %+v, %v, want %+v", text, got, err, want)
		}
	}
	for text, want := range map[string]string{
		"den.north": "den.left", // lists what there is
		"2.5":       "the highest room has 2.50 m",
		"":          "like 0.75",
	} {
		if got, err := study.ParsePlane(s, text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q is %+v, %v, want an error with %q", text, got, err, want)
		}
	}
}

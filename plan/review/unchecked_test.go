package review_test

import (
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/review"
	"scrimshaw/plan/source"
)

func TestUncounted(t *testing.T) {
	later := func(severity source.Severity, setup, path string) source.Diagnostic {
		return source.Diagnostic{Severity: severity, Code: source.CodeLater, Setup: setup, Path: path}
	}
	told := []source.Diagnostic{
		later(source.Warning, "", "cameras.A.filter"),
		later(source.Warning, "wide", "lights.k.scrims"),
		later(source.Warning, "wide", "lights.k.scrims"), // of the change and of the set-up: once
		later(source.Warning, "close", "lights.k.barndoors"),
		later(source.Info, "", "site"), // changes no figure
		{Severity: source.Warning, Code: source.CodeUnknownKey, Path: "lights.k.scrim"},
	}
	lamps := []plan.Light{{Name: "k", Tag: "7"}}
	for setup, want := range map[string]string{
		"wide":  "Written, but not in the figures: filter of A, scrims of 7 k",
		"close": "Written, but not in the figures: filter of A, barndoors of 7 k",
		"":      "Written, but not in the figures: filter of A",
	} {
		if got := review.Uncounted(told, &plan.Setup{Name: setup, Lights: lamps}); got != want {
			t.Errorf("of %q: %s, want %s", setup, got, want)
		}
	}
	if got := review.Uncounted(told[4:], &plan.Setup{Name: "wide"}); got != "" {
		t.Errorf("nothing is left out, and yet %q", got)
	}
}

package scene_test

import (
	"testing"

	"scrimshaw/plan/scene"
)

// How long is shot is the time from when until; an hour that has passed by then is of the next day.
func TestShootingHours(t *testing.T) {
	for _, c := range []struct {
		when, until string
		want        float64
	}{
		{"2026-06-21 15:30", "18:00", 2.5},
		{"2026-06-21T15:30", "18:00", 2.5},
		{"2026-06-21 22:00", "02:30", 4.5},
		{"2026-06-21 22:00", "22:00", 24},
		{"2026-06-21 22:00", "2026-06-22 22:15", 24.25},
		{"2026-12-31 22:00", "2027-01-01T01:00", 3},
		{"2026-06-21 22:00", "2026-06-21 21:00", -1},
	} {
		var s scene.Site
		s.When.Value, s.Until.Value, s.Until.Set = c.when, c.until, true
		if got, said := s.Hours(); !said || got != c.want {
			t.Errorf("from %s until %s are %g h, want %g", c.when, c.until, got, c.want)
		}
	}
	for _, when := range []string{"2026-06-21", ""} {
		var s scene.Site
		s.When.Value, s.Until.Value, s.Until.Set = when, "18:00", true
		if got, said := s.Hours(); said {
			t.Errorf("from %q until 18:00 are %g h, and nobody knows", when, got)
		}
	}
	var s scene.Site
	s.When.Value = "2026-06-21 15:30"
	if _, said := s.Hours(); said {
		t.Error("without until nobody knows")
	}
}

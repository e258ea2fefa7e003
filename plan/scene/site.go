package scene

import (
	"errors"
	"regexp"
	"time"

	"scrimshaw/plan/source"
)

// moment reads a day with its time: `2026-06-21 15:30`.
var moment = scalar("a day and time", "2026-06-21 15:30", map[string]any{"type": "string"},
	func(text string, _ *source.Node, _ *source.Context) (string, error) {
		if _, ok := momentOf(text); ok {
			return text, nil
		}
		if _, err := time.Parse("2006-01-02", text); err == nil {
			return text, nil
		}
		return "", source.Errorf(source.CodeBadValue, "write it like 2026-06-21 15:30", "%q is not a day and time", text)
	})

// until reads the end of a span of time: an hour of the same day, or a moment.
var until = scalar("a time", "18:00", map[string]any{"type": "string"},
	func(text string, n *source.Node, c *source.Context) (string, error) {
		if _, err := time.Parse("15:04", text); err == nil {
			return text, nil
		}
		if _, ok := momentOf(text); !ok {
			return "", source.Errorf(source.CodeBadValue, "write it like 18:00 or 2026-06-21 18:00", "%q is not a time", text)
		}
		return text, nil
	})

// zonePattern is an offset from UTC, or a name of the time zone database.
var zonePattern = regexp.MustCompile(`^(?:UTC|(?:UTC)?[+-](?:0?[0-9]|1[0-4])(?::?[0-5][0-9])?|[A-Z][A-Za-z_]+(?:/[A-Z][A-Za-z_+-]+){1,2})$`)

var zone = checked(text("a time zone", "+02:00"), func(text string) error {
	if !zonePattern.MatchString(text) {
		return errors.New("a time zone is an offset such as +02:00, or a name such as Europe/Oslo")
	}
	return nil
})

// The ways in which a day with its time is written.
var momentLayouts = []string{"2006-01-02 15:04", "2006-01-02T15:04"}

// Hours is how long is shot from `when` until `until`, h; not said where one of them lacks, or `when` is no more than a day. An hour that is not after that of
// the beginning is of the next day.
func (s *Site) Hours() (hours float64, said bool) {
	from, ok := momentOf(s.When.Value)
	if !ok || !s.Until.Set {
		return 0, false
	}
	if until, ok := momentOf(s.Until.Value); ok {
		return until.Sub(from).Hours(), true
	}
	at, err := time.Parse("15:04", s.Until.Value)
	if err != nil {
		return 0, false
	}
	until := from.Truncate(24 * time.Hour).Add(time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute)
	if !until.After(from) {
		until = until.Add(24 * time.Hour)
	}
	return until.Sub(from).Hours(), true
}

// momentOf is a day with its time.
func momentOf(text string) (at time.Time, ok bool) {
	for _, layout := range momentLayouts {
		if at, err := time.Parse(layout, text); err == nil {
			return at, true
		}
	}
	return at, false
}

var siteTable = tableOf("site", "The world outside. Without a site nothing comes from outside.", nil,
	value("ground", quantity("a ground level", "-0.4", lengths, between(-maxHeight, maxHeight)),
		func(s *Site) *Given[float64] { return &s.Ground },
		"Level of the open ground, from the zero of all floors.", "-0.4", "0"),
	value("north", bearing, func(s *Site) *Given[float64] { return &s.North },
		"True north, clockwise from the sheet's up.", "24", "0"),
	value("latitude", quantity("a latitude", "59.9", degrees, between(-90, 90)),
		func(s *Site) *Given[float64] { return &s.Latitude }, "Degrees north of the equator.", "59.9", "none, and then no sun"),
	value("longitude", quantity("a longitude", "10.7", degrees, between(-180, 180)),
		func(s *Site) *Given[float64] { return &s.Longitude }, "Degrees east of Greenwich.", "10.7", "none, and then no sun"),
	value("zone", zone, func(s *Site) *Given[string] { return &s.Zone },
		"The clock that `when` is read from.", "+02:00", "the mean time of the longitude"),
	value("when", moment, func(s *Site) *Given[string] { return &s.When },
		"The moment that the sun and the sky are computed for.", "2026-06-21 15:30", "none, and then no sun"),
	value("until", until, func(s *Site) *Given[string] { return &s.Until },
		"The end of the shooting time; an hour before that of `when` is of the next day. Review holds batteries and tanks to the time between.", "18:00", "the moment alone"),
	value("sky", source.OneOf("a sky", "clear", "hazy", "broken", "overcast", "none"),
		func(s *Site) *Given[string] { return &s.Sky }, "The weather.", "hazy", "none"),
)

package scene

import (
	"regexp"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// papers are the names of paper, with the way it lies.
var papers = regexp.MustCompile(`(?i)^(a[1-4]|letter|tabloid|ledger|11x17|(ansi[ -]?)?[a-d])?([, ]*(portrait|landscape|upright))?$`)

var paperKind = scalar("a paper", "A3", map[string]any{"type": "string"},
	func(text string, _ *source.Node, _ *source.Context) (string, error) {
		if text == "" || !papers.MatchString(text) {
			return "", source.Errorf(source.CodeUnknownWord, paperHint(text),
				"%q is no paper: A4, A3, A2, A1, letter, tabloid, ANSI C or ANSI D", text)
		}
		return text, nil
	})

// paperNames are the papers as they are offered.
var paperNames = []string{"A1", "A2", "A3", "A4", "letter", "tabloid", "ANSI C", "ANSI D"}

// otherPapers are papers that are not drawn on, with the nearest in size that is.
var otherPapers = map[string]string{
	"a0": "A1", "a5": "A4", "a6": "A4", "b2": "A2", "b3": "A3", "b4": "A3", "b5": "A4", "legal": "letter",
	"ansi e": "ANSI D", "e": "ANSI D", "arch d": "ANSI D", "arch c": "ANSI C", "arch b": "tabloid", "arch a": "letter",
}

// paperHint offers the paper nearest in size, or in letters.
func paperHint(text string) string {
	if size := otherPapers[strings.ToLower(text)]; size != "" {
		return "the nearest is " + size
	}
	if near := source.DidYouMean(text, paperNames); near != "" {
		return near
	}
	return "write A3, or leave the paper out and it is chosen"
}

// scaleKind keeps a scale as it was written: `1/4"` is printed so.
var scaleKind = scalar("a scale", "1:50", map[string]any{"type": "string"},
	func(text string, n *source.Node, c *source.Context) (string, error) {
		_, err := unit.ParsePlanScale(text, c.Feet != nil && c.Feet(n.Span.File))
		return text, err
	})

// dateKind is a date as the sheet prints it.
var dateKind = scalar("a date", "2026-03-01", map[string]any{"type": "string"},
	func(text string, _ *source.Node, _ *source.Context) (string, error) { return unit.ParseDate(text) })

var sheetTable = tableOf("sheet", "What the scene asks of the paper.", nil,
	value("production", text("a production", "Low Water"), func(s *Sheet) *Given[string] { return &s.Production },
		"Name of the production, for the title block.", "Low Water", "none"),
	value("location", text("a location", "Quay house"), func(s *Sheet) *Given[string] { return &s.Location },
		"Where the scene is shot.", "Quay house, first floor", "none"),
	value("revision", text("a revision", "B"), func(s *Sheet) *Given[string] { return &s.Revision },
		"Revision of the sheet.", "B", "none"),
	value("for", text("a list of departments", "electric, grip"), func(s *Sheet) *Given[string] { return &s.For },
		"Whom the sheet is for.", "electric, grip, camera", "everybody"),
	value("date", dateKind, func(s *Sheet) *Given[string] { return &s.Date },
		"Date on the sheet.", "2026-03-01", "none, so that the same scene gives the same sheet"),
	value("by", text("a name", "R. Lund"), func(s *Sheet) *Given[string] { return &s.By },
		"Who drew it.", "R. Lund", "none"),
	value("paper", paperKind, func(s *Sheet) *Given[string] { return &s.Paper },
		"A4 to A1, letter, tabloid, ANSI C or D; with portrait or landscape where it matters.",
		"A3", "the smallest that shows the plan well"),
	value("scale", scaleKind, func(s *Sheet) *Given[string] { return &s.Scale },
		"Scale of the plan.", "1:50", "the largest that fits the paper"),
	value("levels", source.OneOf("a way to letter contours", "lx", "fc", "stop", "stops"),
		func(s *Sheet) *Given[string] { return &s.Levels },
		"What contours are lettered in: lux, footcandles, T-stops, or stops over and under the working stop.",
		"stops", "lx, and fc in feet"),
	value("field", source.Vocabulary("a map", term.Maps), func(s *Sheet) *Given[term.Map] { return &s.Field },
		"What is mapped: illuminance on the floor, or the incident dome at face height, at each point turned toward the first camera.", "floor", string(term.Maps[0])),
	value("plane", quantity("a plane", "0.75", lengths, between(0, maxHeight)),
		func(s *Sheet) *Given[float64] { return &s.Plane },
		"Maps a horizontal plane at this height above the floors instead of them.", "0.75", "none: the floor"),
)

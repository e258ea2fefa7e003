package sheet

import (
	"strings"

	"scrimshaw/render/list"
	"scrimshaw/render/sheet/section"
)

// DayText is what the pages of the day say beside those of the set-ups, as plain text: what matches, and the lists. It is "" where the options ask for no
// such pages.
func (r *Run) DayText() string {
	if r.day == nil || len(r.sheets) == 0 {
		return ""
	}
	var text strings.Builder
	if words := section.PrintDayRevised(r.day.revised()); words != "" {
		text.WriteString(words + "\n")
	}
	if r.options.Matches() {
		text.WriteString(strings.TrimLeft(r.day.matching().Text(), "\n"))
	}
	if len(r.sheets[0].request.reader.lists) == 0 {
		return text.String()
	}
	if text.Len() > 0 {
		text.WriteString("\n")
	}
	if err := list.WriteText(&text, r.day.lists, r.day.feet); err != nil {
		return "" // a builder takes all
	}
	return text.String()
}

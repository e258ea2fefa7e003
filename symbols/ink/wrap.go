package ink

import "strings"

// Wrap breaks words into lines no wider than a width, mm, at a size of lettering; a word that is wider
// by itself stands alone.
func Wrap(m Measure, words string, size, width float64) (lines []string) {
	line := ""
	for _, w := range strings.Fields(words) {
		longer := strings.TrimSpace(line + " " + w)
		if line != "" && m.Width(longer, size, false) > width {
			lines = append(lines, line)
			longer = w
		}
		line = longer
	}
	return append(lines, line)
}

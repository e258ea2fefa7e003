package sheet

import (
	"strings"
	"testing"

	"scrimshaw/render/sheet/section"
)

// sectionOf is the section of a report whose title begins with some words.
func sectionOf(t *testing.T, r section.Report, title string) *section.Section {
	t.Helper()
	for _, s := range r.Sections() {
		if strings.HasPrefix(s.Title, title) {
			return s
		}
	}
	t.Fatalf("no section is called %q", title)
	return nil
}

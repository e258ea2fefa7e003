package section_test

import (
	"testing"

	"scrimshaw/render/sheet/section"
)

// reportOf is the report of an input in lux.
func reportOf(in section.Input) section.Report {
	return section.Report{In: &in, Units: section.Units{Feet: in.Setup.Feet, Stop: in.Setup.Exposure.Stop.N}}
}

// sectionOf is the section of a title in the report of an input.
func sectionOf(t *testing.T, in section.Input, title string) *section.Section {
	t.Helper()
	for _, s := range reportOf(in).Sections() {
		if s.Title == title {
			return s
		}
	}
	t.Fatalf("no section is called %q", title)
	return nil
}

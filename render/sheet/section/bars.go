package section

import (
	"strings"

	"scrimshaw/plan/day/change"
)

// thingKey is what a row is about where that is a thing.
func thingKey(sort change.Sort, name string) string { return string(sort) + ":" + name }

// MarkNew puts a bar beside the rows of a section that another has not; was may be nil.
func MarkNew(now, was *Section) {
	reads := func(e *Entry) string { return strings.Join(e.Cells, "\t") + "\n" + strings.Join(e.Notes, "\n") }
	before := map[string]bool{}
	if was != nil {
		for i := range was.Tables {
			for k := range was.Tables[i].Entries {
				before[reads(&was.Tables[i].Entries[k])] = true
			}
		}
	}
	for i := range now.Tables {
		for k := range now.Tables[i].Entries {
			e := &now.Tables[i].Entries[k]
			e.Revised = !before[reads(e)]
		}
	}
}

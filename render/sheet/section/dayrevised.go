package section

import (
	"fmt"
	"strings"
)

// DayRevised says of a day what is not as on the sheets before: which set-ups are new, gone, revised and as they were.
func DayRevised(since string, all []Digest, gone []string) *Section {
	var added, changed, same []string
	for i := range all {
		switch r := all[i].Revised; {
		case r == nil:
			return &Section{}
		case r.New:
			added = append(added, all[i].Name)
		case r.Differs():
			changed = append(changed, fmt.Sprintf("%s (%d)", all[i].Name, r.Rows))
		default:
			same = append(same, all[i].Name)
		}
	}
	named := func(head string, names []string) string { return Prefixed(head+": ", strings.Join(names, ", ")) }
	return &Section{Title: "Revised since " + since, Points: sentences(NonEmpty(named("new", added), named("gone", gone), named("revised", changed), named("as they were", same)))}
}

// PrintDayRevised is the same as plain text.
func PrintDayRevised(s *Section) string {
	w := &printer{}
	if s.speaks() {
		w.section(s)
	}
	return strings.TrimLeft(w.String(), "\n")
}

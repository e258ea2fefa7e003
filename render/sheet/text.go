package sheet

import (
	"strings"

	"scrimshaw/render/font"
)

// Text prints every value of the sheets of some set-ups as plain text: headings, tables in columns
// and notes, in the order of the collar. It is what a screen reader or a message is given in place
// of the drawing. Faults of the options are not reported here: Compose does that.
func Text(o Options, ins ...Input) string {
	if o.Font == nil {
		family, err := font.Default()
		if err != nil {
			return ""
		}
		o.Font = family
	}
	var text strings.Builder
	for i, in := range ins {
		if i > 0 {
			text.WriteString("\n\n")
		}
		s := newSheet(in, o, &faults{})
		text.WriteString(s.d.Print(s.fields))
	}
	return text.String()
}

package sheet

import (
	"scrimshaw/plan/source"
	"scrimshaw/render/font"
)

// Fits returns the errors of plans, and of walls, that no paper holds. It looks at what stands and not at
// light, so that one can ask before minutes are spent on that. Faults of the options are Check's.
func Fits(ins []Input, o Options) []source.Diagnostic {
	if o.Font == nil {
		family, err := font.Default()
		if err != nil {
			return nil // Compose says so
		}
		o.Font = family
	}
	var found []source.Diagnostic
	for _, in := range ins {
		s := newSheet(in, o, &faults{})
		if s.log.failed() {
			continue
		}
		s.fitter = s.fitterOf(nil)
		s.choose()
		for _, d := range s.log.all {
			if d.Severity == source.Error { // what is noted of a plan in parts comes with its sheet
				found = append(found, d)
			}
		}
	}
	return found
}

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

// LeastPage gives the width and the height, mm, of the page that a plan needs by itself; what is written beside it may
// need a larger one. It is not ok where Fits finds an error.
func LeastPage(in Input, o Options) (wide, high float64, ok bool) {
	if o.Font == nil {
		return 0, 0, false
	}
	s := newSheet(in, o, &faults{})
	s.fitter = s.fitterOf(nil)
	if s.log.failed() || !s.choose() {
		return 0, 0, false
	}
	return s.layout.Wide, s.layout.High, true
}

package sheet

import "fmt"

// namePages gives every page of a run a name for its file, no two the same: the set-up's where there
// are several, and after a dot, which no name of a set-up has, what the page is if it is not the plan.
// Until then a page is called by what it is.
func namePages(sheets []*sheet) {
	for _, s := range sheets {
		setup := ""
		if len(sheets) > 1 {
			setup = s.d.In.Setup.Name
		}
		times := map[string]int{}
		for i := range s.pages {
			p := &s.pages[i]
			what := p.Name
			if what == "" {
				p.Name = setup
				continue
			}
			if times[what]++; times[what] > 1 {
				what = fmt.Sprintf("%s-%d", what, times[what])
			}
			p.Name = setup + "." + what
		}
	}
}

package plan

import "slices"

// assume records a default that decided a number, in words that print. path is the thing's, or ""
// for the whole scene.
func (r *resolver) assume(path, what, value string) {
	r.out.Assumed = append(r.out.Assumed, Assumption{Thing: path, What: what, Value: value})
}

// assumeOnce records what holds for many things as one line.
func (r *resolver) assumeOnce(path, what, value string) {
	key := path + "\x00" + what
	if r.assumed[key] {
		return
	}
	r.assumed[key] = true
	r.assume(path, what, value)
}

// sortAssumed brings the list into the order of the file: the scene's own, then thing by thing.
func (r *resolver) sortAssumed() {
	rank := map[string]int{"": -1}
	for _, name := range r.names {
		t := r.things[name]
		rank[t.path] = t.rank
	}
	slices.SortStableFunc(r.out.Assumed, func(a, b Assumption) int { return rank[a.Thing] - rank[b.Thing] })
}

package change

import (
	"cmp"
	"math"
	"slices"
)

// arrange puts lines into an order that can be worked: by stages, in each what is hot last, then by sort and as the file has them; and nothing
// is put where something else still stands, or onto what is not there yet.
func arrange(lines []Line, before, now *State) {
	slices.SortStableFunc(lines, func(a, b Line) int {
		return cmp.Or(cmp.Compare(a.Stage, b.Stage), cmp.Compare(late(&a, before), late(&b, before)), cmp.Compare(slices.Index(Sorts, a.Sort), slices.Index(Sorts, b.Sort)))
	})
	for from := 0; from < len(lines); {
		to := from + 1
		for to < len(lines) && lines[to].Stage == lines[from].Stage {
			to++
		}
		if s := lines[from].Stage; s == Dress || s == Rig || s == Clear {
			untangle(lines[from:to], before, now)
		}
		from = to
	}
}

// late is what puts a line behind others of its stage: hot heads wait till they are cool.
func late(l *Line, before *State) float64 {
	if t := before.Find(l.Sort, l.Name); t != nil && touchesHead(l.Work) {
		return t.hot
	}
	return 0
}

// untangle takes of the lines that are left always the first that none of the others has to go before; of a ring in which each waits for
// another, the first.
func untangle(lines []Line, before, now *State) {
	left := slices.Clone(lines)
	for i := range lines {
		next := 0
		for k := range left {
			waits := false
			for j := range left {
				waits = waits || j != k && goesBefore(&left[j], &left[k], before, now)
			}
			if !waits {
				next = k
				break
			}
		}
		lines[i] = left[next]
		left = slices.Delete(left, next, next+1)
	}
}

// goesBefore says whether a line has to be worked before another of its stage: because it leaves the ground that the other takes, because the
// other is put onto its thing, or taken off with what stood on it.
func goesBefore(a, b *Line, before, now *State) bool {
	if a.Name == b.Name && a.Sort == b.Sort {
		return false
	}
	was, is := before.Find(a.Sort, a.Name), now.Find(b.Sort, b.Name)
	if is != nil && is.on == a.Name && (a.Part(Place) != nil || a.Part(Piece) != nil) && b.Part(Place) != nil {
		return true
	}
	if off := before.Find(b.Sort, b.Name); b.Part(Goes) != nil && was != nil && off != nil && was.on == b.Name {
		return true // what stands on it comes off first
	}
	if was == nil || is == nil || a.Part(Place) == nil || b.Part(Place) == nil || was.ground == 0 || is.ground == 0 {
		return false
	}
	p, q := vector(foot(was)), vector(foot(is))
	return math.Hypot(p.X-q.X, p.Y-q.Y) < was.ground+is.ground && math.Abs(was.lowFoot-is.lowFoot) < Unmoved
}

// foot is where a thing stands, m: what carries it, where something does.
func foot(t *Thing) []float64 {
	v := t.Fact(Place).Figures
	if len(v) >= 2*coordSize {
		return v[coordSize:]
	}
	return v
}

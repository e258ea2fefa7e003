package change

import (
	"cmp"
	"slices"
)

// Revision is what differs between a set-up as a sheet has it and as it is now: a line for each thing, to look up rather than to work, so by
// sorts and numbers. Both are states OnPaper. Lines have neither stage nor kind of work.
func Revision(before, now *State) []Line {
	var lines []Line
	for i := range now.Things {
		is := &now.Things[i]
		was := before.Find(is.Sort, is.Name)
		switch {
		case was == nil:
			lines = append(lines, revised(comes(is)))
		default:
			if parts := visible(differing(was, is)); len(parts) > 0 {
				l := lineOf(is, "")
				l.Parts = parts
				lines = append(lines, l)
			}
		}
	}
	for i := range before.Things {
		if was := &before.Things[i]; now.Find(was.Sort, was.Name) == nil {
			lines = append(lines, revised(goes(was)))
		}
	}
	lines = numbered(lines, before)
	follow(lines, now)
	slices.SortStableFunc(lines, func(a, b Line) int { return cmp.Compare(slices.Index(Sorts, a.Sort), slices.Index(Sorts, b.Sort)) })
	return lines
}

// numbered takes out of lines that a number is another, and says it of all things in a line of its own: who puts a light before others renumbers
// all of these, and does nothing to them.
func numbered(lines []Line, before *State) []Line {
	var part Part
	part.Aspect = Number
	for i := range lines {
		l := &lines[i]
		if p := l.Part(Number); p != nil && l.Part(Comes) == nil && l.Part(Goes) == nil {
			part.Was.Words, part.Is.Words = append(part.Was.Words, before.Find(l.Sort, l.Name).Tag), append(part.Is.Words, l.Tag)
			l.Parts = slices.DeleteFunc(l.Parts, func(p Part) bool { return p.Aspect == Number })
		}
	}
	if len(part.Is.Words) == 0 {
		return lines
	}
	lines = slices.DeleteFunc(lines, func(l Line) bool { return len(l.Parts) == 0 })
	return append(lines, Line{Sort: Numbers, Tag: string(Numbers), Parts: []Part{part}})
}

// revised is a line without what it takes to do it.
func revised(l Line) Line {
	l.Work, l.Hands, l.HotMinutes = "", nil, 0
	return l
}

// differing are the aspects of a thing that are not as they were.
func differing(was, is *Thing) (parts []Part) {
	for a := range is.Facts {
		f := &is.Facts[a]
		if old := was.Facts[a].Value; !f.Aspect.same(old, f.Value) {
			parts = append(parts, Part{f.Aspect, old, f.Value})
		}
	}
	return parts
}

// visible leaves out what its data say of a thing of which something else differs: a level or a gel changes what a lamp gives, and says so itself.
func visible(parts []Part) []Part {
	if len(parts) < 2 {
		return parts
	}
	return slices.DeleteFunc(parts, func(p Part) bool { return p.Aspect == Data })
}

package change

import "slices"

// Apply is the state that a list of changes makes of another. Only what the lines say of things is in it: not who is placed by whom.
func (l *List) Apply(s *State) *State {
	out := &State{Setup: l.Now, Rates: s.Rates}
	for _, t := range s.Things {
		t.Facts = slices.Clone(t.Facts)
		out.Things = append(out.Things, t)
	}
	out.reindex()
	for i := range l.Lines {
		out.take(&l.Lines[i])
	}
	return out
}

// take changes one thing.
func (s *State) take(l *Line) {
	switch {
	case l.Part(Goes) != nil:
		s.Things = slices.DeleteFunc(s.Things, func(t Thing) bool { return t.Sort == l.Sort && t.Name == l.Name })
		s.reindex()
	case l.Part(Comes) != nil:
		t := Thing{Sort: l.Sort, Name: l.Name, Tag: l.Tag}
		for _, p := range l.Parts {
			if p.Aspect != Comes {
				t.Facts = append(t.Facts, Fact{p.Aspect, p.Is})
			}
		}
		s.Things = append(s.Things, t)
		s.reindex()
	default:
		t := s.Find(l.Sort, l.Name)
		for _, p := range l.Parts {
			for i := range t.Facts {
				if t.Facts[i].Aspect == p.Aspect {
					t.Facts[i].Value = p.Is
				}
			}
		}
	}
}

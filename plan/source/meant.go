package source

import (
	"slices"
	"strings"
)

// likelyMistakes is what a map shows of the mistakes in it before it is read: one slip of the hand often looks like
// several faults, and is reported once.
type likelyMistakes struct {
	missing []string       // keys of the shape that are not in the map, and for which unknown keys stand
	hints   map[int]string // what an unknown key was meant as, by its index; "" where unknownHint knows
	reads   map[int]string // the key of the shape that the value of an unknown key is read as all the same
	handled map[int]bool   // keys whose value is part of a mistake that is reported at another key
}

// has reports whether an unknown key stands for one of keys.
func (m likelyMistakes) has(keys ...string) bool {
	return slices.ContainsFunc(keys, func(key string) bool { return slices.Contains(m.missing, key) })
}

// findMistakes looks through the keys of n for those that are not what they seem.
func (s *Shape[T]) findMistakes(n *Node, c *Context) likelyMistakes {
	m := likelyMistakes{hints: map[int]string{}, reads: map[int]string{}, handled: map[int]bool{}}
	var strangers []int
	empty := false // the keys here were meant to stand under an empty one above, which tells it
	for i := range n.Keys {
		key := &n.Keys[i]
		known, near := s.Field(key.Name) != nil, ""
		if !known {
			near = s.nearestKey(key)
		}
		empty = !known && i > 0 && isBelow(&n.Keys[i-1], key) && (empty || n.Keys[i-1].Value.Kind == Null && s.Field(n.Keys[i-1].Name) != nil)
		switch {
		case known:
		case empty:
			m.handled[i] = true
		case near != "" && len(m.missing) < maxGuessed && (s.fits(s.Field(near), key, c) || !s.guess(n, i, &m, c)):
			s.noteMisspelt(n, i, s.Field(near), &m, c)
		case cutByComma(n, i):
			m.handled[i-1] = true // what stands before the comma is not the whole value
		default:
			strangers = append(strangers, i)
		}
	}
	for _, i := range strangers[:min(len(strangers), maxGuessed)] {
		if s.Elsewhere != nil && s.Elsewhere(n.Keys[i].Name, c) != "" || s.guess(n, i, &m, c) {
			continue
		}
		s.guessForm(n, i, &m, c)
	}
	return m
}

// maxGuessed is how many unknown keys of a map are guessed at: each is compared with all that the map has, and no more
// faults than that are shown.
const maxGuessed = 100

// noteMisspelt notes which key of the shape a misspelt one is, and that its value is read where nothing else is: what
// refers to it would be at fault else.
func (s *Shape[T]) noteMisspelt(n *Node, i int, f *Field[T], m *likelyMistakes, c *Context) {
	key := &n.Keys[i]
	if n.Key(f.Key) == nil && !m.has(f.Key) && (key.Value.Kind == Map || s.fits(f, key, c)) {
		m.reads[i] = f.Key
	}
	m.missing = append(m.missing, f.Key)
}

// nearestKey is the key of the shape that an unknown key is a misspelling of, or "".
func (s *Shape[T]) nearestKey(key *Key) string {
	if name, _, mark := s.withoutMark(key); mark != 0 {
		return name
	}
	if near := Nearest(key.Name, s.Keys()); near != "" {
		return near
	}
	if begun := Beginning(key.Name, s.Keys()); len(begun) > 0 {
		return begun[0]
	}
	return ""
}

// withoutMark takes a key of the shape and its value apart that were written with only a colon or only a space
// between; mark is which, 0 where the key is nothing of the kind.
func (s *Shape[T]) withoutMark(key *Key) (name, value string, mark byte) {
	if key.Value.Kind != Null {
		return "", "", 0
	}
	for _, mark := range []byte{':', ' '} {
		if name, value, cut := strings.Cut(key.Name, string(mark)); cut && s.Field(name) != nil {
			return name, strings.TrimSpace(value), mark
		}
	}
	return "", "", 0
}

// guess takes an unknown key for a required one that is missing, where its value would do for that.
func (s *Shape[T]) guess(n *Node, i int, m *likelyMistakes, c *Context) bool {
	key := &n.Keys[i]
	for k := range s.Fields {
		f := &s.Fields[k]
		if f.LackedBy(n) && !m.has(f.Key) && s.fits(f, key, c) {
			m.missing, m.hints[i] = append(m.missing, f.Key), "did you mean "+f.Key+": "+shortText(key.Value, f.Example)+"?"
			m.reads[i] = f.Key
			return true
		}
	}
	return false
}

// guessForm takes an unknown key for the form of a map that has none.
func (s *Shape[T]) guessForm(n *Node, i int, m *likelyMistakes, c *Context) {
	key := &n.Keys[i]
	if len(s.Forms) == 0 || m.has(s.Forms...) || slices.ContainsFunc(s.Forms, func(form string) bool { return n.Key(form) != nil }) {
		return
	}
	m.missing, m.hints[i] = append(m.missing, s.Forms[0]), "write "+quotedList(s.Forms, "or")
	if example := s.formLike(key, c); example != "" {
		m.hints[i] += ", for example " + example
	}
}

// formLike is the first form that takes the value of a key, with that value; else the first with its example.
func (s *Shape[T]) formLike(key *Key, c *Context) string {
	for _, form := range s.Forms {
		if f := s.Field(form); f != nil && f.Example != "" && s.fits(f, key, c) {
			return form + ": " + shortText(key.Value, f.Example)
		}
	}
	if f := s.Field(s.Forms[0]); f != nil && f.Example != "" {
		return s.Forms[0] + ": " + f.Example
	}
	return ""
}

// fits reports whether the value of a key could be read as that of a field.
func (s *Shape[T]) fits(f *Field[T], key *Key, c *Context) bool {
	if f.Read == nil || key.Value.Kind == Null {
		return false
	}
	trial := *c
	trial.Log, trial.Path, trial.at = &Log{}, slices.Clone(c.Path), slices.Clone(c.at)
	var scratch T
	f.Read(&scratch, key.Value, &trial)
	return !trial.Log.Failed()
}

// shortText is the text of a value where it is short and in one line, else an example.
func shortText(n *Node, example string) string {
	const longest = 40
	if text := n.Span.Text(); len(text) <= longest && !strings.ContainsAny(text, "\r\n") {
		return text
	}
	return example
}

package scene

import "scrimshaw/plan/source"

// Reverse is a set-up made from another by exchanging the two of each pair.
type Reverse struct {
	Of   Ref
	Swap [][2]Ref // none: the ends of the line of action
}

// Uncrossed is a thing that a reverse leaves where it stood, or a value of one that counts along the sheet.
type Uncrossed struct {
	Name string // of the thing
	Why  string // "stands at the opening street"
	Span source.Span
}

// Exchange says of whom somebody takes the place, by name.
type Exchange map[string]string

// Of is who takes the place of somebody; they themselves, where nobody does.
func (e Exchange) Of(name string) string {
	if other := e[name]; other != "" {
		return other
	}
	return name
}

// after is the exchange that comes of this one after another.
func (e Exchange) after(first Exchange) Exchange {
	both := Exchange{}
	for _, names := range []Exchange{first, e} {
		for name := range names {
			if to := e.Of(first.Of(name)); to != name {
				both[name] = to
			}
		}
	}
	return both
}

package draw

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
)

// lightHold is how a light is held, by what takes ground: a practical stands by itself, on the floor or
// on furniture, and what hangs from the ceiling takes none.
func lightHold(l *plan.Light) symbols.Hold {
	switch l.Mount.Kind {
	case term.Ceiling:
		return ""
	case term.Stand, term.Floor, "":
		if l.Head.Class == term.Practical {
			return ""
		}
	}
	return symbols.Hold(l.Mount.Kind)
}

// lightKind is the symbol of a light: by how light leaves it, or as seen from above.
func lightKind(l *plan.Light) string {
	class := string(l.Head.Class)
	switch symbols.Class(class) {
	case symbols.Lantern, symbols.Practical, symbols.Linear:
		return "light:" + class
	}
	if math.Abs(section.Tilt(l.Frame.Axis)) < symbols.Overhead {
		return "light:" + class
	}
	if class == string(symbols.Boxed) || class == string(symbols.Panel) {
		return "light:down-soft"
	}
	return "light:down"
}

// mountKind is the symbol of a mount; "" for none.
func mountKind(h symbols.Hold) string {
	if h == "" {
		return ""
	}
	return "mount:" + string(h)
}

// openingKind is the symbol of an opening.
func openingKind(o *plan.Opening) string {
	if o.Kind == term.Window && o.Ajar > 0 {
		return "opening:casement"
	}
	return "opening:" + string(o.Kind)
}

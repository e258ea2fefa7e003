package kit

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// DefaultFocus is where a zoom stands where nothing is said: flooded.
const DefaultFocus = 1

// FocusWord says where a zoom stands: "spot", "flood", "focus 40 %"; "" of what does not zoom.
func (h *Head) FocusWord() string {
	switch word := focusWord(h.Focus); {
	case !h.Zooms:
		return ""
	case h.Focus > 0 && h.Focus < 1:
		return "focus " + word
	default:
		return word
	}
}

// focus is the share of the way from spot to flood.
func (b *builder) focus() float64 {
	if b.choice.Focus == nil {
		return DefaultFocus
	}
	return *b.choice.Focus
}

// focused is the unit's own output with a modifier at the focus of the choice; nil where it has none.
func (b *builder) focused(u *Unit, modifier string) *Output {
	all := u.outputs(modifier)
	if len(all) == 0 {
		return nil
	}
	if !all[0].Zooms {
		b.unfocused()
		return &all[0].Output
	}
	b.head.Zooms, b.head.Focus = true, b.focus()
	low, high, part := around(all, func(o *UnitOutput) float64 { return o.Focus }, b.focus())
	if part == 0 {
		return &low.Output
	}
	if o, ok := between(&low.Output, &high.Output, part); ok {
		return o
	}
	return b.nearestFocus(u, all, low, high, part)
}

// around finds those of a list in order of focus between which a focus lies, and the share of the way from the first to the
// second; beyond the ends both are the last one.
func around[T any](all []T, focusOf func(T) float64, focus float64) (low, high T, part float64) {
	i := slices.IndexFunc(all, func(v T) bool { return focusOf(v) >= focus })
	switch {
	case i < 0:
		return all[len(all)-1], all[len(all)-1], 0
	case i == 0 || focusOf(all[i]) == focus:
		return all[i], all[i], 0
	}
	low, high = all[i-1], all[i]
	return low, high, (focus - focusOf(low)) / (focusOf(high) - focusOf(low))
}

// byFactors goes a share of the way from one figure to another by equal factors.
func byFactors(low, high, part float64) float64 { return low * math.Pow(high/low, part) }

// between is the output of a zoom on the way between two places that are known by their angles: beam, field and flux go by
// equal factors, and the peak is what that flux gives within that beam. As a lens moves off its lamp all three fall together;
// that equal ways of the knob are equal factors is common practice. It is not ok for light that is known as a table.
func between(low, high *Output, part float64) (*Output, bool) {
	if low.Beam == 0 || high.Beam == 0 || low.opening() != high.opening() {
		return nil, false
	}
	flux := func(o *Output) float64 {
		s, _ := o.Source()
		return s.Flux
	}
	return &Output{
		Span: low.Span, Face: low.Face, Disc: low.Disc,
		Lumens: byFactors(flux(low), flux(high), part),
		Beam:   byFactors(low.Beam, high.Beam, part),
		Field:  byFactors(fieldOf(low.Beam, low.Field), fieldOf(high.Beam, high.Field), part),
	}, true
}

// fieldOf is a field angle, the usual one of the beam where none is stated.
func fieldOf(beam, field float64) float64 { return cmp.Or(field, photometry.DefaultField(beam)) }

// nearestFocus is the nearer of two outputs, with a note: between measured tables nothing is made up.
func (b *builder) nearestFocus(u *Unit, all []*UnitOutput, low, high *UnitOutput, part float64) *Output {
	var words []string
	for _, o := range all {
		words = append(words, focusWord(o.Focus))
	}
	best := low
	if part > 0.5 {
		best = high
	}
	b.report(source.Info, b.choice.FocusSpan, CodeNearestZoom, "", "%q has figures for %s; at a focus of %s the figures of %s are used",
		u.Name, strings.Join(words, ", "), focusWord(b.focus()), focusWord(best.Focus))
	return &best.Output
}

// zoomed is a modifier at the focus of the choice. Between the places that are known its figures change by equal factors.
func (b *builder) zoomed(u *Unit, m *Modifier) *Modifier {
	if len(m.Zoom) == 0 {
		b.unfocused()
		return m
	}
	b.head.Zooms, b.head.Focus = true, b.focus()
	low, high, part := around(m.Zoom, func(z ZoomStep) float64 { return z.Focus }, b.focus())
	at := *m
	at.Efficiency = byFactors(low.Efficiency, high.Efficiency, part)
	at.Beam = byFactors(low.Beam, high.Beam, part)
	at.Field = byFactors(fieldOf(low.Beam, low.Field), fieldOf(high.Beam, high.Field), part)
	return &at
}

// unfocused warns of a focus that changes nothing, because the light has no figures by focus. Of a projection spot
// it is the edge of its image.
func (b *builder) unfocused() {
	if b.choice.FocusSpan.Valid() && (b.head.Class != term.Projected || b.choice.FocusOfZoom) {
		b.report(source.Warning, b.choice.FocusSpan, CodeNoZoom, "leave it out, or give the unit outputs by focus in a kit file",
			"the focus of %s changes nothing: the catalogue has no figures by focus for %s", b.named(), b.focusless())
	}
}

// named is the light by its name in the scene.
func (b *builder) named() string {
	_, name, _ := strings.Cut(b.choice.Path, ".")
	return name
}

// focusless names what has no figures by focus.
func (b *builder) focusless() string {
	if b.choice.Unit == "" {
		return "its output"
	}
	return nameWithModifierOnly(b.choice.Unit, normaliseModifier(b.choice.Modifier))
}

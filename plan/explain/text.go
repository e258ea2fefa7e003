package explain

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/unit"
)

// How the text is set: the indents of its lines, the column where equations begin, and the widest line that is not broken.
const (
	indent      = "  "
	wordsColumn = 54
	widestLine  = 132
	equals      = " = "
)

// smallReturn is the share of a reading below which a surface is not named by itself.
const smallReturn = 0.005

// Write writes explanations as text, a block each.
func Write(w io.Writer, all []Explanation) error {
	var b strings.Builder
	for i := range all {
		if i > 0 {
			b.WriteByte('\n')
		}
		all[i].write(&b)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (e *Explanation) write(b *strings.Builder) {
	fmt.Fprintf(b, "%s: %s meter, %s\n", e.heading(), e.Reading.Kind, e.value())
	if e.Surface != "" {
		fmt.Fprintf(b, "%slooks at %s\n", indent, e.Surface)
	}
	lines(b, indent, e.Place)
	for i := range e.Lights {
		b.WriteByte('\n')
		e.light(b, &e.Lights[i], i+1)
	}
	b.WriteString("\nTogether\n")
	lines(b, indent, e.Sum)
	if off := e.Reading.PlusMinus(); off != "" {
		fmt.Fprintf(b, "%sthe engine takes this to be off by %s (standard error)\n", indent, e.mark(off))
	}
	lines(b, indent, e.Exposure)
	for _, u := range e.Reading.Uncomputed {
		fmt.Fprintf(b, "%swithout %s (%s, not computed yet)\n", meter.UncomputedMark, u.Words, u.Waits)
	}
}

// heading names the reading, and its set-up and its cue where there is one.
func (e *Explanation) heading() string {
	words := e.Reading.Name
	if e.Setup != "" {
		words += ", set-up " + e.Setup
	}
	if e.Cue != "" {
		words += ", after " + e.Cue
	}
	return words
}

// value is the reading as meter prints it.
func (e *Explanation) value() string {
	switch r := &e.Reading; {
	case r.Luminance != nil:
		return e.mark(unit.FormatLuminance(*r.Luminance))
	case r.Lux == nil:
		return "no light"
	case r.Stop == nil:
		return e.mark(unit.FormatLux(*r.Lux))
	default:
		return e.mark(unit.FormatLux(*r.Lux)) + ", " + meter.Mark(unit.FormatStop(*r.Stop), r.StopsStruck())
	}
}

// mark marks a figure of light, where a key that is not computed yet could change the reading.
func (e *Explanation) mark(figure string) string { return meter.Mark(figure, e.Reading.Struck()) }

// light writes what one light gives; number is that of its symbol in the sum.
func (e *Explanation) light(b *strings.Builder, l *Light, number int) {
	head := cmp.Or(l.Numbered, l.Name)
	if l.Label != "" {
		head += ", " + l.Label
	}
	fmt.Fprintf(b, "Light %s\n", head)
	b.WriteString(indent + "The lamp\n")
	lines(b, indent+indent, l.Lamp)
	if l.Straight != nil {
		b.WriteString(indent + "From there to the reading\n")
		lines(b, indent+indent, l.Straight)
	}
	for i := range l.Ways {
		b.WriteString(indent + "Straight" + through(l.Ways[i].Via) + "\n")
		lines(b, indent+indent, l.Ways[i].Steps)
	}
	if l.Why != "" {
		fmt.Fprintf(b, "%snothing comes straight: %s\n", indent, l.Why)
	}
	e.returns(b, l)
	for _, s := range l.Total {
		if s.Symbol == "L" {
			s.Symbol = fmt.Sprintf("L%d", number)
			s.Words += fmt.Sprintf(", %s of the reading", e.mark(fmt.Sprintf("%.1f %%", 100*l.Value/max(e.all(), l.Value))))
		}
		lines(b, indent, []Step{s})
	}
	if l.StandIn != nil {
		fmt.Fprintf(b, "%sAs it stands for %s, at this face\n", indent, l.StandIn.For)
		lines(b, indent+indent, l.StandIn.Steps)
	}
}

// all is the sum of the lights.
func (e *Explanation) all() (sum float64) {
	for i := range e.Lights {
		sum += e.Lights[i].Value
	}
	return sum
}

// returns writes what comes of a light off surfaces, the strongest first.
func (e *Explanation) returns(b *strings.Builder, l *Light) {
	if len(l.Returned) == 0 {
		return
	}
	b.WriteString(indent + "Off surfaces, by the one that it left last\n")
	strongest := slices.Clone(l.Returned)
	slices.SortStableFunc(strongest, func(a, b meter.Share) int { return cmp.Compare(b.Lux, a.Lux) })
	rest, others := 0.0, 0
	for i := range strongest {
		r := &strongest[i]
		if r.Lux < smallReturn*e.all() {
			rest, others = rest+r.Lux, others+1
			continue
		}
		fmt.Fprintf(b, "%s%s\n", indent+indent, padded(r.WayInWords(), wordsColumn-2*len(indent))+e.mark(figure(r.Lux)+" "+e.unit()))
	}
	if others > 0 {
		fmt.Fprintf(b, "%s%s\n", indent+indent, padded(fmt.Sprintf("%d more, each under %g %% of the reading", others, 100*smallReturn), wordsColumn-2*len(indent))+e.mark(figure(rest)+" "+e.unit()))
	}
}

// unit is that of the reading.
func (e *Explanation) unit() string { return e.Sum[0].Unit }

// through words the panes that light passes.
func through(via []string) string {
	words := ""
	for _, name := range via {
		words += " through " + name
	}
	return words
}

// lines writes steps, a line each: words, equation, and where it is from.
func lines(b *strings.Builder, in string, steps []Step) {
	for i := range steps {
		s := &steps[i]
		b.WriteString(in + padded(s.Words, wordsColumn-len(in)) + s.broken() + "\n")
	}
}

// broken is the equation with its source, on lines of their own for each of its parts where one line has no room.
func (s *Step) broken() string {
	parts := s.equation()
	source := ""
	if s.Source != "" {
		source = "  [" + s.Source + "]"
	}
	line := strings.Join(parts, equals) + source
	if wordsColumn+utf8.RuneCountInString(line) <= widestLine || len(parts) < 3 {
		return line
	}
	first := strings.Join(parts[:2], equals)
	under := "\n" + strings.Repeat(" ", wordsColumn+utf8.RuneCountInString(parts[0]))
	if s.Symbol == "" {
		first, parts = parts[0], append(parts[:1:1], parts...)
	}
	return first + under + equals + strings.Join(parts[2:], under+equals) + source
}

// padded fills up a column; what is longer keeps two blanks behind it.
func padded(s string, width int) string {
	return s + strings.Repeat(" ", max(2, width-utf8.RuneCountInString(s)))
}

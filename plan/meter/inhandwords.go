package meter

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/unit"
)

// inHandTitle heads the lines of what the lights have in hand.
const inHandTitle = "in hand"

// lines word what a light has in hand; lengths are in feet or metres.
func (l *InHand) lines(feet bool) []string {
	lines := []string{l.Numbered + ": " + strings.Join(append([]string{l.upWords()}, l.downWords()), ", ")}
	for i := range l.Wants {
		w := &l.Wants[i]
		lines = append(lines, Mark("  "+l.WantWords(w), len(w.Uncomputed) > 0))
	}
	switch {
	case l.Unit != nil:
		lines = append(lines, "  "+l.SmallestWords())
	case l.Stated:
		lines = append(lines, "  given by its output: no class of the catalogue to compare, and no body to bring nearer")
	}
	if l.Nearer != nil {
		lines = append(lines, "  "+l.Nearer.Words(feet))
	}
	return lines
}

// isNone says whether stops print as none.
func isNone(v float64) bool { return stopsInWords(math.Abs(v)) == stopsInWords(0) }

func (l *InHand) upWords() string {
	if isNone(l.Up) {
		return "at full"
	}
	return stopsInWords(l.Up) + " up to full"
}

func (l *InHand) downWords() string {
	switch {
	case l.Down == nil:
		return "dims to nothing"
	case isNone(*l.Down):
		return "goes no lower"
	}
	return stopsInWords(*l.Down) + " down to its least"
}

// WantWords word whether a light has what the scene wants of it: "for ada it is 0.7 stops short, at full".
func (l *InHand) WantWords(w *Want) string {
	short := l.Short(w)
	switch {
	case w.Alone:
		return "for " + w.Person + " the other lights alone are over the working stop"
	case isNone(short):
		return "for " + w.Person + " full is just the working stop"
	case short > 0:
		return "for " + w.Person + " it is " + stopsInWords(short) + " short of the working stop at full" + l.enoughWords(w)
	}
	return "for " + w.Person + " it has at full " + stopsInWords(-short) + " in hand over the working stop"
}

// enoughWords word the smallest unit that would not be short: "; discharge-4000 at 61 % would do, 4300 W and 31 kg".
func (l *InHand) enoughWords(w *Want) string {
	switch c := w.Enough; {
	case c != nil:
		return fmt.Sprintf("; %s at %s would do, %s and %s%s", c.Unit, unit.FormatPercent(c.Level), unit.FormatPower(c.Watts), unit.FormatMass(c.Mass), c.colourWords())
	case l.Unit != nil:
		return ", as is every unit of the catalogue that could take its place"
	}
	return ""
}

// SmallestWords word the smallest unit that would give what a light gives: "smallest that would do: … at 87 %, 640 W, 8.5 kg".
func (l *InHand) SmallestWords() string {
	c := l.Smallest
	if c == nil {
		if o := l.OffColour; o != nil {
			return fmt.Sprintf("no smaller unit of the catalogue would do in its colour: %s at %s gives as much%s", o.Unit, unit.FormatPercent(o.Level), o.colourWords())
		}
		return "no smaller unit of the catalogue would do"
	}
	words := fmt.Sprintf("smallest that would do: %s at %s, %s and %s in place of %s and %s", c.Unit, unit.FormatPercent(c.Level),
		unit.FormatPower(c.Watts), unit.FormatMass(c.Mass), unit.FormatPower(l.Unit.Watts), unit.FormatMass(l.Unit.Mass))
	if l.Count > 1 {
		words += ", each of " + unit.FormatNumber(float64(l.Count))
	}
	return words + c.colourWords()
}

// colourWords word how the light of a unit lies from that which it replaces: ", 12 mired cooler"; "" where that prints as nothing.
func (c *Class) colourWords() string {
	switch m := math.Round(c.Mired); {
	case m > 0:
		return fmt.Sprintf(", %.0f mired warmer", m)
	case m < 0:
		return fmt.Sprintf(", %.0f mired cooler", -m)
	}
	return ""
}

// Words word how near a light can come: "0.45 m nearer along its line before A sees it: 0.6 stops more at ada".
func (n *Nearer) Words(feet bool) string {
	ends := "before " + n.Camera + " sees it"
	if n.Camera == "" {
		ends = n.Why
	}
	if n.Metres <= 0 {
		return "no nearer: " + strings.TrimPrefix(ends, "before ")
	}
	if n.Camera == "" {
		ends = "(then " + ends + ")"
	}
	return unit.FormatLength(n.Metres, feet) + " nearer along its line " + ends + ": " + stopsInWords(n.Stops) + " more at " + n.Person
}

package draw

import (
	"math"
	"strings"
	"unicode"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// The heights of lettering, ISO 3098-1: the height of a capital, mm. Nothing is lettered smaller
// than the first.
const (
	CapSmall = 1.8 // tables and notes, which are read in the hand
	capName  = 2.5 // headings, the title block
	CapTitle = 3.5
	capGrand = 5.0 // the title on A2 and larger
	capLamp  = 7.0 // the number at a lamp, which is read from a ladder
)

// Ranks are the heights of lettering on a plan: what is asked first is the largest.
type Ranks struct {
	Lamp  float64 // mm, the number of a light
	Face  float64 // mm, readings at faces, and the marks of grip and cameras
	Other float64 // mm, everything else
}

// wallRanks are those of a plan that hangs on a wall, and after them those of plans ever more crowded: the numbers of the
// lights shrink last. phoneRanks are those of the small plan on a phone.
var (
	wallRanks  = [...]Ranks{{capLamp, CapTitle, capName}, {capLamp, capName, CapSmall}, {capGrand, capName, CapSmall}, {CapTitle, CapSmall, CapSmall}, {capName, CapSmall, CapSmall}}
	phoneRanks = Ranks{capName, CapSmall, CapSmall}
)

// LetteringSteps is how many steps lettering has from a plan with room to the most crowded.
const LetteringSteps = len(wallRanks)

// style is one way of lettering.
type style struct {
	face   *font.Family
	Cap    float64 // height of a capital, mm
	bold   bool
	colour ink.Colour
}

// em is the size to set a style in, mm.
func (s style) em() float64 { return s.Cap / s.face.CapHeight(1) }

// inked is the style in another colour.
func (s style) inked(c ink.Colour) style { s.colour = c; return s }

// Strong is the style in bold.
func (s style) Strong() style { s.bold = true; return s }

// Width is how far s runs, mm.
func (st style) Width(s string) float64 { return st.face.Width(s, st.em(), st.bold) }

// boxOf is the size of a box about the middle of the capitals of a line of lettering that holds its
// ascenders and descenders.
func (st style) boxOf(s string) r2.Vec {
	em := st.em()
	above, below := st.face.Ascent(em)-st.Cap/2, st.face.Descent(em)+st.Cap/2
	return r2.Vec{X: st.Width(s), Y: 2 * math.Max(above, below)}
}

// high is from the foot of descenders to the top of ascenders, mm.
func (s style) high() float64 { return s.face.Ascent(s.em()) + s.face.Descent(s.em()) }

// The pitch of lines over the height of capitals: of the smallest lettering, and of larger, which is read as well closer together.
const (
	smallPitch = 2.05
	pitch      = 1.8
)

// Leading is the pitch of lines, mm: generous at reading size.
func (s style) Leading() float64 { return math.Max(smallPitch*math.Min(s.Cap, CapSmall), pitch*s.Cap) }

// units are the words that stay with the figure before them.
var units = map[string]bool{
	"m": true, "mm": true, "K": true, "W": true, "A": true, "V": true, "lx": true, "fc": true, "%": true,
	"cd/m²": true, "fps": true, "kg": true, "m/s": true, "stops": true, "stop": true, "°": true, "s": true,
	"⅓": true, "⅔": true,
}

// words cuts a text where a line may end: at spaces, but not between a figure and its unit, nor before the colon of a ratio.
func words(s string) []string {
	var out []string
	for _, w := range strings.Fields(s) {
		if n := len(out); n > 0 && (w == ":" || units[strings.TrimRight(w, ".,;:)")] && endsInFigure(out[n-1])) {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func endsInFigure(s string) bool {
	r := []rune(s)
	return len(r) > 0 && (unicode.IsDigit(r[len(r)-1]) || unicode.IsNumber(r[len(r)-1]))
}

// wrap sets s in lines no wider than width mm, at most most of them (0: as many as it takes). A word that
// is too long for a line goes on in the next; where the text is it ends in an ellipsis, and cut is true.
func (st style) wrap(s string, width float64, most int) (lines []string, cut bool) {
	line := ""
	rest := words(s)
	for len(rest) > 0 {
		w := rest[0]
		joined := strings.TrimLeft(line+" "+w, " ")
		if st.Width(joined) <= width {
			line, rest = joined, rest[1:]
			continue
		}
		if most > 0 && len(lines) == most-1 {
			return append(lines, st.Ellipsis(strings.TrimLeft(line+" "+strings.Join(rest, " "), " "), width)), true
		}
		if line == "" {
			if line, rest[0] = st.broken(w, width); rest[0] == "" { // a column without any width
				rest = rest[1:]
			}
		}
		lines, line = append(lines, line), ""
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines, cut
}

// broken is as much of a word as a line holds, and the rest of it: up to a hyphen or a dot in it, else with
// a hyphen where it breaks.
func (st style) broken(word string, width float64) (head, rest string) {
	const least = 3 // letters of a piece
	r := []rune(word)
	fits := 1
	for n := 2; n < len(r) && st.Width(string(r[:n])+"-") <= width; n++ {
		fits = n
	}
	for n := fits; n >= least; n-- {
		if strings.ContainsRune("-./_:", r[n-1]) {
			return string(r[:n]), string(r[n:])
		}
	}
	hyphen := "-"
	if fits < least || st.Width(string(r[:fits])+hyphen) > width {
		hyphen = ""
	}
	return string(r[:fits]) + hyphen, string(r[fits:])
}

// Ellipsis shortens s to width mm with an ellipsis at its end; s stays as it is where it fits.
func (st style) Ellipsis(s string, width float64) string {
	if st.Width(s) <= width {
		return s
	}
	r := []rune(s)
	for n := min(len(r)-1, ink.Fitting(r, width, st.Width)); n > 0; n-- {
		short := strings.TrimRight(string(r[:n]), " ,;:.") + "…"
		if st.Width(short) <= width {
			return short
		}
	}
	return "…"
}

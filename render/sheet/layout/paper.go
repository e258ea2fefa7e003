package layout

import (
	"strconv"
	"strings"

	"scrimshaw/plan/unit"
	"scrimshaw/symbols/ink"
)

// Paper is a size of sheet, mm, upright: Width is the shorter side.
type Paper struct {
	Name          string
	Width, Height float64
}

// papers are ISO 216 A4 to A1 and ANSI/ASME Y14.1 A to D, smallest first within each series.
func papers() []Paper {
	const inch = ink.Inch
	return []Paper{
		{"A4", 210, 297}, {"A3", 297, 420}, {"A2", 420, 594}, {"A1", 594, 841},
		{"letter", 8.5 * inch, 11 * inch}, {"tabloid", 11 * inch, 17 * inch},
		{"ANSI C", 17 * inch, 22 * inch}, {"ANSI D", 22 * inch, 34 * inch},
	}
}

// PapersOf are the papers of a scene's own series, smallest first: ISO for metres, and for feet what
// is customary where they are.
func PapersOf(feet bool) []Paper {
	if feet {
		return papers()[4:]
	}
	return papers()[:4]
}

// otherNames are other words for the papers.
var otherNames = map[string]string{
	"ansi a": "letter", "ansi b": "tabloid", "ledger": "tabloid", "11x17": "tabloid",
	"c": "ANSI C", "d": "ANSI D", "ansi-c": "ANSI C", "ansi-d": "ANSI D", "ansi-a": "letter", "ansi-b": "tabloid",
}

// Orientation says which way a paper lies.
type Orientation uint8

// The orientations; Either leaves the choice to the plan.
const (
	Either Orientation = iota
	Landscape
	Portrait
)

// The margins of ISO 5457: the left one, for binding, and the others, mm.
const (
	Binding = 20.0
	Margin  = 10.0
)

// ParsePaper reads a paper and the way it lies: "A3", "A4 portrait", "Letter, landscape". The
// paper is nil where only the way is said.
func ParsePaper(text string) (p *Paper, o Orientation, ok bool) {
	words := strings.Fields(strings.ToLower(strings.ReplaceAll(text, ",", " ")))
	var name []string
	for _, w := range words {
		switch w {
		case "portrait", "upright":
			o = Portrait
		case "landscape":
			o = Landscape
		default:
			name = append(name, w)
		}
	}
	if len(name) == 0 {
		return nil, o, true
	}
	p = paperNamed(strings.Join(name, " "))
	return p, o, p != nil
}

// paperNamed is the paper of a name in small letters; nil where there is none.
func paperNamed(name string) *Paper {
	if known, has := otherNames[name]; has {
		name = strings.ToLower(known)
	}
	for _, p := range papers() {
		if strings.ToLower(p.Name) == name {
			return &p
		}
	}
	return nil
}

// PaperNames lists the papers, smallest first within each series.
func PaperNames() []string {
	var names []string
	for _, p := range papers() {
		names = append(names, p.Name)
	}
	return names
}

// readableScale is the smallest scale at which a plan is read with ease: 1:50, or 1/4" to the foot.
const readableScale = 50.0

// poorScale is the smallest at which it is read at all: 1:100, or 1/8" to the foot.
const poorScale = 100.0

// Scales are the scales of a series that are taken unasked.
func Scales(feet bool) []float64 {
	all := unit.Scales(feet)
	return all[:len(all)-1]
}

// ScaleWords says a scale as a sheet letters it: `1 : 50`, or `1/4" = 1'-0"`.
func ScaleWords(times float64, feet bool) string {
	s := unit.FormatScale(times, feet)
	if feet && s[len(s)-1] == '"' {
		return s + ` = 1'-0"`
	}
	return "1 : " + strconv.FormatFloat(times, 'f', -1, 64)
}

package frame

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
)

// Reflection is one piece of equipment as one camera sees it in a mirror, of what is not meant to be seen of it; or the light
// of one lamp, or what light falls on, as it sees that in clear glass.
type Reflection struct {
	Camera string
	In     string // the mirror, or the opening that the glass is in
	Kind   Kind
	Name   string
	Path   string // "lights.fill"
	Span   source.Span
	Parts  []body.Part
	Mark   string  // at which somebody shows, "ruth.sit"; "" where they are
	Along  float64 // m from the start of the camera's track to where most of it shows; 0 of one that stands
	Share  float64 // share of the frame that it takes
	Where  string  // there: "at the left edge"
	Move   *Move   // of the thing, after which nothing of it shows in that mirror; nil: none does, and of the camera itself
	Turn   *Turn   // of the mirror, likewise

	Glass  bool    // in glass; what follows is of that alone
	From   r3.Vec  // where the image of the lens lies, from which the lamp looks as the camera sees it, m
	Toward r3.Vec  // the way from the lens to the middle of what shows, a unit vector
	Factor float64 // share of the light that the glass throws back there, luminous, 0 to 1
	Glints []Glint // of what light falls on, in place of those three
	side   int     // of which pane, among the reflectors of the set-up
}

// Own says whether it is the camera itself.
func (r *Reflection) Own() bool { return r.Kind == Camera && r.Name == r.Camera }

// opaqueFor is what hides the light of a lamp: the set, people and all equipment but the lamp's own cloth, and its doors.
func (v *viewing) opaqueFor(l *plan.Light) *solid.Set {
	all := solid.Set{Prisms: v.setup.Set.Prisms}
	for _, sheet := range v.setup.Set.Sheets {
		if !seenThrough(&sheet.Front) && !strings.HasPrefix(sheet.Name, l.Name+".") {
			all.Sheets = append(all.Sheets, solid.Sheet{ID: sheet.ID, Name: sheet.Name, Corners: sheet.Corners})
		}
	}
	for _, leaf := range l.Leaves() {
		all.Sheets = append(all.Sheets, solid.Sheet{Name: l.Name, Corners: leaf})
	}
	return &all
}

// middleOf is the way from the lens to the middle of the largest part of what is seen.
func middleOf(seen []seenPart, p picture) r3.Vec {
	var way r3.Vec
	most := math.Inf(-1)
	for i := range seen {
		if share := p.share(seen[i].corners); share > most {
			most, way = share, r3.Unit(r3.Sub(solid.Centre(seen[i].corners), p.At))
		}
	}
	return way
}

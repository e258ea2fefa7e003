package fit

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/rig"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// freshBreeze is the wind from which a thing that would have to come down is a warning and not a note, m/s: force 5 of the Beaufort
// scale begins there (WMO Guide to Instruments, table of equivalents: 8.0 to 10.7 m/s).
const freshBreeze = 8.0

// postWide is how wide a stand stands in the wind, m: common practice.
const postWide = 0.036

// windOnLight tells the wind at which a light outdoors comes down.
func windOnLight(r *checker, l *plan.Light) bool {
	area, drag := shownBy(l)
	return lightHeld(r, l).wind(area, drag, 1)
}

// windOnGrip tells the wind at which a sheet outdoors comes down. A net and an empty frame count as full: on the side of less.
func windOnGrip(r *checker, g *plan.Grip) bool {
	area := g.Size[0] * g.Size[1]
	if g.Round() {
		area *= math.Pi / 4
	}
	return gripHeld(r, g).wind(area, rig.Plate, report.Either(g.OnTwoStands(), 2.0, 1.0))
}

// shownBy is what a head shows to the wind at most, m², from its front or its side, and the form of that.
func shownBy(l *plan.Light) (area float64, drag rig.Drag) {
	b, o := l.Head.Body, l.Head.Source.Opening
	front := max(b[0]*b[2], b[0]*b[1], b[1]*b[2])
	switch o.Form {
	case photometry.Rectangle:
		return max(front, o.Width*o.Height), rig.Plate
	case photometry.Disc:
		return max(front, math.Pi/4*o.Width*o.Width), rig.Plate
	case photometry.Sphere:
		return max(front, math.Pi/4*o.Width*o.Width), rig.Block
	case photometry.Tube:
		return max(front, o.Width*o.Height), rig.Cylinder
	}
	return front, rig.Block
}

// inWind says whether a place is out in the wind: outside of all rooms. A scene without rooms is open ground.
func (h *held) inWind() bool { return h.out.RoomUnder(h.at, "") == nil }

// mostLiftWind is the wind at which a lift comes down at the latest, m/s, whatever tips it: platforms for use outdoors are made for 12.5 (EN 280, from memory).
const mostLiftWind = 12.5

// wind tells at which wind a thing on so many stands tips, and at which it comes down before that.
func (h held) wind(area float64, drag rig.Drag, stands float64) bool {
	if !h.inWind() || !h.mount.Kind.OnLegs() || h.prop || area == 0 || h.top <= h.base || h.mount.On != "" {
		return true
	}
	if h.mount.Lift == nil && h.mount.Stand == nil { // silence would read as a thing that stands in any wind
		h.noWind(area)
		return true
	}
	high := h.top - h.base
	foot := h.footing(stands)
	post, most := stands*postWide, math.Inf(1)
	if h.mount.Lift != nil {
		post, most = 2*body.MastRadius, mostLiftWind
	}
	faces := []rig.Facing{{Area: area, Height: high, Drag: drag}, {Area: post * high, Height: high / 2, Drag: rig.Cylinder}}
	tips := rig.TipsAt(foot, faces)
	down := min(rig.TakeDownAt(tips), most)
	*h.down = down
	if len(h.out.Rooms) == 0 && down >= freshBreeze {
		h.open = append(h.open, inOpen{h.numbered(), "", down})
		return true
	}
	h.tellWind(area, tips, down, foot, faces)
	return true
}

// noWind tells that nobody computes at which wind it comes down, for nothing says what keeps it from tipping.
func (h *held) noWind(area float64) {
	hint, why := "write stand: with its name in the kit", "the scene names no stand"
	if h.mount.Kind == term.Lift {
		hint, why = "write such a lift into a kit file, and read off its plate up to which wind it may be up", "no lift of the kit goes so high with it"
	}
	if len(h.out.Rooms) == 0 {
		h.open = append(h.open, inOpen{h.numbered(), why, 0})
		return
	}
	h.Infof(h.span(), CodeWind, hint, "%s shows %s to the wind at %s, and at which wind it comes down is not computed: %s",
		h.numbered(), unit.FormatArea(area, h.Feet), h.Length(h.top-h.base), why)
}

// tellWind tells at which wind it tips, and comes down.
func (h *held) tellWind(area, tips, down float64, foot rig.Footing, faces []rig.Facing) {
	high := h.top - h.base
	severity, hint := source.Info, "guy it, and watch a wind meter"
	if h.mount.Lift != nil {
		hint = "read off its plate up to which wind it may be up, and watch a wind meter"
	}
	if down < freshBreeze {
		severity = source.Warning
		more := rig.Ballast(foot, faces, freshBreeze*rig.GustFactor) - foot.Mass
		hint = "lower it, guy it, or put " + unit.FormatMass(math.Ceil(more)) + " more on its foot, to stand until " + unit.FormatWind(freshBreeze, h.Feet)
	}
	comes := "so it comes down at "
	if down < rig.TakeDownAt(tips) {
		comes = "and a lift comes down before that, at the latest at "
	}
	h.Log.Add(h.Diagnostic(severity, h.span(), CodeWind, hint, "%s shows %s to the wind at %s: with %s on its foot a gust of %s tips it by the sum, %s%s",
		h.numbered(), unit.FormatArea(area, h.Feet), h.Length(high), unit.FormatMass(math.Round(foot.Mass)), unit.FormatWind(tips, h.Feet), comes, unit.FormatWind(down, h.Feet)))
}

// footing is what keeps a thing on so many stands from tipping: their feet, and all that stands on them with the bags that stands have.
func (h *held) footing(stands float64) rig.Footing {
	if lift := h.mount.Lift; lift != nil { // it tips over its longer sides, as a square of four feet does that is as wide
		return rig.Footing{Foot: math.Sqrt2 * min(h.mount.Ground[0], h.mount.Ground[1]), Feet: 4, Mass: h.mass + lift.Mass}
	}
	foot := rig.Footing{Foot: h.mount.Foot, Feet: 3, Mass: h.mass + stands*h.mount.Stand.Mass}
	if bag := h.item(plan.Sandbag); bag != nil {
		foot.Mass += stands * float64(h.mount.Bags(h.top-h.base)) * bag.Mass
	}
	if h.mount.Kind == term.Boom {
		foot.Mass += rig.Counterweight(h.mass, h.mount.Arm, rig.CounterArm)
	}
	return foot
}

// inOpen is what stands in a scene without rooms, and at which wind it comes down, m/s; 0: nobody knows, and why says why.
type inOpen struct {
	numbered, why string
	down          float64
}

// mostInOpen is how many things one note says the wind of: those that come down first.
const mostInOpen = 4

// openGround notes once of a scene without rooms that all of it stands in the wind, and what comes down first.
func (r *checker) openGround() {
	slices.SortStableFunc(r.open, func(a, b inOpen) int { return cmp.Compare(a.down, b.down) })
	var known, reasons []string
	unknown := map[string][]string{} // by why
	for _, o := range r.open {
		if o.down > 0 {
			known = append(known, o.numbered+report.Either(known == nil, " comes down at ", " at ")+unit.FormatWind(o.down, r.Feet))
			continue
		}
		if unknown[o.why] == nil {
			reasons = append(reasons, o.why)
		}
		unknown[o.why] = append(unknown[o.why], o.numbered)
	}
	words := ""
	if len(known) > 0 {
		words = "; " + named(known)
	}
	for _, why := range reasons {
		words += "; at which wind " + named(unknown[why]) + report.Either(len(unknown[why]) == 1, " comes", " come") + " down is not computed: " + why
	}
	if words != "" {
		r.Infof(source.Span{}, CodeWind, "write rooms: where this is indoors", "the scene has no rooms, so that all of it stands in the wind%s", words)
	}
}

// named lists the first of some names and says how many more there are.
func named(all []string) string {
	if more := len(all) - mostInOpen; more > 0 {
		return strings.Join(all[:mostInOpen], ", ") + " and " + strconv.Itoa(more) + " more"
	}
	return strings.Join(all, ", ")
}

package review

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// inFrame says what of the equipment a camera sees that should not be seen: a warning in the frame, a note in the margin
// about it; and of a frame that is clear by how much it is.
func (c *checker) inFrame(camera *plan.Camera) {
	var nearest *frame.Sight // of what keeps out of the frame and the margin
	found := false
	for i := range c.sights {
		s := &c.sights[i]
		if s.Camera != camera.Name {
			continue
		}
		switch hint := hints[s.Kind]; {
		case s.Shows():
			c.add(source.Warning, CodeInFrame, s.Span, s.Path, hint, "%s %s: %s of the frame%s%s",
				c.shown(s.Mark, s.Kind, s.Name, s.Parts, "shows"), placeIn(s.Where, s.Camera), shareInWords(s.Share), c.onTrack(s), c.outOfFrame(s))
		case s.Near(camera):
			c.add(source.Info, CodeInMargin, s.Span, s.Path, hint, "%s in the margin about the frame of %s, %s: %s%s%s",
				c.shown(s.Mark, s.Kind, s.Name, s.Parts, "lies"), s.Camera, s.Where, outsideInWords(s), c.onTrack(s), c.outOfFrame(s))
		default:
			if !math.IsInf(s.Outside, 1) && (nearest == nil || s.Outside < nearest.Outside) {
				nearest = s
			}
			continue
		}
		found = true
	}
	if !found && nearest != nil {
		c.add(source.Info, CodeFrameClear, camera.Span, "cameras."+camera.Name, "", "no equipment shows in the frame of %s; %s nearest, %s: %s%s",
			camera.Name, c.shown(nearest.Mark, nearest.Kind, nearest.Name, nearest.Parts, "comes"), nearest.Where, outsideInWords(nearest), c.onTrack(nearest))
	}
}

// hints say what to write where a thing of a kind is meant to be in the picture, or has no place to go.
var hints = map[frame.Kind]string{
	frame.Light:  "write seen: true where it is meant to be in the picture",
	frame.Person: "leave seen out where they are meant to be in the picture",
	frame.Cable:  "lead it round behind the camera or the set, or feed it from another outlet",
	frame.Rails:  "start nearer, with a shorter track; or raise or tilt up the camera",
}

// onTrack says from where on its track a camera sees a thing so: ", worst 2.10 m along its track (from 1.20 m to 2.40 m)"; "" of one that
// stands.
func (c *checker) onTrack(s *frame.Sight) string {
	if s.Track == nil {
		return ""
	}
	t := s.Track
	if !s.Shows() {
		return ", " + c.along(s.Camera, t.Worst)
	}
	words := ", worst " + c.along(s.Camera, t.Worst)
	if t.From < t.To {
		words += " (from " + unit.FormatLength(t.From, c.setup.Feet) + " to " + unit.FormatLength(t.To, c.setup.Feet) + ")"
	}
	return words
}

// along words a place of the track of a camera: "at the start of its track", "2.10 m along its track".
func (c *checker) along(camera string, metres float64) string {
	const end = 0.005 // m: it prints as that
	switch m := c.setup.CameraNamed(camera); {
	case metres < end:
		return "at the start of its track"
	case metres > m.Track.Length()-end:
		return "at the end of its track"
	}
	return unit.FormatLength(metres, c.setup.Feet) + " along its track"
}

// outsideInWords says by how much a thing is out of the frame, after what names the edge: "1.3° outside it, 4.2 % of the frame's width".
func outsideInWords(s *frame.Sight) string {
	return degreesInWords(s.Degrees) + " outside it, " + shareInWords(s.Outside) + " of the frame's width"
}

// degreesInWords is an angle to a tenth of a degree.
func degreesInWords(degrees float64) string {
	const least = 0.1
	if degrees < least {
		return "less than " + unit.FormatAngle(least)
	}
	return fmt.Sprintf("%.1f°", degrees)
}

// placeIn words a place in the frame of a camera: "at the left edge of A, low".
func placeIn(where, camera string) string {
	place, part, more := strings.Cut(where, ", ")
	if place += " of " + camera; more {
		place += ", " + part
	}
	return place
}

// leastSaid is the least share that is said in figures.
const leastSaid = 0.001

// shareInWords is a share to a tenth of a percent.
func shareInWords(share float64) string {
	if share < leastSaid {
		return "less than " + unit.FormatPercent(leastSaid)
	}
	return unit.FormatPercent(share)
}

// shown words what of a thing shows, with what it does: "the stand of 2 fill shows", "the legs of 2 fill show".
func (c *checker) shown(mark string, kind frame.Kind, thing string, parts []body.Part, does string) string {
	name := cmp.Or(mark, c.named(kind, thing))
	held, by := false, ""
	for _, p := range parts {
		switch {
		case !p.Holds():
			held = true
		case by == "" || p == body.Stand: // legs alone are worth a word of their own
			by = string(p)
		}
	}
	switch {
	case by == "":
		return name + " " + does
	case held:
		return name + " with its " + by + " " + does
	case by == string(body.Legs):
		does = strings.TrimSuffix(does, "s")
	}
	return "the " + by + " of " + name + " " + does
}

// named words a thing by its kind: "2 fill", "camera B", "the track of A".
func (c *checker) named(kind frame.Kind, name string) string {
	switch kind {
	case frame.Camera:
		return "camera " + name
	case frame.Cable:
		return "the cable to " + c.setup.Numbered(name)
	case frame.Rails:
		return "the track of " + name
	}
	return c.setup.Numbered(name)
}

// outOfFrame words what takes a thing out of a picture: "; move it 0.35 m camera left, or pan A 3° right".
func (c *checker) outOfFrame(s *frame.Sight) string {
	var ways []string
	if s.Move != nil {
		ways = append(ways, moved(s.Move, s.Kind, c.setup.Feet))
	}
	spoilt := ""
	if p := s.Pan; p != nil {
		side := "right"
		if p.Degrees < 0 {
			side = "left"
		}
		by := " " + unit.FormatAngle(math.Abs(p.Degrees)) + " " + side
		if p.Clean() {
			ways = append(ways, "pan "+s.Camera+by)
		} else {
			spoilt = "; a pan of" + by + " would " + c.spoils(p)
		}
	}
	if len(ways) == 0 {
		return spoilt
	}
	return "; " + strings.Join(ways, ", or ") + spoilt
}

// spoils words what a pan brings into the picture and whom it loses: "bring in 2 fill and camera B, and lose ada".
func (c *checker) spoils(p *frame.Pan) string {
	var brought, all []string
	for _, b := range p.Brings {
		brought = append(brought, c.named(b.Kind, b.Name))
	}
	if len(brought) > 0 {
		all = append(all, "bring in "+strings.Join(brought, " and "))
	}
	if p.Loses != "" {
		all = append(all, "lose "+p.Loses)
	}
	return strings.Join(all, ", and ")
}

// moved words a move: "move it 0.35 m camera left".
func moved(m *frame.Move, kind frame.Kind, feet bool) string {
	it := " it " + unit.FormatLength(m.Metres, feet)
	if kind == frame.Person {
		it = " them " + unit.FormatLength(m.Metres, feet)
	}
	return map[frame.Way]string{
		frame.Left: "move" + it + " " + string(meter.PictureLeft), frame.Right: "move" + it + " " + string(meter.PictureRight),
		frame.Back: "bring" + it + " back toward the camera", frame.Up: "raise" + it,
	}[m.Way]
}

// meantToBeSeen says how bright a light looks that is meant to be in the picture, and warns where it is in none.
func (c *checker) meantToBeSeen(l *plan.Light) {
	if !l.Seen.Meant || len(c.setup.Cameras) == 0 {
		return
	}
	shows := false
	for i := range c.sights {
		s := &c.sights[i]
		if s.Kind != frame.Light || s.Name != l.Name || s.Shown == 0 {
			continue
		}
		shows = true
		if over, luminance := c.overWhite(l, s.Camera); luminance > 0 {
			c.addMost(s.Camera+" "+l.Name, luminance, source.Info, CodeSeenBright, l.Span, l.Path, "", "%s shows %s, and its light there is %s", l.Numbered(), placeIn(s.ShownAt, s.Camera), over)
		}
	}
	if !shows && l.Seen.Written {
		c.add(source.Info, CodeSeenNowhere, l.Span, l.Path, "move it, or leave seen out",
			"%s is meant to be in the picture%s, and does not show there", l.Numbered(), ofNamed(l.Seen.By))
	}
}

// ofNamed names the cameras that a light is meant for.
func ofNamed(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return " of " + strings.Join(names, " and ")
}

// overWhite words how bright the face of a lamp looks to a camera, against a matt white that its working stop places, and gives that in
// cd/m²; 0 where nothing is known of it.
func (c *checker) overWhite(l *plan.Light, camera string) (words string, luminance float64) {
	for i := range c.setup.Cameras {
		from := &c.setup.Cameras[i]
		x := from.Exposure
		if from.Name != camera || x.Stop.N == 0 {
			continue
		}
		luminance = frame.Luminance(l, l.RelativeOutput.Y(), from.Frame.At)
		if !(luminance > 0) {
			return "", 0
		}
		white := x.Metered().MidGrey(x.Stop.N) / lens.Grey
		over := lens.Stops(luminance / white)
		return fmt.Sprintf("%.1f stops %s white (%s)", math.Abs(over), overOrUnder(over), unit.FormatLuminance(luminance)), luminance
	}
	return "", 0
}

// overOrUnder is the word for a number of stops.
func overOrUnder(stops float64) string {
	if stops < 0 {
		return "under"
	}
	return "over"
}

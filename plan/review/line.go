package review

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// lineOfAction says where a camera stands on another side of the line of action than those before it, in the set-up or in those before it
// in the file, and where it is on the line or crosses it.
func (c *checker) lineOfAction(camera *plan.Camera) {
	line := c.setup.Line
	if line == nil {
		return
	}
	path := "cameras." + camera.Name
	side, off := line.SideOf(plan.InPlan(camera.Frame.At))
	if camera.Track != nil {
		if crossings := line.Crossings(camera.Track); len(crossings) > 0 {
			c.add(source.Info, CodeLineTrack, camera.Track.Span, path+".track", "what is shot before that cuts with one side of the line, and what is shot after it with the other",
				"the track of %s crosses %s %s along", camera.Name, line.Words(), lengths(crossings, c.setup.Feet))
			return
		}
	}
	if side == plan.OnLine {
		c.add(source.Info, CodeOnLine, camera.Span, path, "", "%s is on %s, within %s (%s off it): it cuts with both sides", camera.Name, line.Words(),
			unit.FormatAngle(plan.LineSlack), degreesInWords(off))
		return
	}
	if against := acrossFrom(c.setup, camera.Name, side); len(against) > 0 {
		c.add(source.Warning, CodeLineCrossed, camera.Span, path, "keep to one side, or let a shot on the line or one that crosses it come between",
			"%s is to the %s of %s, and %s to the %s: cut together, both people look the same way", camera.Name, side, line.Words(), listOf(against), other(side))
	}
}

// acrossFrom are the cameras before one that are on the other side of the line, where the first of all is.
func acrossFrom(setup *plan.Setup, camera string, side plan.LineSide) (against []string) {
	all := append(setup.Sides[:len(setup.Sides):len(setup.Sides)], setup.CameraSides()...)
	if len(all) == 0 || all[0].Side == side {
		return nil
	}
	for _, s := range all {
		own := s.Setup == setup.Name
		if own && s.Camera == camera {
			break
		}
		switch {
		case s.Side == side:
		case own:
			against = append(against, s.Camera)
		default:
			against = append(against, s.Camera+" of "+s.Setup)
		}
	}
	return against
}

// other is the other side of the line.
func other(side plan.LineSide) plan.LineSide {
	if side == plan.LineLeft {
		return plan.LineRight
	}
	return plan.LineLeft
}

// listOf lists a few names, and counts the rest.
func listOf(names []string) string {
	if n := len(names); n > maxNamed {
		return strings.Join(names[:maxNamed], ", ") + fmt.Sprintf(" and %d more", n-maxNamed)
	}
	return strings.Join(names, " and ")
}

// lengths words distances: "1.20 m and 2.40 m".
func lengths(metres []float64, feet bool) string {
	words := make([]string, len(metres))
	for i, m := range metres {
		words[i] = unit.FormatLength(m, feet)
	}
	return strings.Join(words, " and ")
}

package sheet

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/shot"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// rolled is the kitchen with a camera that rolls from where it stands, and a line of action from its sitter to somebody.
func rolled(corners ...r2.Vec) Input {
	in := fixture.Example()
	c := &in.Setup.Cameras[0]
	face := in.Setup.People[0].Face.At
	c.Track = &plan.Track{Corners: append([]r2.Vec{plan.InPlan(c.Frame.At)}, corners...), Aim: &face}
	in.Setup.Line = &plan.Line{People: [2]string{"ruth", "ida"}, Ends: [2]r2.Vec{in.Setup.People[0].At, {X: 2.9, Y: 2.1}}}
	in.Tracks = []meter.Track{{Camera: "A", Length: c.Track.Length(), Changes: []meter.TrackChange{{Along: 0.7, Person: "ruth", Size: shot.CloseUp}}}}
	return in
}

// cornersOf are the places that the path of a mark runs by.
func cornersOf(it *ink.Item) []r2.Vec {
	return ink.Path(it.Path).Points(0.01)
}

// onFirst are the marks of an object on the first page.
func onFirst(s *sheet, object string) []*ink.Item {
	first := *s
	first.pages = s.pages[:1]
	return itemsOf(&first, object)
}

// The rails lie on the plan as far from the middle of the track as their gauge says, for all of its length, with a sleeper at each metre;
// the camera stands in outline at its end.
func TestTracksOnThePlan(t *testing.T) {
	in := rolled(r2.Vec{X: 1.3, Y: 0.6})
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	v := s.fitter.View(&s.layout)
	track := in.Setup.Cameras[0].Track
	a, b := v.Paper(track.Corners[0]), v.Paper(track.Corners[1])
	way := r2.Unit(r2.Sub(b, a))
	rails, sleepers := 0, 0
	for _, it := range onFirst(s, "track:A") {
		if it.Path == nil || it.Layer != ink.People {
			continue
		}
		for _, run := range ink.Path(it.Path).Flatten(0.01) {
			line := run.Points
			off, long := r2.Cross(way, r2.Sub(line[0], a)), math.Abs(r2.Dot(r2.Sub(line[len(line)-1], line[0]), way))
			switch {
			case long > 1: // along it
				rails++
				if !(math.Abs(math.Abs(off)-plan.RailGauge/2*v.Scale) <= 0.01) || !(math.Abs(long-track.Length()*v.Scale) <= 0.01) {
					t.Errorf("a rail lies %.3f mm off, %.2f mm long", off, long)
				}
			default:
				at := r2.Dot(r2.Sub(line[0], a), way) / v.Scale
				if sleepers++; !(math.Abs(at-math.Round(at)) <= 1e-3) {
					t.Errorf("a sleeper lies %.3f m along", at)
				}
			}
		}
	}
	if rails != 2 || sleepers != 3 {
		t.Errorf("%d rails and %d sleepers on a track of %.2f m", rails, sleepers, track.Length())
	}
	ghost := ink.Extent{}
	for _, it := range onFirst(s, "track:A") {
		if it.Layer == ink.Symbols {
			ghost.Join(it.Bounds(nil))
		}
	}
	if d := r2.Norm(r2.Sub(r2.Scale(0.5, r2.Add(ghost.Box.Min, ghost.Box.Max)), b)); d > 8 {
		t.Errorf("the camera at the end of the track is drawn %.1f mm from it", d)
	}
}

// The line of action runs through both heads, with some beyond.
func TestTheLineOfActionOnThePlan(t *testing.T) {
	in := rolled(r2.Vec{X: 1.3, Y: 0.6})
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	v, ends := s.fitter.View(&s.layout), in.Setup.Line.Ends
	from, to := v.Paper(ends[0]), v.Paper(ends[1])
	along, least, most := r2.Unit(r2.Sub(to, from)), math.Inf(1), math.Inf(-1)
	for _, it := range onFirst(s, "line") {
		for _, p := range cornersOf(it) {
			if off := math.Abs(r2.Cross(along, r2.Sub(p, from))); off > 2 {
				t.Errorf("the line of action runs %.2f mm from the heads", off)
			}
			least, most = min(least, r2.Dot(r2.Sub(p, from), along)), max(most, r2.Dot(r2.Sub(p, from), along))
		}
	}
	if least > -5 || most < r2.Norm(r2.Sub(to, from))+5 {
		t.Errorf("the line of action runs from %.1f to %.1f mm", least, most)
	}
}

// The list of cameras has the track, the shot at its end, and what changes along it; the plan says how long it is.
func TestTheListOfATrack(t *testing.T) {
	in := rolled(r2.Vec{X: 1.3, Y: 0.6})
	text := Text(Options{}, in)
	for _, want := range []string{"track 2.30: [3.60, 0.60] to [1.30, 0.60]\n", "at its end: ", "from 0.70 on: close-up of ruth\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("the text does not say %q:\n%s", want, text)
		}
	}
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	said := false
	for _, it := range itemsOf(s, "track:A") {
		said = said || it.Text != nil && it.Text.S == "track 2.30 m"
	}
	if !said {
		t.Error("the plan does not say how long the track is")
	}
}

package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/source"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// crowdedRoom is a room of 5 by 4 m with 25 lights and two people.
func crowdedRoom() string {
	var b strings.Builder
	b.WriteString(`scrimshaw: 1
exposure: {stop: 2.8, iso: 100, fps: 25}
rooms: {room: {size: [5, 4]}}
furniture: {table: {table: [1.4, 0.8, 0.75], at: [2.6, 2.1]}}
people: {the-watchmaker-s-daughter: {at: [2.2, 2.9], pose: seated}, grandfather: {at: [3.4, 1.3]}}
cameras: {A: {at: [4.5, 0.5], lens: 32 mm, looks: grandfather}}
lights:
`)
	for i := range 25 {
		x, y := 0.35+0.86*float64(i%6)+0.1*math.Sin(float64(7*i)), 0.35+0.8*float64(i/6)+0.1*math.Cos(float64(5*i))
		if i == 5 { // clear of the camera
			x += 0.2
		}
		aim := []string{"grandfather", "the-watchmaker-s-daughter", "table", "down"}[i%4]
		fmt.Fprintf(&b, "  lamp-%d: {output: {lumens: 400, shape: cosine}, at: [%.2f, %.2f], height: 1.9, aim: %s, colour: %d K}\n", i+1, x, y, aim, 2700+300*(i%10))
	}
	return b.String()
}

// TestACrowdedRoomLosesNothingInSilence: 25 lights in a small room. Every light has its number, beside it or on it, nothing
// covers anything, and a reading at a face that has no room is named.
func TestACrowdedRoomLosesNothingInSilence(t *testing.T) {
	in := inputsOf(t, "crowded", []byte(crowdedRoom()))[0]
	for _, paper := range []string{"", "A3"} {
		s := sheetFor(t, in, Options{Paper: paper, Font: fixture.Family(t)})
		checkPlan(t, s, fixture.Family(t))
		for i := range s.pages {
			checkPage(t, &s.pages[i], fixture.Family(t))
		}
		var numbers, faces []string
		for i := range s.pages[0].Items {
			it := &s.pages[0].Items[i]
			switch {
			case it.Text == nil:
			case it.Layer == ink.Tags:
				numbers = append(numbers, it.Text.S)
			case it.Layer == ink.Readings:
				faces = append(faces, it.Object)
			}
		}
		for i := range in.Setup.Lights {
			if tag := in.Setup.Lights[i].Tag; !slices.Contains(numbers, tag) {
				t.Errorf("on %q light %s has no number on the plan", paper, tag)
			}
		}
		for _, f := range in.Faces {
			for _, r := range []string{f.Person + ".key", f.Person + ".fill"} {
				told := slices.ContainsFunc(s.log.all, func(d source.Diagnostic) bool { return strings.Contains(d.Message, r) })
				if !slices.Contains(faces, "reading:"+r) && !told {
					t.Errorf("on %q nothing says %s, and nothing says that", paper, r)
				}
			}
		}
	}
}

// TestALongListOfLightsLeavesTheLegend: the signs of a plan are explained beside it, though its lights fill another page;
// what is found the same of many is said once.
func TestALongListOfLightsLeavesTheLegend(t *testing.T) {
	in := inputsOf(t, "crowded", []byte(crowdedRoom()))[0]
	s := sheetFor(t, in, Options{Font: fixture.Family(t)})
	first := texts(&s.pages[0])
	for _, want := range []string{"Legend", "Lights, in metres", "likewise"} {
		if !strings.Contains(first, want) {
			t.Errorf("the first page does not say %q", want)
		}
	}
	if n := strings.Count(strings.Join(in.Warnings, "\n"), "the legs of the stand of"); n != 1 {
		t.Errorf("%d sentences about legs", n)
	}
	all := ""
	for i := range s.pages {
		all += texts(&s.pages[i])
	}
	for _, l := range in.Setup.Lights[4:7] {
		if !strings.Contains(strings.Join(in.Warnings, " "), l.Tag+",") {
			t.Errorf("nothing says that the legs of %s have no room", l.Tag)
		}
	}
	if !strings.Contains(all, "1 to 25") || strings.Contains(all, "12 lamp-12") {
		t.Error("the same is assumed of each of the lights, one by one")
	}
}

package sheet

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/font"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols/ink"
)

// mostGhosts is how many ghosts a plan has at most.
const mostGhosts = 8

// movedDay is a room of some lamps, people and tables, and a second set-up in which many of them stand elsewhere, and one lamp hardly.
func movedDay(rng *rand.Rand) string {
	var first, next strings.Builder
	at := func() string { return fmt.Sprintf("[%.2f, %.2f]", 0.6+8.8*rng.Float64(), 0.6+6.8*rng.Float64()) }
	for i := range 10 {
		fmt.Fprintf(&first, "  l%d: {unit: led-panel-100, at: %s, height: 2, aim: ada}\n", i, at())
		if i < 8 {
			fmt.Fprintf(&next, "l%d: {at: %s}, ", i, at())
		}
	}
	return "scrimshaw: 1\nrooms: {den: {size: [10, 8], height: 4}}\npeople: {ada: {at: [5, 4]}}\ncameras: {A: {at: [5, 0.7], lens: 35 mm}}\n" +
		"furniture: {chest: {box: [1, 0.5, 0.6], at: [0.8, 7]}}\ngrip: {f: {flag: [0.6, 0.9], at: [9, 7], height: 2, faces: ada}}\nlights:\n" + first.String() +
		"  still: {unit: led-tube-60, at: [9.4, 0.5], height: 2, aim: ada}\n" +
		"setups:\n  a: {camera: A}\n  b: {camera: A, after: a, change: {lights: {" + next.String() + "still: {at: [9.42, 0.5]}}, furniture: {chest: {at: [2.6, 7]}}, cameras: {A: {at: [6.4, 0.7]}}}}\n"
}

// ghostsOf are the marks of the ghosts of a page, by the things.
func ghostsOf(p *ink.Page) map[string][]*ink.Item {
	all := map[string][]*ink.Item{}
	for i := range p.Items {
		if it := &p.Items[i]; it.Layer == ink.Moves {
			all[strings.TrimPrefix(it.Object, "ghost:")] = append(all[strings.TrimPrefix(it.Object, "ghost:")], it)
		}
	}
	return all
}

// TestGhostsStandWhereThingsStood, in colour and for a copier: of what moved and not of what stayed or hardly moved, over no lettering and no head, and no more
// than somebody reads.
func TestGhostsStandWhereThingsStood(t *testing.T) {
	drawn := 0
	for seed := range uint64(1) {
		setups, log := fixture.SetupsOf(t, movedDay(rand.New(rand.NewPCG(seed, 1))))
		if len(setups) != 2 {
			t.Fatal(log.All())
		}
		for _, look := range []string{"day", "ink"} {
			s := sheetFor(t, Input{Setup: setups[1]}, Options{Font: fixture.Family(t), Paper: "A3", Theme: look})
			ghosts := ghostsOf(&s.pages[0])
			if drawn += len(ghosts); len(ghosts) > mostGhosts || ghosts["light:still"] != nil || ghosts["light:l9"] != nil {
				t.Errorf("seed %d: ghosts of %d things", seed, len(ghosts))
			}
			const moved = 11 // nine lamps, one of which hardly did, a chest and a camera
			said := ""
			for _, it := range s.pages[0].Items {
				if it.Text != nil && strings.Contains(it.Text.S, " of ") && it.Layer == ink.Collar {
					said += it.Text.S + "; "
				}
			}
			if want := fmt.Sprintf("%d of %d;", len(ghosts), moved); !strings.Contains(said, want) {
				t.Errorf("the legend says %q of them, want %q", said, want)
			}
			for object, marks := range ghosts {
				ghostIsTrue(t, s, setups[0], object, marks)
			}
		}
		if first := sheetFor(t, Input{Setup: setups[0]}, Options{Font: fixture.Family(t), Paper: "A3"}); len(ghostsOf(&first.pages[0])) > 0 {
			t.Error("the first set-up of a day has ghosts")
		}
	}
	if drawn < 6 {
		t.Errorf("only %d ghosts find room", drawn)
	}
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		for object, marks := range ghostsOf(&s.pages[0]) {
			ghostIsTrue(t, s, in.Setup.Before, object, marks)
		}
	})
}

// paperOfTexts is the paper that each text of the plan takes, turned as it is, by what it says and where.
func paperOfTexts(page *ink.Page, family *font.Family) map[string][]r2.Vec {
	all := map[string][]r2.Vec{}
	for i := range page.Items {
		it := page.Items[i]
		if it.Text == nil || it.Layer == ink.Collar {
			continue
		}
		all[fmt.Sprint(it.Text.S, it.Bounds(family).Box.Min)] = paperOfText(it, family)
	}
	return all
}

// paperOfText is the paper that a text takes, turned as it is.
func paperOfText(it ink.Item, family *font.Family) []r2.Vec {
	around, level := it.Bounds(family).Box, *it.Text
	angle := level.Angle
	level.Angle = 0
	it.Text = &level
	b := it.Bounds(family).Box
	return ink.TurnedBox(box.Middle(around.Min, around.Max), r2.Sub(b.Max, b.Min), angle)
}

// ghostIsTrue holds the marks of one ghost to where its thing stood, and off lettering and heads.
func ghostIsTrue(t *testing.T, s *sheet, before *plan.Setup, object string, marks []*ink.Item) {
	t.Helper()
	v, page := s.fitter.View(&s.layout), &s.pages[0]
	_, name, _ := strings.Cut(object, ":")
	var at r2.Vec
	switch {
	case before.LightNamed(name) != nil:
		at = plan.InPlan(before.LightNamed(name).Frame.At)
	case before.CameraNamed(name) != nil:
		at = plan.InPlan(before.CameraNamed(name).Frame.At)
	case before.PieceNamed(name) != nil:
		at = before.PieceNamed(name).At
	case before.GripNamed(name) != nil:
		at = plan.InPlan(before.GripNamed(name).Frame.At)
	default:
		at = before.Post(name).At
	}
	if outline := box.Inset(marks[0].Bounds(nil).Box, -1, -1); !box.Contains(outline, v.Paper(at)) {
		t.Errorf("the ghost of %s is in %v, and it stood at %v", object, outline, v.Paper(at))
	}
	lettering := paperOfTexts(page, fixture.Family(t))
	for _, mark := range marks {
		for _, piece := range piecesOf(mark) {
			for said, ring := range lettering {
				if carto.Overlap(piece, ring) {
					t.Errorf("%s: the ghost of %s runs through %q", page.Title, object, said)
				}
			}
			for i := range s.d.In.Setup.People {
				who := &s.d.In.Setup.People[i]
				if who.Name != name && carto.Distance(v.Paper(who.At), piece[0], piece[1]) < 0.08*v.Scale {
					t.Errorf("%s: the ghost of %s runs over the head of %s", page.Title, object, who.Name)
				}
			}
		}
	}
}

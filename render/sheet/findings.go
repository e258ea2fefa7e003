package sheet

import (
	"cmp"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/review"
	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/render/sheet/section"
)

// warningsOf is what a sheet prints of what was found: every warning of the set-up as it stands and as it is lit, what does harm
// first, and what shows in a picture next.
func warningsOf(s *study.Study) []string {
	var found []source.Diagnostic
	for _, d := range append(slices.Clone(s.Setup.Warnings), review.Check(s.Setup, &s.Readings)...) {
		alike := func(o source.Diagnostic) bool { return o.Message == d.Message }
		if d.Severity >= source.Warning && d.Code != source.CodeLater && !slices.ContainsFunc(found, alike) {
			found = append(found, d)
		}
	}
	slices.SortStableFunc(found, func(a, b source.Diagnostic) int { return cmp.Compare(urgency(a.Code), urgency(b.Code)) })
	return condensed(s.Setup, found)
}

// The findings that a crew reads first of all: what trips, burns, falls or has no current, and then what spoils a picture.
var (
	harms = []string{review.CodeOverload, review.CodeFeedOver, review.CodeNeutral, review.CodeLeakage, review.CodeRunsOut, fit.CodeTooHot, fit.CodeHeat, fit.CodeMains, review.CodeStandHeavy, review.CodeStandSpigot,
		review.CodeNoCable, review.CodeCableAcross, fit.CodeHitsPerson, fit.CodeBoomLoad, fit.CodePole, fit.CodeOverEdge, fit.CodeHotNear, fit.CodeWind, fit.CodeEscape}
	spoils = []string{review.CodeInFrame, review.CodeReflected, review.CodeInGlass, review.CodeFlare, review.CodeFlicker, review.CodeLineCrossed}
)

// urgency is the place of a kind of finding in a list for a crew, by its code: 0 is read first.
func urgency(code string) int {
	switch {
	case slices.Contains(harms, code):
		return 0
	case slices.Contains(spoils, code):
		return 1
	}
	return 2
}

// fewFindings is how many findings of one kind a sheet says one by one: more of them push the lists off it.
const fewFindings = 4

// condensed words findings. Of many of one kind the first says all, and which others are found the same.
func condensed(s *plan.Setup, found []source.Diagnostic) []string {
	others := map[string][]string{} // the numbers of those found, by kind
	for i := range found {
		kind, number := kindOf(s, &found[i])
		others[kind] = append(others[kind], number)
	}
	var lines []string
	said := map[string]bool{}
	for i := range found {
		kind, _ := kindOf(s, &found[i])
		switch numbers := others[kind]; {
		case len(numbers) <= fewFindings:
			lines = append(lines, found[i].Message)
		case !said[kind]:
			said[kind] = true
			lines = append(lines, found[i].Message+"; likewise "+strings.Join(numbers[1:], ", ")+", as review says one by one")
		}
	}
	return lines
}

// kindOf is what findings of one kind have in common, and the number of the light or the piece of grip that one is about.
func kindOf(s *plan.Setup, d *source.Diagnostic) (kind, number string) {
	list, rest, _ := strings.Cut(d.Path, ".")
	name, _, _ := strings.Cut(rest, ".")
	switch list {
	case "lights":
		if l := s.LightNamed(name); l != nil {
			number = l.Tag
		}
	case "grip":
		if g := s.GripNamed(name); g != nil {
			number = g.Tag
		}
	}
	before, _, about := strings.Cut(d.Message, s.Numbered(name))
	if number == "" || !about {
		return d.Message, number
	}
	return d.Code + " " + before, number
}

// cautionsOf are those that apply, and the one that closes every list.
func cautionsOf(s *study.Study) []section.Caution {
	var all []section.Caution
	for _, c := range review.Cautions(s.Setup) {
		caution := section.Caution{Tags: c.Tags, Text: c.Text}
		for _, w := range c.Winds {
			caution.Winds = append(caution.Winds, section.Wind(w))
		}
		all = append(all, caution)
	}
	return append(all, section.Caution{Text: review.ClosingSentence})
}

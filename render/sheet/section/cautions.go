package section

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/symbols/ink"
)

// SameCautions says whether two set-ups have the same.
func SameCautions(a, b []Caution) bool {
	return slices.EqualFunc(a, b, func(x, y Caution) bool {
		return x.Text == y.Text && slices.Equal(x.Tags, y.Tags) && slices.Equal(x.Winds, y.Winds)
	})
}

// cautions are those of the trade.
func cautions(in *Input) *Section {
	return &Section{Title: "Cautions", Points: cautionPoints(in.Cautions, lightTags(in.Setup))}
}

// cautionPoints are cautions as they are printed, among so many lights.
func cautionPoints(all []Caution, lights []string) []string {
	var points []string
	for _, c := range all {
		points = append(points, Joined(": ", tagWords(c.Tags, lights), withWinds(c.Text, c.Winds)))
	}
	return sentences(points)
}

// sentences gives each text a capital and a full stop, which findings do not have.
func sentences(all []string) []string {
	var out []string
	for _, s := range all {
		if s = strings.TrimSpace(s); s == "" {
			continue
		}
		s = ink.Capital(s)
		if !strings.ContainsAny(s[len(s)-1:], ".!?") {
			s += "."
		}
		out = append(out, s)
	}
	return out
}

// mostWinds is how many winds a caution names: where there are more, the lowest of them, and then from which one on all others come down.
const mostWinds = 4

// windGroup are things that come down at one wind.
type windGroup struct {
	first Wind
	tags  []string
}

// groupsOf puts things together that come down at one wind, as it is printed.
func groupsOf(winds []Wind) (groups []windGroup) {
	for _, w := range winds {
		at := slices.IndexFunc(groups, func(g windGroup) bool { return g.first.Words == w.Words })
		if at < 0 {
			at, groups = len(groups), append(groups, windGroup{first: w})
		}
		groups[at].tags = append(groups[at].tags, w.Tag)
	}
	return groups
}

// withWinds ends a sentence with the winds at which things come down, those of one wind together: "... decides: 1 to 4 at 9.8 m/s, G2 at 3.4 m/s."
func withWinds(text string, winds []Wind) string {
	groups := groupsOf(winds)
	if len(groups) == 0 {
		return text
	}
	var last []string
	if len(groups) > mostWinds {
		slices.SortStableFunc(groups, func(a, b windGroup) int { return cmp.Compare(a.first.Speed, b.first.Speed) })
		last = []string{"all others from " + groups[mostWinds-1].first.Words + " on"}
		groups = groups[:mostWinds-1]
	}
	var words []string
	for _, g := range groups {
		words = append(words, strings.Join(runs(g.tags), ", ")+" at "+g.first.Words)
	}
	return strings.TrimSuffix(text, ".") + ": " + strings.Join(append(words, last...), ", ") + "."
}

// lowestWinds takes winds to others: of a thing that has several the lowest counts.
func lowestWinds(all, more []Wind) []Wind {
	for _, w := range more {
		at := slices.IndexFunc(all, func(o Wind) bool { return o.Tag == w.Tag })
		if at < 0 {
			all = append(all, w)
		} else if w.Speed < all[at].Speed {
			all[at] = w
		}
	}
	return all
}

// lightTags are the numbers of all lights of a set-up.
func lightTags(s *plan.Setup) (tags []string) {
	if s == nil {
		return nil
	}
	for i := range s.Lights {
		tags = append(tags, s.Lights[i].Tag)
	}
	return tags
}

// run is from how many numbers on they are not said one by one.
const run = 3

// tagWords say numbers as a crew reads them: "all lights" where all are meant, "3 to 9" where numbers run, else one by one, in their order.
func tagWords(tags, lights []string) string {
	all := len(lights) >= run && !slices.ContainsFunc(lights, func(l string) bool { return !slices.Contains(tags, l) })
	var words, rest []string
	if all {
		words = append(words, "all lights")
	}
	for _, tag := range tags {
		if !all || !slices.Contains(lights, tag) {
			rest = append(rest, tag)
		}
	}
	return strings.Join(append(words, runs(rest)...), ", ")
}

// runs are numbers in their order, those that run by their ends.
func runs(rest []string) (words []string) {
	slices.SortStableFunc(rest, compareTags)
	for from := 0; from < len(rest); {
		to := from
		for to+1 < len(rest) && follows(rest[to], rest[to+1]) {
			to++
		}
		if to < from+run-1 {
			to = from
			words = append(words, rest[from])
		} else {
			words = append(words, rest[from]+" to "+rest[to])
		}
		from = to + 1
	}
	return words
}

// compareTags puts numbers in their order, and after them those with letters before them.
func compareTags(a, b string) int {
	headA, numberA := splitTag(a)
	headB, numberB := splitTag(b)
	return cmp.Or(cmp.Compare(headA, headB), cmp.Compare(numberA, numberB))
}

// follows says whether a number is the next after another: 4 after 3, G4 after G3.
func follows(is, next string) bool {
	head, number := splitTag(is)
	return len(head) < len(is) && next == head+strconv.Itoa(number+1)
}

// splitTag is what stands before the figures of a number, and these.
func splitTag(tag string) (head string, number int) {
	head = strings.TrimRight(tag, "0123456789")
	number, _ = strconv.Atoi(tag[len(head):])
	return head, number
}

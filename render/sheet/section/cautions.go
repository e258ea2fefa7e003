package section

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"scrimshaw/plan"
)

// SameCautions says whether two set-ups have the same.
func SameCautions(a, b []Caution) bool {
	return slices.EqualFunc(a, b, func(x, y Caution) bool { return x.Text == y.Text && slices.Equal(x.Tags, y.Tags) })
}

// cautions are those of the trade.
func cautions(in *Input) *Section {
	return &Section{Title: "Cautions", Points: cautionPoints(in.Cautions, lightTags(in.Setup))}
}

// cautionPoints are cautions as they are printed, among so many lights.
func cautionPoints(all []Caution, lights []string) []string {
	var points []string
	for _, c := range all {
		points = append(points, Joined(": ", tagWords(c.Tags, lights), c.Text))
	}
	return sentences(points)
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

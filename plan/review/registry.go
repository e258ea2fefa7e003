package review

import "scrimshaw/plan"

// The codes of what a review finds beyond the faults of reading and resolving. All are warnings
// or notes: a scene that is lit badly is still a scene.
const (
	CodeKeyUnder        = "key-under"    // warning: a key side well under the working stop
	CodeKeyOver         = "key-over"     // warning: a key side well over the working stop
	CodeNoLight         = "no-light"     // warning: a light at no level, or one that reaches no reading
	CodeKeyNotBrightest = "key-beaten"   // warning: the lights with the role of key make the darker side of a face
	CodeRoleEffect      = "role-effect"  // warning: a light that does not do what its role says
	CodeColourGap       = "colour-gap"   // note: key and fill sides of clearly different colour
	CodeStandShort      = "stand-short"  // warning: a light higher than its stand goes
	CodeStandTall       = "stand-tall"   // warning: a light lower than its stand goes
	CodeStandHeavy      = "stand-heavy"  // warning: a head heavier than its stand carries
	CodeStandSpigot     = "stand-spigot" // warning: a head whose spigot its stand does not take
	CodeInFrame         = "in-frame"     // warning: equipment that a camera sees
	CodeInMargin        = "in-margin"    // note: equipment in the margin about a camera's frame
	CodeFrameClear      = "frame-clear"  // note: what comes nearest to a frame that nothing shows in
	CodeSeenBright      = "seen-bright"  // note: how bright a lamp looks that is meant to be in the picture
	CodeSeenNowhere     = "seen-nowhere" // note: a light that is meant to be in the picture, and is in none
	CodeAssumed         = "assumed"      // note: a default that decided a number
)

// check is one check that needs light, or what cameras see, of a thing of the set-up, with the codes that it reports. Those that
// need neither are in package fit.
type check[T any] struct {
	codes []string
	words string // what it looks for
	run   func(c *checker, t *T)
}

// The checks of each kind of thing, in the order of their reports.
var (
	ofPeople = []check[plan.Person]{
		{[]string{CodeKeyUnder, CodeKeyOver}, "a key side well under or over the working stop", (*checker).exposure},
		{[]string{CodeKeyNotBrightest}, "a key that lights the darker side of a face", (*checker).keyNotBrightest},
		{[]string{CodeColourGap}, "key and fill sides of clearly different colour", (*checker).colours},
	}
	ofLights = []check[plan.Light]{
		{[]string{CodeNoLight}, "a light at no level, or one that reaches no reading", (*checker).reaches},
		{[]string{CodeRoleEffect}, "an edge, hair light, fill or key that does not do what its role says", (*checker).role},
		{[]string{CodeStandShort, CodeStandTall, CodeStandHeavy, CodeStandSpigot}, "a stand that is too short, too tall or too weak for its light, or does not take its spigot", (*checker).stand},
		{[]string{CodeSeenBright, CodeSeenNowhere}, "how bright a lamp in the picture looks, and one that is meant to be there and is not", (*checker).meantToBeSeen},
	}
	ofCameras = []check[plan.Camera]{
		{[]string{CodeInFrame, CodeInMargin, CodeFrameClear}, "lights, stands, grip and other cameras in the frame, in the margin about it, and nearest to it", (*checker).inFrame},
	}
)

// runAll runs the checks of a kind on each thing of it.
func runAll[T any](c *checker, checks []check[T], things []T) {
	for i := range things {
		for _, k := range checks {
			k.run(c, &things[i])
		}
	}
}

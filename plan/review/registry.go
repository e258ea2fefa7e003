package review

import (
	"scrimshaw/plan"
	"scrimshaw/plan/review/fit"
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
		{[]string{CodeWalkLeaves}, "a walk that leaves the working stop", (*checker).walk},
	}
	ofLights = []check[plan.Light]{
		{[]string{CodeNoLight}, "a light at no level, or one that reaches no reading", (*checker).reaches},
		{[]string{CodeRoleEffect}, "an edge, hair light, fill or key that does not do what its role says", (*checker).role},
		{[]string{CodeStandShort, CodeStandTall, CodeStandHeavy, CodeStandSpigot}, "a stand that is too short, too tall or too weak for its light, or does not take its spigot", (*checker).stand},
		{[]string{CodeNoCircuit}, "a light on none of the scene's circuits", (*checker).loose},
		{[]string{CodeDimmer}, "a light that cannot be dimmed as it is set, or not by the dimmers of the kit", dimming},
		{[]string{CodeSeenBright, CodeSeenNowhere}, "how bright a lamp in the picture looks, and one that is meant to be there and is not", (*checker).meantToBeSeen},
		{[]string{CodeStandInColour, CodeStandInAngle}, "a light that cannot pass for what it stands for, by its colour or by where it comes from", (*checker).standIn},
	}
	ofCircuits = []check[plan.Circuit]{
		{[]string{CodeOverload, CodeLoadUnknown}, "a circuit that carries more than its breaker and its rule allow, all lights at full", (*checker).load},
		{[]string{CodeCableDrop, CodeCableAcross, CodeNoCable}, "voltage lost in cable, and cable through doors and windows, over walks, tracks, stairs and the way out, and between floors", (*checker).cables},
		{[]string{CodeFeedOver}, "a generator or a battery that has to give more than it can", feed},
		{[]string{CodeRunsOut}, "a battery or a tank that does not last as long as the site says is shot, or as a day of 10 h", lasts},
		{[]string{CodeUneven}, "three phases of which one carries much more than another, and what to move", uneven},
		{[]string{CodeNeutral}, "three phases whose third harmonics overload their neutral", neutral},
		{[]string{CodeLeakage}, "more current down the earth than a residual-current device stands all the time", leakage},
		{[]string{CodeInrush}, "lights that a breaker may not hold as they are switched on", (*checker).inrush},
	}
	ofCameras = []check[plan.Camera]{
		{[]string{CodeClipped, CodeSunk}, "what clips or sinks by the range that a camera states", (*checker).beyond},
		{[]string{CodeInFrame, CodeInMargin, CodeFrameClear}, "lights, stands, grip, rails, other cameras and people out of the picture in the frame, in the margin about it, and nearest to it, all along a track", (*checker).inFrame},
		{[]string{CodeReflected, CodeInGlass}, "the same in mirrors, and the camera itself there; lamps, lit cloth and boards, and people out of the picture, that show in glass", reflected},
		{[]string{CodeFlare}, "lamps that shine onto the lens", flare},
		{[]string{CodeFlicker}, "lamps on mains that pulse by the shutter of the camera", flicker},
		{[]string{CodeLineCrossed, CodeLineTrack, CodeOnLine}, "cameras on both sides of the line of action, in all set-ups, on it, and tracks that cross it", (*checker).lineOfAction},
	}
)

// ofMeters come last.
var ofMeters = []check[plan.Meter]{
	{[]string{CodeSpotReads}, "a spot meter that reads nothing, somebody, a door, cloth, or through glass", (*checker).spotReads},
}

// runAll runs the checks of a kind on each thing of it.
func runAll[T any](c *checker, checks []check[T], things []T) {
	for i := range things {
		for _, k := range checks {
			k.run(c, &things[i])
		}
	}
}

// Checks lists all checks: those that need no light, and then those that do.
func Checks() []fit.About {
	all := fit.Checks()
	all = aboutAll(all, "people", ofPeople)
	all = aboutAll(all, "lights", ofLights)
	all = aboutAll(all, "cameras", ofCameras)
	all = aboutAll(all, "circuits", ofCircuits)
	return aboutAll(all, "meters", ofMeters)
}

// aboutAll adds the checks of one kind of thing.
func aboutAll[T any](all []fit.About, of string, checks []check[T]) []fit.About {
	for _, c := range checks {
		all = append(all, fit.About{Of: of, Codes: c.codes, Words: c.words})
	}
	return all
}

package fit

import "scrimshaw/plan"

// check is one check of a thing of the set-up, with the codes that it reports.
type check[T any] struct {
	codes []string
	words string // what it looks for
	// run is false where what it found makes those after it pointless for this thing.
	run func(r *checker, t *T) bool
}

// The checks of each kind of thing, in the order of their reports.
var (
	ofLights = []check[plan.Light]{
		{[]string{CodeLightInSolid, CodeOverCeiling, CodeBelowFloor}, "a lamp in a solid, over the ceiling or under the floor", (*checker).checkLampFree},
		{[]string{CodeLightInSolid}, "a lamp whose face or body reaches into something", (*checker).lightFree},
		{[]string{CodeAxisMisses}, "an axis that misses the opening its lamp was placed by", (*checker).throughOpening},
		{[]string{CodeNoOpeningReached}, "a lamp outside that lights no opening", (*checker).reaches},
		{[]string{CodeInSolid}, "a stand that goes through something", func(r *checker, l *plan.Light) bool {
			return r.standsFree(l.Name, l.Mount, l.Base, l.Frame.At.Z)
		}},
		{[]string{CodeStandTight}, "a stand whose legs have no room", func(r *checker, l *plan.Light) bool {
			r.legsFree(l.Name, &l.Mount, l.Base, l.Head.Class)
			return true
		}},
	}
	feedOfLights = []check[plan.Light]{
		{[]string{CodeTwoMirrors}, "a lamp before one of two mirrors that face each other", (*checker).onceMirrored},
		{[]string{CodeMains}, "a bulb or a supply that is made for other mains", (*checker).mainsFit},
		{[]string{CodeTooHot}, "a shade or a box that is not made for the heat of its lamp", (*checker).wattsFit},
		{[]string{CodeHeat}, "cloth and glass that a lamp heats too much", (*checker).heatFits},
	}
	// What holds things, and the wind.
	holdOfLights = []check[plan.Light]{
		{[]string{CodeBoomBalance, CodeBoomLoad}, boomWords, func(r *checker, l *plan.Light) bool { return lightHeld(r, l).boom() }},
		{[]string{CodePole}, poleWords, func(r *checker, l *plan.Light) bool { return lightHeld(r, l).pole() }},
		{[]string{CodeLift}, liftWords, func(r *checker, l *plan.Light) bool { return lightHeld(r, l).lift() }},
		{[]string{CodeOverEdge}, edgeWords, func(r *checker, l *plan.Light) bool { return lightHeld(r, l).edge() }},
		{[]string{CodeWind}, windWords, windOnLight},
		{[]string{CodeHotNear}, "a hot head near a wall, a ceiling, furniture, cloth in an opening or somebody", hotNear},
	}
	holdOfGrip = []check[plan.Grip]{
		{[]string{CodeBoomBalance, CodeBoomLoad}, boomWords, func(r *checker, g *plan.Grip) bool { return gripHeld(r, g).boom() }},
		{[]string{CodePole}, poleWords, func(r *checker, g *plan.Grip) bool { return gripHeld(r, g).pole() }},
		{[]string{CodeLift}, liftWords, func(r *checker, g *plan.Grip) bool { return gripHeld(r, g).lift() }},
		{[]string{CodeOverEdge}, edgeWords, func(r *checker, g *plan.Grip) bool { return gripHeld(r, g).edge() }},
		{[]string{CodeWind}, windWords, windOnGrip},
	}
	ofOpenings = []check[plan.Opening]{
		{[]string{CodeEscape}, "a way out that is too narrow, or that somebody does not reach past what stands there or hangs lower than a head", wayOut},
	}
	ofGrip = []check[plan.Grip]{
		{[]string{CodeInSolid, CodeOverCeiling, CodeBelowFloor}, "grip in a solid, over the ceiling or under the floor, or that reaches into something", (*checker).gripFree},
		{[]string{CodeInSolid}, "a stand that goes through something", func(r *checker, g *plan.Grip) bool {
			return r.standsFree(g.Name, g.Mount, g.Base, g.Frame.At.Z)
		}},
		{[]string{CodeStandTight}, "a stand whose legs have no room", func(r *checker, g *plan.Grip) bool {
			r.legsFree(g.Name, &g.Mount, g.Base, "")
			return true
		}},
	}
	ofFurniture = []check[plan.Furniture]{
		{[]string{CodeInSolid}, "furniture that stands in a wall", (*checker).fitsBetweenWalls},
		{[]string{CodeOverCeiling}, "furniture that is too tall for its room", (*checker).checkFurnitureHeight},
	}
	ofPeople = []check[plan.Person]{
		{[]string{CodeInSolid, CodeOutside}, "someone in a solid, or outside every room, where they are or at a mark", (*checker).personFree},
		{[]string{CodeWalkThrough}, "a walk that leads through something", (*checker).walkFree},
		{[]string{CodeWalkTight}, "a walk with something so near beside it that a body comes into it, or between two things that no body passes", besideFree},
	}
	ofCameras = []check[plan.Camera]{
		{[]string{CodeInSolid, CodeOverCeiling, CodeBelowFloor, CodeOutside, CodeCameraBlocked, CodeCameraTurned}, "a camera in a solid, over the ceiling or under the floor, outside every room, with a wall before everybody or everybody behind it", (*checker).cameraFree},
		{[]string{CodeStandTight}, "a camera whose legs have no room as they usually stand", cameraLegsFree},
		{[]string{CodeTrackThrough, CodeOnTrack, CodeWalkTrack, CodeTrackUneven, CodeInSwing}, "a track that leads through something, or whose rolling platform does beyond its ends, with a stand on it, a walk across it or so near by it that a body is in the way of the camera, or a step under it, or in the way of a door or a window that swings", (*checker).trackFree},
		{[]string{CodeLensWide}, "a lens that sees more than any does", (*checker).lensFits},
	}
	ofCues = []check[plan.Cue]{
		{[]string{CodeCueOrder, CodeCueOverlap}, "cues that go before those that are written before them, or are not over when the next one goes", cueInOrder},
		{[]string{CodeCueLacks, CodeCueEmpty}, "a cue of a light that is not there, and one that changes nothing", cueChanges},
		{[]string{CodeCueFade}, "a fade of a light that does not dim so far, or is on no dimmer", cueFades},
		{[]string{CodeCueSlow}, "a cue that a large filament is too slow for", cueFollows},
		{[]string{CodeCueStrike}, "a cue that strikes a discharge lamp", cueStrikes},
	}
	ofMeters = []check[plan.Meter]{
		{[]string{CodeInSolid, CodeOutside}, "a meter where no light can come", (*checker).meterFree},
	}
)

// What the checks of what holds things look for, of lights and grip alike.
const (
	boomWords = "the counterweight of a boom, and an arm or a stand that does not carry it"
	poleWords = "the force of a pole on its walls, and one that is too long or too weak"
	liftWords = "a lift that goes too low for its lamp, or higher than there is room or than any of the kit goes with it"
	edgeWords = "a stand whose feet reach over the edge of what it stands on"
	windWords = "the wind at which what stands outdoors tips and comes down"
)

// runAll runs the checks of a kind on each thing of it.
func runAll[T any](r *checker, checks []check[T], things []T, path func(*T) string) {
	for i := range things {
		leave := r.About(path(&things[i]))
		for _, c := range checks {
			if !c.run(r, &things[i]) {
				break
			}
		}
		leave()
	}
}

// About is what one check looks at, for a list of all.
type About struct {
	Of    string   `json:"of"` // what it is a check of: "lights"
	Codes []string `json:"codes"`
	Words string   `json:"looksFor"`
}

// Checks lists all checks of this package, in the order in which they run.
func Checks() (all []About) {
	all = aboutAll(all, "lights", ofLights)
	all = aboutAll(all, "lights", feedOfLights)
	all = aboutAll(all, "grip", ofGrip)
	all = aboutAll(all, "what holds lights", holdOfLights)
	all = aboutAll(all, "what holds grip", holdOfGrip)
	all = aboutAll(all, "openings", ofOpenings)
	all = aboutAll(all, "furniture", ofFurniture)
	all = aboutAll(all, "people", ofPeople)
	all = aboutAll(all, "cameras", ofCameras)
	all = aboutAll(all, "cues", ofCues)
	all = aboutAll(all, "meters", ofMeters)
	for _, c := range ofClashes {
		all = append(all, About{"equipment", c.codes, c.words})
	}
	return append(all, About{"the sheet", []string{CodePlane}, "a map that cannot be drawn"}, About{"the set-up", []string{CodeAllDark}, "a set-up without a light that is up"})
}

// aboutAll adds the checks of one kind of thing.
func aboutAll[T any](all []About, of string, checks []check[T]) []About {
	for _, c := range checks {
		all = append(all, About{of, c.codes, c.words})
	}
	return all
}

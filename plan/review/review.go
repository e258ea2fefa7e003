package review

import (
	"fmt"
	"math"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// The bounds beyond which a finding is worth a line. They are judgements of the trade (common
// practice), not limits.
const (
	underStops = 1.0  // under the working stop, at the key side
	overStops  = 2.0  // over the working stop, at the key side
	gapMired   = 50.0 // between key and fill sides

	minShare = 1e-3 // of a reading: what a light gives less of is nothing
)

// Check returns what is at risk in a lit set-up, in the order of the scene.
func Check(s *plan.Setup, set *meter.Set) []source.Diagnostic {
	c := &checker{setup: s, readings: set.Readings, set: set, sights: frame.Judge(s), supply: supply.Of(s), told: map[string]float64{}}
	runAll(c, ofPeople, s.People)
	runAll(c, ofLights, s.Lights)
	runAll(c, ofCameras, s.Cameras)
	runAll(c, ofCircuits, s.Circuits)
	runAll(c, ofMeters, s.Meters)
	afterCues(c)
	return c.found
}

type checker struct {
	setup    *plan.Setup
	readings []meter.Reading
	set      *meter.Set
	sights   []frame.Sight
	supply   supply.Supply
	found    []source.Diagnostic
	told     map[string]float64 // how much of what addMost told, the most of each
	stage    *stage             // nil of the set-up as it is written
}

// add tells what is found of a set-up as it is written; what a cue makes of it too is addMost's.
func (c *checker) add(severity source.Severity, code string, at source.Span, path, hint, format string, args ...any) {
	if c.stage != nil {
		return
	}
	c.found = append(c.found, source.Diagnostic{Severity: severity, Code: code, Span: at, Path: path,
		Setup: c.setup.Name, Hint: hint, Message: fmt.Sprintf(format, args...)})
}

func (c *checker) reading(name string) *meter.Reading {
	for i := range c.readings {
		if c.readings[i].Name == name {
			return &c.readings[i]
		}
	}
	return nil
}

// exposure compares a person's key side with the working stop.
func (c *checker) exposure(p *plan.Person) {
	key := c.reading(p.Name + ".key")
	if key == nil || !c.setup.HasLight() || neverSeen(p) {
		return // another warning says that no light is up
	}
	working := unit.FormatStop(c.setup.Exposure.Stop.N)
	if (key.Over == nil || *key.Over < -underStops) && c.lightsNothing() {
		return // another warning names the cause
	}
	if key.Over == nil {
		c.add(source.Warning, CodeKeyUnder, p.Span, "people."+p.Name, "aim a light at the side of the face that the camera sees, or let it stay dark",
			"%sno light reaches the key side of %s", withoutPrefix(key.Uncomputed), p.Name)
		return
	}
	leaves := withoutPrefix(key.Uncomputed)
	switch over := *key.Over; {
	case over < -underStops:
		c.add(source.Warning, CodeKeyUnder, p.Span, "people."+p.Name,
			c.more(key, -over),
			"%sthe key side of %s is %.1f stops under %s", leaves, p.Name, -over, working)
	case over > overStops:
		c.addMost(p.Name, math.Exp2(over), source.Warning, CodeKeyOver, p.Span, "people."+p.Name, "lower the level, add ND, or stop down",
			"%sthe key side of %s is %.1f stops over %s", leaves, p.Name, over, working)
	}
}

// neverSeen says whether somebody is in no picture: how they are lit does not matter.
func neverSeen(p *plan.Person) bool { return p.Seen.Written && !p.Seen.Meant }

// lightsNothing reports whether a light that is up stands where it can light no room.
func (c *checker) lightsNothing() bool {
	return slices.ContainsFunc(c.setup.Lights, func(l plan.Light) bool { return l.Misplaced && l.Level > 0 })
}

// more says what gives a reading so many stops more. Light that comes back from walls does not follow
// the inverse square of a throw.
func (c *checker) more(key *meter.Reading, stops float64) string {
	straight, all := 0.0, 0.0
	given := map[string]float64{}
	for _, s := range key.Shares {
		all += s.Lux
		given[s.Light] += s.Lux
		if s.Path == light.Direct.String() {
			straight += s.Lux
		}
	}
	if straight >= all/2 {
		return fmt.Sprintf("use a light %s stronger, a throw %.2f times as long, or a wider stop", timesMore(stops), math.Exp2(-stops/2))
	}
	var most *plan.Light
	for i := range c.setup.Lights {
		if l := &c.setup.Lights[i]; most == nil || given[l.Name] > given[most.Name] {
			most = l
		}
	}
	if level := most.Level * math.Exp2(stops); level <= 1 {
		return fmt.Sprintf("most of the light there is reflected: set %s to %s, or use a wider stop", most.Name, unit.FormatPercent(math.Ceil(100*level)/100))
	}
	return fmt.Sprintf("most of the light there is reflected: use a larger unit than %s, %s stronger, or a wider stop", most.Name, timesMore(stops))
}

// timesMore words a ratio of light given in stops.
func timesMore(stops float64) string { return fmt.Sprintf("%.1f times", math.Exp2(stops)) }

// colours compares the two sides of a face in mireds, where both have a colour temperature.
func (c *checker) colours(p *plan.Person) {
	key, fill := c.reading(p.Name+".key"), c.reading(p.Name+".fill")
	if neverSeen(p) || key == nil || fill == nil || key.CCT == nil || fill.CCT == nil {
		return
	}
	gap := 1e6/(*fill.CCT) - 1e6/(*key.CCT)
	if math.Abs(gap) < gapMired {
		return
	}
	warmer := "warmer"
	if gap < 0 {
		warmer = "cooler"
	}
	c.add(source.Info, CodeColourGap, p.Span, "people."+p.Name, "",
		"%sthe fill side of %s is %.0f mired %s than the key side (%s against %s)", withoutPrefix(meter.AlteringLight(key, fill)), p.Name, math.Abs(gap), warmer,
		unit.FormatKelvin(*fill.CCT), unit.FormatKelvin(*key.CCT))
}

// reaches warns of a light that gives no reading anything: between walls a trace of every lamp
// comes back from them.
func (c *checker) reaches(l *plan.Light) {
	if l.Misplaced || !c.setup.HasLight() && !c.setup.EverUp(l) {
		return // another warning says so where it was placed
	}
	if !c.setup.EverUp(l) {
		c.add(source.Info, CodeNoLight, l.Span, l.Path, "", "%s is at 0 %%", l.Numbered())
		return
	}
	all := everyReading(c)
	if len(all) == 0 || slices.ContainsFunc(all, func(r *meter.Reading) bool { return givesPart(l, r) }) {
		return
	}
	c.add(source.Warning, CodeNoLight, l.Span, l.Path, "move it, aim it elsewhere, or strike it",
		"%sno light of %s reaches a face or a meter", withoutPrefix(meter.AlteringLight(all...)), l.Numbered())
}

// givesPart says whether a light gives a reading more than a trace of what it shows.
func givesPart(l *plan.Light, r *meter.Reading) bool {
	own, all := 0.0, 0.0
	for _, share := range r.Shares {
		all += share.Lux
		if share.Light == l.Name {
			own += share.Lux
		}
	}
	return own > minShare*all
}

// everyReading is all that is read: at faces, by meters, after cues and along walks.
func everyReading(c *checker) (all []*meter.Reading) {
	for i := range c.readings {
		all = append(all, &c.readings[i])
	}
	for i := range c.set.Stages {
		for k := range c.set.Stages[i].Set.Readings {
			all = append(all, &c.set.Stages[i].Set.Readings[k])
		}
	}
	for i := range c.set.Walks {
		for k := range c.set.Walks[i].Points {
			p := &c.set.Walks[i].Points[k]
			all = append(all, &p.Left, &p.Right)
			for n := range p.Domes {
				all = append(all, &p.Domes[n])
			}
		}
	}
	return all
}

// standHeadDrop is how far below the top of its stand a lamp may hang, m (common practice).
const standHeadDrop = 0.15

// stand checks reach and load where a light stands on a stand of the catalogue.
func (c *checker) stand(l *plan.Light) {
	stand := l.Mount.Stand
	if stand == nil || l.Mount.Kind != term.Stand {
		return
	}
	rise := l.Frame.At.Z - l.Base
	if rise > stand.Highest {
		c.add(source.Warning, CodeStandShort, l.Span, l.Path, "use a taller stand or a lift, or lower the lamp",
			"%s is %s above what it stands on, and its stand does not go so high (%s, to %s)", l.Numbered(),
			unit.FormatLength(rise, c.setup.Feet), stand.Name, unit.FormatLength(stand.Highest, c.setup.Feet))
	}
	if rise < stand.Lowest-standHeadDrop {
		c.add(source.Warning, CodeStandTall, l.Span, l.Path, "use a lower stand or mount: floor, or raise the lamp",
			"%s is %s above what it stands on, and its stand does not go so low (%s, from %s)", l.Numbered(),
			unit.FormatLength(rise, c.setup.Feet), stand.Name, unit.FormatLength(stand.Lowest, c.setup.Feet))
	}
	if !stand.Takes(l.Head.Spigot) {
		c.add(source.Warning, CodeStandSpigot, l.Span, l.Path, "use a stand that takes "+l.Head.Spigot+", or an adapter that carries it",
			"%s sits on a spigot of %s, and its stand takes %s (%s)", l.Numbered(), l.Head.Spigot, stand.Spigot, stand.Name)
	}
	if l.Head.Mass > stand.Load {
		c.add(source.Warning, CodeStandHeavy, l.Span, l.Path, "use a stronger stand",
			"%s weighs %s, more than its stand carries (%s, %s)", l.Numbered(), unit.FormatMass(l.Head.Mass), stand.Name, unit.FormatMass(stand.Load))
	}
}

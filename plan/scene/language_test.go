package scene

import (
	"strings"
	"testing"
)

// The keys of the language, by the map that they stand in.
var languageKeys = map[string]string{
	"scene": `scrimshaw title units sheet site exposure materials rooms openings furniture people cameras lights grip meters setups
		cues circuits line rates prices kit wants haze measured`,
	"sheet":              `production location revision for date by paper scale levels field plane`,
	"site":               `ground north latitude longitude zone when until sky`,
	"exposure":           `iso fps shutter stop white meter constant`,
	"material":           `reflectance colour`,
	"room":               `at size corners outline height base wall walls floor ceiling`,
	"opening":            `window door gap along width sill head panes hinge swing ajar glass escape dressing gels outside`,
	"dressing":           `cloth drawn blind tilt`,
	"piece of furniture": `box cylinder table sofa stairs deck seat at turn lift material mirror`,
	"person":             `at faces height pose eyes skin wears marks walk`,
	"camera":             `at height looks lens sensor aspect exposure track squeeze room filter`,
	"light": `unit output modifier at height aim roll colour tint gels level mount stand role note count tag circuit
		focus barndoors scrims diffusion cuts breakup bulb shade plays seen dimmer`,
	"mount":          `stand boom base clamp pole wall lift`,
	"piece of grip":  `flag card frame net silver at height faces tilt surface cloth stand note`,
	"meter":          `flat dome spot facing from`,
	"set-up":         `camera after change stays reverse cues`,
	"reverse":        `of swap`,
	"cue":            `at over lights`,
	"circuit":        `volts breaker at hertz already rule kind from phases phase residual plug item power kva energy usable tank burn`,
	"place":          `from shift by toward turn distance wall along in opening out top`,
	"aim":            `from shift by toward turn distance wall along in opening out top height ceiling pan tilt`,
	"sloped height":  `low high toward`,
	"light of a cue": `level colour`,
}

func TestTheTablesHoldTheLanguage(t *testing.T) {
	held := map[string]map[string]probe{}
	for _, table := range tables() {
		own, ok := table.(interface{ probes() []probe })
		if !ok {
			continue
		}
		for _, p := range own.probes() {
			if held[p.table] == nil {
				held[p.table] = map[string]probe{}
			}
			held[p.table][p.key] = p
		}
	}
	for table, keys := range languageKeys {
		for key := range strings.FieldsSeq(keys) {
			if _, ok := held[table][key]; !ok {
				t.Errorf("the table of a %s has no %s", table, key)
			}
		}
	}
}

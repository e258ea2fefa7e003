package light

import (
	"slices"

	"scrimshaw/plan/light/radiosity"
)

// Quality says how closely light is followed: how finely surfaces see each other, and on lattices how many points of a
// luminous opening are traced where it is seen in part. Receptors see lamps exactly at every quality. The errors are
// mean and 95th percentile: of fields, on floors above 5 lx, of the direct light; above 1 lx of the reflected light, of
// its own. Of receptors, of all light, half of those in the recorded random scenes and 95 of 100; one in some hundreds is
// farther off, where a lamp all but touches what it lights (plan/study, TestTruthLimits). What is said of fields is held to by
// TestErrorOfQualities, with room to spare: found in the reference scene are 0.09 % and 0.41 % at normal quality, 1.15 % and 4.8 % of a draft, 0.05 %
// and 0.19 % fine; with panes in the windows and measured light before soft faces 0.15 % and 0.51 %, 2.1 % and 8.0 %, 0.08 % and 0.30 %: there
// a draft is promised to 2.2 % and 8.5 %, the others as else. Fields of a lamp in a shade are up to 3 % off where its rim
// cuts off what they see of the inside.
type Quality uint8

// The qualities.
const (
	Normal Quality = iota // fields: 600 points of a face, 64 of a tube, four together, traced where up to 35 % are seen, 0.25 %, 1.0 %; reflected 1.5 %, 5 %; receptors 0.2 %, 1 %
	Draft                 // fields: 68 and 16, four together, none traced, 1.3 %, 5.5 %; reflected 5 %, 15 %; receptors 1 %, 5 %
	Fine                  // fields: 1220 and 256, two together, traced where up to 60 % are seen, 0.15 %, 0.5 %; reflected 1 %, 3 %; receptors 0.1 %, 0.5 %
)

// qualities are the names of the qualities.
var qualities = [...]string{Normal: "normal", Draft: "draft", Fine: "fine"}

// String returns the name: "draft", "normal", "fine".
func (q Quality) String() string { return qualities[q] }

// QualityOf returns the quality of a name; ok is false where there is none.
func QualityOf(name string) (q Quality, ok bool) {
	i := slices.Index(qualities[:], name)
	return Quality(max(i, 0)), i >= 0
}

// points returns how many points of a face and of a tube are traced, and how many of them are taken
// together. They were chosen by trial: where twice a Fibonacci number is near, the lattice of half of it is at its
// most even.
func (q Quality) points() (face, tube, bundle int) {
	switch q {
	case Draft:
		return 68, 16, 4
	case Fine:
		return 1220, 256, 2
	}
	return 600, 64, 4
}

// little is the share of an opening that is traced where less of it is seen: a sum over its points would be that of a few.
func (q Quality) little() float64 { return [...]float64{Normal: 0.35, Draft: 0, Fine: 0.6}[q] }

// errorModel is what a stated error is made of, beside what the rays themselves tell.
type errorModel struct {
	direct    float64 // share of the direct light: round openings are polygons, measured light is interpolated
	reflected float64 // share of the reflected light: patches are flat in brightness
	rays      float64 // times what the spread of the rays tells
}

// errorModel gives the parts of the error of a quality. They were chosen so that the truth lies within two of the stated
// error in 95 of 100 readings of random scenes (plan/study, TestStatedErrorsAreHonest).
func (q Quality) errorModel() errorModel {
	switch q {
	case Draft:
		return errorModel{5e-4, 0.01, 1}
	case Fine:
		return errorModel{2e-4, 0.002, 1}
	}
	return errorModel{2e-4, 0.003, 1}
}

// allowedRayError is the share of a receptor's light that rays may leave it off by before more are sent.
func (q Quality) allowedRayError() float64 {
	return [...]float64{Normal: 0.01, Draft: 0.05, Fine: 0.005}[q]
}

// radiosity is how finely reflected light is followed.
func (q Quality) radiosity() radiosity.Quality {
	switch q {
	case Draft:
		return radiosity.Quality{Patch: 0.40, Links: 32, More: 4096, Point: 2048, Near: 0.5, Cell: 16, HotSamples: 2, Edge: 3e-3, Matters: 0.02, Noise: 3e-3, Lattice: 32, Settled: 1e-4}
	case Fine:
		return radiosity.Quality{Patch: 0.25, Links: 256, More: 1 << 17, Point: 32768, Near: 0.7, Cell: 512, HotSamples: 16, Edge: 3e-5, Matters: 1e-3, Noise: 1e-4, Lattice: 512, Spare: 4}
	}
	return radiosity.Quality{Patch: 0.27, Links: 64, More: 1 << 14, Point: 8192, Near: 0.75, Cell: 64, HotSamples: 4, Edge: 5e-4, Matters: 4e-3, Noise: 1e-3, Lattice: 64, AllRound: 96, Spare: 4, Settled: 1e-4}
}

package section

import (
	"slices"

	"scrimshaw/render/sheet/layout"
)

// Report is what a sheet says of one set-up, in its units.
type Report struct {
	In *Input
	Units
}

// Sections are those of the collar of a plan, or of a wall, in the order of reading.
func (c Report) Sections() []*Section {
	in := c.In
	if in.Elevation != nil {
		return barred(in, c.LevelKey(), revised(in, c.Units), c.meters(), watch(in), uncomputed(in.Setup), legend(), c.assumed(), unchecked(in))
	}
	return barred(in, slices.Concat([]*Section{c.LevelKey(), c.faces(), revised(in, c.Units), lesson(in)}, walks(in, c.Units), []*Section{c.lights()}, cues(in, c.Units), []*Section{
		played(in), circuitsSince(in, c.Units), c.changesSince(), watch(in), uncomputed(in.Setup), cautions(in), legend(),
		c.grip(), c.cameras(), c.meters(), c.insetMap(), c.assumed(), metering(in), unchecked(in),
	})...)
}

// legend explains the signs.
func legend() *Section { return &Section{Title: "Legend", Rank: layout.Needed, Figure: SignFigure} }

// StripSections are what stands below the plan, or below a wall, on a strip for a phone: what only a reader at a
// desk wants stays on the sheets.
func (c Report) StripSections() []*Section {
	in := c.In
	if _, _, ok := in.Wall(); ok {
		return barred(in, c.LevelKey(), revised(in, c.Units), c.meters(), watch(in), uncomputed(in.Setup))
	}
	return barred(in, slices.Concat([]*Section{c.LevelKey(), c.faces(), revised(in, c.Units), phoneLesson(in)}, walks(in, c.Units),
		[]*Section{c.lights()}, cues(in, c.Units), []*Section{played(in), circuitsSince(in, c.Units), c.changesSince(), watch(in), uncomputed(in.Setup), c.grip(), c.cameras(), c.meters(), cautions(in)})...)
}

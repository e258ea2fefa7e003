package sheet

// Report is what a sheet says of one set-up, in its units.
type Report struct {
	in *Input
	Units
}

// sections are those of the collar of a plan, or of a wall, in the order of reading.
func (c Report) sections() []*section {
	in := c.in
	if in.Elevation != nil {
		return []*section{c.levelKey(), c.meters(), watch(in), uncomputed(in.Setup), c.assumed(), unchecked(in)}
	}
	return []*section{
		c.levelKey(), c.faces(), c.lights(), watch(in), uncomputed(in.Setup), cautions(in), {title: "Legend", rank: wanted, figure: signFigure},
		c.grip(), c.cameras(), c.meters(), c.insetMap(), c.assumed(), unchecked(in),
	}
}

// stripSections are what stands below the plan, or below a wall, on a strip for a phone: what only a reader at a
// desk wants stays on the sheets.
func (c Report) stripSections() []*section {
	in := c.in
	if _, _, ok := in.wall(); ok {
		return []*section{c.levelKey(), c.meters(), watch(in), uncomputed(in.Setup)}
	}
	return []*section{c.levelKey(), c.faces(), c.lights(), watch(in), uncomputed(in.Setup), c.grip(), c.cameras(), c.meters(), cautions(in)}
}

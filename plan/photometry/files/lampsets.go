package files

// The six lines of a lamp set stand set by set, or all numbers of lamps first, then all kinds, and
// so on: programs write both, and the text of the format can be read both ways.

// A file with several sets is read in the order in which numbers stand where numbers belong; where both
// would do, set by set.

// sets reads the lamp sets.
func (r *ldtReader) sets() bool {
	n := r.setCount
	first := r.next
	bySet := func(set, field int) int { return first + set*setLines + field }
	byField := func(set, field int) int { return first + field*n + set }
	at := bySet
	if n > 1 && !r.fits(bySet) && r.fits(byField) {
		at = byField
		_, p := r.line(first)
		r.noteQuirk(p, CodeQuirk, "", "the lamp sets stand field by field, not set by set")
	}
	for i := range n {
		set := LampSet{}
		if !r.set(&set, func(field int) int { return at(i, field) }) {
			return false
		}
		r.out.Sets = append(r.out.Sets, set)
	}
	r.next = first + n*setLines
	return r.judgeSets(bySet(0, 2))
}

// fits reports whether an order has numbers of lamps and fluxes where they belong.
func (r *ldtReader) fits(at func(set, field int) int) bool {
	quiet := &ldtReader{text: &text{file: r.file, lines: r.lines, notUTF8: r.notUTF8}}
	for i := range r.setCount {
		s, p := r.line(at(i, 0))
		lamps, ok := quiet.decimal(s, p)
		if _, count := whole(lamps, 1<<20); !ok || !count {
			return false
		}
		s, p = r.line(at(i, 2))
		if _, ok = quiet.decimal(s, p); !ok {
			return false
		}
		s, p = r.line(at(i, 5))
		if _, ok = quiet.decimal(leading(s), p); !ok && s != "" {
			return false
		}
	}
	return true
}

// set reads one set, whose fields stand in the lines that line tells.
func (r *ldtReader) set(set *LampSet, line func(field int) int) bool {
	r.next = line(0)
	lamps, p, ok := r.requiredNumber("the number of lamps")
	if !ok {
		return false
	}
	if set.Lamps, ok = whole(lamps, 1<<20); !ok {
		r.fault(p, CodeValue, shiftedLineHint, "the number of lamps is a whole number, not %s", quoted(r.words(p)))
		return false
	}
	set.Kind, _ = r.line(line(1))
	set.Colour, _ = r.line(line(3))
	set.Rendering, _ = r.line(line(4))
	r.next = line(2)
	if !r.optionalNumber(&set.Lumens, fluxes, "the flux of the lamps") {
		return false
	}
	r.next = line(5)
	return r.optionalNumber(&set.Watts, powers, "the power of the lamps")
}

// judgeSets refuses sets without light, on which cd/klm would say nothing.
func (r *ldtReader) judgeSets(fluxLine int) bool {
	first := r.out.Sets[0]
	_, p := r.line(fluxLine)
	if !(first.Lumens > 0) {
		r.fault(p, CodeValue, "write the flux of all lamps of the set, lm", "the flux of the lamps is %g, and intensities in cd/klm say nothing without it", first.Lumens)
		return false
	}
	if first.Lamps == 0 {
		r.noteQuirk(p, CodeValue, "", "the number of lamps is 0")
	}
	if len(r.out.Sets) > 1 {
		r.noteQuirk(p, CodeUnused, "", "the file has %d sets of lamps; the light is that of the first", len(r.out.Sets))
	}
	return true
}

package light

// The work of a basis in parts of what one light costs on one lattice, about: the links of the
// surfaces, and the light that comes back, for each lattice and for all receptors.
const (
	linksWork = 4
	solveWork = 2
)

// progress counts work and tells how much is done.
type progress struct {
	report      func(done float64)
	done, total float64
}

func (w *World) progress(lights int, to *Targets) *progress {
	p := &progress{report: w.report}
	p.total = float64(lights*len(to.Lattices)) + 1
	if !w.direct {
		p.total += linksWork + solveWork + float64(len(to.Lattices))
	}
	return p
}

// step notes that some work is done.
func (p *progress) step(work float64) {
	p.done += work
	if p.report != nil {
		p.report(min(1, p.done/p.total))
	}
}

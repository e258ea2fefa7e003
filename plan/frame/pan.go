package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/shot"
)

// panStep is what a pan is rounded up to, degrees.
const panStep = 0.5

// leastPan is the least pan that takes what is seen of a thing out of all pictures of a camera and the margin: within half the angle of
// view, for beyond that the picture is another; nil where none does.
func (e *eye) leastPan(t *thing) (best *Pan) {
	round := func(v float64) float64 { return math.Ceil(v/panStep-1e-6) * panStep }
	for _, side := range []float64{-1, 1} {
		most := e.camera.HAOV / 2
		least, rounded, ok := e.clears(most, round,
			func(p *post, change float64) bool { return e.rankPanned(t, p, side*change, showing) > 0 },
			func(p *post, change float64) float64 { return e.rankPanned(t, p, side*change, rankOf) })
		if !ok || rounded > most {
			continue
		}
		pan := &Pan{Least: least, Degrees: side * rounded}
		pan.Brings, pan.Loses = e.brings(t, pan.Degrees), e.loses(pan.Degrees)
		if best == nil || pan.Clean() && !best.Clean() || pan.Clean() == best.Clean() && least < best.Least {
			best = pan
		}
	}
	return best
}

// showing is more than nought where something of what is seen shows in a picture.
func showing(seen []seenPart, p picture) float64 {
	if showsOf(seen, p) {
		return leastShare
	}
	return math.Inf(-1)
}

// rankPanned is how a thing ranks in the picture from a place, with its margin, once the camera is panned by degrees.
func (e *eye) rankPanned(t *thing, p *post, degrees float64, ranked func([]seenPart, picture) float64) float64 {
	rank := math.Inf(-1)
	panned := p.grown(e.camera.Room).panned(degrees)
	for _, seen := range e.seenFrom(t, p) {
		rank = max(rank, ranked(seen, panned))
	}
	return rank
}

// seenFrom is what is seen of what a camera should not see of a thing, stance by stance, whichever way it looks.
func (e *eye) seenFrom(t *thing, p *post) [][]seenPart {
	all, known := p.seen[t]
	if !known {
		for _, pieces := range t.stances {
			all = append(all, e.seenOf(t.unmeant(e.camera.Name, pieces), p.At))
		}
		p.seen[t] = all
	}
	return all
}

// brings are the other things that a pan brings into the margin about the frame, or into the frame from there.
func (e *eye) brings(but *thing, degrees float64) (all []Brought) {
	for i := range e.things {
		t, s := &e.things[i], &e.sights[i]
		if t == but || s.Shows() {
			continue
		}
		room := e.camera.Room
		if s.Near(e.camera) {
			room = 0
		}
		shows := func(p *post) bool {
			panned := p.grown(room).panned(degrees)
			if !panned.mayShow(t.middle, t.radius) {
				return false
			}
			for _, seen := range e.seenFrom(t, p) {
				if showsOf(seen, panned) {
					return true
				}
			}
			return false
		}
		if e.anywhere(shows) {
			all = append(all, Brought{t.kind, t.name})
		}
	}
	return all
}

// loses is whom the camera is focused on and would have out of the frame after a pan, from somewhere on the track.
func (e *eye) loses(degrees float64) (who string) {
	e.anywhere(func(p *post) bool {
		subject := shot.SubjectOf(e.setup, p.camera)
		if subject == nil {
			return false
		}
		panned := *p.camera
		turned := p.panned(degrees)
		panned.Frame = plan.Frame{At: p.At, Axis: r3.Unit(turned.Axis), Right: r3.Unit(turned.Right)}
		if !shot.Frames(&panned, subject) {
			who = subject.Name
		}
		return who != ""
	})
	return who
}

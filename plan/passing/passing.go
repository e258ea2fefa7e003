// Package passing says how lights pass for what they stand for: by their colour, their direction and their size, as a face sees both.
package passing

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/unit"
)

// Lit is a set-up with its light, as far as it is read.
type Lit struct {
	Setup    *plan.Setup
	BVH      *solid.BVH // of its set
	Basis    *light.Basis
	Levels   light.Levels
	Requests []meter.Request // its receptors are the first points of the basis
	Readings *meter.Set
}

// bounceShare is how much of what a light gives to a face comes straight, at least, where it is judged by that: else by what comes off
// surfaces.
const bounceShare = 0.5

// tellingShare is how much of the light on a face a light gives at least that is judged there by what it passes for: less is not seen
// beside the rest (common practice). Off a surface that it is not aimed at it passes for light of the room, and for no lamp.
const tellingShare = 0.05

// StandIns say how the lights that pass for something do so at every face to which they give enough to tell, or else at the one to which
// they give the most.
func (s *Lit) StandIns() (all []meter.StandIn) {
	for i := range s.Setup.Lights {
		if l := &s.Setup.Lights[i]; l.StandsFor != nil && l.Level > 0 {
			all = append(all, s.standIn(l))
		}
	}
	return all
}

func (s *Lit) standIn(l *plan.Light) meter.StandIn {
	out := meter.StandIn{Light: l.Name, Numbered: l.Numbered(), For: s.playedBy(l.StandsFor)}
	var faint []meter.Passing
	dark := true // nothing comes to a face of what it passes for
	posts := s.Setup.Posts()
	for i := range posts {
		p := passer{lit: s, light: l, post: &posts[i]}
		if p.sides = s.sidesOf(posts[i].Name); len(p.sides) == 0 {
			continue
		}
		dark = dark && !(p.wanted().Y() > 0)
		if p.tells() {
			out.Faces = append(out.Faces, p.passing())
		} else {
			faint = append(faint, p.passing())
		}
	}
	if out.Faces == nil && faint != nil {
		rest := meter.StandIn{Faces: faint}
		out.Faces = []meter.Passing{*rest.Main()}
	}
	if l.StandsFor.Opening != "" && l.StandsFor.White == nil && out.Faces != nil && dark {
		out.Unknown = "no other light comes in by " + l.StandsFor.Opening + ": write its colour, stands-for: {opening: " + l.StandsFor.Opening + ", colour: 5600 K}"
	}
	return out
}

// playedBy says what a light passes for, as the crew reads it.
func (s *Lit) playedBy(to *plan.StandIn) string {
	switch {
	case to.Light != "":
		return s.Setup.Numbered(to.Light)
	case to.Opening != "":
		return to.Opening
	}
	return unit.FormatKelvin(to.White.OnPlanck().Kelvin)
}

// sidesOf are the places of the two sides of a face among the receptors.
func (s *Lit) sidesOf(person string) (sides []int) {
	for i := range s.Requests {
		if n := s.Requests[i].Name; n == person+".left" || n == person+".right" {
			sides = append(sides, i)
		}
	}
	return sides
}

// passer looks at how one light passes for something at one face.
type passer struct {
	lit   *Lit
	light *plan.Light
	post  *plan.Person
	sides []int // its receptors
}

// tells says whether enough of the light comes to the face to tell there: straight, or off what it is sent to for that.
func (p *passer) tells() bool {
	every, all := p.given(func(t *light.Term) bool { return t.Light == p.light.Name })
	if p.lit.Setup.AimsAtThing(p.light) {
		return every.Y() > 0 && every.Y() >= tellingShare*all
	}
	straight := p.straight(p.light.Name).Y()
	return straight > 0 && straight >= tellingShare*all
}

func (p *passer) passing() meter.Passing {
	out := meter.Passing{Person: p.post.Name}
	if own, all := p.given(func(t *light.Term) bool { return t.Light == p.light.Name }); all > 0 {
		out.Share = own.Y() / all
	}
	factors := p.factors()
	is, wanted := factors.Times(p.light.RelativeOutput), p.wanted()
	if gap, ok := gapOf(is, wanted); ok {
		out.Gap, out.Whites = &gap, [2]colour.White{colour.WhiteOf(colour.XY(is)), colour.WhiteOf(colour.XY(wanted))}
		c := curing{passer: p, gap: gap, factors: factors, wanted: wanted}
		out.Gels, out.Setting = c.gels(), c.setting()
	}
	out.Way = p.way()
	if left, right := p.lit.Readings.Named(p.post.Name+".left"), p.lit.Readings.Named(p.post.Name+".right"); left != nil && right != nil {
		out.Uncomputed = meter.AlteringLight(left, right)
	}
	return out
}

// gapOf is the gap between two lights; not ok where one is dark or has no colour temperature.
func gapOf(is, wanted colour.RGB) (colour.Gap, bool) {
	if !(is.Y() > 0) || !(wanted.Y() > 0) {
		return colour.Gap{}, false
	}
	return colour.GapBetween(colour.XY(is), colour.XY(wanted))
}

// given is what some terms give to both sides of the face, and the light of all of them there, lx.
func (p *passer) given(of func(*light.Term) bool) (sum colour.RGB, all float64) {
	b := p.lit.Basis
	for _, i := range p.sides {
		total, shares := b.Point(i, p.lit.Levels)
		all += total.Y()
		for t := range shares {
			if of(&b.Terms[t]) {
				sum = sum.Add(shares[t])
			}
		}
	}
	return sum, all
}

// factors are what the way to the face makes of the light as it leaves the lamp, channel by channel: what comes straight, or where
// most comes off surfaces all of it. Where nothing comes it counts as it leaves.
func (p *passer) factors() colour.RGB {
	came := p.arriving(p.light.Name)
	out := p.light.RelativeOutput
	if !(came.Y() > 0) {
		return colour.RGB{1, 1, 1}
	}
	for c := range came {
		if came[c] /= out[c]; !(out[c] > 0) {
			came[c] = 1 // the light has nothing there to change
		}
	}
	return came
}

// arriving is the light of a lamp as it comes to the face.
func (p *passer) arriving(lamp string) colour.RGB {
	straight := p.straight(lamp)
	every, _ := p.given(func(t *light.Term) bool { return t.Light == lamp })
	if straight.Y() >= bounceShare*every.Y() {
		return straight
	}
	return every
}

// straight is what comes of a lamp to the face that no wall or piece of furniture sends back.
func (p *passer) straight(lamp string) colour.RGB {
	sum, _ := p.given(func(t *light.Term) bool { return t.Light == lamp && t.Path != light.Reflected })
	return sum
}

// wanted is the light that the lamp passes for: as it comes straight to the face, or else as it leaves.
func (p *passer) wanted() colour.RGB {
	to := p.light.StandsFor
	switch {
	case to.White != nil:
		return to.White.RGB()
	case to.Opening != "":
		return p.comingIn()
	}
	if straight := p.straight(to.Light); straight.Y() > 0 {
		return straight
	}
	return p.lit.Setup.LightNamed(to.Light).RelativeOutput
}

// comingIn is the light of all lamps but the one that passes for it that comes to the face's side of an opening and reaches what is read there,
// straight or by its curtains.
func (p *passer) comingIn() (sum colour.RGB) {
	o := p.lit.Setup.OpeningNamed(p.light.StandsFor.Opening)
	if o == nil {
		return sum
	}
	side := outside(o, p.post.Face.At)
	for i := range p.lit.Requests {
		at := p.lit.Requests[i].Receptor.At
		if outside(o, at) != side {
			continue
		}
		_, shares := p.lit.Basis.Point(i, p.lit.Levels)
		for t := range shares {
			if term := &p.lit.Basis.Terms[t]; term.Light != p.light.Name && p.lit.comesBy(o, term, at) {
				sum = sum.Add(shares[t])
			}
		}
	}
	return sum
}

// comesBy says whether light comes by an opening from its other side: through its panes, off its curtains, or straight through the hole.
func (s *Lit) comesBy(o *plan.Opening, t *light.Term, to r3.Vec) bool {
	l := s.Setup.LightNamed(t.Light)
	if t.Path == light.Reflected || l == nil || outside(o, l.Frame.At) == outside(o, to) {
		return false
	}
	return hangsIn(o, append([]solid.ID{t.From}, t.Via...)) || t.Path == light.Direct && crosses(o, l.Frame.At, to)
}

// hangsIn says whether one of some solids hangs in an opening.
func hangsIn(o *plan.Opening, some []solid.ID) bool {
	hung := o.IDs
	for i := range o.Dressing {
		hung = append(hung[:len(hung):len(hung)], o.Dressing[i].IDs...)
	}
	for _, id := range some {
		for _, h := range hung {
			if id == h && id != 0 {
				return true
			}
		}
	}
	return false
}

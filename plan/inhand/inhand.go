// Package inhand says what lights have in hand: how far they go up and down, the smallest unit that would do in their place, and how near
// a soft one can come.
package inhand

import (
	"context"
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/solid"
)

// Lit is a set-up with its light, as far as it is read.
type Lit struct {
	Setup    *plan.Setup
	Levels   light.Levels
	Requests []meter.Request
	Readings *meter.Set
}

// Of says what the lights that are up have in hand, in the order of the scene. It stops with the context's error when that is
// cancelled.
func (s *Lit) Of(ctx context.Context) (all []meter.InHand, err error) {
	empty, err := light.Build(ctx, &solid.Set{}, light.Options{Direct: true})
	if err != nil {
		return nil, err
	}
	for i := range s.Setup.Lights {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		l := &s.Setup.Lights[i]
		if !(l.RelativeOutput.Y() > 0) {
			continue
		}
		near, err := s.nearer(ctx, l, empty)
		if err != nil {
			return nil, err
		}
		one := meter.InHand{Light: l.Name, Numbered: l.Numbered(), Count: l.Count, Wants: s.wants(l), Nearer: near}
		one.Up, one.Down = l.Head.StopsLeft(l.Level)
		one.Unit, one.Smallest, one.OffColour = s.smallest(l)
		one.Stated = l.Choice.Unit == ""
		for k := range one.Wants {
			if w := &one.Wants[k]; !w.Alone && one.Short(w) > 0 {
				w.Enough = s.enough(l, w.More)
			}
		}
		all = append(all, one)
	}
	return all, nil
}

// minShare is the share of a reading that a light gives at least if anything is wanted of it: nobody raises a trace.
const minShare = 0.01

// wants are what the scene wants of a key, by person: that the key side comes to the working stop.
func (s *Lit) wants(l *plan.Light) (all []meter.Want) {
	for i := range s.Setup.People {
		person := s.Setup.People[i].Name
		key := s.Readings.Named(person + ".key")
		if !l.IsKeyOf(person) || key == nil || key.Lux == nil || key.Over == nil {
			continue
		}
		own := 0.0
		for k := range key.Shares {
			if key.Shares[k].Light == l.Name {
				own += key.Shares[k].Lux
			}
		}
		if own < minShare**key.Lux {
			continue
		}
		w := meter.Want{Person: person, Uncomputed: key.Uncomputed}
		missing := *key.Lux*math.Exp2(-*key.Over) - (*key.Lux - own)
		if w.Alone = missing <= 0; !w.Alone {
			w.More = math.Log2(missing / own)
		}
		all = append(all, w)
	}
	return all
}

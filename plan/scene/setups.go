package scene

import (
	"strings"

	"scrimshaw/plan/source"
)

// strike in place of a thing removes it from a set-up.
const strike = "strike"

// fixedKeys are the keys that no change may alter.
var fixedKeys = []string{"scrimshaw", "units", "kit", "setups"}

// mergeSetups lays the set-ups out, each after the one it starts from.
func (d *Document) mergeSetups(log *source.Log) {
	s := d.base.scene
	for i := range s.Setups {
		d.Setups = append(d.Setups, s.Setups[i].Name)
	}
	for i := range s.Setups {
		d.mergeSetup(&s.Setups[i], nil, log)
	}
}

// mergeSetup lays out a set-up, after those it starts from. waiting are the set-ups that wait for
// it; one that waits for itself has no start. It returns nil after a fault.
func (d *Document) mergeSetup(s *Setup, waiting []*Setup, log *source.Log) *layer {
	if l, done := d.layers[s.Name]; done {
		return l
	}
	d.layers[s.Name] = nil // until it is known better: each fault is told once
	after := d.base
	if s.After.Name != "" {
		before := d.base.scene.setup(s.After.Name)
		switch {
		case before == nil:
			d.unknownAfter(s, log)
			return nil
		}
		after = d.mergeSetup(before, append(waiting, s), log)
		if after == nil {
			return nil
		}
	}
	_ = strings.Join
	return nil
}

func (d *Document) unknownAfter(s *Setup, log *source.Log) {}

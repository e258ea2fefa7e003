package cue

import (
	"maps"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/meter"
)

// Played says what the lights do that change by themselves, in the first state in which each is up, in the order of the lights.
func (s *Lit) Played() (all []meter.Played) {
	for i := range s.Setup.Lights {
		l := &s.Setup.Lights[i]
		if l.Play == nil {
			continue
		}
		for cues := 0; cues <= len(s.Setup.Cues); cues++ {
			if setting := s.Setup.SettingAfter(l, cues); setting.Level > 0 {
				all = append(all, s.played(l, setting, cues))
				break
			}
		}
	}
	return all
}

// played is what a light does that plays, at a setting that it has after so many cues.
func (s *Lit) played(l *plan.Light, setting plan.Setting, cues int) meter.Played {
	p := meter.Played{Light: l.Name, Numbered: l.Numbered(), Play: l.Play}
	if cues > 0 {
		p.Cue = s.Setup.Cues[cues-1].Name
	}
	p.Low, p.High = l.Play.Range(l.Head.Levels, setting.Level)
	levels := After(s.Setup, cues).Levels(s.Setup, s.Levels)
	at := func(output colour.RGB) []meter.Reading {
		own := maps.Clone(levels)
		own[l.Name] = output
		return meter.ReadPoints(s.Setup, s.Requests, s.Basis, own).Readings
	}
	output := func(level float64) colour.RGB { return l.OutputAt(plan.Setting{Level: level, White: setting.White}) }
	low, mean, high := at(output(p.Low)), at(meanOf(output, p.Low, p.High)), at(output(p.High))
	for i := range low {
		if meter.CueLists(&low[i]) {
			p.Readings = append(p.Readings, meter.PlayedReading{Low: low[i], Mean: mean[i], High: high[i]})
		}
	}
	return p
}

// meanOf is the mean of the light at all levels between two, by the rule of Simpson.
func meanOf(output func(level float64) colour.RGB, low, high float64) colour.RGB {
	const pieces = 64 // even
	var sum colour.RGB
	for i := 0; i <= pieces; i++ {
		weight := 2.0 + 2*float64(i%2)
		if i == 0 || i == pieces {
			weight = 1
		}
		sum = sum.Add(output(low + (high-low)*float64(i)/pieces).Scale(weight / (3 * pieces)))
	}
	return sum
}

// Read puts what cues and plays do into the readings.
func (s *Lit) Read(set *meter.Set) { set.Cues, set.Played = s.Of(), s.Played() }

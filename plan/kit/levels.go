package kit

import (
	"fmt"
	"math"

	"scrimshaw/plan/unit"
)

// levelSlip is how far a level may lie off one that the unit takes.
const levelSlip = 1e-9

// nearest are the levels that a unit takes next to one that it is asked for, lower first; both are the same at an end.
func (l Levels) nearest(level float64) (low, high float64) {
	if level <= l.Least+levelSlip {
		return l.Least, l.Least
	}
	if l.Step == 0 {
		return level, level
	}
	n := math.Floor((1-level)/l.Step + levelSlip) // steps down from full
	low = 1 - (n+1)*l.Step
	if off := 1 - n*l.Step - level; math.Abs(off) <= levelSlip {
		return level, level
	}
	return math.Max(low, l.Least), 1 - n*l.Step
}

// Held is the level that a unit has where its control asks for one: none below its least, and between its steps the nearest.
func (l Levels) Held(level float64) float64 {
	if level < l.Least-levelSlip {
		return 0
	}
	low, high := l.nearest(level)
	if level-low < high-level {
		return low
	}
	return high
}

// checkLevel faults a level that the unit cannot be set to, and says the nearest that it can.
func (b *builder) checkLevel(u *Unit) {
	b.head.Levels = u.Levels
	asked := b.choice.Level
	if asked == nil || *asked <= 0 || *asked >= 1 {
		return
	}
	rest := ", or leave it up and take light away with scrims, nets or ND gels"
	low, high := u.Levels.nearest(*asked)
	say := unit.FormatPercent
	switch {
	case u.Levels.Least >= 1:
		b.fault(b.choice.LevelSpan, CodeLevelRange, "leave it at 100 % and take light away with scrims, nets or ND gels", "%q does not dim, and %s is asked for", u.Name, say(*asked))
	case *asked < low-levelSlip:
		b.fault(b.choice.LevelSpan, CodeLevelRange, fmt.Sprintf("set it to %s, the nearest%s", say(low), rest), "%q dims to %s, not to %s", u.Name, say(low), say(*asked))
	case low < *asked-levelSlip:
		b.fault(b.choice.LevelSpan, CodeLevelRange, fmt.Sprintf("set it to %s or %s, the nearest", say(low), say(high)),
			"%q dims in steps of %s, and %s lies between two", u.Name, say(u.Levels.Step), say(*asked))
	}
}

// kelvinAt is the white of a lamp on a ballast at a level: by the even way in mireds from its white at full to that at its least
// level. Nothing that is published says how it goes between; both ends are common practice.
func (l Levels) kelvinAt(native, level float64) float64 {
	down := math.Min(1, (1-level)/(1-l.Least))
	full, least := 1e6/native, 1e6/l.Kelvin
	return 1e6 / (full + down*(least-full))
}

package fit

import (
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/power"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// stepInFade is the least level of a unit, a share of its full light, from which on a fade that ends in the dark shows where it goes out: common practice.
const stepInFade = 0.1

// seconds and minutes print a time.
func seconds(v float64) string { return unit.FormatNumber(v) + " s" }
func minutes(v float64) string { return unit.FormatNumber(v/60) + " min" }

// cueInOrder refuses a cue that goes before one that is written before it, and warns of one that goes before that is over.
func cueInOrder(r *checker, q *plan.Cue) bool {
	i := cueIndex(r, q)
	written := r.out.Scene.Cues[i].At.Span
	ordered := false // with the one before that has a time
	for k := i - 1; q.Seconds != nil && k >= 0; k-- {
		before := &r.out.Cues[k]
		if before.Seconds == nil {
			continue
		}
		if *q.Seconds < *before.Seconds && !ordered {
			r.Errorf(written, CodeCueOrder, "write it before "+before.Name+", or give it a later time", "%s goes %s, and %s, which is written before it, %s: cues go in the order in which they are written",
				q.Name, q.OnWords(), before.Name, before.OnWords())
			return false
		}
		ordered = true
		if both := inBoth(r, q, before); *q.Seconds < *before.Seconds+before.Over && both != "" {
			r.Warnf(written, CodeCueOverlap, "let it go from "+seconds(*before.Seconds+before.Over)+" on, or shorten "+before.Name, "%s goes %s, before %s is over, at %s: there %s leaves the one fade for the other",
				q.Name, q.OnWords(), before.Name, seconds(*before.Seconds+before.Over), both)
		}
	}
	return true
}

// inBoth names the lights that two cues move; "" none.
func inBoth(r *checker, a, b *plan.Cue) string {
	var names []string
	for i := range a.Moves {
		if name := a.Moves[i].Light; b.Move(name) != nil {
			names = append(names, r.out.Numbered(name))
		}
	}
	return strings.Join(names, " and ")
}

// cueIndex is the place of a cue among those of the set-up.
func cueIndex(r *checker, q *plan.Cue) int {
	return slices.IndexFunc(r.out.Cues, func(other plan.Cue) bool { return other.Name == q.Name })
}

// cueChanges warns of a light of a cue that this set-up has not, and of a cue that changes nothing.
func cueChanges(r *checker, q *plan.Cue) bool {
	written := &r.out.Scene.Cues[cueIndex(r, q)]
	told := written.Faulty
	for i := range written.Lights {
		w := &written.Lights[i]
		if slices.ContainsFunc(r.out.Scene.Lights, func(l scene.Light) bool { return l.Name == w.Light.Name }) {
			continue
		}
		if told = true; w.Elsewhere { // else an error says that there is none
			r.Warnf(w.Light.Span, CodeCueLacks, "let cues: of the set-up strike it there: {"+q.Name+": {lights: {"+w.Light.Name+": strike}}}", "%s moves %s, which is not in this set-up", q.Name, w.Light.Name)
		}
	}
	if len(q.Moves) > 0 || told {
		return true
	}
	r.Warnf(q.Span, CodeCueEmpty, "leave it out, or write another level or colour into it", "%s changes nothing: its lights are so already", q.Name)
	return false
}

// cueFades warns of what cannot follow a fade: a unit that holds no low level, one that does not dim, one that is on no dimmer.
func cueFades(r *checker, q *plan.Cue) bool {
	for i := range q.Moves {
		m := &q.Moves[i]
		l := r.out.LightNamed(m.Light)
		least := l.Head.Levels.Least
		if !q.Fades() || m.From.Level == m.To.Level {
			continue
		}
		switch dark := min(m.From.Level, m.To.Level) < least; {
		case least >= 1:
			r.Warnf(m.Span, CodeCueFade, "snap it (over: 0 s), close a shutter before it, or take a unit that dims", "%s fades %s, and %s does not dim: it is all on or all off", q.Name, seconds(q.Over), l.Numbered())
		case dark && least >= stepInFade:
			r.Warnf(m.Span, CodeCueFade, "fade it to "+unit.FormatPercent(least)+" and take the rest with a shutter or a flag, or take a unit that dims lower",
				"%s fades %s %s the dark, and it holds no level under %s: it jumps there", q.Name, l.Numbered(), report.Either(m.To.Level < m.From.Level, "into", "out of"), unit.FormatPercent(least))
		case r.light(l.Name).Dimmer.Value.Kind == term.NoDimmer && r.light(l.Name).Dimmer.Set:
			r.Warnf(m.Span, CodeCueFade, "put it on a dimmer: dimmer: phase, or another", "%s fades %s, which is on no dimmer", q.Name, l.Numbered())
		}
	}
	return true
}

// cueFollows warns of a large filament that follows slower than a cue goes.
func cueFollows(r *checker, q *plan.Cue) bool {
	for i := range q.Moves {
		m := &q.Moves[i]
		l := r.out.LightNamed(m.Light)
		takes := power.FilamentTime(l.Head.Watts)
		if l.Head.Technology != term.Tungsten || m.From.Level == m.To.Level || takes <= q.Over {
			continue
		}
		r.Warnf(m.Span, CodeCueSlow, "let it take "+seconds(takes)+" or more, move a shutter or a flag before it, or use a smaller lamp",
			"%s moves %s %s, and a filament of %s takes about %s to follow: the figures are of its end", q.Name, l.Numbered(), report.Either(q.Fades(), "in "+seconds(q.Over), "at once"),
			unit.FormatPower(l.Head.Watts), seconds(takes))
	}
	return true
}

// cueStrikes warns of a discharge lamp that a cue puts on: hot, it does not strike, and cold it takes minutes to come up.
func cueStrikes(r *checker, q *plan.Cue) bool {
	for i := range q.Moves {
		m := &q.Moves[i]
		l := r.out.LightNamed(m.Light)
		if l.Head.Technology != term.Discharge || m.From.Level > 0 || m.To.Level <= 0 {
			continue
		}
		cools := l.Head.Unit.CoolsFor()
		out := outSince(r, q, l)
		switch {
		case out != nil && cools == 0:
		case out != nil && !(out.Seconds != nil && q.Seconds != nil && *q.Seconds-*out.Seconds-out.Over >= cools):
			r.Warnf(m.Span, CodeCueStrike, "leave it burning and close a shutter or a flag before it, or use a head that strikes hot",
				"%s puts %s on again, which went out in %s: it has to cool for about %s before it strikes", q.Name, l.Numbered(), out.Name, minutes(cools))
		default:
			r.Warnf(m.Span, CodeCueStrike, "strike it before the take, and open a shutter or a flag before it on the cue",
				"%s strikes %s cold: it takes about %s to its light and its colour, and the figures are of that", q.Name, l.Numbered(), minutes(kit.RunUp))
		}
	}
	return true
}

// outSince is the last cue before one in which a light went out; nil where it was never up.
func outSince(r *checker, q *plan.Cue, l *plan.Light) *plan.Cue {
	for i := cueIndex(r, q) - 1; i >= 0; i-- {
		if m := r.out.Cues[i].Move(l.Name); m != nil && m.From.Level > 0 && m.To.Level <= 0 {
			return &r.out.Cues[i]
		}
	}
	return nil
}

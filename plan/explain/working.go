package explain

import "unicode"

// working is a calculation as it is written down: later lines take their figures from earlier ones.
type working struct {
	known map[string]float64
	steps []Step
}

// newWorking begins one that knows the symbols of others before it.
func newWorking(before ...*working) *working {
	w := &working{known: map[string]float64{}}
	for _, b := range before {
		for symbol, value := range b.known {
			w.known[symbol] = value
		}
	}
	return w
}

// given notes a value that has no formula here.
func (w *working) given(words, symbol string, value float64, unit, source string) {
	w.note(Step{Words: words, Symbol: symbol, Value: value, Unit: unit, Source: source})
}

// worked notes a value that comes of earlier ones by a formula.
func (w *working) worked(words, symbol, formula string, value float64, unit, source string) {
	s := Step{Words: words, Symbol: symbol, Formula: formula, Value: value, Unit: unit, Source: source}
	eachWord(formula, func(word string, name bool) {
		if v, known := w.known[word]; name && known && !s.takes(word) {
			s.In = append(s.In, Input{word, v})
		}
	})
	w.note(s)
}

func (w *working) note(s Step) {
	w.steps = append(w.steps, s)
	if s.Symbol != "" {
		w.known[s.Symbol] = s.Value
	}
}

// strike strikes the line that was noted last, where a key that is not computed yet could change its value.
func (w *working) strike(is bool) { w.steps[len(w.steps)-1].Struck = is }

// takes says whether a symbol stands in the formula already.
func (s *Step) takes(symbol string) bool {
	_, ok := s.input(symbol)
	return ok
}

// input is what stands for a symbol.
func (s *Step) input(symbol string) (float64, bool) {
	for _, in := range s.In {
		if in.Symbol == symbol {
			return in.Value, true
		}
	}
	return 0, false
}

// eachWord takes a formula apart into names, which begin with a letter, and what stands between them.
func eachWord(formula string, use func(word string, name bool)) {
	start, inName := 0, false
	for i, r := range formula {
		part := unicode.IsLetter(r) || inName && '0' <= r && r <= '9'
		if part != inName && i > start {
			use(formula[start:i], inName)
			start = i
		}
		inName = part
	}
	if start < len(formula) {
		use(formula[start:], inName)
	}
}

package source

// number reads a finite decimal number from least to most, both included: the simplest of readers, for shapes of
// tests.
func number(what string, least, most float64) Reader[float64] {
	return scalar(what, showNumber(sample(least, most)), numberSchema("number", least, most),
		func(n *Node) (float64, *Diagnostic) {
			v, f := parseNumber(what, n)
			if f == nil {
				f = checkRange(what, n.Text, v, least, most)
			}
			return v, f
		})
}

// pair reads two numbers, each from least to most: [3.6, 3.1].
func pair(what string, least, most float64) Reader[[2]float64] {
	like := showNumber(sample(least, most))
	list := ListOf(what, "["+like+", "+like+"]", number("a value of "+what, least, most), 2, 2)
	return Converted(list, func(v []float64) [2]float64 { return [2]float64(v) })
}

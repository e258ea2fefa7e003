package scene

import "scrimshaw/plan/source"

// filterName reads the name of what is screwed, slotted or gelled before a lens.
var filterName = catalogueNameReader("a filter", "ND 0.6")

// filterList reads the filters before a lens; one alone needs no brackets.
var filterList = either("a list of filters", "[ND 0.6]", ofKind(source.List), source.ListOf("a list of filters", "[ND 0.6]", filterName, 0, 12),
	source.Converted(filterName, func(r Ref) []Ref { return []Ref{r} }))

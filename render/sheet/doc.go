// Package sheet composes a lit set-up on paper: the plan to scale with its contours of light, and
// round it what a map's collar holds. It draws on ink and knows no file format and no YAML.
//
// Of gathers what a sheet says of a study (of.go), and Check tells early what is asked wrongly (options.go).
// The way through is Compose: paper and scale are chosen (paper.go, scale.go, layout.go), the plan
// is drawn in its panel (plan*.go), the collar's blocks are made (block*.go) and flowed into
// columns (flow.go), and what does not fit goes on to a page of lists.
package sheet

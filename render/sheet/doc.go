// Package sheet composes lit set-ups on paper: pages with their names and numbers. It draws on ink and knows no file
// format and no YAML.
//
// Of gathers what a sheet says of a study (of.go), and Check tells early what is asked wrongly (options.go). The way
// through is Compose: the report of a set-up (package section) is set as blocks, paper and scale are chosen and the
// blocks flowed (package layout), the plan or a wall is drawn in its panel (package draw), and each kind of page
// makes its pages (pages.go). Text prints the same report without a drawing, and Strips draw it for a phone.
package sheet

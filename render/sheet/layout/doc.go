// Package layout decides where everything of a sheet goes: paper, scale, columns, blocks and their flow, the corners of
// the plan, and parts of a plan that no page holds. It knows sizes alone, no drawing and nothing of what is said.
package layout

package review

// Unchecked returns what neither the figures nor the checks take into account, in sentences that every sheet
// carries: what is not said to be unchecked is taken for checked. What a scene writes and nothing computes yet
// the sheet names apart.
func Unchecked() []string {
	return []string{
		"Polish: every surface returns light as if it were matt.",
		"Frame: whether lights and stands are in the picture.",
		"Floor load, house wiring, circuits and rigging points.",
	}
}

package main

import (
	"context"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/teach"
	"scrimshaw/render/sheet"
)

// meterFlags are the flags of meter.
type meterFlags struct {
	work         workFlags
	json, shares bool
	notes        string
}

// newMeter is the command that prints the readings.
func newMeter(std streams) *cobra.Command {
	var flags meterFlags
	cmd := &cobra.Command{
		Use:   "meter [scene.yaml | -]",
		Short: "readings at faces and meters, as a table or JSON",
		Long: "meter computes every reading of a scene: the planes and the dome of each face, and the meters the\n" +
			"scene sets up. It splits each reading into the shares of the lights, straight and off surfaces, and states\n" + "the error of its computation as ± (error in JSON). Below stands what passes for what, and what each light has in\n" +
			"hand: stops up and down, the smallest unit that would do, how much nearer a soft one could come; then, for each cue,\n" +
			"what lights do, and light, stop and colour of each face and meter, with the stops from the cue before (cues in JSON, with\n" +
			"the curve of each key side over time); and what a light that plays gives at its lowest, in the mean and at its highest.\n" +
			"A ✗ marks a figure that a key of the scene could change and that is computed without that key for now;\n" +
			"JSON lists the key under uncomputed.",
		Example:           "  scrimshaw meter mine.yaml\n  scrimshaw meter mine.yaml --setup close --json\n  scrimshaw meter - < mine.yaml",
		Args:              atMostOne("scene"),
		ValidArgsFunction: completeScenes,
		RunE:              func(cmd *cobra.Command, args []string) error { return runMeter(cmd.Context(), std, args, &flags) },
	}
	addWorkFlags(cmd, &flags.work)
	cmd.Flags().BoolVar(&flags.shares, "shares", false, "print every share of every reading: the light, its path, the opening it came through, the surface it left last")
	cmd.Flags().StringVar(&flags.notes, "notes", "", "whose face the JSON has notes about under teach, as draw takes it"+notesHelp)
	cmd.Flags().BoolVar(&flags.json, "json", false, "print JSON: a list with one object for each set-up")
	return cmd
}

// runMeter prints the readings of a scene, in the form that the flags ask for.
func runMeter(ctx context.Context, std streams, args []string, flags *meterFlags) error {
	w, err := layOut(ctx, std, args, &flags.work)
	if err != nil {
		return err
	}
	defer w.in.Close()
	kind, of := splitNotes(flags.notes)
	if kind != "" && !slices.Contains(sheet.NotesNames(), kind) {
		return fmt.Errorf("--notes %s: write teach%s", flags.notes, notesHelp)
	}
	if err := w.checkPair(of); err != nil {
		return err
	}
	sets := make([]meter.Set, len(w.names))
	err = w.light(ctx, std, &flags.work, study.Options{ReadingsOnly: true, Around: true, InHand: true}, func(i int, s *study.Study) error {
		if flags.json {
			if err := teach.Add(ctx, s, of); err != nil {
				return err
			}
		}
		sets[i] = s.Readings
		return nil
	})
	if err != nil {
		return err
	}
	if err := w.reportFaults(std, flags.work.faults, source.Warning); err != nil {
		return err
	}
	switch {
	case flags.json:
		return meter.WriteJSON(std.out, sets)
	case flags.shares:
		return meter.WriteShares(std.out, sets)
	}
	return meter.WriteTable(std.out, sets)
}

// addWorkFlags adds the flags of every command that computes a scene.
func addWorkFlags(cmd *cobra.Command, flags *workFlags) {
	cmd.Flags().StringArrayVar(&flags.setups, "setup", nil, "the set-up to compute; repeat it for more (default: all)")
	cmd.Flags().StringVar(&flags.quality, "quality", light.Normal.String(),
		"draft, normal or fine: how closely light is followed")
	addFaultFlag(cmd.Flags(), &flags.faults)
	complete(cmd, "setup", setupNames)
	completeWith(cmd, "quality", light.Draft.String(), light.Normal.String(), light.Fine.String())
	completeWith(cmd, "faults", string(formHuman), string(formLine), string(formJSON))
}

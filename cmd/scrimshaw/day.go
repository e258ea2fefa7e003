package main

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/render/list"
)

// dayFlags are the flags of day.
type dayFlags struct {
	work  workFlags
	json  bool
	since string // the file of the sheets that the crew holds
}

// mostCompared is the most facts that a day compares, its set-ups each with each: a hundred of them with a few hundred things.
const mostCompared = 4_000_000

// newDay is the command that says what a crew does between set-ups.
func newDay(std streams) *cobra.Command {
	var flags dayFlags
	cmd := &cobra.Command{
		Use:   "day [scene.yaml | -]",
		Short: "what the crew does between set-ups, and which order is less work",
		Long: "day prints the set-ups in the order of the file, or in that of --setup, and between each two what changes, a box to tick a line,\n" +
			"in an order that can be worked: lamps that stay hot go off first; what leaves; furniture, doors, marks; cameras; stands; heads; gels and\n" +
			"cloth; circuits; levels and colours; aims last. Of each: where it goes and how far, whom it follows, what takes two people, what is hot.\n" +
			"How long is hot and what takes two is common practice, and no promise of safety.\n" +
			"Then the work of the order, and the two swaps of set-ups that save most. Work is minutes where the scene gives rates, else changes.\n" +
			"With --since a file that was drawn before, it says first what is not as on the sheets of that one.\n" +
			"In JSON a change has kind, thing, aspects, move, follows, people, why, hotMinutes, takeOffFirst and minutes; lengths are metres.",
		Example:           "  scrimshaw day mine.yaml\n  scrimshaw day mine.yaml --setup close --setup wide\n  scrimshaw day mine.yaml --json",
		Args:              atMostOne("scene"),
		ValidArgsFunction: completeScenes,
		RunE:              func(cmd *cobra.Command, args []string) error { return runDay(cmd.Context(), std, args, &flags) },
	}
	cmd.Flags().StringArrayVar(&flags.work.setups, "setup", nil, "a set-up of the day; repeat it for more, in their order (default: all)")
	cmd.Flags().BoolVar(&flags.json, "json", false, "print JSON: one object with steps, work and swaps")
	addSinceFlag(cmd, &flags.since)
	addFaultFlag(cmd.Flags(), &flags.work.faults)
	complete(cmd, "setup", setupNames)
	completeWith(cmd, "faults", string(formHuman), string(formLine), string(formJSON))
	return cmd
}

// tooLong refuses a day whose set-ups hold too much to compare.
func tooLong(d *list.Shooting) error {
	if d.Facts() <= mostCompared {
		return nil
	}
	return fmt.Errorf("this is too much for one day: %d set-ups with so many things; name fewer with --setup", len(d.Setups))
}

// runDay prints the day of a scene.
func runDay(ctx context.Context, std streams, args []string, flags *dayFlags) error {
	w, err := layOut(ctx, std, args, &flags.work)
	if err != nil {
		return err
	}
	defer w.in.Close()
	err = w.reportFaults(std, flags.work.faults, source.Warning)
	if err != nil {
		return err
	}
	d, err := w.shooting(ctx, std, args, flags)
	if err != nil {
		return err
	}
	if err := tooLong(d); err != nil {
		return err
	}
	if flags.json {
		return d.WriteJSON(std.out)
	}
	return d.WriteText(std.out)
}

// shooting is the day of the set-ups, held to the sheets before where the flags name a file of them.
func (w *work) shooting(ctx context.Context, std streams, args []string, flags *dayFlags) (*list.Shooting, error) {
	old, err := w.openSince(ctx, std, args, flags.since, &flags.work)
	if err != nil {
		return nil, err
	}
	d := &list.Shooting{}
	if old != nil {
		defer old.in.Close()
		d.Since = &list.Revision{Since: old.sheets.Words}
	}
	err = w.each(func(_ int, s *plan.Setup) error {
		d.Add(s)
		if old != nil {
			d.Since.Revision = s.Scene.Sheet.Revision.Value
			d.Since.Add(s, old.sheets.Of(s))
		}
		return ctx.Err()
	})
	if old != nil {
		d.Since.Lose(old.sheets.Gone(d.Setups))
	}
	return d, err
}

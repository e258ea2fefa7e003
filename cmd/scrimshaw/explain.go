package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scrimshaw/plan"
	"scrimshaw/plan/explain"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// explainFlags are the flags of explain.
type explainFlags struct {
	work workFlags
	json bool
	cue  string
}

// newExplain is the command that explains one reading.
func newExplain(std streams) *cobra.Command {
	var flags explainFlags
	cmd := &cobra.Command{
		Use:   "explain READING [scene.yaml | -]",
		Short: "one reading step by step, with every formula and its figures",
		Long: "explain takes one reading of `scrimshaw meter` apart, light by light: what leaves the lamp, what of it goes\n" +
			"toward the reading, distance and incidence, what is seen of its opening, what panes, level and gels leave,\n" +
			"what comes back of surfaces; then the sum, and the stop. Each line is a formula, its figures and its result,\n" +
			"so that it can be done again with a pencil: angles are in degrees, and letters stand for the lines above.\n" +
			"What is read along a walk has the metres from its start in its name: lena.walk.2.00.left, .right and .dome.A.\n" +
			"--cue explains it as it is after a cue.",
		Example:           "  scrimshaw explain ines.key\n  scrimshaw explain lena.walk.2.00.dome.A mine.yaml\n  scrimshaw explain ruth.dome.A mine.yaml --setup close\n  scrimshaw explain wall mine.yaml --json",
		Args:              readingAndScene,
		ValidArgsFunction: completeReadingAndScene,
		RunE:              func(cmd *cobra.Command, args []string) error { return runExplain(cmd.Context(), std, args, &flags) },
	}
	addWorkFlags(cmd, &flags.work)
	cmd.Flags().StringVar(&flags.cue, "cue", "", "the cue after which the reading is explained (default: before all cues)")
	cmd.Flags().BoolVar(&flags.json, "json", false, "print JSON: a list with one object for each set-up that has the reading")
	return cmd
}

// readingAndScene refuses arguments other than a reading and at most one scene.
func readingAndScene(_ *cobra.Command, args []string) error {
	switch {
	case len(args) == 0:
		return errors.New("explain which reading? `scrimshaw meter` lists them: scrimshaw explain ines.key")
	case len(args) > 2:
		return fmt.Errorf("one reading and one scene at a time: %s is a third", args[2])
	case len(args) == 1 && isScene(args[0]):
		return fmt.Errorf("%s is a scene; write the reading before it: scrimshaw explain ruth.key %s", args[0], args[0])
	}
	return nil
}

// isScene says whether an argument looks like the file of a scene.
func isScene(arg string) bool {
	return arg == "-" || strings.HasSuffix(arg, ".yaml") || strings.HasSuffix(arg, ".yml")
}

// completeReadingAndScene completes the scene, which comes second.
func completeReadingAndScene(cmd *cobra.Command, args []string, begun string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 1 {
		return completeScenes(cmd, nil, begun)
	}
	return nil, cobra.ShellCompDirectiveNoFileComp
}

// runExplain prints the explanation of a reading in every set-up that has it.
func runExplain(ctx context.Context, std streams, args []string, flags *explainFlags) error {
	w, err := layOut(ctx, std, args[1:], &flags.work)
	if err != nil {
		return err
	}
	defer w.in.Close()
	if err := w.reportFaults(std, flags.work.faults, source.Warning); err != nil {
		return err
	}
	if err := w.keepThoseWith(args[0]); err != nil {
		return err
	}
	all := make([]explain.Explanation, len(w.names))
	err = w.light(ctx, std, &flags.work, study.Options{ReadingsOnly: true}, func(i int, s *study.Study) error {
		at, err := afterCue(s, flags.cue)
		if err != nil {
			return err
		}
		e, err := explain.Of(ctx, at, args[0])
		if err == nil {
			all[i] = *e
			all[i].Cue = flags.cue
		}
		return err
	})
	if err != nil {
		return err
	}
	if flags.json {
		return explain.WriteJSON(std.out, all)
	}
	return explain.Write(std.out, all)
}

// afterCue is a set-up with its light after a cue; "" before all.
func afterCue(s *study.Study, cue string) (*study.Study, error) {
	if cue == "" {
		return s, nil
	}
	if after := s.After(cue); after != nil {
		return after, nil
	}
	of, names := "the scene", []string{}
	if s.Setup.Name != "" {
		of = "the set-up " + s.Setup.Name
	}
	for i := range s.Setup.Cues {
		names = append(names, s.Setup.Cues[i].Name)
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("--cue %s: %s has no cues", cue, of)
	}
	return nil, fmt.Errorf("--cue %s: %s has no such cue; it has %s", cue, of, strings.Join(names, ", "))
}

// keepThoseWith leaves out the set-ups without a reading; where none has it, it says which readings there are.
func (w *work) keepThoseWith(reading string) error {
	var names, with []string
	err := w.each(func(_ int, s *plan.Setup) error {
		own := slices.Concat(meter.Names(s), meter.WalkNames(s))
		if slices.Contains(own, reading) {
			with = append(with, s.Name)
		}
		names = append(names, own...)
		return nil
	})
	if err != nil {
		return err
	}
	if len(with) == 0 {
		slices.Sort(names)
		d := explain.Unknown(reading, slices.Compact(names))
		return fmt.Errorf("%s; %s", d.Message, d.Hint)
	}
	w.keep(with)
	return nil
}

// keep leaves some of the set-ups.
func (w *work) keep(names []string) {
	var kept []*plan.Setup
	for _, s := range w.kept {
		if slices.Contains(names, s.Name) {
			kept = append(kept, s)
		}
	}
	w.names, w.kept = names, kept
}

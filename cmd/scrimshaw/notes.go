package main

import (
	"fmt"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
	"scrimshaw/plan/teach"
)

// notesHelp says what may stand behind the kind of notes.
const notesHelp = "; teach:NAME for somebody else's face than the first, teach:NAME/CAMERA for another camera"

// splitNotes takes the value of --notes apart: the kind, and behind a colon whose face they are about and for which camera.
func splitNotes(value string) (kind string, of teach.Pair) {
	kind, whom, _ := strings.Cut(value, ":")
	of.Person, of.Camera, _ = strings.Cut(whom, "/")
	return kind, of
}

// checkPair refuses names that no set-up has.
func (w *work) checkPair(of teach.Pair) error {
	var people, cameras []string
	err := w.each(func(_ int, s *plan.Setup) error {
		posts := s.Posts()
		for i := range posts {
			people = append(people, posts[i].Name)
		}
		all := s.CameraPosts()
		for i := range all {
			cameras = append(cameras, all[i].Name)
		}
		return nil
	})
	if err != nil {
		return err
	}
	if err := known("nobody is called", of.Person, people); err != nil {
		return err
	}
	return known("there is no camera", of.Camera, cameras)
}

// known refuses a name that is not among some; an empty one stands for any.
func known(refusal, name string, all []string) error {
	if name == "" || slices.Contains(all, name) {
		return nil
	}
	slices.Sort(all)
	return fmt.Errorf("--notes: %s %q; %s", refusal, name, source.Offer(name, slices.Compact(all)))
}

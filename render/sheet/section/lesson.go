package section

import (
	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/render/sheet/layout"
)

// LessonWords are the sentences of a lesson, or why there is none.
func LessonWords(l *meter.Lesson) []string {
	if l.Missing != "" {
		return []string{l.Missing}
	}
	var all []string
	for i := range l.Sentences {
		all = append(all, l.Sentences[i].Text)
	}
	return all
}

// LessonWithout says which keys could change the figures of a lesson and are not computed yet; nothing where there are none.
func LessonWithout(l *meter.Lesson) []string {
	if len(l.Uncomputed) == 0 {
		return nil
	}
	return []string{"Every figure of the notes is without " + plan.ListUncomputed(l.Uncomputed) + ", which nothing computes yet."}
}

// lesson are the sentences in text: on paper they stand on a page of their own.
func lesson(in *Input) *Section {
	s := phoneLesson(in)
	if in.Lesson != nil && in.Lesson.Missing == "" {
		s.textOnly, s.Points = s.Points, nil
	}
	return s
}

// phoneLesson are the sentences where they stand among the lists.
func phoneLesson(in *Input) *Section {
	l := in.Lesson
	if l == nil {
		return &Section{}
	}
	s := &Section{Title: "Notes", Rank: layout.Other, Points: LessonWords(l), Without: LessonWithout(l)}
	if l.Person != "" {
		s.Title = Joined(", ", "Notes on the light on "+l.Person, Prefixed("as seen by ", plan.CameraWords(l.Camera)))
	}
	return s
}

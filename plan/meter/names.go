package meter

import (
	"strings"

	"scrimshaw/plan"
)

// Names lists the readings of a set-up by name, in their order, without computing any.
func Names(s *plan.Setup) []string {
	var names []string
	for _, o := range Requests(s) {
		if o.Person == "" {
			names = append(names, o.Name)
		} else {
			names = append(names, arranged(o.Person, strings.TrimPrefix(o.Name, o.Person+"."))...)
		}
	}
	return names
}

// WalkNames lists the readings along the walks of a set-up by name, in their order, without computing any.
func WalkNames(s *plan.Setup) (names []string) {
	for _, o := range WalkRequests(s) {
		names = append(names, o.Name)
	}
	return names
}

// arranged are the readings that come of a plane of a face.
func arranged(person, plane string) []string {
	switch plane {
	case "left":
		return []string{person + ".key", person + ".fill", person + ".left"}
	case edgeRight:
		return nil
	case edgeLeft:
		return []string{person + ".edge"}
	}
	return []string{person + "." + plane}
}

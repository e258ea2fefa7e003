package section

import "scrimshaw/plan"

// light is the light of a name, or nil.
func LightNamed(s *plan.Setup, name string) *plan.Light {
	for i := range s.Lights {
		if l := &s.Lights[i]; l.Name == name {
			return l
		}
	}
	return nil
}

package kit

// Layers is what some cloths do that lie on each other, the first toward the lamp: of what each lets through the next
// takes its shares, and what they throw to each other goes back and forth (G. G. Stokes, On the intensity of the light
// reflected from or transmitted through a pile of plates, Proceedings of the Royal Society 11:545, 1862).
func Layers(all []Cloth) (c Cloth) {
	c = all[0]
	for i := range all[1:] {
		next := &all[i+1]
		between := 1 - c.Reflect*next.Reflect
		through, straight := c.Direct+c.Diffuse, c.Direct*next.Direct
		passed := through * (next.Direct + next.Diffuse) / between
		c = Cloth{
			Entry: next.Entry, Label: next.Label, Direct: straight, Diffuse: passed - straight,
			Reflect: c.Reflect + through*through*next.Reflect/between,
		}
	}
	return c
}

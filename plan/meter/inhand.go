package meter

import "scrimshaw/plan"

// InHand is what a light has in hand: how far it can go up and down, the smallest unit that would do, and how near it could come.
type InHand struct {
	Light    string
	Numbered string   // the light as the crew reads it: "1 day"
	Up       float64  // stops to its full light
	Down     *float64 // stops to the least light that it can be set to; nil: to nothing
	Wants    []Want   // of a key, by person
	Unit     *Class   // what it is; nil of one that states its own output, and of a lamp of the set
	Stated   bool     // it states its own output, and nothing says what it is
	Smallest *Class   // what would do in its place; nil where nothing smaller does
	Count    int      // how many alike units it is
	Nearer   *Nearer  // nil of a light that is no soft source, or aims at nothing that it lights

	OffColour *Class // what would do but for its colour, where nothing smaller does in the colour of the light; else nil
}

// Want is how much more a key would have to give one person for the key side to come to the working stop, all other lights as they are.
type Want struct {
	Person string
	More   float64 // stops, less than none where it gives too much
	Alone  bool    // the other lights alone are over the working stop, and More means nothing
	Enough *Class  // where the light is short at full, the smallest unit that gives enough; nil where none does, and of a light that the catalogue does not have

	Uncomputed []plan.Uncomputed // keys that could change the reading and that nothing computes yet
}

// Short gives the stops that a light is short of a want at full, less than none where it has some in hand.
func (l *InHand) Short(w *Want) float64 { return w.More - l.Up }

// Class is a unit of the catalogue as it would be set.
type Class struct {
	Unit  string
	Watts float64 // electrical power that it draws, W
	Mass  float64 // kg, with its modifier
	Level float64 // share of the full output, 0 to 1
	Mired float64 // how much warmer its light is than that of the light it replaces, mireds
}

// Nearer is how near a soft source can come along its axis to its aim, and what that gains.
type Nearer struct {
	Metres float64 // m
	Person string  // whose face gains
	Stops  float64 // that it gains there, as it is set
	Camera string  // that would see it next; "" where something else ends its way
	Why    string  // what, then
}

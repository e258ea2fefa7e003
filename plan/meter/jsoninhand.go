package meter

// jsonInHand is what a light has in hand; what it does not have, or what has no meaning, is null.
type jsonInHand struct {
	Light    string      `json:"light"`
	Up       float64     `json:"up"`   // stops
	Down     *float64    `json:"down"` // stops; null: to nothing
	Wants    []jsonWant  `json:"wants"`
	Unit     *jsonClass  `json:"unit"`
	Smallest *jsonClass  `json:"smallest"` // null where nothing smaller does
	Nearer   *jsonNearer `json:"nearer"`

	OffColour *jsonClass `json:"offColour"` // what would do but for its colour, where nothing smaller does in the light's own
}

type jsonWant struct {
	Person     string     `json:"person"`
	More       *float64   `json:"more"`   // stops; null where the other lights alone are over the working stop
	Enough     *jsonClass `json:"enough"` // where it is short at full, the smallest unit that is not
	Uncomputed []jsonKey  `json:"uncomputed"`
}

type jsonClass struct {
	Unit  string  `json:"unit"`
	Watts float64 `json:"watts"`
	Mass  float64 `json:"mass"`  // kg
	Level float64 `json:"level"` // share of the full output, 0 to 1
	Mired float64 `json:"mired"` // mireds, plus is warmer than the light that it replaces
}

type jsonNearer struct {
	Metres float64 `json:"metres"`
	Person string  `json:"person"`
	Stops  float64 `json:"stops"`
	Camera *string `json:"camera"` // that would see it next
}

func (l *InHand) json() jsonInHand {
	out := jsonInHand{Light: l.Light, Up: Rounded(l.Up), Down: RoundedOrNull(l.Down), Wants: []jsonWant{}, Unit: l.Unit.json(), Smallest: l.Smallest.json(), OffColour: l.OffColour.json()}
	for i := range l.Wants {
		w := &l.Wants[i]
		one := jsonWant{Person: w.Person, Enough: w.Enough.json(), Uncomputed: jsonKeys(w.Uncomputed)}
		if !w.Alone {
			one.More = RoundedOrNull(&w.More)
		}
		out.Wants = append(out.Wants, one)
	}
	if n := l.Nearer; n != nil {
		out.Nearer = &jsonNearer{Rounded(n.Metres), n.Person, Rounded(n.Stops), OrNull(n.Camera)}
	}
	return out
}

func (c *Class) json() *jsonClass {
	if c == nil {
		return nil
	}
	return &jsonClass{c.Unit, Rounded(c.Watts), Rounded(c.Mass), Rounded(c.Level), Rounded(c.Mired)}
}

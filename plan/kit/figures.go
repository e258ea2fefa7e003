package kit

import (
	"cmp"
	"math"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// QuoteDistance is how far before a head its light is quoted, m: the distance at which the trade compares heads.
const QuoteDistance = 3

// UnitFigures are all that the catalogue holds of a unit, for programs and for the page of one unit: watts as it draws them, currents in
// amps, masses in kg, sizes in m, whites in K, levels and factors as shares of 1.
type UnitFigures struct {
	Label         string          `json:"label"`
	Class         term.Class      `json:"class"`
	Technology    term.Technology `json:"technology"`
	Watts         float64         `json:"watts"`
	PowerFactor   float64         `json:"powerFactor"`
	Amps120       *float64        `json:"amps120V"` // nil where it does not take such mains
	Amps230       *float64        `json:"amps230V"`
	Inrush        float64         `json:"inrushAmps,omitempty"`
	Leakage       *float64        `json:"leakageMilliamps,omitempty"` // nil where nothing says it
	Inlet         string          `json:"inlet,omitempty"`
	Volts         []float64       `json:"volts,omitempty"`
	Mass          float64         `json:"mass"`
	SupplyMass    float64         `json:"supplyMass,omitempty"`
	Kelvin        [2]float64      `json:"kelvin"`
	Native        float64         `json:"nativeKelvin"`
	Tint          float64         `json:"tint,omitempty"`
	ByWhite       []WhiteShare    `json:"byWhite,omitempty"`
	Warms         bool            `json:"warms,omitempty"`
	LeastLevel    float64         `json:"leastLevel"`
	LevelStep     float64         `json:"levelStep,omitempty"`
	KelvinAtLeast float64         `json:"kelvinAtLeast,omitempty"`
	Lumens        float64         `json:"lumens"`
	Spigot        string          `json:"spigot,omitempty"`
	Stand         string          `json:"stand,omitempty"`
	Battery       *Battery        `json:"battery,omitempty"`
	Protection    string          `json:"protection,omitempty"`
	ComesWith     []string        `json:"comesWith,omitempty"`
	OwnCable      float64         `json:"mainsCableMetres,omitempty"`
	Body          [3]float64      `json:"body"`
	Flicker       float64         `json:"flicker,omitempty"` // how deep its light goes down at twice the mains, a share
	Case          []float64       `json:"case,omitempty"`
	Bulb          string          `json:"bulb,omitempty"`
	Spare         float64         `json:"spareShare,omitempty"` // of those in use, that goes along beside them
	With          []ModifierLight `json:"with"`
}

// ModifierLight is the light of a unit with one modifier at its native white: flooded, and at spot where it zooms; and the mass of both, kg.
type ModifierLight struct {
	Modifier  string     `json:"modifier"`
	Flood     FocusedAt  `json:"flood"`
	Spot      *FocusedAt `json:"spot,omitempty"`
	StandMass float64    `json:"standMass"`
}

// FocusedAt is light at one focus: the flux, what it gives on the axis at QuoteDistance, and the full angle to half the peak.
type FocusedAt struct {
	Lumens float64 `json:"lumens"`
	Lux    float64 `json:"lux3m"`
	Beam   float64 `json:"beam"` // degrees, the wider of across and along
}

// Figures gives all that is known of a unit.
func (c *Catalogue) Figures(u *Unit) UnitFigures {
	f := UnitFigures{
		Label: u.Label, Class: u.Class, Technology: u.Technology, Watts: u.Watts, PowerFactor: u.PowerFactor, Amps120: u.ampsOf(MainsLow),
		Amps230: u.ampsOf(MainsHigh), Inrush: u.Inrush, Leakage: u.Leakage, Inlet: u.Inlet, Mass: u.Mass, SupplyMass: u.Supply, Kelvin: u.Kelvin, Native: u.Native,
		Tint: u.Tint, ByWhite: u.ByWhite, Warms: u.WarmsWhenDimmed, LeastLevel: u.Levels.Least, LevelStep: u.Levels.Step,
		KelvinAtLeast: u.Levels.Kelvin, Lumens: round(u.BareFlux()), Spigot: u.Spigot, Stand: u.Stand, Protection: u.IP,
		ComesWith: u.ComesWith, OwnCable: u.OwnCable, Body: u.Body, Flicker: u.Flicker, Bulb: u.Bulb, Spare: u.Spare, With: c.LightByModifier(u),
	}
	if u.Volts[1] > 0 {
		f.Volts = u.Volts[:]
	}
	if u.Battery.Runs() {
		f.Battery = &u.Battery
	}
	if u.Case[0] > 0 {
		f.Case = u.Case[:]
	}
	return f
}

func (u *Unit) ampsOf(volts float64) *float64 {
	amps, ok := u.Amps(volts)
	if !ok {
		return nil
	}
	amps = round(amps)
	return &amps
}

// round keeps four figures: the catalogue holds no more.
func round(v float64) float64 {
	if v == 0 {
		return 0
	}
	step := math.Pow(10, 3-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*step) / step
}

// LightByModifier gives the light of a unit with each modifier that fits it, its default first.
func (c *Catalogue) LightByModifier(u *Unit) (all []ModifierLight) {
	for _, modifier := range c.Fitting(u) {
		choice := Choice{Unit: u.Name, Modifier: modifier}
		flood, ok := c.Head(choice, &source.Log{})
		if !ok {
			continue
		}
		with := ModifierLight{Modifier: modifier, Flood: focusedAt(flood), StandMass: round(flood.Mass)}
		if flood.Zooms {
			choice.Focus = new(float64) // spot
			spot, _ := c.Head(choice, &source.Log{})
			at := focusedAt(spot)
			with.Spot = &at
		}
		all = append(all, with)
	}
	return all
}

func focusedAt(h Head) FocusedAt {
	across, along := photometry.BeamAngle(h.Source.Distribution)
	return FocusedAt{round(h.Source.Flux), round(h.Source.AxisLux(QuoteDistance)), round(math.Max(across, along))}
}

// ModifierFigures are what a program needs of a modifier: full angles in degrees, sizes in m, mass in kg, efficiency as a share of 1.
type ModifierFigures struct {
	Label      string      `json:"label"`
	Fits       []string    `json:"fits"`
	Front      string      `json:"front,omitempty"`
	Efficiency float64     `json:"efficiency"`
	Beam       float64     `json:"beam,omitempty"`
	Field      float64     `json:"field,omitempty"`
	Face       *[2]float64 `json:"face,omitempty"`
	Disc       float64     `json:"disc,omitempty"`
	Sphere     float64     `json:"sphere,omitempty"`
	Grid       *[2]float64 `json:"grid,omitempty"`
	Honeycomb  float64     `json:"honeycomb,omitempty"`
	Zoom       []ZoomStep  `json:"zoom,omitempty"`
	Skirt      float64     `json:"skirt,omitempty"`
	Shade      *Shade      `json:"shade,omitempty"`
	MostWatts  float64     `json:"mostWatts,omitempty"` // of a filament lamp that it stands the heat of
	Mass       float64     `json:"mass"`
}

func (m *Modifier) figures() ModifierFigures {
	f := ModifierFigures{Label: m.Label, Fits: m.Fits, Front: m.Front, Efficiency: m.Efficiency, Beam: m.Beam, Field: m.Field, Honeycomb: m.Honeycomb, Zoom: m.Zoom, Skirt: m.Skirt, Shade: m.Shade,
		MostWatts: m.MostWatts, Mass: m.Mass}
	switch o := m.Opening; o.Form {
	case photometry.Rectangle:
		f.Face = &[2]float64{o.Width, o.Height}
	case photometry.Disc:
		f.Disc = o.Width
	case photometry.Sphere:
		f.Sphere = o.Width
	}
	if m.Grid[0] > 0 {
		f.Grid = &m.Grid
	}
	if m.Shade != nil {
		_, _, share := m.Shade.around(bulbWidth)
		f.Efficiency = round(share)
	}
	return f
}

// figuresOf are the figures of an entry that is neither a unit nor a modifier.
func figuresOf(e any) map[string]any {
	switch e := e.(type) {
	case *Bulb:
		return map[string]any{"technology": e.Technology, "watts": e.Watts, "powerFactor": e.PowerFactor, "lumens": e.Lumens, "kelvin": e.Kelvin, "warms": e.WarmsWhenDimmed,
			"volts": e.Volts, "width": e.Width, "flicker": e.Flicker, "spareShare": e.Spare}
	case *GelData:
		return map[string]any{"kind": e.Kind, "mired": round(e.Mired), "duv": e.Duv, "transmittance": round(e.Transmittance), "xy": e.XY}
	case *Cloth:
		return map[string]any{"straight": round(e.Direct), "scattered": round(e.Diffuse), "reflectance": e.Reflect}
	case *Material:
		return map[string]any{"reflectance": e.Reflectance, "transmittance": e.Transmittance, "index": e.Index, "sheets": e.Sheets, "scatter": e.Scatter, "bars": e.Bars, "mirror": e.Mirror, "lobe": e.Lobe, "xy": e.XY}
	case *Sensor:
		return map[string]any{"label": e.Label, "width": e.Width, "height": e.Height, "readout": e.Readout}
	case *Stand:
		return map[string]any{"label": e.Label, "footprint": e.Footprint, "lowest": e.Lowest, "highest": e.Highest, "load": e.Load, "mass": e.Mass, "spigot": cmp.Or(e.Spigot, "any"), "wheels": e.Wheels}
	case *Grip:
		return map[string]any{"label": e.Label, "kind": e.Kind, "width": e.Width, "height": e.Height, "round": e.Round, "mass": e.Mass}
	case *Item:
		return e.figures()
	}
	return nil
}

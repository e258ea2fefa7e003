package colour

import "math"

// Filtered is light after a stack of gels.
type Filtered struct {
	RGB           RGB     // Y = 1
	White         White   // nearest, on the Planckian locus
	Transmittance float64 // share of the light that the whole stack lets through, luminous, 0 to 1
	Mired         float64 // what white and shifts add up to, in mireds, before it was held to what can be computed
	Clamped       bool    // the white was held so, or the colour left AP1 and was brought to its edge
}

// MinMired and MaxMired are what a stack may shift a white to: 100000 K to 1000 K.
const MinMired, MaxMired = 10, 1000

// ThroughGels sends a white through a stack of gels: mired shifts and Duv shifts add, luminous
// transmittances multiply, then the strong colours filter channel by channel.
func ThroughGels(w White, stack []Filter) Filtered {
	if len(stack) == 0 {
		white := w.OnPlanck()
		return Filtered{RGB: w.RGB(), White: white, Transmittance: 1, Mired: Mired(white.Kelvin)}
	}
	shifted := w.OnPlanck()
	mired, transmittance := Mired(shifted.Kelvin), 1.0
	for _, f := range stack {
		mired += f.Mired
		shifted.Duv += f.Duv
		transmittance *= f.Transmittance
	}
	shifted.Kelvin = Mired(math.Min(math.Max(mired, MinMired), MaxMired))
	held := mired < MinMired || mired > MaxMired
	light, clamped := shifted.RGB().clamped()
	tinted := false
	for _, f := range stack {
		if f.Tint != nil {
			factor, bad := ChannelFactors(*f.Tint, EqualEnergy(), 1)
			light, tinted, clamped = light.Times(factor), true, clamped || bad
		}
	}
	if tinted || clamped {
		shifted = WhiteOf(XY(light))
	}
	return Filtered{light.Scale(1 / light.Y()), shifted, transmittance, mired, clamped || held}
}

// BeforeLens gives the light that looks to a camera like white w through a stack of corrections before its lens: what
// ThroughGels makes w of. held is true where no light is so warm or so cool, and it is brought to the end of what is.
func BeforeLens(w White, stack []Filter) (before White, held bool) {
	mired, duv := 0.0, 0.0
	for _, f := range stack {
		mired += f.Mired
		duv += f.Duv
	}
	if mired == 0 && duv == 0 {
		return w, false
	}
	before = w.OnPlanck()
	wanted := Mired(before.Kelvin) - mired
	at := math.Min(math.Max(wanted, MinMired), MaxMired)
	return White{Kelvin: Mired(at), Duv: before.Duv - duv}, at != wanted
}

// ChannelFactors gives the filter or surface that turns light of chromaticity under into chromaticity
// xy, channel by channel, and passes or returns the share y of it. A colour that AP1 cannot hold
// is brought to its edge, and clamped is true. A neutral surface (xy equal to under) has three
// equal channels.
func ChannelFactors(xy, under [2]float64, y float64) (factor RGB, clamped bool) {
	light := FromXY(under, 1)
	wanted, clamped := FromXY(xy, 1).clamped()
	for i := range factor {
		factor[i] = wanted[i] / light[i]
	}
	return factor.Scale(y / light.Times(factor).Y()), clamped
}

package kit

import (
	"math"
	"slices"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// ShareAt gives the share of its stated light that the unit gives at a white: by the even way in mireds between those that are
// known, beyond them that of the nearest.
func (u *Unit) ShareAt(kelvin float64) float64 {
	all := u.ByWhite
	if len(all) == 0 {
		return 1
	}
	i := slices.IndexFunc(all, func(w WhiteShare) bool { return w.Kelvin >= kelvin })
	switch i {
	case -1:
		return all[len(all)-1].Share
	case 0:
		return all[0].Share
	}
	low, high := all[i-1], all[i]
	part := (1/low.Kelvin - 1/kelvin) / (1/low.Kelvin - 1/high.Kelvin)
	return low.Share + part*(high.Share-low.Share)
}

// dimByWhite takes the light of the white that the head is set to.
func (b *builder) dimByWhite(u *Unit) {
	share := u.ShareAt(b.head.native.Kelvin)
	if math.Abs(share-1) < 1e-12 {
		return
	}
	before := b.head.Source.Flux
	b.head.Source.Flux *= share
	b.step("set to "+unit.FormatKelvin(b.head.native.Kelvin), "flux x its share at this white", place(u.Origin), b.head.Source.Flux, "lm", before, share)
}

// whiteShares reads light by white, in ascending whites.
func whiteShares() source.Reader[[]WhiteShare] {
	one := quantity("a share of the light", "85 %", withoutFileUnits(percentOrNumber), unit.FormatPercent, 0.01, 2)
	return source.Reader[[]WhiteShare]{What: "light by white", Like: "{2700 K: 80 %, 5600 K: 100 %}",
		Schema: func() map[string]any {
			return map[string]any{"type": "object", "additionalProperties": one.Schema()}
		},
		Read: func(n *source.Node, c *source.Context) (all []WhiteShare, ok bool) {
			source.Each(n, "white", c, func(k *source.Key) {
				w, err := unit.ParseKelvin(k.Name)
				if err != nil || len(all) > 0 && all[len(all)-1].Kelvin >= w.Kelvin {
					c.ErrorAt(k.Span, CodeKit, "write {2700 K: 80 %, 5600 K: 100 %}", "light by white has a white before each share, the lowest first, and %q cannot stand here", k.Name)
					return
				}
				if share, fine := one.Read(k.Value, c); fine {
					all = append(all, WhiteShare{w.Kelvin, share})
				}
			})
			return all, len(all) > 0
		}}
}

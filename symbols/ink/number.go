package ink

import (
	"fmt"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r2"
)

// Round returns a length, mm, to the 0.01 mm that every format keeps.
func Round(mm float64) float64 { return math.Round(mm*100) / 100 }

func round(p r2.Vec) r2.Vec { return r2.Vec{X: Round(p.X), Y: Round(p.Y)} }

// AppendNumber appends v with at most a number of decimals and without trailing zeros: what text
// formats write. What is no number is written as 0.
func AppendNumber(to []byte, v float64, decimals int) []byte {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		v = 0
	}
	start := len(to)
	to = strconv.AppendFloat(to, v, 'f', decimals, 64)
	if decimals > 0 {
		for to[len(to)-1] == '0' {
			to = to[:len(to)-1]
		}
		if to[len(to)-1] == '.' {
			to = to[:len(to)-1]
		}
	}
	if string(to[start:]) == "-0" {
		to = append(to[:start], '0')
	}
	return to
}

// String is the colour as six figures after a #.
func (c Colour) String() string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

package meter

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan/unit"
)

// The columns of a row that hold stops.
const (
	stopColumn = 4
	overColumn = 5
)

func (r *Reading) row() []string {
	row := []string{r.Name, "", r.PlusMinus(), "", "", "", "", "", r.sharesInWords()}
	if r.Lux != nil {
		row[1], row[3] = unit.FormatLux(*r.Lux), unit.FormatFigures(*r.Footcandles)
	}
	if r.Luminance != nil {
		row[1] = unit.FormatLuminance(*r.Luminance)
	}
	if r.Stop != nil {
		row[stopColumn] = unit.FormatStop(*r.Stop)
	}
	if r.Over != nil {
		row[overColumn] = signed(*r.Over)
	}
	if r.CCT != nil {
		row[6] = unit.FormatKelvin(*r.CCT)
	}
	if r.Duv != nil {
		row[7] = unit.FormatDuv(*r.Duv)
	}
	for i := 1; i < len(row)-1; i++ {
		ofStops := i == stopColumn || i == overColumn
		row[i] = Mark(row[i], r.Struck() || ofStops && r.StopsStruck())
	}
	return row
}

// minError is the least error, in percent, that is printed: nobody acts on less.
const minError = 0.1

// PlusMinus is the stated error in words; "" where there is none.
func (r *Reading) PlusMinus() string {
	if r.Error == nil {
		return ""
	}
	return fmt.Sprintf("%.1f %%", math.Max(minError, 100**r.Error))
}

// signed prints stops over or under; nothing is neither.
func signed(stops float64) string {
	if s := fmt.Sprintf("%+.1f", stops); s != "-0.0" && s != "+0.0" {
		return s
	}
	return "0.0"
}

// aligned writes rows in columns: the first and the last to the left, figures to the right.
func aligned(b *strings.Builder, rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for c, cell := range row {
			widths[c] = max(widths[c], len([]rune(cell)))
		}
	}
	for _, row := range rows {
		var line strings.Builder
		for c, cell := range row {
			pad := strings.Repeat(" ", widths[c]-len([]rune(cell)))
			if c == 0 || c == len(row)-1 {
				line.WriteString(cell + pad + "  ")
			} else {
				line.WriteString(pad + cell + "  ")
			}
		}
		b.WriteString(strings.TrimRight(line.String(), " ") + "\n")
	}
}

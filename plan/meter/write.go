package meter

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/unit"
)

// WriteJSON writes sets as a list of one object a set-up. Lengths are metres; what has no
// meaning is null.
func WriteJSON(w io.Writer, sets []Set) error {
	list := make([]jsonSet, len(sets))
	for i := range sets {
		list[i] = sets[i].json()
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(list)
}

type jsonSet struct {
	Scene     string         `json:"scene"`
	Setup     *string        `json:"setup"`
	Readings  []jsonReading  `json:"readings"`
	Contrasts []jsonContrast `json:"contrasts"`
}

type jsonReading struct {
	Name        string      `json:"name"`
	Kind        string      `json:"kind"`
	At          [3]float64  `json:"at"`
	Facing      [3]float64  `json:"facing"`
	Lux         *float64    `json:"lux"`
	Luminance   *float64    `json:"luminance"`
	Footcandles *float64    `json:"footcandles"`
	Stop        *float64    `json:"stop"`
	Over        *float64    `json:"over"`
	CCT         *float64    `json:"cct"`
	Duv         *float64    `json:"duv"`
	XY          *[2]float64 `json:"xy"`
	Shares      []jsonShare `json:"shares"`
}

type jsonShare struct {
	Light string   `json:"light"`
	Path  string   `json:"path"`
	Via   []string `json:"via"`
	From  *string  `json:"from"`
	Lux   float64  `json:"lux"`
}

type jsonContrast struct {
	Person string  `json:"person"`
	Key    string  `json:"key"`
	Stops  float64 `json:"stops"`
	Ratio  float64 `json:"ratio"`
}

func (s *Set) json() jsonSet {
	out := jsonSet{Scene: s.Scene, Setup: orNull(s.Setup), Readings: []jsonReading{}, Contrasts: []jsonContrast{}}
	for i := range s.Readings {
		out.Readings = append(out.Readings, s.Readings[i].json())
	}
	for _, c := range s.Contrasts {
		out.Contrasts = append(out.Contrasts, jsonContrast{Person: c.Person, Key: c.Side, Stops: c.Stops, Ratio: c.Ratio})
	}
	return out
}

func (r *Reading) json() jsonReading {
	out := jsonReading{Name: r.Name, Kind: r.Kind, At: triple(r.At), Facing: triple(r.Facing),
		Lux: r.Lux, Luminance: r.Luminance, Footcandles: r.Footcandles, Stop: r.Stop, Over: r.Over,
		CCT: r.CCT, Duv: r.Duv, XY: r.XY, Shares: []jsonShare{}}
	for _, s := range r.Shares {
		via := s.Via
		if via == nil {
			via = []string{}
		}
		out.Shares = append(out.Shares, jsonShare{Light: s.Light, Path: s.Path, Via: via, From: orNull(s.From), Lux: s.Lux})
	}
	return out
}

func orNull(s string) *string {
	if s == "" {
		return nil
	}
	return &s
}

// triple drops the sign of a negative zero, which says nothing to a reader.
func triple(v r3.Vec) [3]float64 { return [3]float64{v.X + 0, v.Y + 0, v.Z + 0} }

// WriteTable writes sets as aligned text, a block a set-up.
func WriteTable(w io.Writer, sets []Set) error {
	var b strings.Builder
	for i := range sets {
		if i > 0 {
			b.WriteByte('\n')
		}
		sets[i].table(&b)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (s *Set) table(b *strings.Builder) {
	heading := s.Scene
	if s.Setup != "" {
		heading = strings.TrimPrefix(heading+", set-up "+s.Setup, ", ")
	}
	if heading != "" {
		b.WriteString(heading + "\n")
	}
	if len(s.Readings) == 0 {
		b.WriteString("no person and no meter: nothing is read\n")
		return
	}
	rows := [][]string{{"reading", "light", "fc", "T-stop", "over", "CCT", "Duv", "from"}}
	for i := range s.Readings {
		rows = append(rows, s.Readings[i].row())
	}
	aligned(b, rows)
	for _, c := range s.Contrasts {
		fmt.Fprintf(b, "%s: key side %s, %.1f stops over the fill side (%s : 1)\n", c.Person, c.Side, c.Stops, unit.Figures(c.Ratio))
	}
}

func (r *Reading) row() []string {
	row := []string{r.Name, "", "", "", "", "", "", r.from()}
	if r.Lux != nil {
		row[1], row[2] = unit.FormatLux(*r.Lux), unit.Figures(*r.Footcandles)
	}
	if r.Luminance != nil {
		row[1] = unit.FormatLuminance(*r.Luminance)
	}
	if r.Stop != nil {
		row[3] = unit.FormatStop(*r.Stop)
	}
	if r.Over != nil {
		row[4] = signed(*r.Over)
	}
	if r.CCT != nil {
		row[5] = unit.FormatKelvin(*r.CCT)
	}
	if r.Duv != nil {
		row[6] = unit.FormatDuv(*r.Duv)
	}
	return row
}

// signed prints stops over or under; nothing is neither.
func signed(stops float64) string {
	if s := fmt.Sprintf("%+.1f", stops); s != "-0.0" && s != "+0.0" {
		return s
	}
	return "0.0"
}

// from words the shares, the largest part first as the scene lists them: "day 93 %, fill 7 %".
func (r *Reading) from() string {
	total := 0.0
	for _, s := range r.Shares {
		total += s.Lux
	}
	var parts []string
	for _, s := range r.Shares {
		if percent := 100 * s.Lux / total; percent >= 0.5 {
			parts = append(parts, fmt.Sprintf("%s %.0f %%", s.Light, math.Round(percent)))
		}
	}
	return strings.Join(parts, ", ")
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

package explain_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"scrimshaw/plan/meter"
)

// redone is what a reader with a pencil gets who has the text alone: each formula worked out again from the figures that
// were printed without one.
type redone struct {
	t       *testing.T
	name    string
	known   map[string]float64 // by symbol
	lamps   map[string]float64 // by symbol: what each light gives
	reading float64
	stop    float64
	over    float64
	lines   int // with a formula
}

// redo works the text of one explanation out again.
func redo(t *testing.T, name, text string) *redone {
	t.Helper()
	r := &redone{t: t, name: name, known: map[string]float64{}, lamps: map[string]float64{}, over: math.NaN()}
	facing := map[string]float64{}
	for _, line := range joined(text) {
		switch {
		case strings.HasPrefix(line, "Light "):
			r.known = map[string]float64{}
			for symbol, v := range facing {
				r.known[symbol] = v
			}
		case line == "Together":
			r.known = map[string]float64{}
			for symbol, v := range r.lamps {
				r.known[symbol] = v
			}
		default:
			r.line(line)
			for _, symbol := range []string{"u", "v", "w"} {
				if v, ok := r.known[symbol]; ok && len(facing) < 3 {
					facing[symbol] = v
				}
			}
		}
	}
	return r
}

// joined are the lines of a text, those that go on with a sign of equality put together.
func joined(text string) (lines []string) {
	for _, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		if trimmed := strings.TrimSpace(line); strings.HasPrefix(trimmed, "= ") {
			lines[len(lines)-1] += " " + trimmed
		} else {
			lines = append(lines, line)
		}
	}
	return lines
}

var (
	columns   = regexp.MustCompile(`^\s+(\S.*?)\s{2,}(.*?)(?:\s+\[[^\]]*\])?$`)
	symbol    = regexp.MustCompile(`^[A-Za-z][0-9]*$`)
	valueOf   = regexp.MustCompile(`^(-?[0-9.]+)(?: ?(lm|lm/m²|cd|cd/lm|cd/m|cd/m²|lx|lx·s|m|m²|s|K|°|stops|mired|sr|1/m))?$`)
	lampTotal = regexp.MustCompile(`^L[0-9]+$`)
)

// line works one line out again.
func (r *redone) line(line string) {
	found := columns.FindStringSubmatch(strings.ReplaceAll(line, meter.UncomputedMark, ""))
	if found == nil {
		return
	}
	words, parts := found[1], strings.Split(found[2], " = ")
	last := valueOf.FindStringSubmatch(parts[len(parts)-1])
	if last == nil {
		return
	}
	printed, err := strconv.ParseFloat(last[1], 64)
	if err != nil {
		r.t.Fatal(err)
	}
	name, value := "", printed
	if symbol.MatchString(parts[0]) && len(parts) > 1 {
		name, parts = parts[0], parts[1:]
	}
	if len(parts) > 1 {
		r.lines++
		value = evaluate(r.t, parts[0], r.known, words)
		var symbols map[string]float64 // none stand in the numbers
		if len(parts) == 2 {
			symbols = r.known
		}
		again := evaluate(r.t, parts[len(parts)-2], symbols, words)
		least := map[string]float64{"°": smallAngle, "mired": smallMired}[last[2]]
		if !near(again, printed) && !(math.Abs(again-printed) < least) {
			r.t.Errorf("%s: %s\n%s is %g by its own figures", r.name, strings.TrimSpace(line), parts[0], again)
		}
	} else if name == "f" {
		if again, ok := integrate(r.known, words); ok {
			if r.lines++; !near(again, printed) {
				r.t.Errorf("%s: %s\nan integral gives %g", r.name, strings.TrimSpace(line), again)
			}
			value = again
		}
	}
	r.keep(name, words, value)
}

// keep keeps a value for the lines after it.
func (r *redone) keep(name, words string, value float64) {
	if name != "" {
		r.known[name] = value
	}
	switch {
	case lampTotal.MatchString(name):
		r.lamps[name] = value
	case words == "all lights":
		r.reading = value
	case words == "stop that the reading calls for":
		r.stop = value
	case strings.HasPrefix(words, "over "):
		r.over = value
	}
}

// smallAngle is how far, in degrees, an angle may be off that comes of the last digits of a cosine near one.
const smallAngle = 0.15

// smallMired is how far a difference of mireds may be off, that comes of the last digits of the two.
const smallMired = 0.002

// near says whether two figures are the same to half a per cent, or to the last digit of what was added up to get them.
func near(a, b float64) bool {
	return math.Abs(a-b) <= 0.005*math.Max(math.Abs(a), math.Abs(b))+1e-5
}

// evaluate works out a formula, with angles in degrees.
func evaluate(t *testing.T, formula string, known map[string]float64, words string) float64 {
	t.Helper()
	p := &parser{rest: tokens.FindAllString(formula, -1), known: known}
	v := p.sum()
	if len(p.rest) > 0 || p.bad != "" {
		t.Fatalf("%s: cannot read %q at %q %s", words, formula, p.rest, p.bad)
	}
	return v
}

var tokens = regexp.MustCompile(`[0-9.]+|[A-Za-zπ][A-Za-z0-9]*|[()+×/²^-]`)

// parser reads sums of products of powers.
type parser struct {
	rest  []string
	known map[string]float64
	bad   string
}

func (p *parser) next(one string) bool {
	if len(p.rest) > 0 && p.rest[0] == one {
		p.rest = p.rest[1:]
		return true
	}
	return false
}

func (p *parser) sum() float64 {
	v := p.product()
	for {
		switch {
		case p.next("+"):
			v += p.product()
		case p.next("-"):
			v -= p.product()
		default:
			return v
		}
	}
}

func (p *parser) product() float64 {
	v := p.power()
	for {
		switch {
		case p.next("×"):
			v *= p.power()
		case p.next("/"):
			v /= p.power()
		default:
			return v
		}
	}
}

func (p *parser) power() float64 {
	if p.next("-") {
		return -p.power()
	}
	v := p.atom()
	switch {
	case p.next("²"):
		return v * v
	case p.next("^"):
		return math.Pow(v, p.power())
	}
	return v
}

var functions = map[string]func(float64) float64{
	"sqrt": math.Sqrt, "log2": math.Log2,
	"cos":  func(v float64) float64 { return math.Cos(v * math.Pi / 180) },
	"acos": func(v float64) float64 { return math.Acos(math.Max(-1, math.Min(1, v))) * 180 / math.Pi },
}

func (p *parser) atom() float64 {
	if p.next("(") {
		v := p.sum()
		if !p.next(")") {
			p.bad = "a bracket is not closed"
		}
		return v
	}
	if len(p.rest) == 0 {
		p.bad = "it ends"
		return 0
	}
	word := p.rest[0]
	p.rest = p.rest[1:]
	if f, ok := functions[word]; ok {
		return f(p.atom())
	}
	if word == "π" {
		return math.Pi
	}
	if v, ok := p.known[word]; ok {
		return v
	}
	v, err := strconv.ParseFloat(word, 64)
	if err != nil {
		p.bad = fmt.Sprintf("nothing stands for %s", word)
	}
	return v
}

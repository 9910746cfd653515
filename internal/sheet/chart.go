package sheet

import (
	"regexp"
	"strings"
)

// Chart says how charts are drawn and what limits colour work keeps to. Yarns are
// the yarns of the palette in its order; those that were not given are empty.
type Chart struct {
	Symbols        string // "trade", "jis" or empty
	Colours, Float int    // 0: not given
	Yarns          [MaxYarns]ChartYarn
}

// ChartYarn is a yarn of the palette; a field that was not given is empty.
type ChartYarn struct{ Name, Colour, Held string }

// colourText matches a colour as pages write it.
var colourText = regexp.MustCompile(`^#[0-9A-Fa-f]{6}$`)

func (r *reader) chart() Chart {
	n := tree.find("chart")
	c := Chart{
		Symbols: r.choice("chart.symbols", n.find("symbols")),
		Colours: r.upTo("chart.colours", MaxYarns), Float: r.upTo("chart.float", 99),
	}
	for i := range min(r.sheet.Rows("chart.yarns"), len(c.Yarns)) {
		at := row("chart.yarns", i)
		y := ChartYarn{
			Name: r.sheet.Given(at + ".name"), Colour: r.sheet.Given(at + ".colour"),
			Held: r.choice(at+".held", n.find("yarns").find("held")),
		}
		if y.Colour != "" && !colourText.MatchString(y.Colour) {
			r.faults.Add(at+".colour", "is %q; write a # and six digits or letters from a to f, such as #B9694A", clip(y.Colour))
			y.Colour = ""
		}
		y.Colour = strings.ToUpper(y.Colour)
		c.Yarns[i] = y
	}
	return c
}

// upTo reads a whole number from 1 to high; 0 if it was not given.
func (r *reader) upTo(path string, high int) int {
	text := r.sheet.Given(path)
	if text == "" {
		return 0
	}
	n, ok := decimal(text)
	if !ok || n < 1 || n > float64(high) || n != float64(int(n)) {
		r.faults.Add(path, "is %s; write a whole number from 1 to %d", clip(text), high)
		return 0
	}
	return int(n)
}

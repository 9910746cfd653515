package picture

import (
	"math"
	"strconv"

	"thenar/internal/draw"
)

// Texture returns the lines over a rectangle that distinguish a yarn without colour, step
// mm apart: b level, c upright, d rising, e falling, f level and upright, g rising and
// falling, h broken; a has none.
func Texture(yarn string, x, y, w, h, step float64) string {
	var p draw.Pen
	switch yarn {
	case "b":
		level(&p, x, y, w, h, step, false)
	case "c":
		upright(&p, x, y, w, h, step)
	case "d":
		rising(&p, x, y, w, h, step)
	case "e":
		falling(&p, x, y, w, h, step)
	case "f":
		level(&p, x, y, w, h, 1.5*step, false)
		upright(&p, x, y, w, h, 1.5*step)
	case "g":
		rising(&p, x, y, w, h, 1.5*step)
		falling(&p, x, y, w, h, 1.5*step)
	case "h":
		level(&p, x, y, w, h, step, true)
	}
	return p.String()
}

func level(p *draw.Pen, x, y, w, h, step float64, broken bool) {
	for v := step / 2; v < h; v += step {
		if !broken {
			p.Move(x, y+v).Line(x+w, y+v)
			continue
		}
		for u := step / 2; u < w; u += 2 * step {
			p.Move(x+u, y+v).Line(x+min(u+step, w), y+v)
		}
	}
}

func upright(p *draw.Pen, x, y, w, h, step float64) {
	for v := step / 2; v < w; v += step {
		p.Move(x+v, y).Line(x+v, y+h)
	}
}

func rising(p *draw.Pen, x, y, w, h, step float64) {
	for v := step / 2; v < w+h; v += step {
		p.Move(x+min(v, w), y+max(v-w, 0)).Line(x+max(v-h, 0), y+min(v, h))
	}
}

func falling(p *draw.Pen, x, y, w, h, step float64) {
	for v := step / 2; v < w+h; v += step {
		p.Move(x+w-min(v, w), y+max(v-w, 0)).Line(x+w-max(v-h, 0), y+min(v, h))
	}
}

// Dark reports whether a fill (#RRGGBB) is so dark that ink on it has a contrast of less
// than 3 to 1, where contrast is (L1 + 0.05)/(L2 + 0.05) of the relative luminances (WCAG
// 2.2, 1.4.11). Lines on it are light; these then have at least 5 to 1.
func Dark(fill string) bool {
	l, ok := Luminance(fill)
	ink, _ := Luminance(inkColour)
	return ok && l+0.05 < 3*(ink+0.05)
}

// Luminance returns the relative luminance of a colour #RRGGBB, from 0 for black to 1 for
// white (WCAG 2.2); ok is false for any other text.
func Luminance(colour string) (l float64, ok bool) {
	if len(colour) != 7 || colour[0] != '#' {
		return 0, false
	}
	n, err := strconv.ParseUint(colour[1:], 16, 32)
	if err != nil {
		return 0, false
	}
	return 0.2126*linear(n>>16) + 0.7152*linear(n>>8&0xFF) + 0.0722*linear(n&0xFF), true
}

func linear(c uint64) float64 {
	v := float64(c) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

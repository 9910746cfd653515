package draw

import (
	"math"
	"strconv"
)

// Pen writes path data: M, L, C and Z with absolute coordinates.
type Pen struct {
	b     []byte
	rough bool
}

// Rough makes the pen write tenths, for a drawing so small that nobody sees more of it.
func (p *Pen) Rough() { p.rough = true }

// Move begins a line at a point.
func (p *Pen) Move(x, y float64) *Pen { return p.op('M', x, y) }

// Line goes straight to a point.
func (p *Pen) Line(x, y float64) *Pen { return p.op('L', x, y) }

// Curve goes to x, y along a cubic with two control points.
func (p *Pen) Curve(x1, y1, x2, y2, x, y float64) *Pen { return p.op('C', x1, y1, x2, y2, x, y) }

// Close goes back to where the line began.
func (p *Pen) Close() *Pen {
	p.b = append(p.b, 'Z', ' ')
	return p
}

// Rect adds a closed rectangle.
func (p *Pen) Rect(x, y, w, h float64) *Pen {
	return p.Move(x, y).Line(x+w, y).Line(x+w, y+h).Line(x, y+h).Close()
}

func (p *Pen) op(letter byte, numbers ...float64) *Pen {
	if p.b == nil {
		p.b = make([]byte, 0, 96) // enough for a rectangle
	}
	p.b = append(p.b, letter, ' ')
	for _, n := range numbers {
		if p.rough {
			n = math.Round(n*10) / 10
		}
		p.b = AppendNumber(p.b, n)
		p.b = append(p.b, ' ')
	}
	return p
}

// String returns the path data.
func (p *Pen) String() string {
	if len(p.b) == 0 {
		return ""
	}
	return string(p.b[:len(p.b)-1])
}

// AppendNumber appends a number with at most three decimals, without exponent
// or −0. NaN and infinities are written as 0.
func AppendNumber(b []byte, n float64) []byte {
	thousandths := math.Round(n * 1000)
	switch {
	case math.IsNaN(n) || math.IsInf(thousandths, 0) || thousandths == 0:
		return append(b, '0')
	case math.Abs(thousandths) >= 1e15: // beyond what a float64 tells apart by thousandths
		return strconv.AppendFloat(b, thousandths/1000, 'f', -1, 64)
	}
	k := int64(thousandths)
	if k < 0 {
		b, k = append(b, '-'), -k
	}
	b = strconv.AppendInt(b, k/1000, 10)
	if k %= 1000; k == 0 {
		return b
	}
	b = append(b, '.', byte('0'+k/100))
	if k %= 100; k == 0 {
		return b
	}
	b = append(b, byte('0'+k/10))
	if k %= 10; k == 0 {
		return b
	}
	return append(b, byte('0'+k))
}

// Number returns a number as in path data and attributes; see AppendNumber.
func Number(n float64) string { return string(AppendNumber(nil, n)) }

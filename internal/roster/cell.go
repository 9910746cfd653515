package roster

import (
	"fmt"
	"regexp"
	"strings"

	"thenar/internal/units"
)

// formula tells a cell that a spreadsheet would work out. It is never worked
// out here: its value is asked for.
func formula(cell string) bool {
	if cell == "" {
		return false
	}
	switch cell[0] {
	case '=', '+', '@':
		return true
	case '-':
		return strings.Trim(cell[1:], "0123456789.,") != "" || len(cell) == 1
	}
	return false
}

// reader puts the cells of a row into a student.
type reader struct {
	student Student
	unit    units.Unit
	reasons []string
	from    map[string]string // path → heading that it was read from
}

// wrong notes why a cell can't be used.
func (r *reader) wrong(c Column, cell, format string, args ...any) {
	r.reasons = append(r.reasons, fmt.Sprintf("%s: “%s” %s", c.Heading, clip(cell), fmt.Sprintf(format, args...)))
}

// clip keeps a cell short enough for a message.
func clip(s string) string {
	s = strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r < ' ' }), " ")
	if letters := []rune(s); len(letters) > 40 {
		return string(letters[:40]) + "…"
	}
	return s
}

// put reads one cell.
func (r *reader) put(c Column, cell string) {
	cell = strings.TrimSpace(strings.ReplaceAll(cell, "\u00a0", " "))
	if cell == "" || c.Field == "" {
		return
	}
	if formula(cell) {
		r.wrong(c, cell, "is a formula; paste its value")
		return
	}
	switch c.Field {
	case fieldName:
		r.student.Name = oneLine(cell)
	case fieldNote:
		r.student.Note = oneLine(cell)
	case fieldKnits:
		r.knits(c, cell)
	case fieldFrom:
		r.gaugeFrom(c, cell)
	case stitchesPath, roundsPath:
		r.gauge(c, cell)
	case "hand.size":
		r.set(c, c.Field, strings.TrimSpace(strings.TrimPrefix(strings.ToLower(cell), "size")))
	default:
		if strings.HasPrefix(c.Field, "hand.") {
			r.length(c, cell)
		} else {
			r.set(c, c.Field, cell)
		}
	}
}

func (r *reader) set(c Column, path, text string) {
	r.student.Sheet[path] = text
	r.from[path] = c.Heading
}

var suffix = regexp.MustCompile(`(?i)^(.*?)\s*(mm|cm|in|inch|inches|"|″)\.?$`)

// length reads a length, which may have its own unit, and gives it in that of
// the class.
func (r *reader) length(c Column, cell string) {
	u, typed := r.unit, cell
	if c.Unit != "" {
		u = c.Unit
	}
	if m := suffix.FindStringSubmatch(cell); m != nil {
		u, cell = unitNames[strings.ToLower(m[2])], m[1]
	}
	l, err := units.Parse(cell, u)
	if err != nil {
		r.wrong(c, typed, "%v", err)
		return
	}
	if u == r.unit {
		r.set(c, c.Field, cell)
		return
	}
	r.set(c, c.Field, l.Exact(r.unit))
}

var gaugeCell = regexp.MustCompile(`(?i)^([\d.,½]+)\s*(?:sts?|stitch|stitches|rnds?|rounds?|rows?)?\.?` +
	`(?:\s*(?:x|×|\*|/|by|and)\s*([\d.,½]+)\s*(?:rnds?|rounds?|rows?)?\.?)?` +
	`(?:\s*(?:over|per|in|to|/|=)?\s*([\d.,½]+)?\s*(mm|cm|in|inch|inches|"|″))?$`)

// gauge reads a count, perhaps with the other count and the length over which
// both were made: "24", "24 x 32", "24 sts over 4 in".
func (r *reader) gauge(c Column, cell string) {
	m := gaugeCell.FindStringSubmatch(cell)
	if m == nil || m[2] != "" && c.Field == roundsPath {
		r.wrong(c, cell, "is no count; write stitches and rounds such as 24 x 32, or 24 alone")
		return
	}
	over, u := c.Over, c.Unit
	if m[4] != "" {
		over, u = m[3], unitNames[strings.ToLower(m[4])]
		if over == "" {
			over = "1"
		}
	}
	counts := [2]string{m[1], m[2]}
	if m[4] != "" && m[3] == "" && m[2] != "" { // "24 sts / 10 cm": the length, not the rounds
		over, counts[1] = m[2], ""
	}
	if over == "" {
		over, u = GaugeOver(r.unit), r.unit
	}
	l, err := units.Parse(over, u)
	if err != nil {
		r.wrong(c, cell, "is counted over a length that can't be read; write 10 cm or 4 in")
		return
	}
	if c.Field == roundsPath {
		counts = [2]string{"", m[1]}
	}
	for i, p := range [2][2]string{{stitchesPath, widthPath}, {roundsPath, heightPath}} {
		if counts[i] != "" {
			r.set(c, p[0], counts[i])
			r.set(c, p[1], l.Exact(r.unit))
		}
	}
}

// oneLine is a text without line breaks and tabs.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// knits reads the direction.
func (r *reader) knits(c Column, cell string) {
	switch strings.ToLower(cell) {
	case "yes", "y", "x", "1", "true", "left", "from left", "left to right", "ltr":
		r.student.FromLeft = true
	case "no", "n", "0", "false", "right", "from right", "right to left", "rtl", "-":
		r.student.FromLeft = false
	default:
		r.wrong(c, cell, "is no direction; write left for who knits from left to right, or leave it empty")
	}
}

// gaugeFrom reads on what the gauge was counted.
func (r *reader) gaugeFrom(c Column, cell string) {
	switch strings.ToLower(cell) {
	case "swatch", "a swatch", "own swatch":
		r.student.Gauge = FromSwatch
	case "cuff", "the cuff", "on the needles", "needles":
		r.student.Gauge = FromCuff
	case "band", "ball band", "the ball band", "label", "ball":
		r.student.Gauge = FromBand
	default:
		r.wrong(c, cell, "is nothing that a gauge is counted on; write swatch, cuff or ball band")
	}
}

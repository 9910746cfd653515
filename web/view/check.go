package view

import (
	"slices"
	"strings"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// Check is the count check of written instructions.
type Check struct {
	app.Measures // as they were typed, and so is the text
	Text         string
	Checked      app.Checked
	Mitt         app.CheckedMitt // which a size is like, if a gauge was typed
	Faults       fault.Fields

	Drawn   bool // the chart of what was read is asked for
	Charts  app.ReadCharts
	Size    string // as it was chosen
	Section string // with which a chart is compared; empty: with all
	Table   string // of the chart that it is compared with
	Against *app.Against
}

// Bit is a piece of a line: At is the finding that begins here, from 1; 0: none.
type Bit struct {
	Text string
	At   int
}

// NumberedLine is a line of the text that was checked.
type NumberedLine struct {
	No   int
	Bits []Bit
}

// Lines returns the text with the places of its findings.
func (c *Check) Lines() []NumberedLine {
	raw := strings.Split(strings.TrimRight(strings.ReplaceAll(c.Checked.Text, "\r\n", "\n"), "\n"), "\n")
	lines := make([]NumberedLine, len(raw))
	for i, text := range raw {
		lines[i] = NumberedLine{i + 1, c.bits(i+1, []rune(text))}
	}
	return lines
}

// bits parts a line at its findings; one that lies within another is left to its list.
func (c *Check) bits(no int, line []rune) (bits []Bit) {
	from := 0
	for i := range c.Checked.Report.Findings {
		f := &c.Checked.Report.Findings[i]
		at := f.At.Column - 1
		if f.At.Line != no || at < from || at > len(line) {
			continue
		}
		to := len(line)
		if f.To.Line == no {
			to = min(to, f.To.Column-1)
		}
		if to <= at {
			continue
		}
		bits = append(bits, Bit{Text: string(line[from:at])}, Bit{string(line[at:to]), i + 1})
		from = to
	}
	return append(bits, Bit{Text: string(line[from:])})
}

// Heads are the columns of the table of sections: a name for each size, if there are several.
func (c *Check) Heads() []string {
	if len(c.Checked.Report.Sizes) == 1 {
		return []string{"stitches"}
	}
	return c.Checked.SizeNames()
}

// yarnRows are the amounts of yarn: of one and of a pair, in each size.
func (c *Check) yarnRows() (rows []yarnRow) {
	for _, y := range c.Checked.Yarn {
		one, pair := "one", "a pair"
		if y.Size != "" {
			one, pair = y.Size+", one", y.Size+", a pair"
		}
		if y.Open != "" {
			rows = append(rows, yarnRow{one, "open: " + y.Open, "", ""})
			continue
		}
		rows = append(rows, yarnRowOf(one, y.One, y.Ball), yarnRowOf(pair, y.Pair, y.Ball))
	}
	return rows
}

// mittFault is what keeps a mitt from being opened.
func (c *Check) mittFault() string {
	for _, path := range []string{"gauge", "mitt", "size"} {
		if text := c.Faults.Of(path); text != "" {
			return text
		}
	}
	return ""
}

// Open reports whether some counts stayed open.
func (c *Check) Open() bool {
	return slices.ContainsFunc(c.Checked.Report.Sizes, func(s app.CheckedSize) bool { return s.Open })
}

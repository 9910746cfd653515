package app

import (
	"fmt"
	"strings"

	"thenar/internal/charted"
	"thenar/internal/fault"
)

// MaxChartTable is the most bytes of a chart's table that are read.
const MaxChartTable = charted.MostTable

// Against is how the table of a chart and a text agree, round by round.
type Against struct {
	charted.Comparison
}

// Against compares what was read with a chart's table; with that of a section only, if one is
// named.
func (r ReadCharts) Against(raw []byte, section string) (Against, error) {
	if section = strings.TrimSpace(section); section != "" {
		if _, err := r.Only(section); err != nil {
			return Against{}, err
		}
	}
	table, err := charted.ReadTable(raw)
	if err != nil {
		return Against{}, fault.Fields{{Path: "against", Message: err.Error()}}
	}
	return Against{charted.Compare(r.List, table, section)}, nil
}

// Agrees reports whether both tell the same.
func (a Against) Agrees() bool { return len(a.Differences) == 0 }

// Head says what came of it in one sentence.
func (a Against) Head() string {
	switch n := len(a.Differences); {
	case n == 0 && a.Alike == 0:
		return "No round was found to compare."
	case n == 0:
		return fmt.Sprintf("The chart and the text tell the same: %s.", manyRounds(a.Alike))
	case n == 1:
		return fmt.Sprintf("The chart and the text differ in one place; %s alike.", manyRounds(a.Alike))
	default:
		return fmt.Sprintf("The chart and the text differ in %d places; %s alike.", n, manyRounds(a.Alike))
	}
}

func manyRounds(n int) string {
	if n == 1 {
		return "1 round"
	}
	return fmt.Sprintf("%d rounds", n)
}

// Where says where a difference stands: "line 12, row 3 of the chart".
func (a Against) Where(i int) string {
	d := a.Differences[i]
	var parts []string
	if d.Line > 0 {
		parts = append(parts, fmt.Sprintf("line %d", d.Line))
	}
	if d.Row > 0 {
		parts = append(parts, fmt.Sprintf("row %d of the chart", d.Row))
	}
	if d.Section != "" {
		parts = append(parts, d.Section)
	}
	return strings.Join(parts, ", ")
}

// Told is the comparison as lines: what came of it, how it was done, each difference.
func (a Against) Told() string {
	var b strings.Builder
	b.WriteString(a.Head() + "\n")
	for i, d := range a.Differences {
		b.WriteString(a.Where(i) + ": " + d.Message + "\n")
	}
	for _, how := range a.How {
		b.WriteString(how + "\n")
	}
	b.WriteString("Colours are not compared.\n")
	return b.String()
}

package view

import (
	"fmt"
	"slices"
)

// chosenSize returns the size that is drawn, or would be.
func (c *Check) chosenSize() string {
	if c.Drawn {
		return c.Charts.Size
	}
	sizes := c.Checked.SizeNames()
	if slices.Contains(sizes, c.Size) {
		return c.Size
	}
	return sizes[0]
}

func (c *Check) drawWords() string {
	if c.Drawn {
		return "Draw it again"
	}
	return "Draw the chart"
}

// foundHere is what was found in a round of a chart.
type foundHere struct {
	Name, Message string
	Line          int
}

// foundIn returns what was found in the rounds of a chart.
func (c *Check) foundIn(i int) (list []foundHere) {
	one := c.Charts.List[i]
	for k, row := range one.Grid.Rows {
		if row.Fault != "" {
			list = append(list, foundHere{row.Name(), row.Fault, one.Lines[k]})
		}
	}
	return list
}

// opened reports whether a chart is unfolded: the first, and those in which something was
// found.
func (c *Check) opened(i int) bool { return i == 0 || len(c.foundIn(i)) > 0 }

// chartSaid says how many rounds a chart has, and in how many something was found.
func (c *Check) chartSaid(i int) string {
	g := c.Charts.List[i].Grid
	text := fmt.Sprintf("%d %ss", len(g.Rows), g.Noun())
	if len(g.Rows) == 1 {
		text = "1 " + g.Noun()
	}
	if n := len(c.foundIn(i)); n > 0 {
		text += fmt.Sprintf(", %d to look at", n)
	}
	return text
}

// sectionTitles are the sections that are drawn, each once.
func (c *Check) sectionTitles() (list []string) {
	for _, one := range c.Charts.List {
		if name := string(one.Grid.Rows[0].Section); !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}

package view

import (
	"fmt"
	"strings"

	"thenar/internal/yarn"
)

// yarnRow is an amount of yarn in three units, each with its interval.
type yarnRow struct{ Name, Metres, Yards, Grams string }

func (a Answer) yarnRows() []yarnRow {
	e := &a.Out.Yarn
	rows := []yarnRow{a.yarnRow("one mitt", e.One), a.yarnRow("the pair", e.Pair)}
	if e.Swatch.Mean > 0 {
		rows = append(rows, a.yarnRow("of that, the swatch", e.Swatch))
	}
	for _, c := range a.Out.Colours {
		rows = append(rows, a.yarnRow("of the pair, "+a.Out.Charts.Palette.Or(c.ID).Name, c.Pair))
	}
	return rows
}

func (a Answer) yarnRow(name string, amount yarn.Amount) yarnRow {
	return yarnRowOf(name, amount, a.Out.Ball)
}

func yarnRowOf(name string, amount yarn.Amount, ball yarn.Ball) yarnRow {
	row := yarnRow{name, around(amount.Metres()), around(amount.Yards()), "–"}
	if grams := amount.Grams(ball); grams.Mean > 0 {
		row.Grams = around(grams)
	}
	return row
}

// around returns an amount in whole units, with its interval rounded outward.
func around(a yarn.Amount) string {
	mean, low, high := a.Rounded()
	return fmt.Sprintf("%d (%d to %d)", mean, low, high)
}

// yarnWords says what the estimate is based on, and what would make it better.
func (a Answer) yarnWords() string {
	e := &a.Out.Yarn
	parts := []string{fmt.Sprintf("%d loops of %.1f mm, from %s, with edges and tails; give or take %.0f\u00a0%%.", e.Loops, e.Loop, e.From.Words(), e.Half*100)}
	switch {
	case e.Balls == 1:
		parts = append(parts, "One ball is enough for the pair.")
	case e.Balls > 1:
		parts = append(parts, fmt.Sprintf("%d balls are enough for the pair.", e.Balls))
	}
	if e.Unlikely {
		parts = append(parts, "The swatch’s loops are far from what the gauge gives. Look at its stitches, rounds and weight again.")
	}
	if e.From == yarn.Geometry {
		parts = append(parts, "A swatch that is weighed or unravelled tells more (under Measure: yarn).")
	}
	return a.Out.Terms.Say(strings.Join(parts, " "))
}

// pairWords returns the yarn that the pair takes, in a few words.
func (a Answer) pairWords() string {
	return fmt.Sprintf("%s for the pair", metres(a.Out.Yarn.Pair))
}

// betweenWords returns the interval of the yarn for the pair, and how many
// balls that is if it is known.
func (a Answer) betweenWords() string {
	_, low, high := a.Out.Yarn.Pair.Metres().Rounded()
	text := fmt.Sprintf(", %d to %d.", low, high)
	switch n := a.Out.Yarn.Balls; {
	case n == 1:
		text += " One ball is enough."
	case n > 1:
		text += fmt.Sprintf(" %d balls are enough.", n)
	}
	return text
}

// metres returns an amount of yarn in whole metres.
func metres(a yarn.Amount) string {
	mean, _, _ := a.Metres().Rounded()
	return fmt.Sprintf("%d m", mean)
}

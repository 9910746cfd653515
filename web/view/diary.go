package view

import (
	"time"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// Sitting is what was done to a mitt in one part of a day, the newest first, as
// a knitter would write it into a diary.
type Sitting struct {
	When    string // as one speaks of it: "This afternoon", "Sunday evening"
	Date    string // empty where that says enough
	Moments []Past
}

// sittings divides moments, the newest first, into parts of days.
func sittings(list []Past, now time.Time) (days []Sitting) {
	for _, m := range list {
		when, date := partOfDay(m.Time, now)
		if n := len(days); n == 0 || days[n-1].When != when || days[n-1].Date != date {
			days = append(days, Sitting{When: when, Date: date})
		}
		last := &days[len(days)-1]
		last.Moments = append(last.Moments, m)
	}
	return days
}

// dayParts are the parts of a day by the hour at which each ends.
var dayParts = []struct {
	until int
	words string
}{{5, "night"}, {12, "morning"}, {18, "afternoon"}, {23, "evening"}, {24, "night"}}

// partOfDay says in which part of which day a time lies. What comes after
// midnight and before five belongs to the night of that date.
func partOfDay(t, now time.Time) (when, date string) {
	t, now = t.Local(), now.Local()
	part := ""
	for _, p := range dayParts {
		if t.Hour() < p.until {
			part = p.words
			break
		}
	}
	day := func(t time.Time) string { return t.Format(time.DateOnly) }
	switch {
	case day(t) == day(now) && part == "night":
		return "Tonight", ""
	case day(t) == day(now):
		return "This " + part, ""
	case day(t) == day(now.AddDate(0, 0, -1)):
		return "Yesterday " + part, ""
	}
	date = t.Format("2 January")
	if t.Year() != now.Year() {
		date = t.Format("2 January 2006")
	}
	return t.Weekday().String() + " " + part, date
}

// mostDrawn returns the chart on which most of a stroke's stitches lie, so that
// a moment is shown where it changed something; empty if nothing was drawn.
func (m *changes) mostDrawn() chart.View {
	count := map[stitch.Part]int{}
	for _, e := range m.net.Edits() {
		count[e.Section]++
	}
	for _, part := range m.reshaped {
		count[part]++
	}
	var most stitch.Part
	for _, part := range stitch.Parts() {
		if count[part] > count[most] {
			most = part
		}
	}
	if most == "" {
		return ""
	}
	return chart.ViewOf(most)
}

package view

import (
	"fmt"
	"time"
)

// Clock returns a time as a page shows it: the time of day for today, with the
// date otherwise.
func Clock(t, now time.Time) string {
	t, now = t.Local(), now.Local()
	if t.Year() == now.Year() && t.YearDay() == now.YearDay() {
		return t.Format("15:04")
	}
	return t.Format("2 Jan 2006, 15:04")
}

// inDays returns a day as one speaks of it.
func inDays(day string, now time.Time) string {
	switch day {
	case now.Format(time.DateOnly):
		return "today"
	case now.AddDate(0, 0, -1).Format(time.DateOnly):
		return "yesterday"
	}
	at, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return "at a time that is not known"
	}
	return at.Format("2 January 2006")
}

// sizeWords returns a file size for people to read.
func sizeWords(bytes int64) string {
	switch {
	case bytes < 1000:
		return fmt.Sprintf("%d bytes", bytes)
	case bytes < 1_000_000:
		return fmt.Sprintf("%.0f kB", float64(bytes)/1e3)
	}
	return fmt.Sprintf("%.1f MB", float64(bytes)/1e6)
}

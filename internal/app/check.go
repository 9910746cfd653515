package app

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"thenar/internal/fault"
	"thenar/internal/tally"
	"thenar/internal/written"
)

// MaxWritten is the most bytes of instructions that are checked at a time.
const MaxWritten = written.MostBytes

// Checked is written instructions, worked stitch by stitch.
type Checked struct {
	Text   string
	Report *tally.Report
}

// CheckWritten works written instructions, every size by itself. A text that is too long, or
// is no text, is refused.
func CheckWritten(text string) (Checked, error) {
	switch {
	case len(text) > MaxWritten:
		return Checked{}, fault.New(fault.Invalid, "text: has %d bytes; at most %d are checked at a time, so check it in parts", len(text), MaxWritten)
	case strings.Count(text, "\n") >= written.MostLines:
		return Checked{}, fault.New(fault.Invalid, "text: has over %d lines; check it in parts", written.MostLines)
	case !utf8.ValidString(text):
		return Checked{}, fault.New(fault.Invalid, "text: has bytes that are no letters; save it as UTF-8")
	case strings.TrimSpace(text) == "":
		return Checked{}, fault.New(fault.Invalid, "text: is empty; paste the instructions")
	}
	return Checked{text, tally.Work(written.Read(text))}, nil
}

// Told is the report as lines: one for each finding, or one that says that all comes out.
func (c Checked) Told() string {
	if c.Report.Sound() {
		return c.Sound() + "\n"
	}
	var b strings.Builder
	for i := range c.Report.Findings {
		b.WriteString(c.Report.Findings[i].Line() + "\n")
	}
	return b.String()
}

// Sound says that all comes out, and how much was counted.
func (c Checked) Sound() string {
	rounds := 0
	for _, s := range c.Report.Sizes {
		rounds += len(s.Rounds)
	}
	switch n := len(c.Report.Sizes); {
	case rounds == 0:
		return "No round was found to count."
	case n > 1:
		return fmt.Sprintf("All counts come out: %d sizes, %d rounds.", n, rounds)
	}
	return fmt.Sprintf("All counts come out: %d rounds.", rounds)
}

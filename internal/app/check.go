package app

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"thenar/internal/fault"
	"thenar/internal/sheet"
	"thenar/internal/tally"
	"thenar/internal/units"
	"thenar/internal/words"
	"thenar/internal/written"
)

// MaxWritten is the most bytes of instructions that are checked at a time.
const MaxWritten = written.MostBytes

// Checked is written instructions, worked stitch by stitch.
type Checked struct {
	Text     string
	Report   *tally.Report
	Sections []CheckedSection // what each of them comes to
	Yarn     []CheckedYarn    // of each size, if a gauge was typed
	YarnFrom string           // what that is worked out from

	typed  Measures
	fabric fabric
	read   *written.Text
}

// SizeNames are what the sizes are called, with the hand where there are two.
func (c Checked) SizeNames() (list []string) {
	for _, s := range c.Report.Sizes {
		list = append(list, strings.TrimSpace(s.Name+" "+s.Hand))
	}
	return list
}

// traced is what each round of a size does, by the size's place.
func (c Checked) traced(at int) tally.Trace {
	trace, _ := tally.TraceOf(c.read, c.Report.Sizes[at].Name, c.Report.Sizes[at].Hand)
	return trace
}

// noSize is what is wrong with a size that the text hasn't.
func (c Checked) noSize(size string) error {
	return fault.Fields{{Path: "size", Message: fmt.Sprintf("is %q; the text has: %s", size, strings.Join(c.SizeNames(), ", "))}}
}

// CheckedSize is one size of a text that was checked.
type CheckedSize = tally.Size

// CheckedSection is what a section comes to in each size.
type CheckedSection struct {
	Name  string
	Cells []CheckedCell
}

// CheckedCell is what a section comes to in one size: its stitches from the first round to
// the last, and with a gauge how wide it is at its last and how long.
type CheckedCell struct {
	Count, Size string
}

// CheckWritten works written instructions, every size by itself. A text that is too long, or
// is no text, is refused.
func CheckWritten(text string) (Checked, error) { return CheckMeasured(text, Measures{}) }

// countable adds what is wrong with a text that can't be checked.
func countable(faults *fault.Fields, text string) {
	switch {
	case len(text) > MaxWritten:
		faults.Add("text", "has %d bytes; at most %d are checked at a time, so check it in parts", len(text), MaxWritten)
	case strings.Count(text, "\n") >= written.MostLines:
		faults.Add("text", "has over %d lines; check it in parts", written.MostLines)
	case !utf8.ValidString(text):
		faults.Add("text", "has bytes that are no letters; save it as UTF-8")
	case strings.TrimSpace(text) == "":
		faults.Add("text", "is empty; paste the instructions")
	}
}

// Told is the report as lines: one for each finding, or one that says that all comes out; then
// the yarn of each size.
func (c Checked) Told() string {
	var b strings.Builder
	if c.Report.Sound() {
		b.WriteString(c.Sound() + "\n")
	}
	for i := range c.Report.Findings {
		b.WriteString(c.Report.Findings[i].Line() + "\n")
	}
	for _, y := range c.Yarn {
		b.WriteString(y.Line() + "\n")
	}
	return b.String()
}

// Sound says that all comes out, and how much was counted.
func (c Checked) Sound() string {
	names := map[string]bool{}
	least, most, rows := 0, 0, 0
	for i, s := range c.Report.Sizes {
		names[s.Name] = true
		if n := len(s.Rounds); i == 0 {
			least, most = n, n
		} else {
			least, most = min(least, n), max(most, n)
		}
		for _, r := range s.Rounds {
			if r.Row {
				rows++
			}
		}
	}
	noun := "round"
	if rows > 0 {
		noun = "row"
	}
	switch {
	case most == 0:
		return "No round was found to count."
	case len(names) > 1 && least < most:
		return fmt.Sprintf("All counts come out: %d sizes, %d to %s each.", len(names), least, words.Plural(most, noun))
	case len(names) > 1:
		return fmt.Sprintf("All counts come out: %d sizes, %s each.", len(names), words.Plural(most, noun))
	case least < most: // a hand has other sections
		return fmt.Sprintf("All counts come out: %d and %s.", least, words.Plural(most, noun))
	}
	return fmt.Sprintf("All counts come out: %s.", words.Plural(most, noun))
}

// CheckMeasured works instructions as CheckWritten does, and tells what each section comes to;
// with the stitches and rounds on 10 cm, if they are typed, also its size, and the yarn.
func CheckMeasured(text string, m Measures) (Checked, error) {
	var faults fault.Fields
	f := m.read(&faults)
	countable(&faults, text)
	if faults.Has("text") {
		return Checked{}, faults
	}
	c := Checked{Text: text, typed: m, fabric: f, read: written.Read(text)}
	c.Report = tally.Work(c.read)
	c.Sections = sectionsOf(c.Report, f.sts, f.rds)
	c.Yarn, c.YarnFrom = f.yarnOf(text, c.Report)
	return c, faults.Err()
}

// per10 reads how many stitches or rounds there are on 10 cm; 0: it isn't told.
func per10(faults *fault.Fields, path, text string) float64 {
	if text = strings.TrimSpace(text); text == "" {
		return 0
	}
	n, ok := sheet.Count(text)
	if !ok || n < 1 || n > 200 {
		faults.Add(path, "is %q; write a number from 1 to 200, such as 24", text)
		return 0
	}
	return n
}

// sectionsOf returns what the sections of a report come to, in the order in which they are
// worked.
func sectionsOf(r *tally.Report, sts, rds float64) (list []CheckedSection) {
	at := map[string]int{}
	for size, s := range r.Sizes {
		for from := 0; from < len(s.Rounds); {
			to := from
			for to+1 < len(s.Rounds) && s.Rounds[to+1].Section == s.Rounds[from].Section {
				to++
			}
			name := cmp.Or(s.Rounds[from].Section, "at the beginning")
			i, ok := at[name]
			if !ok {
				i = len(list)
				at[name] = i
				list = append(list, CheckedSection{name, make([]CheckedCell, len(r.Sizes))})
			}
			list[i].Cells[size] = cellOf(s.Rounds[from:to+1], sts, rds)
			from = to + 1
		}
	}
	return list
}

// cellOf returns what rounds come to.
func cellOf(rounds []tally.Round, sts, rds float64) (c CheckedCell) {
	first, last, most := rounds[0].After, rounds[len(rounds)-1].After, 0
	for _, r := range rounds {
		most = max(most, r.After)
	}
	switch {
	case first < 0 || last < 0:
		return CheckedCell{Count: "open"}
	case most > max(first, last):
		c.Count = fmt.Sprintf("%d → %d → %d", first, most, last)
	case first == last:
		c.Count = strconv.Itoa(last)
	default:
		c.Count = fmt.Sprintf("%d → %d", first, last)
	}
	var sizes []string
	if sts > 0 {
		sizes = append(sizes, words.Both(float64(last)*100/sts, units.CM)+" round")
	}
	if rds > 0 {
		sizes = append(sizes, words.Both(float64(len(rounds))*100/rds, units.CM)+" long")
	}
	c.Size = strings.Join(sizes, "\n")
	return c
}

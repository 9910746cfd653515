package repeat

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Words says what became of a repeat: "6 times, 4 times up; 5 plain stitches: 3 before, 2
// after". noun is what its rounds are called.
func (r *Repeat) Words(c Came, noun string) string {
	if c.Nowhere != "" {
		return "laid nowhere: " + c.Nowhere
	}
	list := []string{Times(c.Across) + ", " + Times(c.Up) + " up"}
	if r.Over == Gusset {
		list[0] = "in the gusset, " + Times(c.Up) + " up"
	}
	if n := c.Plain(); n > 0 {
		list = append(list, plain(c))
	}
	switch {
	case c.Left > 0 && r.Cut:
		list = append(list, fmt.Sprintf("the uppermost is cut after %s", count(c.Left, noun)))
	case c.Left > 0:
		list = append(list, count(c.Left, noun)+" left over")
	}
	return strings.Join(list, "; ")
}

// plain says how many stitches stay plain, and where.
func plain(c Came) string {
	text := count(c.Plain(), "plain stitch")
	switch {
	case c.Before == 0:
		return text + " at the end"
	case c.After == 0:
		return text + " at the beginning"
	}
	return fmt.Sprintf("%s, %d before and %d after", text, c.Before, c.After)
}

// Times says how often: "once", "twice", "3 times".
func Times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

func count(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case strings.HasSuffix(noun, "ch"):
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Note is what is kept of what became of a repeat, to be compared with what becomes of it on
// another plan: "6 across, 4 up, 5 plain, 2 left".
func (c Came) Note() string {
	return fmt.Sprintf("%d across, %d up, %d plain, %d left", c.Across, c.Up, c.Plain(), c.Left)
}

var noted = regexp.MustCompile(`^(\d{1,4}) across, (\d{1,4}) up, (\d{1,4}) plain, (\d{1,4}) left$`)

// Since says how a repeat came out otherwise than a note says: "6 → 7 times". It is empty if
// it came out alike, or if there is no note that can be read.
func (c Came) Since(note string) string {
	found := noted.FindStringSubmatch(note)
	if found == nil || note == c.Note() {
		return ""
	}
	var was [4]int
	for i := range was {
		was[i], _ = strconv.Atoi(found[i+1]) // digits, as found
	}
	var list []string
	for i, one := range []struct {
		now  int
		what string
	}{{c.Across, "times"}, {c.Up, "times up"}, {c.Plain(), "plain"}, {c.Left, "left over"}} {
		if was[i] != one.now {
			list = append(list, fmt.Sprintf("%d → %d %s", was[i], one.now, one.what))
		}
	}
	return strings.Join(list, ", ")
}

package repeat

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

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

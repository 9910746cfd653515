package paper

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// TestChartPartsCountAsTheChartDoes prints a mitt whose hand has colours: what a part
// says of its stitches are the numbers under them, and the words say where the
// colours are. The tail of the cast-on is the same wherever it stands.
func TestChartPartsCountAsTheChartDoes(t *testing.T) {
	doc := project.Samples()[0]
	marks := chart.Marks{}
	for n := 1; n <= 9; n += 2 {
		marks[chart.Anchor{Section: stitch.Hand, Round: 2, Column: fmt.Sprint("H", n)}] = chart.Mark{Colour: "b"}
	}
	s := derived(t, doc, marks)
	for _, large := range []bool{false, true} {
		o := Usual()
		o.Large = large
		var all []string
		for _, page := range Handout(s, o) {
			all = append(all, strings.Join(textsOf(page), " "))
		}
		parts := regexp.MustCompile(`stitches ([0-9–, ]+) at its foot`)
		found := 0
		for _, page := range all {
			if m := parts.FindStringSubmatch(page); m != nil {
				found++
				for _, end := range regexp.MustCompile(`\d+`).FindAllString(m[1], -1) {
					if !large { // large numbers leave out those between
						assert.Contains(t, strings.Fields(page), end)
					}
				}
			}
			assert.NotContains(t, page, "columns")
		}
		assert.Positive(t, found)
		text := strings.Join(all, " ")
		assert.Contains(t, text, "k1 rust")
		tails := regexp.MustCompile(`tail of ([0-9.]+ cm)|Tails ([0-9.]+ cm)`).FindAllStringSubmatch(text, 2)
		assert.Len(t, tails, 2)
		assert.Equal(t, tails[0][1]+tails[0][2], tails[1][1]+tails[1][2], "sheet and words say the same")
	}
}

package paper

import (
	"html"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/project"
)

// The outline of a handout, as Poppler reads it: its name, and each of its headings once,
// in the order in which they stand.
func TestHandoutHasAnOutline(t *testing.T) {
	pages := sheet(t, project.Samples()[0], A4)
	var list []string
	for _, m := range regexp.MustCompile(`<item page="\d+">(.*?)</item>`).FindAllStringSubmatch(run(t, "pdftohtml", "-xml", "-i", "-enc", "UTF-8", "-stdout", onPaper(t, pages)), -1) {
		list = append(list, html.UnescapeString(m[1]))
	}
	assert.Equal(t, []string{
		"Marit’s reading mitts", "My own numbers", "Chart of the thumb gusset", "How it is worked", "Words", "Cuff", "Plain rounds", "Thumb gusset", "Hand", "Thumb", "Cautions",
	}, list)
}

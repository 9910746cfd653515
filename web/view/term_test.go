package view

import (
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"

	"thenar/internal/words"
)

// A term is a word of its sentence that opens the line which explains it by
// itself, as every disclosure does; the sentence around it stays whole.
func TestTermIsExplainedWhereItStands(t *testing.T) {
	doc := shown(t, explained(words.UK, "Bind off after the gusset; the gusset ends there.", words.TermGusset, words.TermBindOff))
	assert.Equal(t, []string{"Cast off", "gusset"}, doc.Find("div.para > details.term > summary").Map(func(_ int, s *goquery.Selection) string { return s.Text() }))
	assert.Contains(t, doc.Find("details").Eq(1).Find(".term-says").Text(), "room for the root of the thumb")
	assert.Equal(t, 0, doc.Find("details[open]").Length(), "nothing is opened unasked")
	assert.Equal(t, 2, doc.Find(`details[name="term"]`).Length(), "one is open at a time")
	doc.Find(".term-says").Remove()
	assert.Equal(t, "Cast off after the gusset; the gusset ends there.", strings.Join(strings.Fields(doc.Find(".para").Text()), " "))
	assert.Equal(t, "Cast off after the gusset", strings.SplitN(doc.Find(".para").Text(), ";", 2)[0], "no space is added or lost")
}

// A term may take the form that its sentence needs, and stand in a list.
func TestTermByItself(t *testing.T) {
	doc := shown(t, termAs(words.US, words.TermStrand, "strands"))
	assert.Equal(t, "strands", doc.Find("summary").Text())
	assert.Contains(t, doc.Find(".term-says").Text(), "carried loosely along the back")
	doc = shown(t, termList(words.UK, words.TermGauge, words.TermTail))
	assert.Equal(t, []string{"tension", "tail"}, texts(doc.Find(`ul[aria-label] > li > details > summary`)))
}

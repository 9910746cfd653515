package view

import (
	"slices"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/roster"
	"thenar/internal/sheet"
)

// classOf returns the page of a class of students without plans.
func classOf(t *testing.T, students ...roster.Student) Class {
	t.Helper()
	doc := roster.New("Tuesday")
	_, err := doc.Add(students...)
	require.NoError(t, err)
	c := app.Class{ID: 4, Doc: doc}
	for _, s := range doc.Students {
		c.Lines = append(c.Lines, roster.Line{Student: s})
	}
	return NewClass(c)
}

// sends returns what a form of a page sends, with the fields that stand elsewhere
// and name it (HTML, 4.10.17.3), as name=value in their order.
func sends(page *goquery.Document, form string) (list []string) {
	for _, e := range page.Find(`#` + form + ` input, #` + form + ` select, [form="` + form + `"]`).EachIter() {
		_, checked := e.Attr("checked")
		switch {
		case e.AttrOr("type", "") == "checkbox" && !checked:
		case goquery.NodeName(e) == "select":
			list = append(list, e.AttrOr("name", "")+"="+e.Find("[selected]").AttrOr("value", e.Find("option").First().AttrOr("value", "")))
		default:
			list = append(list, e.AttrOr("name", "")+"="+e.AttrOr("value", ""))
		}
	}
	return list
}

// The list has a column for who knits from left to right and one for notes, both
// typed there, each field named after its student; one form sends all of them,
// and what is saved beside them.
func TestRemarksStandBesideTheirStudents(t *testing.T) {
	t.Parallel()
	page := parsed(t, ClassPage(classOf(t, roster.Student{Name: "Ada", FromLeft: true}, roster.Student{Name: "Bertil", Note: "comes late"})))
	heads := texts(page.Find(".class-table thead th"))
	assert.Equal(t, []string{"Student", "Left to right", "Hand"}, heads[:3])
	assert.Equal(t, "Note", heads[len(heads)-1])
	for _, row := range page.Find(".class-table tbody > tr:first-child").EachIter() {
		assert.Equal(t, len(heads), row.Children().Length())
	}
	assert.Equal(t, []string{
		"knits-1=left", "student=1", "knits-was-1=left", "note-was-1=", "note-1=",
		"student=2", "knits-was-2=", "note-was-2=comes late", "note-2=comes late", "move=1", "before=",
	}, sends(page, "roster"))
	assert.Equal(t, []string{"Ada knits from left to right", "Note for Ada", "Bertil knits from left to right", "Note for Bertil"},
		page.Find(`.class-table [aria-label]`).Map(func(_ int, e *goquery.Selection) string { return e.AttrOr("aria-label", "") }))
	assert.Zero(t, page.Find("form form").Length(), "no form stands in another")
}

// A student is moved by two choices and one button, however long the list is;
// the first button, which Enter presses, saves (HTML, 4.10.21.2).
func TestStudentsAreMovedByChoices(t *testing.T) {
	t.Parallel()
	var list []roster.Student
	for _, name := range strings.Fields("Ada Bertil Celia Dilan") {
		list = append(list, roster.Student{Name: name})
	}
	form := parsed(t, ClassPage(classOf(t, list...))).Find("form#roster")
	assert.Equal(t, "/classes/4/remarks", form.AttrOr("action", ""))
	assert.Equal(t, []string{"Save the notes", "Move"}, texts(form.Find("button")))
	assert.Equal(t, []string{"save", "move"}, form.Find("button").Map(func(_ int, b *goquery.Selection) string { return b.AttrOr("value", "") }))
	assert.Equal(t, []string{"Ada", "Bertil", "Celia", "Dilan"}, texts(form.Find(`[name="move"] option`)))
	assert.Equal(t, []string{"Ada", "Bertil", "Celia", "Dilan", "(end of the list)"}, texts(form.Find(`[name="before"] option`)))
	alone := parsed(t, ClassPage(classOf(t, list[0])))
	assert.Zero(t, alone.Find(`[name="move"]`).Length(), "there is no order of one")
}

// Printing is the one main action of a class that has students, and says what it
// takes, once it was counted; a script counts it where the link is.
func TestPrintingIsTheMainAction(t *testing.T) {
	t.Parallel()
	c := classOf(t, roster.Student{Name: "Ada"}, roster.Student{Name: "Bertil"})
	cost := func() string { return strings.Join(texts(parsed(t, ClassPage(c)).Find("#cost")), "|") }
	page := parsed(t, ClassPage(c))
	action := page.Find(".main-action")
	require.Equal(t, []string{"Print the class set"}, texts(action))
	assert.Equal(t, "/classes/4/print", action.AttrOr("href", ""))
	assert.Equal(t, "cost", action.AttrOr("aria-describedby", ""))
	assert.Equal(t, "2 students, count the sheets", cost())
	assert.Equal(t, "/classes/4/cost", page.Find("a[data-count]").AttrOr("href", ""))
	c.Cost = &app.Cost{Pages: 9, Sheets: 9}
	assert.Equal(t, "2 students, 9 sheets, one side", cost())
	c.Cost = &app.Cost{Pages: 2, Sheets: 1, BothSides: true}
	assert.Equal(t, "2 students, 1 sheet, both sides", cost())
	c.Lines[0].Asks = []sheet.Question{{Words: "Is that so?"}}
	assert.Equal(t, "1 of 2 students, 1 sheet, both sides", cost(), "who is asked about has no handout")
	many := classOf(t, slices.Repeat([]roster.Student{{Name: "x"}}, 101)...)
	assert.Equal(t, "101 students, in parts", parsed(t, ClassPage(many)).Find("#cost").Text(), "more than one PDF holds")
	assert.Equal(t, []string{"Read the table"}, texts(parsed(t, ClassPage(classOf(t))).Find(".main-action")), "first there have to be students")
}

// Remarks that are not saved stand as they were typed; a fault stands at its
// note, and what another window saved beside what was typed here.
func TestUnsavedRemarksStandAsTyped(t *testing.T) {
	t.Parallel()
	doc := roster.New("Tuesday")
	_, err := doc.Add(roster.Student{Name: "Ada", Note: "mine"}, roster.Student{Name: "Bertil", Note: "long"})
	require.NoError(t, err)
	u := app.UnsavedRemarks{
		Class: app.Class{ID: 4, Doc: doc}, Faults: map[int]string{2: "is long"}, Others: []int{1},
		Saved: map[int]app.Remark{1: {FromLeft: true, Note: "theirs"}, 2: {}},
	}
	for _, s := range doc.Students {
		u.Lines = append(u.Lines, roster.Line{Student: s})
	}
	page := parsed(t, ClassPage(NewUnsavedRemarks(u)))
	assert.Equal(t, []string{
		"student=1", "knits-was-1=left", "note-was-1=theirs", "note-1=mine",
		"student=2", "knits-was-2=", "note-was-2=", "note-2=long", "move=1", "before=",
	}, sends(page, "roster"))
	assert.Equal(t, "is long", page.Find(".has-fault .fault-message").Text())
	assert.Equal(t, page.Find(".has-fault .fault-message").AttrOr("id", "x"), page.Find(`[name="note-2"]`).AttrOr("aria-describedby", "y"))
	assert.Equal(t, []string{"Ada: Knits", "from right to left", "from left to right", "Ada: Note", "mine", "theirs"}, texts(page.Find(".versions tbody tr").Children()))
}

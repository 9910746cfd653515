package web

import (
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// paperText is what a program of others reads in a PDF that the app gives.
func (a *served) paperText(address string) string {
	a.t.Helper()
	pdf := a.get(address)
	require.Equal(a.t, http.StatusOK, pdf.status, pdf.body)
	file := filepath.Join(a.t.TempDir(), "sheet.pdf")
	require.NoError(a.t, os.WriteFile(file, []byte(pdf.body), 0o600))
	return run(a.t, "pdftotext", "-layout", file, "-")
}

// A hand of 195 cm is asked about in the unit and with the decimal sign of the
// table, is not planned, and no handout is printed for it until somebody says
// yes; another value asks again.
func TestHandBeyondEveryHand(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	path := a.class()
	a.table(path, "name\thand (cm)\tstitches\trounds\nAda\t18,5\t24\t32\nBertil\t195\t24\t32\n", nil)
	const asked = "Hand circumference: 195 cm lies outside the usual 15 to 25 cm. 19,5?"
	page := a.get(path)
	assert.Contains(t, page.doc().Find(".needs-a-look").Text(), asked)
	assert.Equal(t, make([]string, 8), cells(page, "Bertil"), "no numbers")
	set := a.paperText(path + "/print.pdf?paper=a4")
	assert.Contains(t, set, "Ada · page 1 of")
	assert.NotContains(t, set, "Bertil · page")
	assert.Contains(t, set, "Not printed: "+asked)
	assert.Contains(t, a.get(path+"/print").doc().Find("#main .message").Text(), "Bertil is left out. "+asked)
	one := a.get(path + "/print?student=2")
	assert.Zero(t, one.doc().Find(".sheet").Length())
	assert.Contains(t, one.doc().Find("#main").Text(), asked)
	assert.Equal(t, http.StatusBadRequest, a.get(path+"/print.pdf?student=2").status)
	assert.Contains(t, a.get(path+"/students/2").doc().Find("#main").Text(), asked)

	answer := func(text, means string) {
		t.Helper()
		got := a.post(path+"/students/2/sure", url.Values{"path": {"hand.hand_circumference"}, "text": {text}, "answer": {means}})
		require.Equal(t, http.StatusSeeOther, got.status, got.body)
	}
	answer("196", "yes") // asked about another value
	assert.Contains(t, a.get(path).doc().Find(".needs-a-look").Text(), asked)
	answer("195", "yes")
	assert.NotContains(t, a.get(path).doc().Find(".needs-a-look").Text(), asked)
	assert.Contains(t, a.paperText(path+"/print.pdf?paper=a4"), "Bertil · page 1 of")

	form := a.get(path + "/students/2").fields(".student-form")
	form.Set("hand.hand_circumference", "1,97")
	require.Equal(t, http.StatusSeeOther, a.post(path+"/students/2", form).status)
	assert.Contains(t, a.get(path).doc().Find(".needs-a-look").Text(), "1,97 cm lies outside the usual 9,4 to 22 cm. 19,7?")
	answer("1,97", "instead")
	assert.Equal(t, "19,7", a.get(path+"/students/2").fields(".student-form").Get("hand.hand_circumference"))
	assert.NotEmpty(t, cells(a.get(path), "Bertil")[1])
}

// A mitt is asked about before it is printed, and its answer is kept with it.
func TestMittBeyondEveryHand(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	a.sample()
	save := func(text string) {
		form := a.form("/mitts/1")
		form.Set("unit", "in")
		form.Set("hand.hand_circumference", text)
		for name := range form { // all else is filled
			if strings.HasPrefix(name, "hand.") && name != "hand.hand_circumference" {
				form.Set(name, "")
			}
		}
		require.Equal(t, http.StatusSeeOther, a.post("/mitts/1", form).status)
	}
	save("19")
	const asked = "Hand circumference: 19 in lies outside the usual 5⅞ to 9⅞ in. 7½?"
	got := a.get("/mitts/1/print")
	require.Equal(t, http.StatusOK, got.status)
	assert.Zero(t, got.doc().Find(".sheet").Length())
	assert.Contains(t, got.doc().Find("#main").Text(), asked)
	for _, address := range []string{"/mitts/1/print.pdf", "/mitts/1/wall", "/mitts/1/wall.pdf"} {
		no := a.get(address)
		assert.Equal(t, http.StatusBadRequest, no.status, address)
		assert.Contains(t, no.body, "19 in lies outside", address)
	}
	require.Equal(t, http.StatusSeeOther, a.post("/mitts/1/sure", url.Values{"path": {"hand.hand_circumference"}, "text": {"19"}, "answer": {"yes"}}).status)
	assert.Positive(t, a.get("/mitts/1/print").doc().Find(".sheet").Length())
	save("20")
	assert.Zero(t, a.get("/mitts/1/print").doc().Find(".sheet").Length(), "another value asks again")
	require.Equal(t, http.StatusSeeOther, a.post("/mitts/1/sure", url.Values{"path": {"hand.hand_circumference"}, "text": {"20"}, "answer": {"instead"}}).status)
	assert.Equal(t, "7⅞", a.form("/mitts/1").Get("hand.hand_circumference"))
}

package web

import (
	"bytes"
	"fmt"
	"io"
	"mime/multipart"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// class begins a class on the sample mitt with some students, and gives its
// address.
func (a *served) class() string {
	a.t.Helper()
	a.sample()
	to := a.post("/classes", url.Values{"name": {"Tuesday"}, "mitt": {"1"}})
	require.Equal(a.t, http.StatusSeeOther, to.status)
	return to.header.Get("Location")
}

// table sends a table as the page's form does.
func (a *served) table(path, text string, file []byte) answer {
	a.t.Helper()
	var b bytes.Buffer
	form := multipart.NewWriter(&b)
	require.NoError(a.t, form.WriteField("table", text))
	if file != nil {
		part, err := form.CreateFormFile("file", "class.csv")
		require.NoError(a.t, err)
		_, err = part.Write(file)
		require.NoError(a.t, err)
	}
	require.NoError(a.t, form.Close())
	return a.do(a.request("POST", path+"/table", form.FormDataContentType(), b.String()))
}

const tuesday = "name\thand (cm)\tsize\tstitches\trounds\tgauge from\tcast on\tknits\n" +
	"Ada\t18,5\t\t24\t32\t\t\t\nBertil\t21.5\t\t22\t30\tball band\t\t\nCelia\t\t7½\t\t\t\t\tleft\nDilan\t17.2\t\t26\t36\tcuff\t38\t\nFinn\t\t\t24\t32\t\t\t\n"

// cells are the numbers of a student's row in the teacher's table.
func cells(r answer, name string) []string {
	var list []string
	for _, row := range r.doc().Find(".class-table tbody tr").EachIter() {
		if row.Find("th").Text() == name {
			for _, c := range row.Find("td.num").EachIter() {
				list = append(list, c.Text())
			}
		}
	}
	return list
}

// A pasted table: every student has their own numbers, who has to be looked at
// says why, and the wrong row is named and kept to be mended.
func TestClassTable(t *testing.T) {
	a := newApp(t)
	path := a.class()
	got := a.table(path, tuesday+"Gro\twide\t\t24\t32\t\t\t\n", nil)
	require.Equal(t, http.StatusOK, got.status)
	said := got.doc().Find("#read").Text()
	assert.Contains(t, said, "5 students added.")
	assert.Contains(t, said, "Line 7 (Gro)")
	assert.Contains(t, said, "“wide” is not a number")
	assert.Equal(t, "name\thand (cm)\tsize\tstitches\trounds\tgauge from\tcast on\tknits\nGro\twide\t\t24\t32\t\t\t", got.doc().Find("#field-table").Text())

	page := a.get(path)
	assert.Contains(t, page.doc().Find("#table").Text(), "5 students; check 4.")
	ada, dilan := cells(page, "Ada"), cells(page, "Dilan")
	require.Len(t, ada, 8)
	assert.Equal(t, "24.0", ada[0])
	assert.Equal(t, "38", dilan[1], "what is on the needles stays")
	assert.NotEqual(t, ada, cells(page, "Bertil"))
	looks := page.doc().Find(".needs-a-look").Text()
	for _, says := range []string{"Stitches from the ball band are a guess", "No swatch of their own", "Stitches counted on the cuff", "No hand yet"} {
		assert.Contains(t, looks, says)
	}

	again := a.table(path, tuesday, nil) // sent twice it does not double
	assert.Contains(t, again.doc().Find("#read").Text(), "0 students added.")
	assert.Contains(t, again.doc().Find("#read").Text(), "5 were here already.")
	file := a.table(path, "", []byte("Name;Hand (mm)\r\nHei\xf0ar;190\r\n"))
	require.Equal(t, http.StatusOK, file.status)
	assert.NotEmpty(t, cells(a.get(path), "Heiðar"))
	bad := a.table(path, "hand,stitches\n19,24", nil)
	assert.Equal(t, http.StatusBadRequest, bad.status)
	assert.Contains(t, bad.doc().Find("#fault-table").Text(), "has no headings")
	assert.Equal(t, "hand,stitches\n19,24", bad.doc().Find("#field-table").Text())
}

// A student by hand: what can't be used is told at its field with everything
// else as it was typed; what is changed in two windows is asked about.
func TestStudent(t *testing.T) {
	a := newApp(t)
	path := a.class()
	form := url.Values{"name": {"Ivo"}, "hand.hand_circumference": {"big"}, "note": {"<script>alert(1)</script>"}, "gauge_from": {""}}
	bad := a.post(path+"/students", form)
	assert.Equal(t, http.StatusBadRequest, bad.status)
	assert.Contains(t, bad.doc().Find(`[id="fault-student-hand.hand_circumference"]`).Text(), "is not a number")
	assert.Equal(t, "<script>alert(1)</script>", bad.doc().Find(`.student-form [name="note"]`).First().AttrOr("value", ""))
	form.Set("hand.hand_circumference", "18")
	require.Equal(t, http.StatusSeeOther, a.post(path+"/students", form).status)

	first, second := a.get(path+"/students/1").fields(".student-form"), a.get(path+"/students/1").fields(".student-form")
	first.Set("note", "one")
	require.Equal(t, http.StatusSeeOther, a.post(path+"/students/1", first).status)
	second.Set("hand.hand_circumference", "19")
	conflict := a.post(path+"/students/1", second)
	assert.Equal(t, http.StatusConflict, conflict.status)
	assert.Equal(t, "19", conflict.fields(".student-form").Get("hand.hand_circumference"), "what was typed is not lost")
	assert.Equal(t, []string{"Note: <script>alert(1)</script> | one", "Hand: 19 | 18"}, versions(conflict))
	require.Equal(t, http.StatusSeeOther, a.post(path+"/students/1", conflict.fields(".student-form")).status, "saved over the other")
	assert.Equal(t, "19", a.get(path+"/students/1").fields(".student-form").Get("hand.hand_circumference"))

	require.Equal(t, http.StatusSeeOther, a.post(path+"/students", url.Values{"name": {"Jo"}, "hand.size": {"8"}}).status)
	moved := a.post(path+"/remarks", url.Values{"do": {"move"}, "move": {"2"}, "before": {"1"}})
	assert.Equal(t, path+"#table", moved.header.Get("Location"))
	var order []string
	for _, th := range a.get(path).doc().Find(".class-table tbody th").EachIter() {
		order = append(order, th.Text())
	}
	assert.Equal(t, []string{"Jo", "Ivo"}, order)
	a.post(path+"/students/1/remove", nil)
	assert.Equal(t, http.StatusNotFound, a.get(path+"/students/1").status)
	for _, at := range []string{"/classes/9", "/classes/x", path + "/students/x", path + "/students/9", path + "/print?student=9"} {
		assert.Equal(t, http.StatusNotFound, a.get(at).status, at)
	}
}

// What is fixed for all holds for all but who has their own; a number that no
// class can have is refused with everything as it was typed.
func TestFixedForAll(t *testing.T) {
	a := newApp(t)
	path := a.class()
	a.table(path, tuesday, nil)
	form := a.get(path).fields("#about form")
	form.Set("pins.cast_on", "40")
	form.Set("place", "the old school")
	form.Set("pins.bridge", "many")
	bad := a.post(path, form)
	assert.Equal(t, http.StatusBadRequest, bad.status)
	assert.Contains(t, bad.doc().Find(`#about [id="fault-class-pins.bridge"]`).Text(), "write a whole number from 0 to 10")
	assert.Equal(t, "the old school", bad.fields("#about form").Get("place"))
	form.Set("pins.bridge", "")
	require.Equal(t, http.StatusSeeOther, a.post(path, form).status)
	page := a.get(path)
	for name, want := range map[string]string{"Ada": "40", "Bertil": "40", "Dilan": "38"} {
		assert.Equal(t, want, cells(page, name)[1], name)
	}
	other := page.fields("#about form")
	other.Set("yarn", "wool")
	require.Equal(t, http.StatusSeeOther, a.post(path, other).status)
	form.Set("name", "Wednesday")
	between := a.post(path, form)
	assert.Equal(t, http.StatusConflict, between.status, "another window saved in between")
	assert.Equal(t, []string{"Name: Wednesday | Tuesday", "Yarn: nothing | wool"}, versions(between))
}

// versions are what a page shows of two versions, yours and the other.
func versions(r answer) (list []string) {
	for _, row := range r.doc().Find(".versions tbody tr").EachIter() {
		cell := func(i int) string { return strings.TrimSpace(row.Find("td").Eq(i).Text()) }
		list = append(list, row.Find("th").Text()+": "+cell(0)+" | "+cell(1))
	}
	return list
}

// The class set: the teacher's summary, then every student in the order of the
// table with their own numbers; who knits from left to right has the make ones
// exchanged; on both sides of the paper every handout begins on an odd page.
func TestClassSet(t *testing.T) {
	a := newApp(t)
	path := a.class()
	a.table(path, tuesday, nil)
	got := a.get(path + "/print")
	require.Equal(t, http.StatusOK, got.status)
	text := got.doc().Find(".sheets").Text()
	at := 0
	for _, name := range []string{"Tuesday", "Ada · page 1", "Bertil · page 1", "Celia · page 1", "Dilan · page 1", "Finn · page 1"} {
		next := strings.Index(text[at:], name)
		require.GreaterOrEqual(t, next, 0, "%s stands in its order", name)
		at += next
	}
	one := a.get(path + "/print?student=3").doc().Find(".sheets").Text()
	assert.Contains(t, one, "knitted from left to right")
	assert.Less(t, strings.Index(one, "k1, M1R"), strings.Index(one, ", M1L, k1 |"))
	assert.NotContains(t, one, "Bertil")
	finn := a.get(path + "/print?student=5").doc().Find(".sheets").Text()
	assert.Contains(t, finn, "No hand yet")
	assert.Contains(t, finn, "wrist crease")

	both := a.get(path + "/print?paper=a4&double=1")
	for i, sheet := range both.doc().Find(".sheet svg").EachIter() {
		if label := sheet.AttrOr("aria-label", ""); strings.Contains(label, ", page 1 of") {
			assert.Zero(t, i%2, "%s begins on an odd page", label)
		}
	}
	pdf := a.get(path + "/print.pdf?paper=letter&large=1")
	assert.Equal(t, "application/pdf", pdf.header.Get("Content-Type"))
	assert.True(t, strings.HasPrefix(pdf.body, "%PDF-"))

	a.post(path+"/print", url.Values{"print": {"paper=letter&grey=1&pieces=plan"}})
	kept := a.get(path + "/print")
	assert.Equal(t, "letter", kept.doc().Find(`[name="paper"][checked]`).AttrOr("value", ""))
	assert.NotContains(t, kept.doc().Find(".sheets").Text(), "Key")
	silly := a.get(path + "/print?paper=a5&cell=-3&pieces=poem")
	assert.Equal(t, http.StatusOK, silly.status)
	assert.Contains(t, silly.doc().Find(".print-form").Text(), "write a width from 2 to 20 mm")
	assert.Equal(t, "-3", silly.doc().Find(`[name="cell"]`).AttrOr("value", ""), "what was typed stands there")
}

// Tables and blank sheets answer on both papers, as pages and as PDFs; what
// can't be asked says so at its field.
func TestSheetsToHandOut(t *testing.T) {
	a := newApp(t)
	a.sample()
	for _, path := range []string{"/paper/measure", "/paper/ruler", "/paper/grid", "/mitts/1/wall", "/mitts/1/sizes", "/mitts/1/print"} {
		for _, paper := range []string{"a4", "letter"} {
			got := a.get(path + "?paper=" + paper)
			require.Equal(t, http.StatusOK, got.status, path)
			assert.Positive(t, got.doc().Find(".sheet svg").Length(), path)
			pdf := a.get(path + ".pdf?paper=" + paper)
			assert.True(t, strings.HasPrefix(pdf.body, "%PDF-"), path)
		}
	}
	assert.Contains(t, a.get("/mitts/1/sizes?from=3").doc().Find(".print-form").Text(), "write a number from 4 to 13")
	assert.Contains(t, a.get("/paper/grid?stitches=lots").doc().Find(".print-form").Text(), "write digits such as 24")
	hand, fingers := a.get("/paper/measure?paper=a4").doc(), a.get("/paper/measure?fingers=1&paper=a4").doc()
	assert.Equal(t, 1+hand.Find(".sheet svg").Length(), fingers.Find(".sheet svg").Length(), "a page of the fingers")
	assert.Equal(t, 1, fingers.Find(".print-form input[name=fingers][checked]").Length())
	assert.Contains(t, fingers.Find(`a[href^="/paper/measure.pdf"]`).AttrOr("href", ""), "fingers=1")
	sizes := a.get("/mitts/1/sizes?by=girth&from=17&to=19&step=0.5&gauge_from=24&gauge_to=24&gauge_step=2").doc().Find(".sheets").Text()
	assert.Contains(t, sizes, "18.5 cm")
	assert.Contains(t, sizes, "24 stitches and 32 rounds over 10 cm")
}

// A class keeps the mitt as it stood when it was taken, and says that it was
// changed since.
func TestPatternIsKept(t *testing.T) {
	a := newApp(t)
	path := a.class()
	a.table(path, "name,hand\nAda,18.5\n", nil)
	before := cells(a.get(path), "Ada")
	form := a.form("/mitts/1")
	form.Set("gauge.swatches[0].stitches", "30")
	require.Equal(t, http.StatusSeeOther, a.post("/mitts/1", form).status)
	page := a.get(path)
	assert.Equal(t, before, cells(page, "Ada"))
	assert.Contains(t, page.doc().Find("#about").Text(), "the mitt was changed since")
	require.Equal(t, http.StatusSeeOther, a.post(path+"/pattern", url.Values{"mitt": {"1"}}).status)
	assert.Equal(t, "30.0", cells(a.get(path), "Ada")[0])
}

// BenchmarkClassSet lays out class sets as a page and as PDFs, as a browser asks for
// them, and says how the time of a PDF grows from 30 students to 100: 3.3 is linear.
func BenchmarkClassSet(b *testing.B) {
	a := newApp(b)
	a.sample()
	took := map[string]float64{}
	for _, set := range []struct {
		students int
		kind     string
	}{{30, ""}, {30, ".pdf"}, {100, ".pdf"}} {
		path := a.post("/classes", url.Values{"name": {"Class"}, "mitt": {"1"}}).header.Get("Location")
		var table strings.Builder
		table.WriteString("name,hand,stitches,rounds\n")
		for i := range set.students {
			fmt.Fprintf(&table, "Student %d,%.1f,%d,%d\n", i, 16+float64(i%60)/10, 20+i%12, 28+i%14)
		}
		a.table(path, table.String(), nil)
		name := fmt.Sprintf("%d%s", set.students, set.kind)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				a.packed(path + "/print" + set.kind)
			}
			took[name] = float64(b.Elapsed().Nanoseconds()) / float64(b.N)
			b.ReportMetric(took[name]/1e6, "ms")
			if set.students == 100 {
				b.ReportMetric(took[name]/took["30"+set.kind], "times-30")
			}
		})
	}
}

// packed reads a page as it is sent to a browser, which unpacks it in its own time.
func (a *served) packed(path string) {
	a.t.Helper()
	req := a.request("GET", path, "", "")
	req.Header.Set("Accept-Encoding", "gzip")
	resp, err := a.server.Client().Do(req)
	require.NoError(a.t, err)
	defer resp.Body.Close()
	require.Equal(a.t, http.StatusOK, resp.StatusCode, path)
	_, err = io.Copy(io.Discard, resp.Body)
	require.NoError(a.t, err)
}

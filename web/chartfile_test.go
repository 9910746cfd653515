package web

import (
	"encoding/xml"
	"errors"
	"fmt"
	"image/png"
	"io"
	"mime"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// The names by which files are saved, read as a browser reads the header (RFC 6266;
// letters beyond ASCII as RFC 8187 encodes them), and by one that knows only ASCII.
func TestPartNames(t *testing.T) {
	plain := regexp.MustCompile(`filename="([a-z0-9.-]+)"`)
	for title, want := range map[string][2]string{
		"Marit’s reading mitts":   {"marits-reading-mitts-gusset.svg"},
		"Marit's  Reading-Mitts":  {"marits-reading-mitts-gusset.svg"},
		"Zoë & Ménard":            {"zoe-menard-gusset.svg", "zoë-ménard-gusset.svg"},
		"Zoe\u0308":               {"zoe-gusset.svg", "zoë-gusset.svg"},
		"Łódź, Ærø, Straße":       {"lodz-aero-strasse-gusset.svg", "łódź-ærø-straße-gusset.svg"},
		"Đặng Thị Hường":          {"dang-thi-huong-gusset.svg", "đặng-thị-hường-gusset.svg"},
		"Варежки 2":               {"2-gusset.svg", "варежки-2-gusset.svg"},
		"Γάντια":                  {"mitt-gusset.svg", "γάντια-gusset.svg"},
		"../../etc/passwd":        {"etc-passwd-gusset.svg"},
		`a"; b="c\` + "\r\nX: y":  {"a-b-c-x-y-gusset.svg"},
		"’’":                      {"mitt-gusset.svg"},
		"":                        {"mitt-gusset.svg"},
		strings.Repeat("a", 300):  {strings.Repeat("a", maxName) + "-gusset.svg"},
		strings.Repeat("ab ", 90): {strings.TrimSuffix(strings.Repeat("ab-", 27)[:maxName], "-") + "-gusset.svg"},
	} {
		w := httptest.NewRecorder()
		partName(w, title, "gusset", ".svg")
		value := w.Header().Get("Content-Disposition")
		how, with, err := mime.ParseMediaType(value)
		require.NoError(t, err, value)
		assert.Equal(t, "attachment", how)
		if want[1] == "" {
			want[1] = want[0]
			assert.NotContains(t, value, "filename*", "one name is enough")
		}
		assert.Equal(t, want[1], with["filename"], title)
		old := plain.FindStringSubmatch(value)
		require.NotNil(t, old, value)
		assert.Equal(t, want[0], old[1])
	}
}

// written is a text of a picture with its place.
type written struct {
	text, class string
	x, y        float64
}

// svgTexts reads the texts of a picture, and the classes of its paths, with a reader of
// XML that knows nothing else of it. Places are counted in the group that they stand in.
func svgTexts(t *testing.T, svg string) (texts []written, classes []string) {
	t.Helper()
	inText := false
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return texts, classes
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			attr := map[string]string{}
			for _, a := range token.Attr {
				attr[a.Name.Local] = a.Value
			}
			switch inText = token.Name.Local == "text"; {
			case inText:
				w := written{class: attr["class"]}
				w.x, _ = strconv.ParseFloat(attr["x"], 64)
				w.y, _ = strconv.ParseFloat(attr["y"], 64)
				texts = append(texts, w)
			case token.Name.Local == "path":
				classes = append(classes, attr["class"])
			}
		case xml.EndElement:
			inText = false
		case xml.CharData:
			if inText {
				texts[len(texts)-1].text += string(token)
			}
		}
	}
}

// alongFoot returns the numbers at the foot of a chart and the names of the areas under
// them, from left to right.
func alongFoot(texts []written) (numbers []int, areas []string) {
	foot := 0.0
	for _, w := range texts {
		if w.class == "label" {
			foot = max(foot, w.y)
		}
	}
	slices.SortStableFunc(texts, func(a, b written) int { return int(a.x - b.x) })
	for _, w := range texts {
		switch {
		case w.class == "area":
			areas = append(areas, w.text)
		case w.class == "label" && w.y == foot:
			n, _ := strconv.Atoi(w.text)
			numbers = append(numbers, n)
		}
	}
	return numbers, areas
}

// The file of a chart says what the written instructions say: how many stitches the
// first round has, how many of them are the gusset's, and what is crossed first.
func TestChartFiles(t *testing.T) {
	t.Parallel()
	counts := regexp.MustCompile(`\((\d+), of which (\d+) in the gusset\)`)
	crosses := regexp.MustCompile(`crosses the (\w+), then the (\w+)`)
	for _, side := range []string{"right", "left"} {
		for _, painted := range []bool{false, true} {
			a := newApp(t)
			at := a.sample()
			form := a.form(at)
			form.Set("side", side)
			require.Equal(t, http.StatusSeeOther, a.post(at, form).status)
			if painted {
				after := a.form(at).Get("after")
				require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":`+after+`,"edits":[`+
					`{"section":"gusset","round":3,"column":"B1","layer":"colour","value":"b"},{"section":"gusset","round":2,"column":"H1","layer":"stitch","value":"m1l"},`+
					`{"section":"gusset","round":3,"column":"B1","layer":"note","value":"look here"},{"section":"gusset","round":5,"column":"","layer":"needles","value":"here"}]}`).status)
			}
			words := a.get(at + "/words.txt").body
			words = words[strings.Index(words, "Thumb gusset\n"):]
			first, order := counts.FindStringSubmatch(words), crosses.FindStringSubmatch(a.get(at+"/words.txt").body)
			require.NotNil(t, first)
			require.NotNil(t, order)
			all, err := strconv.Atoi(first[1])
			require.NoError(t, err)
			gusset, err := strconv.Atoi(first[2])
			require.NoError(t, err)
			for _, layout := range []string{"wedge", "columns"} {
				name := fmt.Sprint(side, painted, layout)
				svg := a.get(at + "/chart.svg?layout=" + layout)
				require.Equal(t, http.StatusOK, svg.status)
				texts, classes := svgTexts(t, svg.body)
				numbers, areas := alongFoot(texts)
				want := []int{all - 2, all - 1, all}
				for n := range gusset + 3 {
					want = append(want, n+1)
				}
				slices.Reverse(want)
				assert.Equal(t, want, numbers, name)
				assert.Equal(t, []string{order[1], "gusset", order[2]}, areas, "worked from right to left: %s", name)
				for _, mark := range []string{"painted", "note-pin", "fault", "float", "needles", "changed", "ruler", "cursor"} {
					assert.NotContains(t, classes, mark, name)
				}
				assert.Equal(t, painted, slices.Contains(classes, "yarn yarn-b"), name)
				_, classes = svgTexts(t, a.get(at+"/chart.svg?marks=1&layout="+layout).body)
				for _, mark := range []string{"painted", "note-pin", "fault", "needles"} {
					assert.Equal(t, painted, slices.Contains(classes, mark), "%s %s", mark, name)
				}
				texts, _ = svgTexts(t, a.get(at+"/chart.svg?view=hand&layout="+layout).body)
				_, areas = alongFoot(texts)
				assert.Equal(t, []string{order[1], "gusset", order[2]}, areas, "all round: %s", name)
			}
		}
	}
}

// A picture is chosen by a form: what is ticked stands in the file, in all formats.
func TestChartFileForm(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sample()
	doc := a.get(at + "?view=hand&layout=columns&cells=square").doc()
	form := doc.Find("#chart-file")
	require.Equal(t, 1, form.Length())
	assert.Equal(t, at+"/chart.svg", form.AttrOr("action", ""))
	for name, ticked := range map[string]bool{"title": true, "key": true, "caption": false, "marks": false, "boxed": false} {
		box := form.Find(`input[type="checkbox"][name="` + name + `"]`)
		require.Equal(t, 1, box.Length(), name)
		_, on := box.Attr("checked")
		assert.Equal(t, ticked, on, name)
	}
	for name, value := range map[string]string{"view": "hand", "layout": "columns", "cells": "square"} {
		assert.Equal(t, value, doc.Find(`input[form="chart-file"][name="`+name+`"]`).AttrOr("value", ""), name)
	}
	for _, format := range []string{"png", "pdf"} {
		assert.Equal(t, 1, form.Find(`button[formaction="`+at+`/chart.`+format+`"]`).Length(), format)
	}

	name := doc.Find("h1").Text()
	query := "?title=1&key=1&caption=1&text=" + url.QueryEscape("Rust on cream, for Zoë.")
	pdf := a.get(at + "/chart.pdf" + query)
	require.Equal(t, http.StatusOK, pdf.status)
	assert.Equal(t, "application/pdf", pdf.header.Get("Content-Type"))
	assert.Contains(t, pdf.header.Get("Content-Disposition"), "-gusset.pdf")
	text := pdfText(t, pdf.body, "pdftotext", "-layout", "FILE", "-")
	for _, part := range []string{name, "Chart of the thumb gusset, right hand", "Rust on cream, for Zoë.", "knit", "palm", "back"} {
		assert.Contains(t, text, part)
	}
	svg := a.get(at + "/chart.svg" + query)
	texts, _ := svgTexts(t, svg.body)
	assert.True(t, slices.ContainsFunc(texts, func(w written) bool { return w.text == "Rust on cream, for Zoë." }))

	// One page, as large as the picture: a point is 1/72 in.
	info := pdfText(t, pdf.body, "pdfinfo", "FILE")
	assert.Regexp(t, `Pages: +1\n`, info)
	size := regexp.MustCompile(`Page size: +([\d.]+) x ([\d.]+) pts`).FindStringSubmatch(info)
	require.NotNil(t, size)
	picture, err := png.Decode(strings.NewReader(a.get(at + "/chart.png" + query).body))
	require.NoError(t, err)
	for i, side := range []string{"width", "height"} {
		points, err := strconv.ParseFloat(size[i+1], 64)
		require.NoError(t, err)
		mm, err := strconv.ParseFloat(regexp.MustCompile(side + `="([\d.]+)mm"`).FindStringSubmatch(svg.body)[1], 64)
		require.NoError(t, err)
		assert.InDelta(t, mm, points*25.4/72, 0.01, side)
		assert.InDelta(t, mm/25.4*300, float64([]int{picture.Bounds().Dx(), picture.Bounds().Dy()}[i]), 1, "300 dots an inch")
	}

	bare := pdfText(t, a.get(at+"/chart.pdf?text=not+asked+for").body, "pdftotext", "FILE", "-")
	for _, part := range []string{name, "Chart of", "knit", "not asked"} {
		assert.NotContains(t, bare, part)
	}
	assert.Contains(t, pdfText(t, a.get(at+"/chart.pdf?caption=1").body, "pdftotext", "-layout", "FILE", "-"), "right to left")
	long := a.get(at + "/chart.svg?caption=1&text=" + strings.Repeat("a", 301))
	assert.Equal(t, http.StatusBadRequest, long.status)
	assert.Contains(t, long.body, "caption: has 301 characters; 300 are the most")
	assert.Empty(t, long.header.Get("Content-Disposition"), "what went wrong is no file")
}

// pdfText runs a program of poppler on a PDF and returns what it says.
func pdfText(t *testing.T, raw, program string, args ...string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "chart.pdf")
	require.NoError(t, os.WriteFile(file, []byte(raw), 0o600))
	args = slices.Clone(args)
	args[slices.Index(args, "FILE")] = file
	out, err := exec.Command(testenv.Program(t, program), args...).Output()
	require.NoError(t, err)
	return string(out)
}

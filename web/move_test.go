package web

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"image"
	"image/jpeg"
	"math/rand/v2"
	"mime/multipart"
	"net/http"
	"net/url"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/exportfile"
	"thenar/internal/store"
	"thenar/internal/testenv"
)

// odd are texts that no knitter types and that arrive all the same: broken
// letters, control characters, breaks of a line, marks that turn the writing
// round, more than a field holds.
var odd = []string{
	"", "second mitt", "\xff", "a\x00b", "line\nbreak", "one\r\ntwo", "\x7f", "\u0085", "\u2028", "\u202egnol", "\ufeffbom", "\ufffd", "%ff%00",
	"e\u0301", "🧤", `"<script>&\u0000`, strings.Repeat("ж", 61), strings.Repeat("x", 201), strings.Repeat("n", 2100), "\xed\xa0\x80", "\t",
}

// mover does odd things to an app, and takes every answer that is no failure.
type mover struct {
	*served
	rng  *rand.Rand
	keys int
	mitt string
}

func (m *mover) odd() string { return odd[m.rng.IntN(len(odd))] }

// key is one that a page makes, or an odd one.
func (m *mover) key() string {
	if m.keys++; m.rng.IntN(3) > 0 {
		return fmt.Sprint("k", m.keys)
	}
	return m.odd() + fmt.Sprint(m.keys)
}

func (m *mover) head() store.Mitt {
	m.t.Helper()
	id, err := strconv.ParseInt(strings.TrimPrefix(m.mitt, "/mitts/"), 10, 64)
	require.NoError(m.t, err)
	mitt, err := m.store.Load(context.Background(), id)
	require.NoError(m.t, err)
	return mitt
}

// send posts something; whatever is wrong with it is told, not a failure.
func (m *mover) send(a answer) {
	m.t.Helper()
	require.Less(m.t, a.status, http.StatusInternalServerError, a.body)
}

func (m *mover) object(fields map[string]any) string {
	raw, err := json.Marshal(fields)
	require.NoError(m.t, err)
	return string(raw)
}

func (m *mover) step() {
	m.t.Helper()
	section := []string{"cuff", "gusset", "hand", "thumb", "", "no such"}[m.rng.IntN(6)]
	switch head := m.head(); m.rng.IntN(12) {
	case 0:
		m.mitt = m.sample()
	case 1:
		m.send(m.post(m.mitt, url.Values{
			"after": {fmt.Sprint(head.Revision)}, "name": {m.odd()}, "gauge.swatches[0].needle": {m.odd()}, "chart.yarns[0].name": {m.odd()}, "hand.thumb_length": {m.odd()},
		}))
	case 2:
		m.send(m.stroke(m.mitt+"/needles", m.object(map[string]any{"key": m.key(), "side": "right", "section": section, "round": m.rng.IntN(30)})))
	case 3:
		m.send(m.stroke(m.mitt+"/needles", m.object(map[string]any{"key": m.key(), "side": "left", "section": section, "round": 1 + m.rng.IntN(9), "note": m.odd()})))
	case 4, 5:
		m.send(m.try())
	case 6:
		m.send(m.post(m.mitt+"/history", url.Values{"name": {m.odd()}, "revision": {fmt.Sprint(1 + m.rng.Int64N(head.Revision))}}))
	case 7:
		edits := []any{}
		for range 1 + m.rng.IntN(5) {
			edits = append(edits, map[string]any{
				"section": section, "round": 1 + m.rng.IntN(12), "column": fmt.Sprint("B", 1+m.rng.IntN(3)),
				"layer": []string{"colour", "stitch", "note"}[m.rng.IntN(3)], "value": []string{"a", "b", "p", m.odd()}[m.rng.IntN(4)],
			})
		}
		m.send(m.stroke(m.mitt+"/chart", m.object(map[string]any{"after": head.Revision, "key": m.key(), "edits": edits})))
	case 8:
		if made := m.post(m.mitt+"/copy", nil); made.status == http.StatusSeeOther {
			m.mitt = made.header.Get("Location")
		}
	case 9:
		made := m.post("/classes", url.Values{"name": {m.odd()}, "mitt": {strings.TrimPrefix(m.mitt, "/mitts/")}})
		m.send(made)
		if at := made.header.Get("Location"); made.status == http.StatusSeeOther {
			m.send(m.post(at+"/students", url.Values{"name": {m.odd()}, "note": {m.odd()}, "gauge_from": {"swatch"}, "hand.hand_circumference": {"19"}}))
			m.send(m.post(at+"/table", url.Values{"table": {"Name;Hand (cm)\n" + m.odd() + ";19\nAda;20"}}))
		}
	case 10:
		m.send(m.stroke("/motifs", m.object(map[string]any{
			"name": m.odd(), "cells": []any{map[string]any{"x": 0, "y": 0, "colour": "a"}, map[string]any{"x": 1, "y": 0, "colour": m.odd()}},
		})))
	case 11:
		m.send(m.post("/import", url.Values{"file": {m.odd()}}))
	}
}

// try sends a try, sometimes with a photograph.
func (m *mover) try() answer {
	m.t.Helper()
	var b bytes.Buffer
	form := multipart.NewWriter(&b)
	for name, text := range map[string]string{
		"key": m.key(), "date": "2026-03-01", "side": "right", "section": "gusset", "round": "5", "note": m.odd(), "feel.gusset": "1", "width": m.odd(), "base": m.odd(),
	} {
		odd := name == "width" || name == "base"
		if !odd || m.rng.IntN(8) == 0 {
			require.NoError(m.t, form.WriteField(name, text))
		}
	}
	if m.rng.IntN(3) == 0 {
		part, err := form.CreateFormFile("photo", m.odd()+".jpg")
		require.NoError(m.t, err)
		require.NoError(m.t, jpeg.Encode(part, image.NewGray(image.Rect(0, 0, 8+m.rng.IntN(40), 9)), nil))
	}
	require.NoError(m.t, form.Close())
	return m.do(m.request("POST", m.mitt+"/tries", form.FormDataContentType(), b.String()))
}

// Whatever the app has accepted can be exported, read and taken in elsewhere,
// and exported from there it is the same.
func TestWhatWasAcceptedMoves(t *testing.T) {
	t.Parallel()
	ctx := context.Background()
	databases := testenv.Cases(20, 1000)
	tries, photos, counts, classes := 0, 0, 0, 0
	for seed := range uint64(databases) {
		func() {
			m := &mover{served: newApp(t), rng: rand.New(rand.NewPCG(seed, 31))}
			m.mitt = m.sample()
			for range 16 {
				m.step()
			}
			there, err := store.Open(ctx, filepath.Join(t.TempDir(), "there.db"))
			require.NoError(t, err)
			defer there.Close()

			first, err := m.store.ExportAll(ctx)
			require.NoError(t, err)
			require.Empty(t, first.Mended)
			var file bytes.Buffer
			require.NoError(t, exportfile.Write(&file, first), "seed %d", seed)
			read, err := exportfile.Read(ctx, file.Bytes())
			require.NoError(t, err, "seed %d", seed)
			_, err = there.Import(ctx, read)
			require.NoError(t, err, "seed %d", seed)
			second, err := there.ExportAll(ctx)
			require.NoError(t, err)
			require.Equal(t, neutral(t, first), neutral(t, second), "seed %d", seed)
			for _, one := range first.Mitts {
				counts += len(one.Counts)
				for _, try := range one.Tries {
					tries++
					photos += min(len(try.Photo), 1)
				}
			}
			classes += len(first.Classes)
		}()
	}
	t.Logf("%d databases with %d tries, %d photographs, %d counts, %d classes", databases, tries, photos, counts, classes)
	for name, n := range map[string]int{"tries": tries, "photographs": photos, "counts": counts, "classes": classes} {
		assert.Positive(t, n, name)
	}
}

// neutral is a file as text, with the numbers of tries and mitts counted from
// 1 and without the time of making it.
func neutral(t *testing.T, f exportfile.File) string {
	t.Helper()
	f.Made = ""
	mitts := map[int64]int64{}
	for i, m := range f.Mitts {
		mitts[m.ID] = int64(i) + 1
		numbers := map[int64]int64{}
		for j := range m.Tries {
			numbers[m.Tries[j].ID] = int64(j) + 1
			m.Tries[j].ID = int64(j) + 1
		}
		m, err := m.Renumbered(numbers)
		require.NoError(t, err)
		m.ID = int64(i) + 1
		f.Mitts[i] = m
	}
	for i, c := range f.Classes {
		c, err := c.Renumbered(mitts)
		require.NoError(t, err)
		c.ID = int64(i) + 1
		for j := range c.Patterns {
			c.Patterns[j].Mitt = mitts[c.Patterns[j].Mitt]
		}
		f.Classes[i] = c
	}
	var b bytes.Buffer
	require.NoError(t, exportfile.Write(&b, f))
	return b.String()
}

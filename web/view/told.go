package view

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// told is one change of a mitt in words.
type told struct {
	rank rank
	text string
}

// rank is how telling a change is, the most telling first.
type rank int

const (
	rankTry rank = iota
	rankName
	rankMitt // its kind, side and unit
	rankHand
	rankSwatch
	rankNumber
	rankCells
	rankNote
	rankSetting
	rankRest
)

// changes is what revisions that belong together changed.
type changes struct {
	was, now project.Document
	net      chart.Net
	reshaped []stitch.Part // rounds were put in, taken out, or their increases moved
	tries    map[int64]string
}

// add adds a revision, whose stroke may belong to the decision before it.
func (m *changes) add(r app.Revision) {
	if r.Doc != nil {
		m.now = *r.Doc
		return
	}
	if parts := reshaped(r.Edits); len(parts) > 0 { // its cells only moved with their rounds
		m.reshaped = append(m.reshaped, parts...)
		return
	}
	m.net.Add(r.Edits, r.Inverse)
}

// reshaped returns the parts whose rounds a stroke put in, took out or moved, or
// nil if it is another kind of stroke.
func reshaped(edits []chart.Edit) (parts []stitch.Part) {
	for _, part := range stitch.Parts() {
		n, ok := mitt.RoundsOf(part)
		if slices.ContainsFunc(edits, func(e chart.Edit) bool {
			return e.Layer == chart.Sheet && (ok && e.Column == n.Path() || part.Marked() && e.Column == mitt.IncreaseRounds.Path())
		}) {
			parts = append(parts, part)
		}
	}
	for _, e := range edits {
		if e.Layer == chart.Sheet && !pinned(e.Column) || e.Layer != chart.Sheet && !slices.Contains(parts, e.Section) {
			return nil
		}
	}
	return parts
}

// list returns all that was changed, the most telling first.
func (m *changes) list() []told {
	list := slices.Concat(m.documents(), m.fields(), m.cells())
	slices.SortStableFunc(list, func(a, b told) int { return cmp.Compare(a.rank, b.rank) })
	return list
}

// maxTold is the number of changes that a moment tells one by one.
const maxTold = 2

// sentence returns the most telling changes and how many more there are, or ""
// if there are none.
func sentence(list []told) string {
	var parts []string
	for i, one := range list {
		if i == maxTold {
			parts = append(parts, fmt.Sprintf("and %d more", len(list)-maxTold))
			break
		}
		parts = append(parts, one.text)
	}
	return strings.Join(parts, "; ")
}

// cells returns what was painted, noted and marked on the chart.
func (m *changes) cells() (list []told) {
	notes := map[stitch.Part][]chart.Edit{}
	strands := map[stitch.Part][2]int{} // meant, and to be looked at again
	painted := map[chart.Edit]int{}     // by part, layer and value
	var kinds []chart.Edit
	needles := ""
	freed, drawn := map[chart.Anchor]bool{}, map[chart.Anchor]bool{} // marks that left their motif, and cells that were painted
	for _, e := range m.net.Edits() {
		switch e.Layer {
		case chart.Stitches, chart.Colours:
			drawn[e.Anchor()] = true
		case chart.Motifs:
			freed[e.Anchor()] = true
			continue
		}
		switch kind := (chart.Edit{Section: e.Section, Layer: e.Layer, Value: e.Value}); {
		case e.Layer == chart.Notes:
			notes[e.Section] = append(notes[e.Section], e)
		case e.Layer == chart.Strands:
			n := strands[e.Section]
			if e.Value != "" {
				n[0]++
			} else {
				n[1]++
			}
			strands[e.Section] = n
		case e.Layer == chart.Motifs: // told by what is painted there
		case e.Layer == chart.Needles && e.Value != "":
			needles = "on the needles: " + where(e)
		case e.Layer == chart.Needles:
			needles = cmp.Or(needles, "no round marked as on the needles")
		default:
			if painted[kind] == 0 {
				kinds = append(kinds, kind)
			}
			painted[kind]++
		}
	}
	maps.DeleteFunc(freed, func(at chart.Anchor, _ bool) bool { return drawn[at] })
	if n := len(freed); n > 0 {
		list = append(list, told{rankCells, words.Plural(n, "painted stitch") + " left where the motif moved"})
	}
	if needles != "" {
		list = append(list, told{rankRest, needles})
	}
	slices.SortStableFunc(kinds, func(a, b chart.Edit) int { return cmp.Compare(painted[b], painted[a]) })
	palette := m.now.Palette()
	for _, kind := range kinds {
		list = append(list, told{rankCells, fmt.Sprintf("%s %s in the %s", words.Plural(painted[kind], "stitch"), asPainted(kind, palette), kind.Section.Words())})
	}
	for _, part := range stitch.Parts() {
		list = append(list, noted(part, notes[part])...)
		list = append(list, ofStrands(part, strands[part])...)
	}
	return list
}

// asPainted returns what cells were set to.
func asPainted(e chart.Edit, p chart.Palette) string {
	switch {
	case e.Value == "" && e.Layer == chart.Colours:
		return "back in the planned colour"
	case e.Value == "":
		return "back as planned"
	case e.Layer == chart.Colours:
		return clipped(p.Or(e.Value).Name)
	}
	return e.Words(p)
}

// noted returns what became of the notes of a part.
func noted(part stitch.Part, edits []chart.Edit) []told {
	switch {
	case len(edits) == 0:
		return nil
	case len(edits) > 1:
		return []told{{rankNote, fmt.Sprintf("%d notes on the %s", len(edits), part.Words())}}
	case edits[0].Value == "":
		return []told{{rankNote, "note taken off " + where(edits[0])}}
	}
	return []told{{rankNote, "note on " + where(edits[0])}}
}

// ofStrands returns how many long strands of a part came to be meant, and how many are to be
// looked at again.
func ofStrands(part stitch.Part, n [2]int) (list []told) {
	for i, what := range []string{"left long", "to look at again"} {
		if n[i] > 0 {
			list = append(list, told{rankNote, fmt.Sprintf("%s %s in the %s", words.Plural(n[i], "strand"), what, part.Words())})
		}
	}
	return list
}

// where returns the part and round of an edit.
func where(e chart.Edit) string { return fmt.Sprintf("%s, round %d", e.Section.Words(), e.Round) }

// longestTold is the most characters of a text that a moment repeats.
const longestTold = 32

// clipped shortens a text of the person's own.
func clipped(text string) string {
	text = strings.TrimSpace(text)
	if letters := []rune(text); len(letters) > longestTold {
		return strings.TrimSpace(string(letters[:longestTold-1])) + "…"
	}
	return text
}

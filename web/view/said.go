package view

import (
	"regexp"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// Said is a run of a round's words: the name of a yarn, with its colour; an
// operation that changes the count, which is read with care; the beginning of a
// new line; or plain text.
type Said struct {
	Text   string `json:"text"`
	Yarn   bool   `json:"yarn,omitempty"`
	Fill   string `json:"fill,omitempty"` // of the yarn, as #RRGGBB; empty for the ground
	Strong bool   `json:"strong,omitempty"`
	Break  bool   `json:"break,omitempty"`
}

// These stand around a yarn's ID in the words of a round, in place of its name,
// since a name may be any text, even that of another yarn. Both are private to
// a program (Unicode, private use area).
const (
	yarnFrom = "\uE000"
	yarnTo   = "\uE001"
)

// coloured returns the words of a round with its painted yarns, as one text and
// for the large words.
func coloured(part stitch.Part, r stitch.Round, yarns []chart.Yarn) (text string, say []Said) {
	ids := make([]string, len(yarns))
	for i, y := range yarns {
		ids[i] = yarnFrom + y.ID + yarnTo
	}
	text = words.Coloured(part, r, ids)
	for _, one := range large(text) {
		say = append(say, yarned(one, yarns)...)
	}
	for _, y := range yarns {
		text = strings.ReplaceAll(text, yarnFrom+y.ID+yarnTo, y.Name)
	}
	return text, say
}

// yarned splits a run at the yarns.
func yarned(one Said, yarns []chart.Yarn) (list []Said) {
	for {
		before, after, found := strings.Cut(one.Text, yarnFrom)
		if before != "" || one.Break {
			list = append(list, Said{Text: before, Strong: one.Strong, Break: one.Break})
		}
		if !found {
			return list
		}
		id, rest, _ := strings.Cut(after, yarnTo)
		at := slices.IndexFunc(yarns, func(y chart.Yarn) bool { return y.ID == id })
		list, one.Text = append(list, Said{Text: yarns[at].Name, Yarn: true, Fill: yarns[at].Fill}), rest
	}
}

// totals is the number of stitches at the end of a round's words; the page shows
// it beside them.
var totals = regexp.MustCompile(` \(\d+[^()]*\)\.$`)

// large returns the words of a round as they are read from afar: what comes
// after the gusset on a line of its own, and without the number of stitches.
func large(text string) (list []Said) {
	for i, line := range strings.Split(totals.ReplaceAllString(text, "."), " | ") {
		if i > 0 {
			list, line = append(list, Said{Text: ". "}, Said{Break: true}), "Then "+line
		}
		list = append(list, shaped(line)...)
	}
	return list
}

// shaping finds the abbreviations of operations that increase or decrease.
var shaping = func() *regexp.Regexp {
	var list []string
	for _, op := range stitch.All() {
		if op.Paintable() && op.In() != op.Out() {
			list = append(list, regexp.QuoteMeta(op.Abbr()))
		}
	}
	return regexp.MustCompile(`(?i)\b(` + strings.Join(list, "|") + `)\b`)
}()

// shaped splits a text at the operations that change the count.
func shaped(text string) (list []Said) {
	for text != "" {
		at := shaping.FindStringIndex(text)
		if at == nil {
			return append(list, Said{Text: text})
		}
		if at[0] > 0 {
			list = append(list, Said{Text: text[:at[0]]})
		}
		list = append(list, Said{Text: text[at[0]:at[1]], Strong: true})
		text = text[at[1]:]
	}
	return list
}

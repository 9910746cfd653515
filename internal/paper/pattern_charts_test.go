package paper

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	keys "thenar/internal/sheet"
)

// The charts of six sizes as poppler reads them: sizes whose gussets agree share one, and by
// the grey tabs of its rounds, with the sizes that they name, each size finds the rounds in
// which its plan increases, up to the round in which the chart says that it ends.
func TestChartsOfSixSizesAreRead(t *testing.T) {
	s := inSixSizes(t)
	text := run(t, "pdftotext", "-layout", onPaper(t, Pattern(s, Options{Paper: A4})), "-")
	assert.Contains(t, text, "Read from the bottom up, right to left. Both hands are worked by these charts.")
	assert.Contains(t, text, "Within your line is your gusset: it stops growing where the line goes straight up.")
	assert.Contains(t, strings.Join(strings.Fields(text), " "), "Increases marked for other sizes only are knit in yours.")
	sections := regexp.MustCompile(`(?m)^ *([A-Z]) +gusset of sizes ([\d, and]+)$`).FindAllStringSubmatchIndex(text, -1)
	require.Len(t, sections, 2)
	of := map[string]int{}
	for i, at := range sections {
		end := len(text)
		if i+1 < len(sections) {
			end = sections[i+1][0]
		}
		part := text[at[1]:end]
		part = part[:strings.Index(part, "Within your line")]
		sizes := regexp.MustCompile(`\d+`).FindAllString(text[at[4]:at[5]], -1)
		var rounds []string
		for _, line := range strings.Split(part, "\n") {
			line = regexp.MustCompile(`[\d, ]+ ends?\b`).ReplaceAllString(line, "")
			if m := regexp.MustCompile(`(?:([\d, ]+?|\d+ only) +)?(\d+) *$`).FindStringSubmatch(line); m != nil && !strings.Contains(line, "base") {
				rounds = append(rounds, strings.TrimSpace(m[1])+"|"+m[2])
			}
		}
		for _, size := range sizes {
			of[size]++
			k := slices.Index(s.Text.Sizes, size)
			plan := s.Sizes[k].Out.Plan
			for _, r := range rounds {
				named, number, _ := strings.Cut(r, "|")
				n, _ := strconv.Atoi(number)
				if named == "" {
					continue
				}
				own := slices.Contains(regexp.MustCompile(`\d+`).FindAllString(named, -1), size)
				assert.Equal(t, slices.Contains(plan.Gusset.IncreaseRounds, n), own, "size %s, round %d", size, n)
			}
			if size != sizes[len(sizes)-1] {
				assert.Regexp(t, `\b`+size+` ends`, part)
			}
		}
	}
	for _, name := range s.Text.Sizes {
		assert.Equal(t, 1, of[name], "size %s is in one chart", name)
	}
}

// A motif in two colours: its chart shows it once, in a box, with how often each size works
// it; for a copier the yarns have their textures; and on either paper nothing lies outside.
func TestChartsOfAMotifInAllSizes(t *testing.T) {
	s := patternOf(t, keys.Sheet{
		"kind": "fingerless", "stitch.repeat": "6", "chart.yarns[0].name": "elderberry", "chart.yarns[0].colour": "#6B4A7E", "chart.yarns[1].name": "straw", "chart.yarns[1].colour": "#E8CF7A",
		"repeats[0].motif": "..bb../.b..b./b....b/.b..b.", "repeats[0].section": "gusset", "repeats[0].over": "round", "repeats[0].set": "begin", "repeats[0].gusset": "out",
	}, 16, 18.5, 21)
	for _, o := range []Options{{Paper: A4}, {Paper: Letter, Grey: true}, {Paper: A4, Large: true}} {
		pages := Pattern(s, o)
		texts := patternTexts(t, pages)
		patternShots(t, fmt.Sprintf("motif-%s-%v", o.Paper.Name, o.Large), onPaper(t, pages))
		var boxed []string
		for text := range texts {
			if strings.HasPrefix(text, "× ") {
				boxed = append(boxed, text)
			}
		}
		var times []string
		for _, size := range s.Sizes {
			times = append(times, fmt.Sprint((size.Out.Plan.Body.Stitches.N-size.Out.Plan.Gusset.Base)/6))
		}
		assert.ElementsMatch(t, times, regexp.MustCompile(`\d+`).FindAllString(strings.Join(boxed, " "), -1))
		assert.Contains(t, boxed, fmt.Sprintf("× %s (%s)", times[0], times[1]), "sizes that agree share a chart")
		coloured := map[string]bool{}
		for _, p := range pages[1:] {
			p.Each(draw.Place{Scale: 1}, func(i *draw.Item, _ draw.Place) { coloured[i.Style.Fill] = true })
		}
		assert.Equal(t, !o.Grey, coloured["#E8CF7A"])
	}
}

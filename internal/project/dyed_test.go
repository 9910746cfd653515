package project

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/readback"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
	"thenar/internal/words"
)

// takesNoYarn reports whether an operation is one of those that take no yarn.
func takesNoYarn(op stitch.Op) bool {
	return op == stitch.Hold || op == stitch.NoStitch || op == stitch.Marker
}

// dyedAlike compares the yarns of a text with those of the chart, stitch by stitch.
func dyedAlike(read *readback.Mitt, out *Outputs) error {
	catches, all := out.Charts.Catches(), dyed(out.Charts, out.Charts.Shares())
	for _, section := range out.Mitt.Sections {
		at := slices.IndexFunc(read.Parts, func(p *readback.Part) bool { return titled(p.Title, section.Part) })
		if at < 0 {
			return fmt.Errorf("the text has no %s", section.Part)
		}
		for i, r := range section.Rounds {
			got := read.Parts[at].Rounds[i]
			yarns := out.Charts.InWork(section.Part, i+1)
			k := 0
			for j, op := range r.Ops {
				if op == stitch.NoStitch || op == stitch.Marker {
					continue
				}
				want := ""
				switch {
				case takesNoYarn(op) || all == nil:
				case yarns != nil:
					want = spoken(yarns[j], out.Charts.Palette)
				default:
					want = spoken(out.Charts.Palette.Or("a"), out.Charts.Palette)
				}
				if !takesNoYarn(op) && got.Yarns[k] != want {
					return fmt.Errorf("%s %d, stitch %d: %q in the words, %q on the chart", section.Part, i+1, j+1, got.Yarns[k], want)
				}
				k++
			}
			var catch []string
			for _, c := range catches[section.Part][i+1] {
				catch = append(catch, spoken(out.Charts.Palette.Or(c.Yarn), out.Charts.Palette))
			}
			if !slices.Equal(catch, got.Caught) {
				return fmt.Errorf("%s %d: %v are caught in the words, %v on the chart", section.Part, i+1, got.Caught, catch)
			}
		}
	}
	return nil
}

// Colours told in words are those of the chart, stitch by stitch, on both hands, whatever
// motifs are laid and painted over; so are the stitches. The reader knows only the text.
func TestColoursReadBack(t *testing.T) {
	const shards = 4
	var all atomic.Int64
	t.Cleanup(func() { assert.Positive(t, all.Load(), "some rounds refer to rows of motifs") })
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(3100, shard))
			pl := NewPlanner()
			referred := 0
			for range testenv.Cases(80, 3000) / shards {
				d, p := anyMitt(rng, pl)
				testenv.AnyRepeats(rng, d.Sheet)
				var marks chart.Marks
				if rng.IntN(2) == 0 {
					m := p.Plan.Mitt()
					marks = anyMarks(rng, m, wale.Mitt(m, p.UnderThumb()))
				}
				for _, side := range []Side{Right, Left} {
					d.Side = side
					out, err := pl.Derive(d, marks)
					require.NoError(t, err, "%v", d.Sheet)
					if len(out.Unsound) > 0 {
						continue
					}
					for _, passages := range [][]words.Passage{out.Words, words.Merged(out.Words)} {
						var b strings.Builder
						require.NoError(t, words.Write(&b, passages))
						read, err := readback.Read(b.String())
						require.NoError(t, err, "%s\n%v\n%s", side, d.Sheet, b.String())
						require.NoError(t, differs(read, out.Mitt), "%s\n%v\n%s", side, d.Sheet, b.String())
						require.NoError(t, dyedAlike(read, out), "%s\n%v\n%s", side, d.Sheet, b.String())
						referred += strings.Count(b.String(), " of motif ")
					}
				}
			}
			all.Add(int64(referred))
		})
	}
}

// A yarn whose name would be read as a stitch or as another yarn goes by its letter, and the
// plan says so. A motif's name stands in brackets whatever is in it, unless it is long.
func TestNamesThatCouldBeMisread(t *testing.T) {
	main := chart.Yarn{ID: "a", Name: "Cream"}
	for name, want := range map[string]string{
		"Rust": "rust", "a, b": "yarn B", "k2tog": "yarn B", "M1L": "yarn B", "K3": "yarn B", "p": "yarn B", "old purl": "yarn B",
		"Main colour": "yarn B", "cream": "yarn B", "plum": "plum", "sky knitwool": "sky knitwool",
	} {
		y := chart.Yarn{ID: "b", Name: name}
		all := chart.Palette{main, y}
		assert.Equal(t, want, spoken(y, all), name)
		told := misnamed(chart.Source{Palette: all})
		if want != "yarn B" {
			assert.Empty(t, told, name)
			continue
		}
		assert.Contains(t, told, reportWarning{"yarn_renamed", "“" + name + "” is called yarn B in the words: in a round its name could be misread."})
	}
	assert.Equal(t, "Star, small", inBrackets("Star, small"))
	assert.Equal(t, "‹a> “b” 🐦 c", inBrackets(" ‹a> “b” 🐦\n(c)"))
	assert.Equal(t, strings.Repeat("x", 39)+"…", inBrackets(strings.Repeat("x", 200)))
}

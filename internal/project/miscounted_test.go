package project

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/tally"
	"thenar/internal/testenv"
	reading "thenar/internal/written"
)

// bindsOff finds lines that tell how stitches are bound off.
var bindsOff = regexp.MustCompile(`^(?:Bind|Cast) off`)

// slip is a way in which a text goes wrong: what it finds has one number, or is one stitch.
type slip struct {
	name string
	at   *regexp.Regexp
	to   string // in place of it; empty: the number is one more or one less
}

// Slips that change a count, and those that change none but contradict what is stated.
var (
	counting = []slip{
		{"stitches", regexp.MustCompile(`\b[kp](\d+)\b`), ""},
		{"repeats", regexp.MustCompile(`\) (\d+) times`), ""},
		{"repeats", regexp.MustCompile(`\) (twice)\b`), "3 times"},
		{"stated", regexp.MustCompile(`\((\d+)[,)]`), ""},
		{"in the gusset", regexp.MustCompile(`of which (\d+) in`), ""},
		{"increase lost", regexp.MustCompile(`\b(M1L|M1R|M1|LLI|RLI|kfb|yo)\b`), "k1"},
		{"decrease lost", regexp.MustCompile(`\b(k2tog|ssk|s2kp|sk2p|k3tog)\b`), "k1"},
		{"stitch for increase", regexp.MustCompile(`, (k1),`), "M1"},
		{"cast on", regexp.MustCompile(`^(?:Cast on|Slip|Bind off all|Cast off all|Put the) (\d+)\b`), ""},
		{"put aside", regexp.MustCompile(`[Ss]lip (\d+) to waste yarn|leave (\d+) on waste yarn`), ""},
		{"bridge", regexp.MustCompile(`bridge of (\d+) backward`), ""},
		{"picked up", regexp.MustCompile(`Pick up and knit (\d+),`), ""},
		{"drawn up", regexp.MustCompile(`through the (\d+) stitches left`), ""},
		{"from waste yarn", regexp.MustCompile(`knit (\d+) from waste yarn`), ""},
		{"marker", regexp.MustCompile(`marker after the first (\d+) stitches`), ""},
	}
	listing = []slip{
		{"round", regexp.MustCompile(`^(?:Round|Row)s? (\d+)`), ""},
		{"last round", regexp.MustCompile(`^(?:Round|Row)s \d+–(\d+)`), ""},
		{"rounds of shaping", regexp.MustCompile(`(\d+) (?:in|de)crease (?:round|row)s, `), ""},
		{"shaping to", regexp.MustCompile(`→ (\d+) stitch`), ""},
		{"shaping list", regexp.MustCompile(`\. (?:Round|Row)s (?:\d+, )*(\d+)\.`), ""},
	}
)

// slipped changes one thing in a line, and reports whether it could.
func (s slip) slipped(rng *rand.Rand, line string) (string, bool) {
	all := s.at.FindAllStringSubmatchIndex(line, -1)
	if len(all) == 0 {
		return line, false
	}
	found := all[rng.IntN(len(all))]
	from, to := found[2], found[3]
	if from < 0 {
		from, to = found[4], found[5]
	}
	with := s.to
	if with == "" {
		n, _ := strconv.Atoi(line[from:to])
		with = strconv.Itoa(n + 2*rng.IntN(2) - 1)
	}
	return line[:from] + with + line[to:], true
}

// TestMiscountsAreTold changes one number, stitch or repeat of a text, so that a count
// changes: it is told, at its line or at the line that it is pointed to from. Slips in lists
// and totals are counted apart.
func TestMiscountsAreTold(t *testing.T) {
	var tried, told, placed, lists, listed atomic.Int64
	const shards = 4
	t.Run("shards", func(t *testing.T) {
		for shard := range uint64(shards) {
			t.Run("", func(t *testing.T) {
				t.Parallel()
				rng := rand.New(rand.NewPCG(2710, shard))
				pl := NewPlanner()
				for i := 0; i < testenv.Cases(400, 10_000)/shards; {
					d, _ := anyMitt(rng, pl)
					if rng.IntN(2) == 0 {
						d.Sheet = otherwise(rng, d.Sheet)
					}
					out, err := pl.Derive(d, nil)
					if err != nil || len(out.Unsound) > 0 {
						continue
					}
					lines := strings.Split(instructions(t, out), "\n")
					begin := slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(l, "Cast on ") })
					for range 20 {
						kind := counting
						if rng.IntN(6) == 0 {
							kind = listing
						}
						s := kind[rng.IntN(len(kind))]
						at := begin + rng.IntN(len(lines)-begin)
						changed, ok := s.slipped(rng, lines[at])
						if !ok || s.name == "decrease lost" && bindsOff.MatchString(lines[at]) {
							continue
						}
						i++
						damaged := slices.Clone(lines)
						damaged[at] = changed
						report := tally.Work(reading.Read(strings.Join(damaged, "\n")))
						here := slices.ContainsFunc(report.Findings, func(f tally.Finding) bool { return f.At.Line == at+1 || f.Look.Line == at+1 })
						if &kind[0] == &listing[0] {
							lists.Add(1)
							if here {
								listed.Add(1)
							} else if testing.Verbose() {
								t.Logf("list %s: %q → %q: %v", s.name, lines[at], changed, report.Findings)
							}
							continue
						}
						tried.Add(1)
						if len(report.Findings) > 0 {
							told.Add(1)
						}
						if here {
							placed.Add(1)
						} else if testing.Verbose() {
							t.Logf("%s: %q → %q (line %d): %v", s.name, lines[at], changed, at+1, report.Findings)
						}
					}
				}
			})
		}
	})
	t.Logf("%d slips that change a count: %d told, %d at their line; %d in lists and totals: %d told at their line", tried.Load(), told.Load(), placed.Load(), lists.Load(), listed.Load())
	require.Positive(t, tried.Load())
	assert.GreaterOrEqual(t, placed.Load()*100, tried.Load()*99)
	assert.GreaterOrEqual(t, listed.Load()*100, lists.Load()*80)
}

package project

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/readback"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
	"thenar/internal/words"
)

// anyGlove asks for a glove of any hand, made in any way in which gloves are made.
func anyGlove(rng *rand.Rand) *mitt.Request {
	g := gauge.Gauge{Stitches: 0.16 + 0.3*rng.Float64(), Treated: true}
	g.Rounds = g.Stitches * (1.2 + 0.4*rng.Float64())
	round := 120 + 120*rng.Float64()
	r := &mitt.Request{
		Kind: mitt.Glove, Gauge: g,
		Hand:   hand.Hand{Circumference: units.FromMM(round), Length: units.FromMM(round * (0.88 + 0.14*rng.Float64()))},
		Stitch: mitt.Stitches{Repeat: 1 + rng.IntN(4), Rib: 1 + rng.IntN(5), OneSided: rng.IntN(8) == 0},
	}
	ends := []mitt.FingerEnd{"", mitt.FullFinger, mitt.HalfFinger, mitt.OpenFinger}
	m := &r.Make
	if rng.IntN(2) == 0 {
		for i := range m.Fingers {
			m.Fingers[i] = ends[rng.IntN(4)]
		}
		m.ThumbEnd, m.Level = ends[rng.IntN(4)], rng.IntN(3) == 0
	}
	if rng.IntN(5) == 0 {
		m.Cap, m.Fingers = true, [4]mitt.FingerEnd{mitt.HalfFinger, mitt.HalfFinger, ends[2+rng.IntN(2)], mitt.HalfFinger}
		m.Top = []mitt.TopKind{"", mitt.PointedTop, mitt.BandedTop, mitt.WedgesTop, mitt.GatheredTop}[rng.IntN(5)]
	}
	switch rng.IntN(4) {
	case 0:
		m.Place = mitt.InPalm
	case 1:
		m.Construction = mitt.Straight
	}
	for i := range r.Hand.Fingers.Girth {
		if rng.IntN(3) == 0 {
			r.Hand.Fingers.Girth[i] = units.FromMM(round * (0.26 + 0.08*rng.Float64()))
		}
		if rng.IntN(6) == 0 {
			r.Pins.Fingers[i].Decreases = mitt.Fix(rng.IntN(5))
		}
	}
	if rng.IntN(5) == 0 {
		r.Pins.FingerBridges[rng.IntN(3)] = mitt.Fix(1 + rng.IntN(4))
	}
	if m.Construction == "" && rng.IntN(5) == 0 {
		r.Pins.Bridge = mitt.Fix(rng.IntN(4))
	}
	return r
}

// glovePlan plans a random glove; nil if it can't be made so.
func glovePlan(t *testing.T, pl *mitt.Planner, r *mitt.Request) *mitt.Plan {
	t.Helper()
	p, err := pl.Plan(r)
	if err != nil {
		var fields fault.Fields
		require.True(t, errors.As(err, &fields), "%v", err)
		return nil
	}
	return p
}

// asKnitted returns a glove as it is knitted for a hand.
func asKnitted(m stitch.Mitt, by words.Hands) stitch.Mitt {
	if by.Left != by.FromLeft {
		m = stitch.Mirror(m)
	}
	if by.FromLeft {
		m = stitch.FromLeft(m)
	}
	return m
}

// The words of gloves, read back stitch by stitch, are their rounds, on both hands, from
// either side. What a finger's first round is said to be made of is the plan's division,
// and no sentence is too long.
func TestGlovesReadBack(t *testing.T) {
	rng, pl := rand.New(rand.NewPCG(24, 24)), mitt.New()
	made := 0
	for i := 0; made < testenv.Cases(150, 10_000); i++ {
		r := anyGlove(rng)
		p := glovePlan(t, pl, r)
		if p == nil {
			require.Less(t, i, 2*made+50, "few can't be made")
			continue
		}
		made++
		for _, left := range []bool{false, true} {
			by := words.Hands{Left: left, FromLeft: rng.IntN(6) == 0, Tails: words.Tails{CastOn: 600, End: 200}}
			m := asKnitted(p.Mitt(), by)
			passages := words.Instructions(m, by)
			if rng.IntN(3) == 0 {
				passages = words.Merged(passages)
			}
			text := plainText(t, passages)
			if left {
				require.Empty(t, miscounted.FindAllString(text, -1), "%+v\n%s", r, text)
			}
			read, err := readback.Read(text)
			require.NoError(t, err, "%+v\n%s", r, text)
			require.NoError(t, differs(read, m), "%+v\n%s", r, text)
			requireShares(t, p, m, text)
			for _, passage := range passages {
				if _, finger := mitt.FingerOf(passage.Part); !finger && passage.Part != stitch.UpperHand {
					continue
				}
				for _, s := range passage.Steps {
					for _, sentence := range testenv.Sentences(s.Text) {
						if s.From == 0 {
							require.LessOrEqual(t, testenv.WordCount(sentence), testenv.LongestSentence, sentence)
						}
					}
				}
			}
		}
	}
}

// requireShares checks what is said of each finger's part of palm and back against the plan.
func requireShares(t *testing.T, p *mitt.Plan, m stitch.Mitt, text string) {
	t.Helper()
	for _, s := range m.Sections {
		f, ok := mitt.FingerOf(s.Part)
		if !ok {
			continue
		}
		_, after, _ := strings.Cut(text, "\n"+s.Part.Title()+"\n")
		_, after, _ = strings.Cut(after, "Its round: ")
		line, _, _ := strings.Cut(after, "\n")
		one := p.Fingers.Each[f]
		require.Contains(t, line, fmt.Sprintf("%d of the palm", one.Palm), "%s\n%s", s.Part, text)
		require.Contains(t, line, fmt.Sprintf("%d of the back", one.Back), "%s\n%s", s.Part, text)
	}
}

func plainText(t *testing.T, passages []words.Passage) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, words.Write(&b, passages))
	return b.String()
}

// A glove's text in which one number is one more or one less is caught, by what it says
// itself or by what it makes.
func TestDamagedGlovesAreCaught(t *testing.T) {
	rng, pl := rand.New(rand.NewPCG(24, 25)), mitt.New()
	tried, alone := 0, 0
	for range testenv.Cases(8, 60) {
		p := glovePlan(t, pl, anyGlove(rng))
		if p == nil {
			continue
		}
		m := p.Mitt()
		text := plainText(t, words.Instructions(m, words.Hands{}))
		for _, at := range number.FindAllStringIndex(text, -1) {
			if rng.IntN(4) > 0 {
				continue
			}
			n, err := strconv.Atoi(text[at[0]:at[1]])
			require.NoError(t, err)
			damaged := text[:at[0]] + strconv.Itoa(n+2*rng.IntN(2)-1) + text[at[1]:]
			tried++
			read, err := readback.Read(damaged)
			if err != nil || strings.Contains(damaged[max(0, at[0]-14):at[0]], "multiple of ") { // 12 is one of 4 and of 3
				alone++
				continue
			}
			line := damaged[strings.LastIndex(damaged[:at[0]], "\n")+1:]
			line, _, _ = strings.Cut(line, "\n")
			assert.Error(t, differs(read, m), "taken as it stands: %s", line)
		}
	}
	t.Logf("%d texts with one number changed: %d caught by the text alone", tried, alone)
	require.Greater(t, alone, tried*9/10)
}

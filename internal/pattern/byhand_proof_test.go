package pattern

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/readback"
	"thenar/internal/sheet"
	"thenar/internal/testenv"
)

// changing is a design that is changed again and again.
type changing struct {
	sheet sheet.Sheet
	sizes []float64               // how many times as large as the sheet's hand
	pins  map[float64]sheet.Sheet // of single sizes
	style Style
	hands int // 0: right, 1: left, 2: both
}

func (c changing) clone() changing {
	c.sheet, c.sizes, c.pins = c.sheet.Clone(), slices.Clone(c.sizes), maps.Clone(c.pins)
	return c
}

// change changes something of a design, as a designer does: measures, gauge, sizes, fixed
// numbers, more seldom the kind of mitt.
func (c *changing) change(rng *rand.Rand) {
	other := testenv.AnySheet(rng)
	from := func(prefix string) {
		for _, path := range slices.Sorted(maps.Keys(other)) {
			if strings.HasPrefix(path, prefix) && c.sheet["unit"] == other["unit"] {
				c.sheet[path] = other[path]
			}
		}
	}
	scale := func(path string, by float64) {
		if v, err := strconv.ParseFloat(c.sheet[path], 64); err == nil {
			c.sheet[path] = strconv.FormatFloat(v*by, 'f', 2, 64)
		}
	}
	switch rng.IntN(14) {
	case 0, 1:
		scale("gauge.swatches[0].stitches", 0.9+0.2*rng.Float64())
	case 2:
		scale("gauge.swatches[0].rounds", 0.9+0.2*rng.Float64())
	case 3, 4:
		c.sheet = scaled(c.sheet, 0.93+0.14*rng.Float64())
	case 5:
		if len(c.sizes) > 2 {
			at := rng.IntN(len(c.sizes))
			c.sizes = slices.Delete(c.sizes, at, at+1)
		}
	case 6, 7:
		if len(c.sizes) < 6 {
			c.sizes = append(c.sizes, 0.8+0.5*rng.Float64())
			slices.Sort(c.sizes)
		}
	case 8:
		from("pins.")
	case 9:
		for _, path := range c.sheet.Paths() {
			if strings.HasPrefix(path, "pins.") {
				delete(c.sheet, path)
			}
		}
	case 10:
		own := sheet.Sheet{}
		for path, text := range other {
			if strings.HasPrefix(path, "pins.") {
				own[path] = text
			}
		}
		c.pins[c.sizes[rng.IntN(len(c.sizes))]] = own
	case 11:
		from("length.")
	case 12:
		switch rng.IntN(4) {
		case 0:
			from("kind")
		case 1:
			c.sheet[mitt.PathConstruction] = []string{"slit", "straight", "gusset"}[rng.IntN(3)]
		case 2:
			c.sheet[mitt.PathFlat] = []string{"true", "false"}[rng.IntN(2)]
		default:
			from("cuff.")
			from("top.")
		}
	default:
		c.style.Rhythm = !c.style.Rhythm // how stitches are written is the designer's own in a sentence by hand
	}
}

// text returns the text of a design and the sizes of each hand; nil where it can't be made.
func (c changing) text(pl *project.Planner) (text *Text, right, left []Size) {
	for i, by := range c.sizes {
		d := project.Document{Name: "x", Side: project.Right, Sheet: scaled(c.sheet, by)}
		maps.Copy(d.Sheet, c.pins[by])
		name := fmt.Sprintf("%c", 'A'+i)
		for _, to := range []*[]Size{&right, &left} {
			out, err := pl.Derive(d, nil)
			if err != nil || len(out.Unsound) > 0 {
				return nil, nil, nil
			}
			*to = append(*to, Size{name, out})
			d.Side = project.Left
		}
	}
	r, err := Of(right, c.style)
	l, also := Of(left, c.style)
	if err != nil || also != nil {
		return nil, nil, nil
	}
	return []*Text{r, l, Hands(r, l)}[c.hands], right, left
}

// The marks by which the test knows its sentences again.
const (
	asItWas = "◆" // what the program says
	tallied = "◇" // how many stitches there are
	lonely  = "○" // without a number
)

// write writes sentences for about half the lines of a text: what the program itself says,
// so that it is known what they have to say after any change; counts after rounds; and
// sentences without numbers.
func write(t *testing.T, rng *rand.Rand, text *Text, texts project.PatternTexts) project.PatternTexts {
	t.Helper()
	keep := func(key, typed string) {
		next, _, err := text.Reword(texts, key, typed)
		require.NoError(t, err, key)
		texts = next
	}
	for _, p := range text.Passages {
		for _, l := range p.Lines {
			if l.Table != nil || l.says == nil || len(texts) > 300 {
				continue
			}
			if rng.IntN(2) == 0 {
				keep("line "+l.Key, l.Own()+asItWas)
			}
			all, round := l.number(allNumber)
			switch {
			case round && rng.IntN(3) == 0:
				rounds, _ := l.number(roundsNumber)
				noun, _ := l.number(labelNumber)
				keep("after "+l.Key, fmt.Sprintf("After %s %s there are %s stitches.%s", strings.ToLower(strings.Fields(Plain(noun.pieces))[0]), Plain(rounds.pieces), Plain(all.pieces), tallied))
			case rng.IntN(6) == 0:
				keep("after "+l.Key, "Breathe."+lonely)
			}
		}
	}
	return texts
}

var countOf = regexp.MustCompile(`^After (?:round|row)s? (.*) there are (.*) stitches\.◇$`)

// valuesOf returns the values of a number that is told, for so many sizes.
func valuesOf(text string, n int) []string {
	list := regexp.MustCompile(`[^ (),]+`).FindAllString(text, -1)
	for len(list) < n {
		list = append(list, list[0])
	}
	return list
}

// checkByHand checks that no sentence is lost without being listed, and that every number in
// those that stand is that of the plan.
func checkByHand(t *testing.T, text *Text, texts project.PatternTexts, right, left []Size) (stood, listed int) {
	t.Helper()
	written, lost := text.ByHand(texts)
	standing := map[string]bool{}
	for i, p := range written.Passages {
		var plain []string
		for _, l := range p.Lines {
			told := ""
			if l.Table == nil {
				told = written.Told(p, l)
			}
			switch {
			case !l.ByHand:
			case strings.HasSuffix(told, asItWas):
				standing[l.Key] = true
			case strings.HasSuffix(told, lonely):
				standing[l.Key+" after"] = true
				continue
			case strings.HasSuffix(told, tallied):
				standing[l.Key+" after"] = true
				found := countOf.FindStringSubmatch(Plain(l.Body))
				require.NotNil(t, found, told)
				rounds, counts := valuesOf(found[1], len(l.For)), valuesOf(found[2], len(l.For))
				if first, last, span := strings.Cut(rounds[0], "–"); span && len(l.For) > 1 && found[1] != rounds[0] && !strings.Contains(strings.Join(rounds[1:], " "), "–") {
					rounds[0] = first + "–" + last // "2–8 (9, 10)": all from round 2
					for k := 1; k < len(rounds); k++ {
						rounds[k] = first + "–" + rounds[k]
					}
				}
				of := right
				if p.Hand == "left" || text.left {
					of = left
				}
				for k, s := range l.For {
					_, end, span := strings.Cut(rounds[k], "–")
					if !span {
						end = rounds[k]
					}
					n, err := strconv.Atoi(end)
					require.NoError(t, err, told)
					section := of[s].Out.Mitt.Section(p.Part)
					require.Equal(t, strconv.Itoa(section.Rounds[n-1].Out()), counts[k], "%s of %s\n%s", told, of[s].Name, l.Key)
				}
				continue
			}
			plain = append(plain, strings.Replace(told, asItWas, "", 1))
		}
		var own []string
		for _, l := range text.Passages[i].Lines {
			told := ""
			if l.Table == nil {
				told = text.Told(text.Passages[i], l)
			}
			own = append(own, told)
		}
		require.Equal(t, own, plain)
	}
	for _, key := range slices.Sorted(maps.Keys(texts)) {
		kind, place := kindOf(key)
		if kind == "" {
			continue
		}
		if at := slices.IndexFunc(lost, func(l Lost) bool { return l.Key == key }); at >= 0 {
			require.Equal(t, asWritten(texts[key]), lost[at].Text)
			listed++
			continue
		}
		if strings.HasSuffix(key, leftMark) && !text.left && !text.both {
			continue // of the other hand
		}
		told := false
		for at := range standing {
			end := " after"
			if kind == project.PatternLine {
				end = ""
			}
			told = told || placeOf(strings.TrimSuffix(at, " after")) == placeOf(place) && strings.HasSuffix(at, " after") == (end != "")
		}
		require.True(t, told, "%s is neither told nor listed", key)
		stood++
	}
	return stood, listed
}

// Hand-written sentences survive random changes of measures, gauge, sizes, fixed numbers and
// kinds: each stands or is listed, and every number in one that stands is that of the plan,
// by the plan itself and by what is knitted from the text.
func TestSentencesSurviveChanges(t *testing.T) {
	rng := rand.New(rand.NewPCG(2614, 30))
	pl := project.NewPlanner()
	changes, stood, listed, knitted := 0, 0, 0, 0
	for most := testenv.Cases(40, 1000); changes < most; {
		c := changing{sheet: testenv.AnySheet(rng), sizes: []float64{1, 1.08, 1.17}[:2+rng.IntN(2)], pins: map[float64]sheet.Sheet{}, hands: rng.IntN(3), style: Style{Rhythm: rng.IntN(2) == 0, Wording: Wording(rng.IntN(3))}}
		for _, path := range c.sheet.Paths() {
			if strings.HasPrefix(path, "pins.") && rng.IntN(3) > 0 {
				delete(c.sheet, path)
			}
		}
		if rng.IntN(5) == 0 {
			testenv.AnyRepeats(rng, c.sheet)
		}
		text, right, left := c.text(pl)
		if text == nil {
			continue
		}
		texts := write(t, rng, text, nil)
		checkByHand(t, text, texts, right, left)
		for range 12 {
			next := c.clone()
			next.change(rng)
			text, right, left := next.text(pl)
			if text == nil {
				continue
			}
			c = next
			changes++
			s, l := checkByHand(t, text, texts, right, left)
			stood, listed = stood+s, listed+l
			if rng.IntN(10) == 0 {
				knitted++
				written, _ := text.ByHand(texts)
				knittedByHand(t, c, written, right, left)
			}
			if rng.IntN(6) == 0 {
				texts = write(t, rng, text, texts)
			}
		}
	}
	t.Logf("%d changes: %d times a sentence stands with its numbers, %d times it is listed; %d texts knitted", changes, stood, listed, knitted)
	require.Greater(t, stood, listed)
	require.Positive(t, listed)
	require.Positive(t, knitted)
}

// knittedByHand knits a text in which sentences are by hand.
func knittedByHand(t *testing.T, c changing, written *Text, right, left []Size) {
	t.Helper()
	var b strings.Builder
	require.NoError(t, Write(&b, written))
	var lines []string
	for _, line := range strings.Split(b.String(), "\n") {
		if !strings.HasSuffix(line, tallied) && !strings.HasSuffix(line, lonely) {
			lines = append(lines, strings.Replace(line, asItWas, "", 1))
		}
	}
	all := strings.Join(lines, "\n")
	for hand, sizes := range map[int][]Size{0: right, 1: left} {
		switch c.hands {
		case hand:
			readsBack(t, all, written.Sizes, sizes)
		case 2:
			readsBack(t, readback.OfHand(all, []string{"right", "left"}[hand]), written.Sizes, sizes)
		}
	}
}

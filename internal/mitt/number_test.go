package mitt

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// sampled are plans that have every number between them.
func sampled(t *testing.T) []*Plan {
	t.Helper()
	h := hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm}
	return []*Plan{
		must(t, request(Fingerless, per10(24, 32), h)), must(t, request(Mitten, per10(24, 32), h)), must(t, request(Thumbless, per10(24, 32), h)),
		must(t, request(Glove, per10(24, 32), h)), must(t, halfGlove(h)),
	}
}

// Every number has one row, which says all that its readers ask for.
func TestEveryNumberHasARow(t *testing.T) {
	keys, labels, reasons := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for n := range numberCount {
		r := &table[n]
		require.NotEmpty(t, r.key, "number %d has no row", n)
		assert.False(t, keys[r.key], "%s has a second row", n)
		keys[r.key] = true
		assert.True(t, (r.count != nil) != (r.list != nil), "%s: a plan gives a count or a list", n)
		assert.Equal(t, r.list != nil, n.List(), "%s", n)
		assert.True(t, r.low <= r.high && r.high > 0, "%s has no range", n)
		if !slices.Contains(Fixable(), n) {
			assert.Contains(t, Knittable(), n, "%s is neither fixed nor knitted", n)
			continue
		}
		assert.True(t, r.label != "" && r.said != "" && r.reason != "" && r.part != "", "%s: a page has no words for it", n)
		assert.False(t, labels[r.label] || reasons[r.reason], "%s is called like another", n)
		labels[r.label], reasons[r.reason] = true, true
		assert.Contains(t, Ladder(), n, "the page does not list it")
		assert.Contains(t, InSheet(), n, "a sheet does not hold it")
		if !slices.Contains(Knittable(), n) {
			assert.Contains(t, []Number{Increases, FirstIncrease, Rhythm}, n, "it does not follow from the increase rounds, and is not kept of what is knitted")
		}
		found, ok := NumberAt(n.Path())
		assert.True(t, ok && found == n, "%s", n)
		_, isPart := RoundsOf(r.rounds)
		assert.Equal(t, r.rounds != "", isPart, "%s", n)
	}
	for _, list := range [][]Number{Ladder(), InSheet(), ForClass(), OfStudent(), ForEveryHand()} {
		for _, n := range list {
			assert.Contains(t, Fixable(), n, "it can't be fixed")
		}
	}
	for _, part := range stitch.Parts() {
		_, ok := RoundsOf(part)
		assert.True(t, ok, "no number counts the rounds of %s", part)
	}
}

// A number that is fixed is the only one that is, is written as it was fixed,
// and is let go again.
func TestEveryNumberIsFixedByItself(t *testing.T) {
	for _, n := range Fixable() {
		var p Pins
		low, _ := n.Range()
		values := []int{low}
		if n.List() {
			values = append(values, low+2)
		}
		p.Set(n, values...)
		assert.Equal(t, []Number{n}, p.fixed())
		assert.Equal(t, commas(values), p.text(n))
		assert.True(t, p.Fixed(n))
		p.clear(n)
		assert.Equal(t, Pins{}, p, "%s", n)
	}
}

// Every number stands in a plan, and fixed as it stands it changes nothing: the
// plan made with it has it, says that it is fixed, and what it costs.
func TestEveryNumberOfAPlanCanBeFixed(t *testing.T) {
	seen := map[Number]bool{}
	pl := New()
	for _, was := range sampled(t) {
		for _, n := range Fixable() {
			text := was.Number(n)
			if text == "" {
				continue
			}
			seen[n] = true
			if !n.List() {
				low, high := n.Range()
				assert.True(t, was.Count(n) >= low && was.Count(n) <= high, "%s is %s, outside its range", n, text)
			}
			r := request(was.Kind, was.Gauge, hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
			r.Make = was.Make
			r.Pins.set(n, text)
			is, err := pl.Plan(r)
			require.NoError(t, err, "%s", n)
			assert.Equal(t, text, is.Number(n), "%s is fixed, and the plan has it otherwise", n)
			costs := pl.PinCosts(r, is)
			require.Len(t, costs, 1, "%s", n)
			assert.Equal(t, n, costs[0].Number)
		}
	}
	for _, n := range Fixable() {
		assert.True(t, seen[n], "%s stands in no plan", n)
	}
}

// A number outside its range is refused by its path, and one that contradicts
// the others is named by its key.
func TestEveryNumberIsNamedWhereItIsInTheWay(t *testing.T) {
	for _, n := range Fixable() {
		low, high := n.Range()
		for _, v := range []int{low - 1, high + 1} {
			r := adult(Pins{})
			r.Pins.Set(n, v)
			_, err := New().Plan(r)
			var fields fault.Fields
			require.ErrorAs(t, err, &fields, "%s is %d", n, v)
			assert.True(t, fields.Has(n.Path()), "%s is %d: %v", n, v, err)
		}
		r := request(Mitten, per10(24, 32), hand.Hand{Circumference: 190 * mm})
		r.Pins.Set(n, low)
		c := newConflict(&draft{req: r, pins: &r.Pins}, nil)
		if table[n].company == byItself {
			assert.True(t, n == CastOn || n == CuffRounds || n == CuffPlainRounds || n >= firstOfFingers, "%s is held against no other number", n)
			continue
		}
		assert.Equal(t, []Number{n}, c.names)
	}
}

// What is knitted has every number that it keeps in a place of its own, with
// what the plan had.
func TestEveryNumberIsKeptOfWhatIsKnitted(t *testing.T) {
	places := map[any]Number{}
	var w Progress
	for _, n := range Knittable() {
		var place any = w.Number(n)
		if n.List() {
			place = w.Numbers(n)
		}
		other, taken := places[place]
		assert.False(t, taken, "%s is kept where %s is", n, other)
		places[place] = n
	}
	seen := map[Number]bool{}
	for _, p := range sampled(t) {
		k := p.ProgressAt(stitch.Thumb, 1)
		for _, n := range Knittable() {
			if number := k.Number(n); number != nil {
				seen[n] = seen[n] || *number > 0
				assert.Equal(t, p.Count(n), *number, "%s", n)
			} else if p.has(n) {
				seen[n] = true
				assert.Equal(t, table[n].list(p), *k.Numbers(n), "%s", n)
			}
		}
	}
	for _, n := range Knittable() {
		ofRib, mayBeNone := strings.HasSuffix(n.Key(), "_rib") || n == RibKnits || n == CuffFacing || n == CuffEdge || n == CuffStep || n == TopBand || n == TopWedges || n == PalmInset, n == KeptOnHand
		assert.True(t, seen[n] || ofRib || mayBeNone, "%s is kept of no plan", n)
	}
}

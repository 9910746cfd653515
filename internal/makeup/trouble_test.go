package makeup

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is higher than a page is laid all the same, and told: a part that sticks out
// stands alone, and what can't stay together is parted as seldom as can be.
func TestWhatIsTooHighIsLaidAndTold(t *testing.T) {
	text := one("Text", Part{Height: 30})
	tall := one("Hand", Part{Height: 123})
	pieces := []Piece{text, tall, text}
	l, err := Lay(pieces, Area{Page: 100})
	require.NoError(t, err)
	assert.Equal(t, []string{"Text", "Hand", "Text"}, laid(t, Area{Page: 100}, pieces...))
	require.Len(t, l.Troubles, 1)
	assert.Equal(t, "Hand: part 1 is 2.3 mm higher than page 2; it stands there alone", l.Troubles[0].String())
	assert.Equal(t, Cost{Over: 23, Pages: 3, Thin: 1, Empty: 4900}, l.Cost)

	var rows []Part
	for range 5 {
		rows = append(rows, Part{Height: 40, Keep: true})
	}
	l, err = Lay([]Piece{one("Words", rows...), text}, Area{Page: 100})
	require.NoError(t, err)
	assert.Equal(t, []string{"Words:0", "Words:1:2", "Words:3:4"}, laid(t, Area{First: 50, Page: 100}, one("Words", rows...)))
	require.Len(t, l.Troubles, 2)
	assert.Equal(t, "Words: page 1 ends after part 2, which should stay with what follows; together they are higher than a page", l.Troubles[0].String())
	assert.Equal(t, Cost{Parted: 2, Pages: 3, Empty: 800}, l.Cost)

	chart := Piece{Name: "Chart", Ways: []Way{{Parts: []Part{{Height: 150}}}, {Parts: []Part{{Height: 80}, {Height: 80}}}}}
	l, err = Lay([]Piece{chart}, Area{Page: 100})
	require.NoError(t, err)
	assert.Empty(t, l.Troubles, "a way that fits is taken")
	assert.Equal(t, 2, l.Cost.Pages)

	tall.WithNext = true
	l, err = Lay([]Piece{tall, text}, Area{Page: 100})
	require.NoError(t, err)
	assert.Len(t, l.Troubles, 2, "it sticks out, and what it should stay with comes on the next page")
}

// A part that repeats a heading and is too high with it is told too.
func TestRepeatedHeadingThatIsTooHigh(t *testing.T) {
	l, err := Lay([]Piece{one("Words", Part{Height: 90}, Part{Height: 95, Again: 12})}, Area{Page: 100})
	require.NoError(t, err)
	require.Len(t, l.Troubles, 1)
	assert.Equal(t, 7, l.Troubles[0].Over)
	assert.Equal(t, Placed{Part: 1, Top: 12, Again: 12}, l.Pages[1].Placed[0])
}

// What can't be laid is refused with the piece, what is wrong, and what would be
// right.
func TestBadInputIsNamed(t *testing.T) {
	good := one("Words", Part{Height: 10}, Part{Height: 10})
	with := func(change func(p *Piece)) Piece {
		p := one("Hand", Part{Height: 10}, Part{Height: 10})
		change(&p)
		return p
	}
	many := make([]Part, MaxParts+1)
	for i := range many {
		many[i].Height = 1
	}
	var choices []Piece
	for range maxChoices + 1 {
		choices = append(choices, drawing("d", 100, 90))
	}
	for want, c := range map[string]struct {
		area   Area
		pieces []Piece
	}{
		"area: page is 0 high; write 1 to 20000 tenths of a millimetre": {Area{}, nil},
		"area: the first page is -1 high":                               {Area{First: -1, Page: 1}, nil},
		`piece 2, "Hand": has no way; give at least one`:                {Area{Page: 9}, []Piece{good, {Name: "Hand"}}},
		`piece 2, "Hand": has 33 ways; give at most 32`:                 {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Ways = make([]Way, 33) })}},
		`piece 2, "Hand": has -3 above it`:                              {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Above = -3 })}},
		`"Hand": way 1: has no part`:                                    {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Ways[0].Parts = nil })}},
		"way 1: is shrunk by 20 steps; write 0 to 19":                   {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Ways[0].Shrunk = 20 })}},
		"part 2 is 0 high; write 1 to 20000 tenths of a millimetre":     {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Ways[0].Parts[1].Height = 0 })}},
		"part 2 has 0 above it, and -1 again":                           {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Ways[0].Parts[1].Again = -1 })}},
		"its first part has 4 above it; write that as the space above":  {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Ways[0].Parts[0].Above = 4 })}},
		"part 1 belongs to chart 9 and words 0; write 1 to 8":           {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Ways[0].Parts[0].Chart = 9 })}},
		"way 2: has other charts or words than way 1":                   {Area{Page: 9}, []Piece{good, with(func(p *Piece) { p.Ways = append(p.Ways, Way{Parts: []Part{{Height: 1, Words: 1}}}) })}},
		"pieces: have 2001 parts in all their ways; at most 2000":       {Area{Page: 9}, []Piece{one("Words", many...)}},
		"pieces: 65 have more than one way; at most 64 may":             {Area{Page: 9}, choices},
	} {
		l, err := Lay(c.pieces, c.area)
		require.ErrorContains(t, err, want)
		require.Empty(t, l)
	}
	l, err := Lay(nil, Area{Page: 1})
	require.NoError(t, err)
	assert.Empty(t, l.Pages, "nothing takes no page")
}

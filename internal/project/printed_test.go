package project

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What changed is told by size and by line, in the order in which it is read; what is the
// same is not told.
func TestWhatChangedInPrint(t *testing.T) {
	was := Printed{
		Sizes:   []string{"6", "7", "8"},
		Numbers: []PrintedNumber{{"hand", "hand", []string{"40", "44", "48"}}, {"bridge", "bridge", []string{"2", "2", "2"}}, {"old", "old", []string{"1", "1", "1"}}},
		Lines:   []PrintedLine{{"a", "Cuff", "Begin."}, {"b", "Cuff", "Cast on 40 (44, 48)."}, {"c", "Cuff", "Rest."}, {"d", "Hand", "Knit."}},
	}
	now := Printed{
		Sizes:   []string{"7", "8", "9"},
		Numbers: []PrintedNumber{{"hand", "hand", []string{"44", "52", "56"}}, {"bridge", "bridge", []string{"2", "2", "3"}}, {"new", "new", []string{"4", "", "4"}}},
		Lines:   []PrintedLine{{"b", "Cuff", "Cast on 44 (52, 56)."}, {"d", "Hand", "Knit."}, {"e", "Hand", "Purl."}},
	}
	assert.Equal(t, ChangedPrint{
		Gone: []string{"6"}, New: []string{"9"},
		Numbers: []ChangedNumber{{"hand", "8", "48", "52"}, {"new", "7", "", "4"}, {"old", "7", "1", ""}, {"old", "8", "1", ""}},
		Lines: []ChangedLine{
			{"a", "Cuff", "Begin.", ""}, {"b", "Cuff", "Cast on 40 (44, 48).", "Cast on 44 (52, 56)."}, {"c", "Cuff", "Rest.", ""}, {"e", "Hand", "", "Purl."},
		},
	}, now.Since(was))
	printed := Printed{Sizes: was.Sizes, Numbers: []PrintedNumber{{"hand", "hand", []string{"40", "44", "47"}}}, Lines: []PrintedLine{{"b", "Cuff", "Begin with 40 (44, 47)."}}}
	as := now.Since(was).PrintedAs(printed)
	assert.Equal(t, "47", as.Numbers[0].Before, "what readers have")
	assert.Equal(t, "Begin with 40 (44, 47).", as.Lines[1].Before)
	assert.Equal(t, "Begin.", as.Lines[0].Before)
	assert.True(t, now.Since(now).None())
	assert.True(t, Printed{}.Since(Printed{}).None())
}

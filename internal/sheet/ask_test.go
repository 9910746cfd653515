package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Units that slipped, worked by hand: 1 in = 2.54 cm exactly. The ranges are
// those of adults in ANSUR II (Gordon et al. 2014) and of children in Snyder et
// al. 1977; half to twice of what fills the others is common practice, no
// source: 0.34 of 19 cm are 6.46 cm, 0.94 × 0.355 of 19 cm are 6.34 cm, 0.324 of
// 19 cm are 6.16 cm, 0.94 × 0.49 of 19 cm are 8.75 cm.
func TestQuestions(t *testing.T) {
	for _, c := range []struct {
		unit, field, text, instead, words string
		comma                             bool
	}{
		{"cm", "hand_circumference", "195", "19,5", "Hand circumference: 195 cm lies outside the usual 15 to 25 cm. 19,5?", true},
		{"cm", "hand_circumference", "195", "19.5", "Hand circumference: 195 cm lies outside the usual 15 to 25 cm. 19.5?", false},
		{"cm", "hand_circumference", "7,5", "19,05", "Hand circumference: 7,5 cm lies outside the usual 9,4 to 22 cm. 19,05?", true},
		{"mm", "hand_circumference", "19.5", "195", "Hand circumference: 19.5 mm lies outside the usual 94 to 220 mm. 195?", false},
		{"in", "hand_circumference", "19", "7½", "Hand circumference: 19 in lies outside the usual 5⅞ to 9⅞ in. 7½?", false},
		{"mm", "hand_circumference", "7½", "190.5", "Hand circumference: 7½ mm lies outside the usual 94 to 220 mm. 190.5?", false},
		{"cm", "hand_circumference", "30", "", "Hand circumference: 30 cm lies outside the usual 15 to 25 cm. Is it right?", false},
		{"cm", "wrist_circumference", "160", "16", "Wrist circumference: 160 cm lies outside the usual 12 to 22 cm. 16?", false},
		{"cm", "hand_length", "185", "18.5", "Hand length: 185 cm lies outside the usual 14 to 24 cm. 18.5?", false},
		{"cm", "hand_breadth", "80", "8", "", false},
		{"cm", "thumb_circumference", "2.6", "6.6", "Thumb circumference: 2.6 cm lies outside the usual 3.2 to 12.8 cm. 6.6?", false},
		{"cm", "fingers.index.girth", "2.5", "6.35", "Index finger, girth: 2.5 cm lies outside the usual 3.1 to 12.4 cm. 6.35?", false},
		{"mm", "fingers.little.length", "5.8", "58", "", false},
		{"cm", "crotches.ring_little", "3.5", "8.89", "Wrist to where ring and little finger part: 3.5 cm lies outside the usual 4.4 to 17.6 cm. 8.89?", false},
		{"cm", "thumb_length", "63", "6.3", "Thumb length: 63 cm lies outside the usual 3.2 to 12.8 cm. 6.3?", false},
	} {
		s := Sheet{"unit": c.unit, "hand." + c.field: c.text}
		if c.field != "hand_circumference" && c.field != "hand_breadth" {
			s["hand.hand_circumference"] = map[string]string{"cm": "19", "mm": "190"}[c.unit]
		}
		list := s.Questions(nil, c.comma)
		require.Len(t, list, 1, c.words)
		assert.Equal(t, c.instead, list[0].Instead, c.text+" "+c.unit)
		if c.words != "" {
			assert.Equal(t, c.words, list[0].Words)
		}
		path := list[0].Path
		assert.Empty(t, s.Questions(map[string]string{path: c.text}, c.comma), "somebody is sure of it")
		assert.Len(t, s.Questions(map[string]string{path: "18"}, c.comma), 1, "but of another value")
		if c.instead != "" {
			better, _ := Answer(s, nil, list, path, c.text, false)
			assert.Empty(t, better.Questions(nil, c.comma), "%s is asked about no more", better[path])
		}
		same, sure := Answer(s, map[string]string{"x": "y"}, list, path, c.text, true)
		assert.Equal(t, s, same)
		assert.Equal(t, map[string]string{"x": "y", path: c.text}, sure)
		_, sure = Answer(s, nil, list, path, "18", true)
		assert.Empty(t, sure, "an answer to another question")
	}
	assert.Empty(t, Sheet{"hand.hand_circumference": "wide"}.Questions(nil, false), "what can't be read is refused elsewhere")
	assert.True(t, Sheet{"a": " 18,5"}.Comma())
	assert.False(t, Sheet{"a": "18.5", "pins.rhythm": "2, 3"}.Comma())
}

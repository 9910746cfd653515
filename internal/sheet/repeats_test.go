package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// measured is a sheet that can be planned, with repeats as they are written in JSON.
func measured(repeats string) string {
	return `{"gauge": {"swatches": [{"stitches": 24, "width": 10, "rounds": 32, "height": 10}]},
		"hand": {"hand_circumference": 19, "thumb_circumference": 6.5, "hand_length": 18}, "repeats": ` + repeats + `}`
}

// A sheet's repeats are read, written and read again as they were.
func TestRepeats(t *testing.T) {
	s, err := Parse([]byte(measured(`[{"name": "birds", "motif": ["..a.", ".a.a"], "over": "columns", "columns": ["H3", "H18"], "from": 3, "to": -2,
		"section": "hand", "set": "centred_back", "left": "as_drawn", "cut": true, "offset": -1, "was": "5 times"}, {}, {"stitches": ["kp"]}]`)))
	require.NoError(t, err)
	_, err = s.Request()
	require.NoError(t, err)
	again, err := Parse(s.JSON())
	require.NoError(t, err)
	assert.Equal(t, s.Repeats(), again.Repeats())
	list := s.Repeats()
	require.Len(t, list, 2, "a row of which nothing is given is left out")
	m, _ := repeat.Drawn([]string{"..a.", ".a.a"}, nil)
	assert.Equal(t, Numbered{0, repeat.Repeat{
		Name: "birds", Motif: m, Section: stitch.Hand, From: 3, To: -2, Over: repeat.Columns, Between: [2]string{"H3", "H18"},
		Set: repeat.CentredBack, Offset: -1, Gusset: repeat.StaysOut, OnLeft: repeat.AsDrawn, Cut: true,
	}, "5 times"}, list[0])
	assert.Equal(t, 2, list[1].At, "the others keep their numbers")
}

// A hand that is to be kept to a multiple keeps to the least that is one of everything asked
// for, counted from the offset.
func TestMultiplesOfMotifs(t *testing.T) {
	for text, want := range map[string][2]int{
		`[{"motif": ["a......."], "set": "multiple"}]`:                                     {8, 0},
		`[{"motif": ["a.."], "set": "multiple"}]`:                                          {6, 0},
		`[{"motif": ["a.."], "set": "multiple"}, {"motif": ["a...."], "set": "multiple"}]`: {30, 0},
		`[{"motif": ["a.."], "set": "multiple", "off": true}]`:                             {2, 0},
		`[{"motif": ["a.."], "set": "multiple"}], "stitch": {"repeat": 4, "offset": 2}`:    {12, 6},
		`[{"motif": ["a.."], "set": "multiple"}], "stitch": {"repeat": 5, "offset": -1}`:   {15, 9},
	} {
		s, err := Parse([]byte(measured(text)))
		require.NoError(t, err)
		req, err := s.Request()
		require.NoError(t, err, text)
		assert.Equal(t, want, [2]int{req.Stitch.Repeat, req.Stitch.Offset}, text)
	}
}

func TestFaultsOfRepeats(t *testing.T) {
	for text, want := range map[string]string{
		`[{"motif": ["a.", "a"]}]`:                                                      "repeats[0].motif: has rows of different lengths",
		`[{"motif": []}]`:                                                               "repeats[0].motif: is empty",
		`[{"motif": "a."}]`:                                                             `repeats[0].motif: is "a."; write a list of texts`,
		`[{"motif": ["a/b"]}]`:                                                          "repeats[0].motif: is",
		`[{"name": "birds"}]`:                                                           "repeats[0].motif: is empty; draw each round",
		`[{"motif": ["x"]}]`:                                                            "repeats[0].motif: has x in a row; write letters from a to h",
		`[{"motif": ["a"], "to": 0}]`:                                                   "repeats[0].to: is 0; write a round from 1, or -1 for the last",
		`[{"motif": ["a"], "from": 0}]`:                                                 "repeats[0].from: is 0; write a whole number from 1",
		`[{"motif": ["a"], "over": "thumb"}]`:                                           `repeats[0].over: is "thumb"; write one of: round`,
		`[{"motif": ["a"], "over": "columns"}]`:                                         "repeats[0].columns: are missing",
		`[{"motif": ["a"], "columns": ["H1", "H2"]}]`:                                   "repeats[0].columns: are given, but over is round",
		`[{"motif": ["a"], "over": "columns", "columns": ["H1", "Q2"]}]`:                `repeats[0].columns: has "Q2"`,
		`[{"motif": ["a"], "over": "palm", "set": "multiple"}]`:                         "repeats[0].set: is multiple, which goes with the whole round",
		`[{"motif": ["a"], "over": "palm", "gusset": "grow"}]`:                          "repeats[0].gusset: is grow, but the motif meets no gusset there",
		`[{"motif": ["a"], "section": "thumb", "gusset": "edge"}]`:                      "repeats[0].gusset: is edge, but the motif meets no gusset there",
		`[{"motif": ["a"], "over": "gusset", "gusset": "out"}]`:                         "repeats[0].gusset: is out, but the motif lies in the gusset alone",
		`[{"motif": ["a"], "over": "columns", "columns": ["H1"]}]`:                      "repeats[0].columns: has one; write two",
		`[{"motif": ["a"], "over": "columns", "columns": ["H1", "H2", "H3"]}]`:          "repeats[0].columns: has 3; write two",
		`[{"motif": ["b"], "stitches": ["x"]}]`:                                         "repeats[0].stitches: has x in a row; write k, p, t or s",
		`[{"motif": ["b"], "stitches": ["kk"]}]`:                                        "repeats[0].stitches: has rows of different lengths",
		`[{"stitches": ["x"]}]`:                                                         "repeats[0].stitches: has x in a row",
		`[{"motif": ["aé"]}]`:                                                           "repeats[0].motif: has é in a row",
		"[" + strings.Repeat(`{"motif": ["b"]}, `, 20) + `{"motif": ["b"]}]`:            "repeats: has more than 20 motifs; 20 are the most",
		`[{"motif": ["b"], "name": "` + strings.Repeat("x", 201) + `"}]`:                "repeats[0].name: has 201 characters; 200 are the most",
		`[{"motif": ["a.."], "set": "multiple"}], "stitch": {"repeat": 3, "offset": 1}`: "repeats[0].set: asks for a multiple of 3, but stitch.offset is 1 to 3",
	} {
		s, err := Parse([]byte(measured(text)))
		if err == nil {
			_, err = s.Request()
		}
		if assert.Error(t, err, text) {
			assert.Contains(t, err.Error(), want, text)
		}
	}
}

package shaping

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tally returns the number of runs of each length.
func tally(runs []int) map[int]int {
	m := map[int]int{}
	for _, r := range runs {
		m[r]++
	}
	return m
}

// Published answers, each with its source; where a page prints only a
// quotient, the full answer is derived from it by n = a·q + b·(q + 1).
func TestPublishedSpreads(t *testing.T) {
	for _, c := range []struct {
		source string
		s      Spread
		want   map[int]int
	}{
		{"sweater-making blog, 2007: every 4th row 34 times, every 5th 8 times", Spread{Stitches: 176, Events: 42}, map[int]int{4: 34, 5: 8}},
		{"Woolpack: 13, 13, 13, 12", Spread{Stitches: 51, Events: 4}, map[int]int{13: 3, 12: 1}},
		{"Woolpack: every 7", Spread{Stitches: 112, Events: 16}, map[int]int{7: 16}},
		{"Knitting for Dummies: five sections of 8", Spread{Stitches: 40, Events: 4, Flat: true}, map[int]int{8: 5}},
		{"Yarnpath, 2005: every 12", Spread{Stitches: 60, Events: 5}, map[int]int{12: 5}},
		{"Teach Yourself Visually Knitting, ch. 4: k5 between", Spread{Stitches: 30, Events: 5, Flat: true}, map[int]int{5: 6}},
		{"Teach Yourself Visually Knitting, ch. 4: (k1, k2tog) 10 times", Spread{Stitches: 30, Events: 10, Uses: 2}, map[int]int{1: 10}},
		{"Knitabit: every 10th, in the round", Spread{Stitches: 100, Events: 10}, map[int]int{10: 10}},
		{"Knitabit: every 10th, flat, divided by 11", Spread{Stitches: 110, Events: 10, Flat: true}, map[int]int{10: 11}},
		{"teaching page, title not noted: every 10th", Spread{Stitches: 60, Events: 6}, map[int]int{10: 6}},
		{"K. TenDyke: quotient 9; completed (derived): every 9th twice, every 10th 9 times", Spread{Stitches: 108, Events: 11}, map[int]int{9: 2, 10: 9}},
		{"teaching page, title not noted: quotient 6.25; completed (derived): 12 of 6, 4 of 7", Spread{Stitches: 100, Events: 16}, map[int]int{6: 12, 7: 4}},
		{"teaching page, title not noted: quotient 14.375; completed (derived): 5 of 14, 3 of 15", Spread{Stitches: 115, Events: 8}, map[int]int{14: 5, 15: 3}},
		{"derived: every 3rd 4 times, every 4th 32 times", Spread{Stitches: 140, Events: 36}, map[int]int{3: 4, 4: 32}},
		{"derived, where a page is wrong (see below): ten sections of 11 and one of 10", Spread{Stitches: 120, Events: 10, Flat: true}, map[int]int{11: 10, 10: 1}},
	} {
		t.Run(c.source, func(t *testing.T) {
			runs, err := Evenly(c.s)
			require.NoError(t, err)
			assert.Equal(t, c.want, tally(runs))
			assert.NoError(t, CheckRuns(c.s, runs))
		})
	}
}

// The order of the runs: increases stand at ⌈i·n/k⌉, as published (Woolpack:
// 13, 26, 39, 51).
func TestOrderOfRuns(t *testing.T) {
	runs, err := Evenly(Spread{Stitches: 51, Events: 4})
	require.NoError(t, err)
	assert.Equal(t, []int{13, 13, 13, 12}, runs)
	// From here on derived from the same rule.
	runs, err = Evenly(Spread{Stitches: 38, Events: 6})
	require.NoError(t, err)
	assert.Equal(t, []int{7, 6, 6, 7, 6, 6}, runs)
	for _, c := range []struct {
		s    Spread
		want []int
	}{
		{Spread{Stitches: 51, Events: 4, Uses: 1}, []int{12, 12, 12, 11}},
		{Spread{Stitches: 51, Events: 4, Uses: 2}, []int{11, 11, 11, 10}},
		{Spread{Stitches: 51, Events: 4, Flat: true}, []int{11, 10, 10, 10, 10}},
		{Spread{Stitches: 51, Events: 4, Flat: true, Uses: 1}, []int{10, 9, 10, 9, 9}},
		{Spread{Stitches: 51, Events: 4, Flat: true, Uses: 2}, []int{9, 9, 8, 9, 8}},
		{Spread{Stitches: 3, Events: 5}, []int{1, 1, 0, 1, 0}},
		{Spread{Stitches: 4, Events: 2, Uses: 2}, []int{0, 0}},
		{Spread{Stitches: 4, Events: 4, Flat: true, Uses: 1}, []int{0, 0, 0, 0, 0}},
	} {
		runs, err := Evenly(c.s)
		require.NoError(t, err)
		assert.Equal(t, c.want, runs, "%+v", c.s)
	}
}

// Event i of k stands at place ⌈i·n/k⌉ of n stitches, for every n up to 60.
func TestPlacesOfEvents(t *testing.T) {
	for n := 1; n <= 60; n++ {
		for k := 1; k <= n; k++ {
			runs, err := Evenly(Spread{Stitches: n, Events: k})
			require.NoError(t, err)
			at := 0
			for i, run := range runs {
				at += run
				require.Equal(t, math.Ceil(float64((i+1)*n)/float64(k)), float64(at), "event %d of %d over %d", i+1, k, n)
			}
		}
	}
}

func TestEvenlyRefuses(t *testing.T) {
	for says, s := range map[string]Spread{
		"stitches from 1 to 1000000, not 0":       {Stitches: 0, Events: 1},
		"stitches from 1 to 1000000, not 1000001": {Stitches: 1_000_001, Events: 1},
		"is 0; write a whole number":              {Stitches: 10},
		"is -1; write a whole number":             {Stitches: 10, Events: -1},
		"uses 0, 1 or 2 stitches, not 3":          {Stitches: 10, Events: 1, Uses: 3},
		"is 6; 10 stitches have room for 5":       {Stitches: 10, Events: 6, Uses: 2},
		"is 11; 10 stitches have room for 10":     {Stitches: 10, Events: 11, Uses: 1, Flat: true},
	} {
		_, err := Evenly(s)
		require.ErrorContains(t, err, says)
	}
}

// CheckRuns names what is wrong.
func TestCheckRunsRefuses(t *testing.T) {
	s := Spread{Stitches: 10, Events: 4, Uses: 1}
	require.NoError(t, CheckRuns(s, []int{2, 1, 2, 1}))
	for says, runs := range map[string][]int{
		"3 runs where 4 are needed":        {2, 2, 2},
		"a run of -1 stitches":             {3, 2, 2, -1},
		"use 9 of 10 stitches":             {2, 1, 1, 1},
		"runs from 0 to 3 stitches":        {3, 2, 1, 0},
		"a run of 9000 out of 10 stitches": {9_000, 1, 1, 1},
	} {
		require.ErrorContains(t, CheckRuns(s, runs), says)
	}
	require.Error(t, CheckRuns(Spread{Stitches: 10}, nil))
}

// One page prints "10th 9 times, 11th once" for 120 stitches and 10
// increases, flat; it uses 101 of the 120.
func TestWrongPublishedAnswerIsCaught(t *testing.T) {
	s := Spread{Stitches: 120, Events: 10, Flat: true}
	assert.Error(t, CheckRuns(s, []int{10, 10, 10, 10, 10, 10, 10, 10, 10, 11}))
	assert.Error(t, CheckRuns(s, []int{10, 10, 10, 10, 10, 10, 10, 10, 10, 11, 0}))
	assert.NoError(t, CheckRuns(s, []int{11, 11, 11, 11, 11, 11, 11, 11, 11, 11, 10}))
}

// Patterns on 8 places with events at ⌊j·8/k⌋, worked in a published post
// (2017). Their runs between events are ours, rotated.
func TestEuclideanRhythms(t *testing.T) {
	for k, pattern := range map[int]string{2: "10001000", 3: "10100100", 4: "10101010", 5: "11011010", 6: "11101110", 7: "11111110"} {
		runs, err := Evenly(Spread{Stitches: 8, Events: k})
		require.NoError(t, err)
		var gaps []int
		gap := 0
		for i := 1; i <= len(pattern); i++ {
			gap++
			if i == len(pattern) || pattern[i] == '1' {
				gaps = append(gaps, gap)
				gap = 0
			}
		}
		assert.True(t, isRotation(runs, gaps), "k = %d: %v and %v", k, runs, gaps)
	}
}

func isRotation(a, b []int) bool {
	for shift := range b {
		if assert.ObjectsAreEqual(a, append(append([]int{}, b[shift:]...), b[:shift]...)) {
			return true
		}
	}
	return false
}

// No stitch is left over and no two runs differ by more than one, for every
// spread of up to 90 stitches.
func TestEveryAnswerIsEven(t *testing.T) {
	for n := 1; n <= 90; n++ {
		for k := 1; k <= 2*n; k++ {
			for uses := 0; uses <= 2; uses++ {
				for _, flat := range []bool{false, true} {
					s := Spread{Stitches: n, Events: k, Uses: uses, Flat: flat}
					runs, err := Evenly(s)
					if k*uses > n {
						require.Error(t, err, "%+v", s)
						continue
					}
					require.NoError(t, err, "%+v", s)
					require.NoError(t, CheckRuns(s, runs), "%+v %v", s, runs)
				}
			}
		}
	}
}

package testenv

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
)

// AnySheet is a measure sheet as somebody may fill it: any kind, gauge and hand, in cm
// or inches, ribs of 2 and 4, one-sided gussets, fixed numbers.
func AnySheet(rng *rand.Rand) map[string]string {
	s := map[string]string{
		"kind": []string{"fingerless", "mitten", "fingerless", "mitten", "mitten_without_thumb", "glove", "glove"}[rng.IntN(7)],
		"unit": []string{"cm", "in"}[rng.IntN(2)], "stitch.rib": []string{"2", "4"}[rng.IntN(2)],
		"gauge.swatches[0].worked": "round", "gauge.swatches[0].washed": "true",
	}
	length := func(path string, low, high float64) { // in cm
		cm := low + (high-low)*rng.Float64()
		if s["unit"] == "in" {
			cm /= 2.54
		}
		s[path] = strconv.FormatFloat(cm, 'f', 2, 64)
	}
	over := 10.0
	if s["unit"] == "in" {
		over = 4
	}
	g := 11 + rng.IntN(17)
	s["gauge.swatches[0].stitches"], s["gauge.swatches[0].width"] = strconv.Itoa(g), fmt.Sprint(over)
	s["gauge.swatches[0].rounds"], s["gauge.swatches[0].height"] = strconv.Itoa(int(math.Round(float64(g)*(1.2+0.4*rng.Float64())))), fmt.Sprint(over)
	length("hand.hand_circumference", 11, 25)
	for _, l := range []struct { // in this order each time, so that the same seed draws the same sheets
		path      string
		low, high float64
	}{
		{"hand.hand_length", 10, 21},
		{"hand.wrist_circumference", 10, 19},
		{"hand.gusset_length", 3, 8},
		{"hand.thumb_length", 3, 7},
		{"length.cuff", 1, 8},
		{"length.cuff_plain", 1, 5},
		{"length.above_gusset", 1, 6},
		{"length.edging", 0.5, 2.5},
		{"length.thumb_edging", 0.5, 1.5},
	} {
		if rng.IntN(4) == 0 {
			length(l.path, l.low, l.high)
		}
	}
	some := func(path string, of ...string) {
		if rng.IntN(5) == 0 {
			s[path] = of[rng.IntN(len(of))]
		}
	}
	some("stitch.repeat", "1", "2", "4", "6")
	some("stitch.both_edges", "false")
	if s["kind"] != "mitten_without_thumb" {
		some("thumb.construction", "straight", "straight", "gusset")
	}
	if some("thumb.place", "palm", "palm", "side"); s["thumb.place"] == "palm" {
		some("thumb.inset", "0", "1", "2", "4")
	}
	if s["kind"] == "glove" {
		anyFingers(rng, s, length)
	}
	if s["kind"] != "fingerless" {
		some("top.kind", "rounded", "pointed", "banded", "wedges", "gathered")
		some("top.band", "1", "2", "5")
		some("top.wedges", "3", "5", "8")
	}
	some("cuff.kind", "garter", "rolled", "hem", "rib", "gauntlet")
	if s["cuff.kind"] == "gauntlet" {
		some("cuff.upper_girth", "14", "22", "30")
		some("cuff.depth", "2", "5", "9")
	}
	if rng.IntN(5) == 0 && (s["cuff.kind"] == "" || s["cuff.kind"] == "rib") {
		s["cuff.knits"], s["cuff.purls"] = strconv.Itoa(1+rng.IntN(3)), strconv.Itoa(1+rng.IntN(3))
	}
	some("thumb.increase", "lifted", "yo_closed", "kfb", "centre", "m1")
	some("pins.gusset_base", "1", "2", "3", "4", "5")
	some("pins.kept_on_hand", "0", "1", "2")
	some("pins.bridge", "1", "2", "3", "4", "5", "6")
	some("pins.picked_up", "2", "3", "4", "5", "6")
	some("pins.thumb_decreases", "0", "1", "2", "3", "4")
	some("pins.cuff_plain_rounds", "0", "1", "5")
	some("pins.cast_on", "24", "32", "36", "40", "44")
	some("pins.hand_stitches", "31", "36", "40", "43", "48")
	some("pins.rhythm", "2", "3", "2, 4")
	some("pins.first_increase", "1", "2", "3")
	some("pins.increase_rounds", "1, 4, 7", "2, 5, 8, 11", "1, 3, 5, 7, 9, 11")
	some("schedule.follows", "profile", "rhythm")
	return s
}

// anyFingers adds fingers of any end, some of them measured or with a fixed number.
func anyFingers(rng *rand.Rand, s map[string]string, length func(path string, low, high float64)) {
	few := func() bool { return rng.IntN(6) == 0 }
	for _, f := range []string{"little", "ring", "middle", "index"} {
		if few() {
			length("hand.fingers."+f+".girth", 4, 7)
		}
		if few() {
			length("hand.fingers."+f+".length", 4, 8)
		}
		if rng.IntN(2) == 0 {
			s["fingers."+f] = []string{"full", "half", "open"}[rng.IntN(3)]
		}
		if few() {
			s["pins.fingers."+f+".decreases"] = strconv.Itoa(rng.IntN(5))
		}
		if few() {
			s["pins.fingers."+f+".rounds"] = strconv.Itoa(2 + rng.IntN(30))
		}
	}
	if few() {
		s["pins.bridges.index_middle"] = strconv.Itoa(1 + rng.IntN(6))
	}
	if few() {
		s["pins.fingers.ring.palm"] = strconv.Itoa(3 + rng.IntN(4))
	}
	if few() {
		length("hand.crotches.ring_little", 6, 9)
	}
	s["fingers.thumb"] = []string{"full", "half", "open"}[rng.IntN(3)]
	s["fingers.little_lower"] = strconv.FormatBool(rng.IntN(3) > 0)
}

// AnyRepeats lays one to three random motifs of random yarns and stitches.
func AnyRepeats(rng *rand.Rand, s map[string]string) {
	for i := range 1 + rng.IntN(3) {
		wide, high := 1+rng.IntN(12), 1+rng.IntN(6)
		letters := []string{"..ab", "abc", ".bbbbbbb.......", "abcdefgh"}[rng.IntN(4)]
		var rows, textures []string
		for range high {
			var row, texture strings.Builder
			for range wide {
				row.WriteByte(letters[rng.IntN(len(letters))])
				texture.WriteByte("...kpts"[rng.IntN(7)])
			}
			rows, textures = append(rows, row.String()), append(textures, texture.String())
		}
		put := func(key, text string) { s[fmt.Sprintf("repeats[%d].%s", i, key)] = text }
		put("motif", "b"+strings.Join(rows, "/")[1:])
		if rng.IntN(3) == 0 {
			put("stitches", strings.Join(textures, "/"))
		}
		for _, one := range [][]string{ // in this order each time, so that the same seed lays the same motifs
			{"over", "round", "round", "palm", "back", "gusset"},
			{"set", "begin", "centred", "centred_back", "centred_palm"},
			{"gusset", "out", "grow", "mirror", "edge"},
			{"left", "mirror", "as_drawn"},
			{"cut", "true", "false"},
			{"section", "whole", "whole", "gusset", "hand", "thumb", "cuff", "top", "ring"},
		} {
			put(one[0], one[1+rng.IntN(len(one)-1)])
		}
		put("offset", fmt.Sprint(rng.IntN(7)-3))
		put("from", fmt.Sprint(1+rng.IntN(8)))
		GussetOfUse(s, i)
	}
}

// GussetOfUse takes away what is said of a motif in the gusset where it has no use, which a
// sheet refuses.
func GussetOfUse(s map[string]string, i int) {
	path := func(key string) string { return fmt.Sprintf("repeats[%d].%s", i, key) }
	round := s[path("over")] == "round" && (s[path("section")] == "whole" || s[path("section")] == "gusset")
	if !round && (s[path("over")] != "gusset" || s[path("gusset")] == "out") {
		delete(s, path("gusset"))
	}
}

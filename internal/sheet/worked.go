package sheet

import (
	"strconv"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// What the sheet says of the work on the needles, under "worked".
const (
	pathWorked  = "worked"
	PathSection = "worked.section"
	PathRound   = "worked.round"
	PathSide    = "worked.side"   // the hand that is on the needles
	PathSecond  = "worked.second" // how the other hand of the pair is worked
	PathBase    = "worked.base_above"
)

// Anew is the second mitt planned from its cast-on; otherwise it is worked
// like the first.
const Anew = "anew"

// workedKeys are the counts of what is knitted, named as in pins.
var workedKeys = append(append([]node{
	{key: "section", kind: choice, words: []string{"cuff", "cuff_plain", "gusset", "hand", "top", "thumb"}},
	{key: "side", kind: choice, words: []string{"right", "left"}},
	{key: "second", kind: choice, words: []string{"alike", Anew}},
	{key: "base_above", kind: signed},
	{key: "both_edges", kind: flag},
	{key: "increase_rounds", kind: rounds},
	{key: "decrease_rounds", kind: rounds},
}, keys(whole, "round")...), workedNodes()...)

func workedNodes() []node {
	var names []string
	for _, n := range workedNumbers(&mitt.Worked{}) {
		names = append(names, n.key)
	}
	return keys(whole, names...)
}

type workedNumber struct {
	key string
	n   *int
}

// workedNumbers are the counts by their names.
func workedNumbers(k *mitt.Worked) []workedNumber {
	return []workedNumber{
		{"rib", &k.Rib},
		{"cast_on", &k.CastOn},
		{"cuff_rounds", &k.CuffRounds},
		{"cuff_plain_rounds", &k.CuffPlainRounds},
		{"hand_stitches", &k.HandStitches},
		{"gusset_base", &k.GussetBase},
		{"gusset_rounds", &k.GussetRounds},
		{"kept_on_hand", &k.Kept},
		{"held", &k.Held},
		{"bridge", &k.Bridge},
		{"rounds_above_gusset", &k.RoundsAbove},
		{"edging_rounds", &k.EdgingRounds},
		{"edging", &k.Edging},
		{"top_rounds", &k.TopRounds},
		{"picked_up", &k.PickedUp},
		{"thumb_decreases", &k.ThumbDecreases},
		{"thumb_stitches", &k.Thumb},
		{"thumb_rounds", &k.ThumbRounds},
		{"thumb_edging_rounds", &k.ThumbEdging},
		{"thumb_edging", &k.ThumbEdged},
	}
}

// mostKnitted bounds the rounds and counts of what is knitted.
const mostKnitted = 1_500

// worked reads what is on the needles; nil where nothing is.
func (r *reader) worked() *mitt.Worked {
	if !r.sheet.has(pathWorked) || r.sheet.Given(PathSection) == "" {
		return nil
	}
	members := tree.find(pathWorked)
	k := &mitt.Worked{
		Part:      stitch.Part(r.choice(PathSection, members.find("section"))),
		Round:     r.wholeOr(PathRound, 0, mostKnitted, 0),
		BaseAbove: r.signed(PathBase),
		OneSided:  !r.flag("worked.both_edges", true),
		Increases: r.rounds("worked.increase_rounds"),
		Decreases: r.rounds("worked.decrease_rounds"),
	}
	r.choice(PathSide, members.find("side"))
	r.choice(PathSecond, members.find("second"))
	for _, n := range workedNumbers(k) {
		*n.n = r.wholeOr(join(pathWorked, n.key), 0, mostKnitted, 0)
	}
	return k
}

// signed is a length with a sign before it, or 0.
func (r *reader) signed(path string) units.Length {
	l, err := ParseSigned(r.sheet.Given(path), r.unit)
	if err != nil {
		r.faults.Add(path, "%s", err)
	}
	return l
}

// ParseSigned reads a length that may have a sign, or be 0; empty is 0.
func ParseSigned(text string, u units.Unit) (units.Length, error) {
	text = strings.Replace(strings.TrimSpace(text), "−", "-", 1)
	rest, negative := strings.CutPrefix(text, "-")
	if !negative {
		rest = strings.TrimPrefix(text, "+")
	}
	if rest = strings.TrimSpace(rest); rest == "" && text == "" || rest != "" && strings.Trim(rest, "0.,") == "" {
		return 0, nil
	}
	l, err := units.Parse(rest, u)
	if negative {
		l = -l
	}
	return l, err
}

// rounds is a list of rounds, from the first to the last.
func (r *reader) rounds(path string) []int {
	text := r.sheet.Given(path)
	if text == "" {
		return nil
	}
	var list []int
	for _, part := range strings.Split(text, ",") {
		n, ok := wholeOf(strings.TrimSpace(part))
		if !ok || n < 1 || n > mostKnitted {
			r.faults.Add(path, "is %s; write the rounds, from the first to the last: 1, 4, 7", clip(text))
			return nil
		}
		list = append(list, n)
	}
	return list
}

// Knitted is the work on the needles, and the hand that it is for; ok is
// false where there is none, or it can't be read.
func (s Sheet) Knitted() (k *mitt.Worked, side string, ok bool) {
	r := reader{sheet: s, unit: s.Unit()}
	k = r.worked()
	return k, s.Given(PathSide), k != nil && len(r.faults) == 0
}

// Knit puts the work on the needles into the sheet, in the place of what stood
// there; nil takes it out.
func (s Sheet) Knit(k *mitt.Worked, side string) {
	for path := range s {
		if strings.HasPrefix(path, pathWorked+".") && path != PathSecond {
			delete(s, path)
		}
	}
	if k == nil {
		return
	}
	s[PathSection], s[PathRound], s[PathSide] = string(k.Part), strconv.Itoa(k.Round), side
	if k.BaseAbove != 0 {
		s[PathBase] = Signed(k.BaseAbove, s.Unit())
	}
	if k.OneSided {
		s["worked.both_edges"] = "false"
	}
	for path, list := range map[string][]int{"worked.increase_rounds": k.Increases, "worked.decrease_rounds": k.Decreases} {
		if len(list) > 0 {
			s[path] = commas(list)
		}
	}
	for _, n := range workedNumbers(k) {
		if *n.n != 0 {
			s[join(pathWorked, n.key)] = strconv.Itoa(*n.n)
		}
	}
}

// Signed is a length as it is typed with its sign.
func Signed(l units.Length, u units.Unit) string {
	if l < 0 {
		return "-" + (-l).Exact(u)
	}
	return l.Exact(u)
}

func commas(list []int) string {
	parts := make([]string, len(list))
	for i, n := range list {
		parts[i] = strconv.Itoa(n)
	}
	return strings.Join(parts, ", ")
}

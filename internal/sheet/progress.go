package sheet

import (
	"slices"
	"strconv"
	"strings"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// The paths of what is on the needles: under "worked" that of the hand that was
// tried on last, under "worked_other" that of the other hand, if it is begun.
const (
	pathWorked  = "worked"
	pathOther   = "worked_other"
	PathTried   = "tried" // the tries whose corrections are in the sheet
	PathSection = "worked.section"
	PathSide    = "worked.side" // the hand that is on the needles
	PathBase    = "worked.base_above"

	pathIncrease = "worked.increase"
	pathCuff     = "worked.cuff"
	pathTop      = "worked.top"
	pathPlace    = "worked.place"
	pathMade     = "worked.construction"
	pathThumbEnd = "worked.thumb_end"
	PathSecond   = "second" // how the other hand of the pair is worked
)

// Anew stands at PathSecond if the second mitt is planned from its cast-on;
// otherwise it is worked like the first.
const Anew = "anew"

// pathEnd is the path of how a finger that is on the needles is covered.
func pathEnd(f hand.Finger) string { return pathWorked + "." + mitt.PathFinger(f) + ".end" }

// workedKeys returns the keys of what is knitted; numbers are named as in pins, lists
// of rounds first.
func workedKeys() []node {
	worked := node{members: slices.Clone(workedChoices)}
	for _, k := range []kind{rounds, whole} {
		if k == whole {
			worked.plant("round", node{kind: whole})
		}
		for _, n := range mitt.Knittable() {
			if kindOf(n) == k {
				worked.plant(n.Key(), node{kind: k})
			}
		}
	}
	for i := hand.Index; i <= hand.Little; i++ {
		worked.plant(strings.TrimPrefix(pathEnd(i), pathWorked+"."), node{kind: choice, words: endWords})
	}
	return worked.members
}

// workedChoices are the keys of what is knitted that are no numbers of a plan.
var workedChoices = []node{
	{key: "section", kind: choice, words: partNames()},
	{key: "side", kind: choice, words: []string{"right", "left"}},
	{key: "base_above", kind: signed},
	{key: "both_edges", kind: flag},
	{key: "increase", kind: choice, words: increaseWords},
	{key: "cuff", kind: choice, words: cuffWords},
	{key: "top", kind: choice, words: topWords},
	{key: "place", kind: choice, words: placeWords},
	{key: "construction", kind: choice, words: constructionWords},
	{key: "thumb_end", kind: choice, words: endWords},
	{key: "flat", kind: flag},
	{key: "from_tip", kind: flag},
	{key: "joins_above", kind: flag},
	{key: "cuff_turned", kind: flag},
	{key: "hand_turned", kind: flag},
	{key: "thumb_turned", kind: flag},
}

// partNames returns the parts of a mitt as a sheet names them.
func partNames() []string {
	var names []string
	for _, p := range stitch.Parts() {
		names = append(names, string(p))
	}
	return names
}

type workedFlag struct {
	key string
	set *bool
}

// workedFlags returns the flags of what is knitted; one that is left out is false.
func workedFlags(k *mitt.Progress) []workedFlag {
	return []workedFlag{
		{"flat", &k.Flat}, {"from_tip", &k.Down}, {"joins_above", &k.JoinsAbove}, {"cuff_turned", &k.CuffTurned}, {"hand_turned", &k.HandTurned}, {"thumb_turned", &k.ThumbTurned},
	}
}

// maxKnitted is the greatest round or count that may be given of what is knitted.
const maxKnitted = 1_500

// progress reads what is on the needles; nil if nothing is.
func (r *reader) progress() *mitt.Progress {
	if !r.sheet.has(pathWorked) || r.sheet.Given(PathSection) == "" {
		return nil
	}
	members := tree.find(pathWorked)
	k := &mitt.Progress{
		Part:      stitch.Part(r.choice(PathSection, members.find("section"))),
		Round:     r.wholeOr("worked.round", 0, maxKnitted, 0),
		BaseAbove: r.signed(PathBase),
		OneSided:  !r.flag("worked.both_edges", true),
		Increase:  word[mitt.Increase](r, pathIncrease),
		Cuff:      word[mitt.CuffKind](r, pathCuff),
		Top:       word[mitt.TopKind](r, pathTop),
		Place:     word[mitt.ThumbPlace](r, pathPlace),

		Construction: word[mitt.Construction](r, pathMade),
		ThumbEnd:     word[mitt.FingerEnd](r, pathThumbEnd),
	}
	for i := range k.Fingers {
		k.Fingers[i].End = word[mitt.FingerEnd](r, pathEnd(hand.Finger(i)))
	}
	for _, n := range mitt.Knittable() {
		if list := k.Numbers(n); list != nil {
			*list = r.rounds(join(pathWorked, n.Key()))
		}
	}
	r.choice(PathSide, members.find("side"))
	for _, f := range workedFlags(k) {
		*f.set = r.flag(join(pathWorked, f.key), false)
	}
	for _, n := range mitt.Knittable() {
		if number := k.Number(n); number != nil {
			*number = r.wholeOr(join(pathWorked, n.Key()), 0, maxKnitted, 0)
		}
	}
	return k
}

// signed reads a length that may have a sign, or be 0.
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

// Progress returns the work on the needles and the hand that it is for; ok is
// false if there is none, or if it can't be read.
func (s Sheet) Progress() (k *mitt.Progress, side string, ok bool) {
	k, err := read(s, (*reader).progress)
	return k, s.Given(PathSide), k != nil && err == nil
}

// SetProgress replaces the work on one hand in the sheet; that on the other hand
// stays. A nil k takes it out, and takes out both hands' work if side is empty.
func (s Sheet) SetProgress(k *mitt.Progress, side string) {
	if own := s.Given(PathSide); own == side || own == "" || side == "" {
		s.move(pathWorked, "", tree.find(pathWorked))
	}
	if s.Given(join(pathOther, "side")) == side || side == "" {
		s.move(pathOther, "", tree.find(pathWorked))
	}
	if k == nil {
		if s.Given(PathSection) == "" {
			s.move(pathOther, pathWorked, tree.find(pathWorked))
		}
		return
	}
	if s.Given(PathSection) != "" {
		s.move(pathOther, "", tree.find(pathWorked))
		s.move(pathWorked, pathOther, tree.find(pathWorked))
	}
	s.writeProgress(k, side)
}

// writeProgress writes the work on one hand at pathWorked, which must be empty.
func (s Sheet) writeProgress(k *mitt.Progress, side string) {
	s[PathSection], s["worked.round"], s[PathSide] = string(k.Part), strconv.Itoa(k.Round), side
	if k.BaseAbove != 0 {
		s[PathBase] = Signed(k.BaseAbove, s.Unit())
	}
	if k.OneSided {
		s["worked.both_edges"] = "false"
	}
	made := map[string]string{
		pathIncrease: string(k.Increase), pathCuff: string(k.Cuff), pathTop: string(k.Top), pathPlace: string(k.Place), pathMade: string(k.Construction),
		pathThumbEnd: string(k.ThumbEnd),
	}
	for i, f := range k.Fingers {
		made[pathEnd(hand.Finger(i))] = string(f.End)
	}
	for path, word := range made {
		if word != "" {
			s[path] = word
		}
	}
	for _, f := range workedFlags(k) {
		if *f.set {
			s[join(pathWorked, f.key)] = "true"
		}
	}
	for _, n := range mitt.Knittable() {
		path := join(pathWorked, n.Key())
		if list := k.Numbers(n); list != nil && len(*list) > 0 {
			s[path] = commas(*list)
		} else if number := k.Number(n); number != nil && *number != 0 {
			s[path] = strconv.Itoa(*number)
		}
	}
}

// For returns the sheet from which one hand of the pair is planned. It holds the
// hand's own work on the needles; a hand without any is planned like the other
// one, or from its cast-on if the sheet asks for that.
func (s Sheet) For(side string) Sheet {
	switch {
	case s.InForce(side) == pathWorked, s.Given(PathSection) == "":
		return s
	case s.InForce(side) == pathOther:
		out := s.Clone()
		out.move(pathWorked, "", tree.find(pathWorked))
		out.move(pathOther, pathWorked, tree.find(pathWorked))
		return out
	}
	out := s.Clone()
	out.SetProgress(nil, "")
	return out
}

// InForce returns the path of the work that the plan of one hand keeps: its own,
// or that of the other hand if it is worked alike; "" if there is none.
func (s Sheet) InForce(side string) string {
	own := s.Given(PathSide)
	switch {
	case s.Given(PathSection) == "":
		return ""
	case own == side || own == "":
		return pathWorked
	case s.Given(join(pathOther, "side")) == side && s.Given(join(pathOther, "section")) != "":
		return pathOther
	case s.Given(PathSecond) == Anew:
		return ""
	}
	return pathWorked
}

// Sections returns the paths of the section that each hand has reached. A hand
// whose path is empty is not begun.
func Sections() []string { return []string{PathSection, join(pathOther, "section")} }

// Tried returns the numbers of the tries whose corrections are in the sheet.
func (s Sheet) Tried() []int64 {
	return TriedOf(s.Given(PathTried))
}

// TriedOf reads a list of tries as a sheet holds it.
func TriedOf(text string) []int64 {
	var list []int64
	for _, part := range strings.Split(text, ",") {
		if id, err := strconv.ParseInt(strings.TrimSpace(part), 10, 64); err == nil {
			list = append(list, id)
		}
	}
	return list
}

// WithTried returns the path of the tries, and the text there with one more try.
func (s Sheet) WithTried(id int64) (path, text string) {
	if was := s.Given(PathTried); was != "" {
		return PathTried, was + ", " + strconv.FormatInt(id, 10)
	}
	return PathTried, strconv.FormatInt(id, 10)
}

// ForgetProgress takes out all that is recorded of finished knitting, so that a
// copy of the sheet begins anew.
func (s Sheet) ForgetProgress() {
	s.SetProgress(nil, "")
	s.SetKnitted("right", nil)
	s.SetKnitted("left", nil)
	delete(s, PathTried)
}

// Signed returns a length as it is typed, with a minus sign if it is negative.
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

package sheet

import (
	"slices"
	"strconv"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// What the sheet says of the work on the needles: under "worked" the hand that
// was tried on last, under "worked_other" the other one, if it is begun.
const (
	pathWorked  = "worked"
	pathOther   = "worked_other"
	PathTried   = "tried" // the tries whose corrections are in the sheet
	PathSection = "worked.section"
	PathSide    = "worked.side" // the hand that is on the needles
	PathBase    = "worked.base_above"
	PathSecond  = "second" // how the other hand of the pair is worked
)

// Anew is the second mitt planned from its cast-on; otherwise it is worked
// like the first.
const Anew = "anew"

// workedKeys are the counts of what is knitted, named as in pins.
var workedKeys = slices.Concat([]node{
	{key: "section", kind: choice, words: partNames()},
	{key: "side", kind: choice, words: []string{"right", "left"}},
	{key: "base_above", kind: signed},
	{key: "both_edges", kind: flag},
	{key: "joins_above", kind: flag},
	{key: "cuff_turned", kind: flag},
	{key: "hand_turned", kind: flag},
	{key: "thumb_turned", kind: flag},
}, workedNumbers(rounds), keys(whole, "round"), workedNumbers(whole))

// workedNumbers are the numbers of a kind that are kept of what is knitted.
func workedNumbers(k kind) []node {
	var nodes []node
	for _, n := range mitt.Knittable() {
		if kindOf(n) == k {
			nodes = append(nodes, node{key: n.Key(), kind: k})
		}
	}
	return nodes
}

// partNames are the parts of a mitt as a sheet names them.
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

// workedFlags are what is true or not of what is knitted; left out, it is not.
func workedFlags(k *mitt.Progress) []workedFlag {
	return []workedFlag{
		{"joins_above", &k.JoinsAbove}, {"cuff_turned", &k.CuffTurned}, {"hand_turned", &k.HandTurned}, {"thumb_turned", &k.ThumbTurned},
	}
}

// maxKnitted bounds the rounds and counts of what is knitted.
const maxKnitted = 1_500

// progress reads what is on the needles; nil where nothing is.
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

// Progress is the work on the needles, and the hand that it is for; ok is
// false where there is none, or it can't be read.
func (s Sheet) Progress() (k *mitt.Progress, side string, ok bool) {
	k, err := read(s, (*reader).progress)
	return k, s.Given(PathSide), k != nil && err == nil
}

// SetProgress puts the work on one hand into the sheet, in the place of what stood
// there of it; nil takes it out, for every hand if no side is named. What
// stands there of the other hand stays.
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

// writeProgress writes the work on one hand where there is none.
func (s Sheet) writeProgress(k *mitt.Progress, side string) {
	s[PathSection], s["worked.round"], s[PathSide] = string(k.Part), strconv.Itoa(k.Round), side
	if k.BaseAbove != 0 {
		s[PathBase] = Signed(k.BaseAbove, s.Unit())
	}
	if k.OneSided {
		s["worked.both_edges"] = "false"
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

// For is the sheet from which one hand of the pair is planned: with its own
// work on the needles; without any, like the other hand, or from its cast-on.
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

// InForce names what holds the work that the plan of one hand keeps: its own,
// or that of the other hand which it is worked like; empty: nothing.
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

// Sections are the paths of the section that each hand has reached; without it
// nothing of the hand is knitted.
func Sections() []string { return []string{PathSection, join(pathOther, "section")} }

// Tried are the tries whose corrections are in the sheet.
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

// WithTried is the path of the tries and what stands there with one more.
func (s Sheet) WithTried(id int64) (path, text string) {
	if was := s.Given(PathTried); was != "" {
		return PathTried, was + ", " + strconv.FormatInt(id, 10)
	}
	return PathTried, strconv.FormatInt(id, 10)
}

// ForgetProgress takes out all that speaks of knitting that is done: a copy begins
// anew.
func (s Sheet) ForgetProgress() {
	s.SetProgress(nil, "")
	delete(s, PathTried)
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

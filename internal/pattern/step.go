package pattern

import (
	"regexp"
	"strconv"
	"strings"

	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// section is a section of one size's own words.
type section struct {
	part  stitch.Part
	title string
	steps []step
}

// step is one of its steps. Those of rounds have a label and a count.
type step struct {
	words.Step
	joins  bool   // it goes on with the step before it
	body   string // the text without the count
	tokens []token
	bones  string // of the body
	role   string // how the step begins, in words
	place  string // names it in its section
	all    int    // stitches after a round
	inside int    // those of them in a gusset
	told   bool   // the count changes here, or the section begins
	table  *rhythm
}

// sections returns what one size says.
func sections(out *project.Outputs) []section {
	passages := words.Merged(out.WithStops())
	list := make([]section, len(passages))
	for i, p := range passages {
		list[i] = section{part: p.Part, title: p.Title}
		var above [2]int
		for _, s := range p.Steps {
			if s.From > 0 {
				own := stepOf(s)
				now := [2]int{own.all, own.inside}
				own.told, above = now != above, now
				list[i].steps = append(list[i].steps, own)
				continue
			}
			for k, text := range sentences(s.Text) {
				s.Text = text
				own := stepOf(s)
				own.joins = k > 0
				list[i].steps = append(list[i].steps, own)
			}
		}
	}
	return list
}

// byItself finds where a sentence begins that can be told by itself.
var byItself = regexp.MustCompile(`[.!] (?:` + strings.Join([]string{
	"Both hands are", "The (?:left|right) hand has its own", "Put a marker before", "Turn it fingers", "Hold it fingers",
	"Join the yarn", "Fold the", "It takes about", "Cut the yarn, draw it through the last",
}, "|") + `)\b`)

// sentences cuts a step where its sentences can be told by themselves: sizes may differ in
// one of them only.
func sentences(text string) (list []string) {
	for {
		at := byItself.FindStringIndex(text)
		if at == nil {
			return append(list, text)
		}
		list = append(list, text[:at[0]+1])
		text = text[at[0]+2:]
	}
}

// countAtEnd finds the count at the end of a round.
var countAtEnd = regexp.MustCompile(`^ \((\d+)(?:, of which (\d+) in the gusset)?\)\.$`)

// stepOf returns a step as one size has it.
func stepOf(s words.Step) step {
	own := step{Step: s}
	text := s.Text
	switch end := max(0, strings.LastIndex(text, " (")); {
	case s.From > 0:
		if found := countAtEnd.FindStringSubmatchIndex(text[end:]); found != nil {
			own.all, own.inside = number(text[end:], found[2], found[3]), number(text[end:], found[4], found[5])
			text = again.ReplaceAllString(text[:end], "$1, $2")
		}
	case strings.Contains(text, "→"):
		if found := schedule.FindStringSubmatch(text); found != nil {
			text = grows(found)
		}
	default:
		text = strings.Replace(text, "hand has its own sheet:", "hand has its own text:", 1) // a mitt by itself is on sheets
	}
	own.body, own.tokens = text, tokens(text)
	own.bones = bones(own.tokens)
	first, rest, _ := strings.Cut(own.bones, " ")
	second, _, _ := strings.Cut(rest, " ")
	own.role = first + " " + second
	return own
}

// again finds rounds that are worked again so often that it is told in a word; in another
// size they may be told in a number, which can't stand beside theirs.
var again = regexp.MustCompile(`^(Work (?:round|row)s? [\d–]+) (once|twice)\b`)

// number returns the number that stands in a text from one place to another; 0 for none.
func number(text string, from, to int) int {
	if from < 0 {
		return 0
	}
	n, _ := strconv.Atoi(text[from:to]) // digits, as found
	return n
}

// schedule finds what a mitt by itself says of the rounds in which it grows, with the list
// of them. Each has its line in the text, so it is enough to tell how many there are.
var schedule = regexp.MustCompile(`^.*?(?:\. (\d+) (?:in|de)crease (?:round|row)s)?, (\d+) → (\d+) stitch(?:es)?\. (Round|Row)s? [\d, ]+\.$`)

// grows returns how many rounds change the count, and from what to what.
func grows(found []string) string {
	times, from, to := found[1], found[2], found[3]
	if times == "" {
		times = "1"
	}
	what := "increase"
	a, _ := strconv.Atoi(from)
	b, _ := strconv.Atoi(to)
	if b < a {
		what = "decrease"
	}
	noun := what + " " + strings.ToLower(found[4])
	n, _ := strconv.Atoi(times)
	return "From " + words.Plural(a, "stitch") + " to " + to + " in " + words.Plural(n, noun) + "."
}

// round reports whether a step is one of rounds.
func (s step) round() bool { return s.From > 0 }

// plain reports whether a round is all of one stitch.
func (s step) plain() bool { return s.bones == "Knit" || s.bones == "Purl" }

// likeness tells whether two steps of two sizes may be told in one place. A round that is
// all of one stitch stands beside its like only.
func (s step) likeness(o step) int {
	switch {
	case (s.table != nil) != (o.table != nil), s.round() != o.round() || s.Stop != o.Stop || s.Rows != o.Rows:
		return unlike
	case s.bones == o.bones && s.Side == o.Side:
		return same
	case !s.round() && s.role == o.role || s.Stop:
		return kin
	case s.round() && s.From == s.To && o.From == o.To && s.Side == o.Side && !s.plain() && !o.plain():
		return kin
	}
	return unlike
}

package likeness

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// settled plans what was read, tries the choices that the text leaves open, and compares.
func (d *draft) settled() *Likeness {
	d.sheet[sheet.PathKind] = string(d.kind)
	t := &trial{draft: d, planner: mitt.New()}
	if len(d.tops) > 0 {
		d.tops[0].over(d.sheet, len(d.topRows), d.roundsPerMM)
	}
	if why := t.begin(); why != "" {
		return &Likeness{Why: why}
	}
	best := -1
	for i, top := range d.tops {
		if t.try(func(s sheet.Sheet) { top.over(s, len(d.topRows), d.roundsPerMM) }); best < 0 || t.took {
			best = i
		}
		if t.off == 0 {
			break
		}
	}
	if best >= 0 {
		d.tops[best].put(d)
	}
	ribs := []func(sheet.Sheet){func(sheet.Sheet) {}, inRib("4"), inRib("2"), inRib("1")}
	for _, rib := range ribs {
		t.try(rib)
	}
	for _, rib := range ribs {
		for _, way := range d.ways {
			t.try(func(s sheet.Sheet) { rib(s); way(s) })
		}
	}
	if n := len(d.ways); t.off > 0 && n <= mostPairs {
		for i := range n {
			for k := range i {
				t.try(func(s sheet.Sheet) { d.ways[i](s); d.ways[k](s) })
			}
		}
	}
	return t.told()
}

// mostPairs is how many choices are also tried two at a time.
const mostPairs = 16

// inRib gives a sheet another rib, of as many knits as purls.
func inRib(of string) func(sheet.Sheet) {
	return func(s sheet.Sheet) {
		delete(s, mitt.PathKnits)
		delete(s, mitt.PathPurls)
		s["stitch.rib"] = of
	}
}

// trial is the best sheet so far, with its plan.
type trial struct {
	*draft
	planner *mitt.Planner
	best    sheet.Sheet
	plan    *mitt.Plan
	off     int
	took    bool // the last try was better
	freed   []string
}

// begin plans the first sheet. A fixed number that stands in the way of others is let go.
func (t *trial) begin() (why string) {
	s := t.sheet
	s[hand.FieldCircumference] = t.girth(t.count(mitt.HandStitches))
	for range 8 {
		p, err := t.made(s)
		if err == nil {
			s = t.fitted(s, p)
			if p, err = t.made(s); err == nil {
				t.best, t.plan, t.off = s, p, off(t.groups, p)
				return ""
			}
		}
		var faults fault.Fields
		if !errors.As(err, &faults) {
			break
		}
		let := ""
		for _, f := range faults {
			if _, ok := mitt.NumberAt(f.Path); (ok || strings.HasPrefix(f.Path, "hand.") && f.Path != hand.FieldCircumference) && s.Given(f.Path) != "" {
				let = f.Path
			}
		}
		if let == "" {
			return "our plan can’t have these numbers: " + strings.TrimSuffix(faults[0].Message, ".")
		}
		s = s.Clone()
		delete(s, let)
		t.freed = append(t.freed, let)
	}
	return "our plan can’t have these numbers together"
}

func (t *trial) made(s sheet.Sheet) (*mitt.Plan, error) {
	req, err := s.Request()
	if err != nil {
		return nil, err
	}
	return t.planner.Plan(req)
}

// fitted takes the hand's measures from the fabric: what this mitt fits with the usual ease.
func (t *trial) fitted(s sheet.Sheet, p *mitt.Plan) sheet.Sheet {
	out := s.Clone()
	around := p.Bridge.HandAfter
	out[hand.FieldCircumference] = cm(math.Round(float64(around) / t.stitchesPerMM / (1 + p.Ease.Hand)))
	if n := p.Thumb.Stitches.N; p.Thumbed() && n > 0 {
		out[hand.FieldThumb] = cm(math.Round((float64(n) - 1.6) / t.stitchesPerMM / 1.08))
	}
	if _, err := t.made(out); err != nil || len(out.Questions(nil, false)) > 0 {
		return s
	}
	return out
}

// try keeps a change of the sheet if the plan is nearer to the text with it.
func (t *trial) try(change func(sheet.Sheet)) {
	t.took = false
	if t.off == 0 {
		return
	}
	s := t.best.Clone()
	change(s)
	if maps.Equal(s, t.best) {
		return
	}
	p, err := t.made(s)
	if err != nil {
		return
	}
	if n := off(t.groups, p); n < t.off {
		t.best, t.plan, t.off, t.took = s, p, n, true
	}
}

// count is a number as it was read.
func (d *draft) count(n mitt.Number) (value int) {
	_, _ = fmt.Sscan(d.sheet[n.Path()], &value)
	return value
}

// told says how near the best plan comes.
func (t *trial) told() *Likeness {
	l := &Likeness{Kind: t.plan.Kind, Sheet: t.best, Numbers: t.numbers, Rounds: t.worked, Long: t.lengths, Off: t.off, Differs: differs(t.groups, t.plan)}
	left := t.worked
	for _, g := range t.groups {
		left -= len(g)
	}
	if left > 0 {
		l.Off += left
		l.Differs = append(l.Differs, "The text has another piece, of "+words.Plural(left, "round")+".")
	}
	l.Numbers = slices.DeleteFunc(l.Numbers, func(n Number) bool { return t.best.Given(n.path) == "" })
	slices.SortStableFunc(l.Numbers, func(a, b Number) int { return a.Line - b.Line })
	names := t.plan.Names()
	for i := range l.Numbers {
		if n := &l.Numbers[i]; n.fixed {
			n.Name, n.Value = names.Label(n.of), t.best.Given(n.path)
		}
	}
	for _, path := range []string{hand.FieldCircumference, hand.FieldWrist, hand.FieldThumb, hand.FieldLength} {
		if text := t.best.Given(path); text != "" {
			if n, err := strconv.ParseFloat(text, 64); err == nil {
				text = strconv.FormatFloat(n, 'f', 1, 64)
			}
			l.Hand = append(l.Hand, Number{Name: measures[path], Value: text + " cm"})
		}
	}
	l.Notes = t.notes()
	switch around := float64(t.plan.Bridge.HandAfter) / t.stitchesPerMM; {
	case float64(l.Off) > mostOff*float64(l.Rounds):
		l.Why = "no plan of ours comes near its counts"
	case !t.plan.Parted() && (around < leastAlone || around > mostAlone):
		l.Why = fmt.Sprintf("at this gauge it goes round %.0f cm, and no hand does", around/10)
	case !t.plan.Parted() && (l.Rounds < fewestAlone || !t.edged && !t.topped || !t.forHands()):
		l.Why = "without a thumb it may be anything that is knitted in one piece"
	}
	return l
}

// What has no thumb is taken for a mitten or a wristlet if it goes so far round, in mm, and has
// so many rounds (common practice, no source).
const (
	leastAlone, mostAlone = 90, 350
	fewestAlone           = 12
)

// elsewhere matches what is worn elsewhere.
var elsewhere = regexp.MustCompile(`\b(socks?|swatch|cowl|hat|cap|beanie|scarf|sleeves?|leg|jumper|sweater)\b`)

// notes says what else the plan makes otherwise than the text.
func (t *trial) notes() (list []string) {
	knits, purls := t.plan.CuffRib()
	if t.knits > 0 && (knits != t.knits || purls != t.purls) {
		list = append(list, fmt.Sprintf("The plan’s ribbing is k%d, p%d; that of the text, k%d, p%d, would draw in too much of its edges.", knits, purls, t.knits, t.purls))
	}
	if t.plain {
		list = append(list, "The plan ends in ribbing where the text is bound off above plain rounds.")
	}
	return list
}

// forHands reports whether a text speaks of what is worn on hands, and not of anything else.
func (d *draft) forHands() bool {
	return contains(d.text, "mitt", "wrist", "cuff", "glove") && !elsewhere.MatchString(d.text)
}

// measures are what is measured of a hand.
var measures = map[string]string{
	hand.FieldCircumference: "Hand", hand.FieldWrist: "Wrist", hand.FieldThumb: "Thumb", hand.FieldLength: "Hand length",
}

// sections parts the sections of a plan as its pieces are worked.
func sections(p *mitt.Plan) (list [][]stitch.Section) {
	for _, s := range p.Mitt().Sections {
		if len(s.Rounds) == 0 {
			continue
		}
		if len(list) == 0 || s.CastOn > 0 || len(s.From) > 0 || s.Rounds[0].In() == 0 {
			list = append(list, nil)
		}
		at := len(list) - 1
		list[at] = append(list[at], s)
	}
	return list
}

// compare compares a plan with the text: it tells of each section which of its rounds have
// another count than the text, or are lacking there, and how many rows the text has beyond a
// piece of the plan, with the first of them.
func compare(groups [][]row, p *mitt.Plan, section func(s *stitch.Section, which []int), beyond func(first *row, n int)) {
	plan := sections(p)
	for i := range max(len(groups), len(plan)) {
		var rows []row
		if i < len(groups) {
			rows = groups[i]
		}
		at := 0
		if i < len(plan) {
			for _, s := range plan[i] {
				var which []int
				for r := range s.Rounds {
					if at >= len(rows) || !agrees(&rows[at], &s, r) {
						which = append(which, r+1)
					}
					at++
				}
				section(&s, which)
			}
		}
		if left := len(rows) - at; left > 0 {
			beyond(&rows[at], left)
		}
	}
}

// off counts the rounds in which a plan has another count than the text, or that one of them
// lacks.
func off(groups [][]row, p *mitt.Plan) (n int) {
	compare(groups, p, func(_ *stitch.Section, which []int) { n += len(which) }, func(_ *row, left int) { n += left })
	return n
}

// agrees reports whether a row has the count of a round, and between its markers that of the
// gusset.
func agrees(r *row, s *stitch.Section, round int) bool {
	of := &s.Rounds[round]
	return r.after+r.seam == of.Out() && (r.inside < 0 || !s.Part.Marked() || r.inside == of.LeadOut())
}

// differs tells where a plan has other counts than the text.
func differs(groups [][]row, p *mitt.Plan) (list []string) {
	compare(groups, p, func(s *stitch.Section, which []int) {
		if len(which) > 0 {
			list = append(list, where(s.Part, which, len(s.Rounds)))
		}
	}, func(first *row, left int) {
		list = append(list, fmt.Sprintf("From line %d on, the text has %s more.", first.line, words.Plural(left, "round")))
	})
	return list
}

// where names rounds of a section that differ.
func where(part stitch.Part, rounds []int, of int) string {
	name := part.Title()
	switch n := len(rounds); {
	case n == of:
		return fmt.Sprintf("%s: every round of the plan differs.", name)
	case n == 1:
		return fmt.Sprintf("%s: round %d of the plan differs.", name, rounds[0])
	case rounds[n-1]-rounds[0] == n-1:
		return fmt.Sprintf("%s: rounds %d–%d of the plan differ.", name, rounds[0], rounds[n-1])
	default:
		return fmt.Sprintf("%s: %d rounds of the plan differ, from round %d to %d.", name, n, rounds[0], slices.Max(rounds))
	}
}

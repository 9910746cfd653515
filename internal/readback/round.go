package readback

import (
	"cmp"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
)

var counted = regexp.MustCompile(`^ \((\d+)(?:, of which (\d+) in the gusset)?\)\.$`)

// round works one round and checks the counts at its end.
func (n *needles) round(text string) (Round, error) {
	end := max(0, strings.LastIndex(text, " ("))
	found := counted.FindStringSubmatch(text[end:])
	if found == nil {
		return Round{}, fmt.Errorf("it ends without a count")
	}
	w := worker{needles: n, marker: n.gusset}
	n.keepsFor = noGap
	said, err := w.catches(text[:end])
	if err != nil {
		return Round{}, err
	}
	if one := inOne.FindStringSubmatch(said); one != nil && slices.Contains(n.names, one[1]) {
		w.all, said = one[1], one[2]
	}
	pieces := strings.Split(said, " | ")
	if n.before > 0 && len(pieces) == 3 { // the gusset stands inside a row
		if err := w.list(pieces[0], false); err != nil {
			return Round{}, err
		}
		if w.eaten != n.before || len(w.right) != n.before {
			return Round{}, fmt.Errorf("the first marker comes after %d stitches, and %d are worked before it", n.before, w.eaten)
		}
		w.eaten, pieces = 0, pieces[1:]
	}
	if err := w.list(pieces[0], len(pieces) == 1); err != nil {
		return Round{}, err
	}
	if len(pieces) == 2 {
		if n.gusset >= 0 && w.eaten != n.gusset {
			return Round{}, fmt.Errorf("the gusset has %d stitches, and %d are worked before the marker", n.gusset, w.eaten)
		}
		w.marker = len(w.right) - n.before
		if err := w.list(pieces[1], true); err != nil {
			return Round{}, err
		}
	}
	if len(n.live) > 0 {
		return Round{}, fmt.Errorf("%d stitches are left of the round", len(n.live))
	}
	n.live = w.right
	if err := w.checkYarns(); err != nil {
		return Round{}, err
	}
	err = w.counts(found[1], found[2])
	return Round{w.ops, len(w.right), n.gusset, w.yarns, w.caught}, err
}

// worker works one round.
type worker struct {
	*needles
	right  []int    // stitches on the right needle
	ops    []string // operations worked
	eaten  int      // stitches of the round below that they took
	marker int      // place of the gusset's marker on the right needle

	yarns  []string // of the operations
	yarn   string   // of those that are worked now, and go on without a name
	all    string   // the yarn of the whole round, if it was told so
	dyed   bool     // a yarn was told
	caught []string // yarns whose strands were caught
}

// counts checks the stated counts of all stitches and of the gusset.
func (w *worker) counts(all, gusset string) error {
	if atoi(all) != len(w.right) {
		return fmt.Errorf("%d stitches are on the needles", len(w.right))
	}
	if gusset == "" {
		w.gusset = -1
		return nil
	}
	if w.marker < 0 { // no marker was placed before the gusset
		w.marker = atoi(gusset)
	}
	if w.gusset = w.marker; atoi(gusset) != w.marker {
		return fmt.Errorf("%d stitches are in the gusset", w.marker)
	}
	return nil
}

func (w *worker) do(op string, times int) error {
	effect := ledger[op]
	for range times {
		if len(w.ops) > 5000 {
			return fmt.Errorf("the round has no end")
		}
		w.eaten += effect[0]
		if err := w.work(op, effect, &w.right); err != nil {
			return err
		}
		w.ops = append(w.ops, op)
		w.yarns = append(w.yarns, cmp.Or(w.yarn, w.all, w.going))
	}
	return nil
}

// list works items separated by commas. The last one may go to the end of the
// round if last is set.
func (w *worker) list(text string, last bool) error {
	if text == "" {
		return fmt.Errorf("a part of the round is empty")
	}
	items := split(text)
	for i, item := range items {
		if i == 0 { // a sentence begins with a capital
			item = uncapitalised(item)
		}
		if bare, yarn := w.inYarn(item); bare == "knit to the end" && yarn != "" {
			w.yarn, w.dyed, item = yarn, true, bare
		}
		if item == "purl" && last && len(items) == 1 {
			return w.do("p", len(w.live))
		}
		if item == "purl to the end" && last && i == len(items)-1 {
			return w.do("p", len(w.live))
		}
		if item == "knit" || item == "knit to the end" {
			if !last || i != len(items)-1 {
				return fmt.Errorf("%q stands in the middle", item)
			}
			return w.do("k", len(w.live))
		}
		if err := w.item(item); err != nil {
			return err
		}
	}
	return nil
}

// uncapitalised returns an item with a small first letter, unless it begins with an
// abbreviation in capitals.
func uncapitalised(item string) string {
	for _, op := range capitals {
		if strings.HasPrefix(item, op) {
			return item
		}
	}
	return strings.ToLower(item[:1]) + item[1:]
}

// capitals are the operations whose abbreviation begins with one.
var capitals = slices.DeleteFunc(slices.Collect(maps.Keys(ledger)), func(op string) bool { return op[0] >= 'a' })

// loopsGoOn finds more of the loops that an item casts on: "3 cream, 1 rust".
var loopsGoOn = regexp.MustCompile(`^, \d+ `)

// split splits a list at the commas outside brackets.
func split(text string) []string {
	var items []string
	depth, from := 0, 0
	for i, r := range text {
		switch {
		case r == '(':
			depth++
		case r == ')':
			depth--
		case r == ',' && depth == 0 && !loopsGoOn.MatchString(text[i:]):
			items = append(items, strings.TrimSpace(text[from:i]))
			from = i + 1
		}
	}
	return append(items, strings.TrimSpace(text[from:]))
}

var (
	repeated = regexp.MustCompile(`^\((.*)\) (once|twice|(\d+) times)$`)
	corner   = regexp.MustCompile(`^(k2tog|ssk|M1) with the strand at corner ([12])$`)
	run      = regexp.MustCompile(`^(k|p|sl)(\d+)$`)
	phrases  = []struct {
		re *regexp.Regexp
		op string
	}{
		{regexp.MustCompile(`^slip (\d+) to waste yarn(?: for the (.*))?$`), "hold"},
		{regexp.MustCompile(`^leave (\d+) on waste yarn for the (.*)$`), "hold"},
		{regexp.MustCompile(`^knit (\d+) from waste yarn$`), "knit in"},
		{regexp.MustCompile(`^cast on a bridge of (1 backward loop|(?:[2-9]|[1-9]\d+) backward loops)$`), "CO"},
		{regexp.MustCompile(`^cast on (1 backward loop|(?:[2-9]|[1-9]\d+) backward loops)$`), "CO"},
		{regexp.MustCompile(`^pick up and knit (\d+)$`), "pick up"},
		{regexp.MustCompile(`^knit (\d+) each together with the cast-on loop behind it$`), joinHem},
		{regexp.MustCompile(`^knit (\d+) with waste yarn and again with the working yarn$`), waste},
	}
)

// corner works a decrease with the strand at a corner of the gap: the first one comes
// straight after the stitches picked up, the other ends the round.
func (w *worker) corner(op string, number int) error {
	n := len(w.ops)
	if op == "M1" {
		switch {
		case w.rows && n != 1+w.cornerAt[number-1]:
			return fmt.Errorf("corner %d comes after %d stitches of the thumb's row", number, w.cornerAt[number-1])
		case !w.rows && (number == 1) != (n == 0):
			return fmt.Errorf("corner 1 is where the thumb's round begins")
		}
		return w.do(cornerM1, 1)
	}
	if number == 1 && n > 0 && w.ops[n-1] != "pick up" {
		return fmt.Errorf("corner 1 is where the picked-up stitches end")
	}
	if err := w.do(op+" with the gap strand", 1); err != nil {
		return err
	}
	if number == 2 && len(w.live) > 0 {
		return fmt.Errorf("corner 2 is the end of the round, and %d stitches are left", len(w.live))
	}
	return nil
}

func (w *worker) item(item string) error {
	if ok, err := w.asSeen(item); ok {
		return err
	}
	if _, known := ledger[item]; known && !strings.Contains(item, " strand") && item != "hold" && item != "pick up" && item != "knit in" && item != "CO" {
		return w.do(item, 1)
	}
	if ok, err := w.coloured(item); ok {
		return err
	}
	if found := repeated.FindStringSubmatch(item); found != nil {
		n := map[string]int{"once": 1, "twice": 2}[found[2]]
		if found[3] != "" {
			n = atoi(found[3])
		}
		for range n {
			for _, one := range split(found[1]) {
				if err := w.item(one); err != nil {
					return err
				}
			}
		}
		return nil
	}
	if found := run.FindStringSubmatch(item); found != nil {
		return w.do(found[1], atoi(found[2]))
	}
	for _, p := range phrases {
		if found := p.re.FindStringSubmatch(item); found != nil {
			if p.op == "hold" {
				w.keepsFor = found[2]
				if err := w.stays(strings.HasPrefix(item, "leave "), atoi(found[1])); err != nil {
					return err
				}
			}
			number, _, _ := strings.Cut(found[1], " ")
			return w.do(p.op, atoi(number))
		}
	}
	if found := corner.FindStringSubmatch(item); found != nil {
		return w.corner(found[1], atoi(found[2]))
	}
	return fmt.Errorf("%q is no stitch", item)
}

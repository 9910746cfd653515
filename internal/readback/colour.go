package readback

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

var (
	yarnsTold = regexp.MustCompile(`^Yarns: ([^.]*)\.(?: Where no yarn is named, go on in the one before\.)?$`)
	catchTold = regexp.MustCompile(`^“Catching” a yarn: wherever it isn’t used for more than (\d+) stitch(?:es)?, catch it at least every (\d+)(?:st|nd|rd|th)\.`)
	castOnIn  = regexp.MustCompile(`^Cast on \d+ stitch(?:es)? in (.+?) with a (?:stretchy|closed) `)
	moreIn    = regexp.MustCompile(`^Knit \d+ (?:more|stitch(?:es)? of the next round) in ([^:.]+)[:.](?: |$)`)
	moreOf    = regexp.MustCompile(`^Knit \d+ (?:more|stitch(?:es)? of the next round)\b`)
	moreEach  = regexp.MustCompile(`^Knit (?:[2-9]|\d\d+) (?:more|stitches of the next round), each in the yarn of the stitch below it[:.](?: |$)`)
	motifTold = regexp.MustCompile(`^Motif (\d+)(?: \([^()]*\))?, row (\d+): (.*)\.$`)
	motifRow  = regexp.MustCompile(`^row (\d+) of motif (\d+)$`)
	inOne     = regexp.MustCompile(`^In (.*): ([A-Za-z(].*)$`)
	catching  = regexp.MustCompile(`^Catching ([^:]+): (.*)$`)
	ofYarns   = regexp.MustCompile(`^(cast on (?:a bridge of )?(\d+) backward loops): (.*)$`)
	ofYarn    = regexp.MustCompile(`^(\d+) (.+)$`)
	toTheEnd  = regexp.MustCompile(`^knit (.*) to the end$`)
)

// dyes are the yarns and motifs that a text told.
type dyes struct {
	names  []string             // of yarns, the longest first
	motifs map[[2]string]string // rows of motifs, by the numbers of motif and row
	going  string               // the yarn that is gone on with; empty: nobody can tell
	every  int                  // a strand over more stitches is caught; 0: not told
}

// told takes a line that tells yarns or the row of a motif.
func (n *needles) told(line string) (ok bool, err error) {
	if found := yarnsTold.FindStringSubmatch(line); found != nil {
		for _, name := range strings.Split(found[1], ", ") {
			if name == "" || slices.Contains(n.names, name) {
				return true, fmt.Errorf("%q is no yarn of its own", name)
			}
			n.names = append(n.names, name)
		}
		if !slices.Contains(n.names, n.going) {
			return true, fmt.Errorf("it was cast on in %q, which is no yarn", n.going)
		}
		slices.SortFunc(n.names, func(a, b string) int { return cmp.Compare(len(b), len(a)) })
		return true, nil
	}
	if found := catchTold.FindStringSubmatch(line); found != nil {
		if n.every = atoi(found[1]); n.every < 1 || found[1] != found[2] {
			return true, fmt.Errorf("nobody can tell how often")
		}
		return true, nil
	}
	if found := castOnIn.FindStringSubmatch(line); found != nil {
		n.going = found[1]
	}
	if found := moreIn.FindStringSubmatch(line); found != nil {
		if n.going != "" || !slices.Contains(n.names, found[1]) {
			return true, fmt.Errorf("the work goes on in %q", n.going)
		}
		n.going = found[1]
	} else if moreOf.MatchString(line) && len(n.names) > 0 && n.going == "" && !moreEach.MatchString(line) {
		return true, fmt.Errorf("in which yarn is not told")
	}
	found := motifTold.FindStringSubmatch(line)
	if found == nil {
		return false, nil
	}
	if n.motifs == nil {
		n.motifs = map[[2]string]string{}
	}
	n.motifs[[2]string{found[1], found[2]}] = found[3]
	return true, nil
}

// inYarn parts an item from the yarn that it is worked in: "k3 rust", "pick up and knit 4 in
// rust", "knit rust to the end"; yarn is empty if it names none.
func (n *needles) inYarn(item string) (bare, yarn string) {
	if found := toTheEnd.FindStringSubmatch(item); found != nil && slices.Contains(n.names, found[1]) {
		return "knit to the end", found[1]
	}
	for _, name := range n.names {
		if bare, ok := strings.CutSuffix(item, " in "+name); ok {
			return bare, name
		}
		if bare, ok := strings.CutSuffix(item, " "+name); ok {
			return bare, name
		}
	}
	return item, ""
}

// coloured works an item that is the row of a motif, or names its yarn; ok is false for any
// other.
func (w *worker) coloured(item string) (ok bool, err error) {
	if found := motifRow.FindStringSubmatch(item); found != nil {
		row, known := w.motifs[[2]string{found[2], found[1]}]
		if !known {
			return true, fmt.Errorf("%q was not told", item)
		}
		for _, one := range split(row) {
			if err := w.item(one); err != nil {
				return true, err
			}
		}
		return true, nil
	}
	if found := ofYarns.FindStringSubmatch(item); found != nil {
		return true, w.loopsOf(atoi(found[2]), found[3])
	}
	bare, yarn := w.inYarn(item)
	if yarn == "" {
		return false, nil
	}
	if w.all != "" {
		return true, fmt.Errorf("the whole round is in %s", w.all)
	}
	w.yarn, w.dyed = yarn, true
	return true, w.item(bare)
}

// catches takes the yarns that are caught from the head of a round.
func (w *worker) catches(said string) (rest string, err error) {
	found := catching.FindStringSubmatch(said)
	if found == nil {
		return said, nil
	}
	w.caught = strings.Split(strings.Replace(found[1], " and ", ", ", 1), ", ")
	for _, yarn := range w.caught {
		if w.every == 0 || !slices.Contains(w.names, yarn) {
			return said, fmt.Errorf("%q is no yarn, or nobody told how it is caught", yarn)
		}
	}
	return found[2], nil
}

// loopsOf casts on loops of several yarns: "3 cream, 1 rust" of 4.
func (w *worker) loopsOf(all int, text string) error {
	for _, one := range strings.Split(text, ", ") {
		found := ofYarn.FindStringSubmatch(one)
		if found == nil || !slices.Contains(w.names, found[2]) || w.all != "" {
			return fmt.Errorf("%q are no loops", one)
		}
		w.yarn, w.dyed = found[2], true
		if err := w.do("CO", atoi(found[1])); err != nil {
			return err
		}
		all -= atoi(found[1])
	}
	if all != 0 {
		return fmt.Errorf("%d loops are not told", all)
	}
	return nil
}

// checkYarns refuses a round some of whose stitches are of no yarn that a reader could tell,
// and says in what yarn the next one goes on.
func (w *worker) checkYarns() error {
	for i, op := range w.ops {
		if len(w.names) > 0 && w.yarns[i] == "" && op != "hold" {
			return fmt.Errorf("the yarn of stitch %d is not told", i+1)
		}
	}
	switch {
	case w.dyed:
		w.going = ""
	case w.all != "":
		w.going = w.all
	}
	return nil
}

package readback

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
)

var (
	yarnsTold = regexp.MustCompile(`^Yarns: (.*)\.$`)
	motifTold = regexp.MustCompile(`^Motif (\d+)(?: \([^()]*\))?, row (\d+): (.*)\.$`)
	motifRow  = regexp.MustCompile(`^row (\d+) of motif (\d+)$`)
	inOne     = regexp.MustCompile(`^In (.*): ([A-Za-z(].*)$`)
	catching  = regexp.MustCompile(`^(.*) catching (.*) every (\d+)$`)
	toTheEnd  = regexp.MustCompile(`^knit (.*) to the end$`)
)

// dyes are the yarns and motifs that a text told.
type dyes struct {
	names  []string             // of yarns, the longest first
	motifs map[[2]string]string // rows of motifs, by the numbers of motif and row
}

// told takes a line that tells yarns or the row of a motif.
func (n *needles) told(line string) (ok bool, err error) {
	if found := yarnsTold.FindStringSubmatch(line); found != nil {
		for _, one := range strings.Split(found[1], ", ") {
			letter, name, _ := strings.Cut(one, " ")
			if len(letter) != 1 || name == "" || slices.Contains(n.names, name) {
				return true, fmt.Errorf("%q is no yarn of its own", one)
			}
			n.names = append(n.names, name)
		}
		slices.SortFunc(n.names, func(a, b string) int { return cmp.Compare(len(b), len(a)) })
		return true, nil
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
	if found := catching.FindStringSubmatch(item); found != nil {
		for _, yarn := range strings.Split(found[2], " and ") {
			if !slices.Contains(w.names, yarn) {
				return true, fmt.Errorf("%q is no yarn", yarn)
			}
			w.caught = append(w.caught, yarn)
		}
		return true, w.item(found[1])
	}
	bare, yarn := w.inYarn(item)
	if yarn == "" {
		return false, nil
	}
	if w.all != "" {
		return true, fmt.Errorf("the whole round is in %s", w.all)
	}
	w.yarn, w.dyed = yarn, true
	err = w.item(bare)
	w.yarn = ""
	return true, err
}

// checkYarns refuses a round that names the yarn of some stitches and not of others.
func (w *worker) checkYarns() error {
	for i, op := range w.ops {
		if w.dyed && w.yarns[i] == "" && op != "hold" {
			return fmt.Errorf("the yarn of stitch %d is not told", i+1)
		}
	}
	return nil
}

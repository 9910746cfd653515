package readback

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// A text for several sizes is read as its knitter reads it who has marked one size all
// through: lines for other sizes are passed over, of "44 (48, 52)" one number is taken,
// and a count that isn't told is that of the round before.

var (
	forSizes  = regexp.MustCompile(`^Sizes? (.+?)( only)?: `)
	partSizes = regexp.MustCompile(`^(.*): sizes? (.+) only$`)
	roundOf   = regexp.MustCompile(`^(Round|Row)s? (\d+)(?:–(\d+))?( \((?:right|wrong) side\))?(?:, to (.*))?:(?: (.*))?$`)
	stitches  = regexp.MustCompile(`^(\d+) stitch(?:es)?(?:, (\d+) in the gusset)?$`)
	countedAs = regexp.MustCompile(`^(.*)\. (\d+ stitch(?:es)?(?:, \d+ in the gusset)?)\.$`)
	ofOne     = regexp.MustCompile(`(^|[^\d–.,])1((?: (?:held|backward|plain|increase|decrease))*) (stitches|rounds|rows|loops|ends)\b`)
	theOne    = regexp.MustCompile(`\b(first|last) 1 stitch\b`)
	theNext   = regexp.MustCompile(`\bthe next 1\b`)
	leaveOne  = regexp.MustCompile(`\bleave the first 1 for\b`)
	onceTimes = regexp.MustCompile(`(^|[^\d–.,])1 times\b`)
	twiceTime = regexp.MustCompile(`(^|[^\d–.,])2 times\b`)
)

// anyNumber is a number as it stands in a list of sizes.
const anyNumber = `(?:\d+(?:–\d+|\.\d+)?(?:st|nd|rd|th)?[⅛¼⅜½⅝¾⅞]?|[⅛¼⅜½⅝¾⅞])`

// before are the headings of what stands before the first round.
var before = []string{"Sizes", "What you need", "Abbreviations"}

var ofHand = regexp.MustCompile(`^(.*), (right|left) hand$`)

// OfHand returns what the knitter of one hand, "right" or "left", reads of a text for both.
func OfHand(text, hand string) string {
	var blocks []string
	for _, block := range strings.Split(strings.TrimRight(text, "\n"), "\n\n") {
		title, rest, _ := strings.Cut(block, "\n")
		bare, sizes, some := strings.Cut(title, ": ")
		if found := ofHand.FindStringSubmatch(bare); found != nil {
			if found[2] != hand {
				continue
			}
			if title = found[1]; some {
				title += ": " + sizes
			}
			block = title + "\n" + rest
		}
		blocks = append(blocks, linesOf(block, hand))
	}
	return strings.Join(blocks, "\n\n") + "\n"
}

// linesOf returns the lines of a block that are for a hand, or for both.
func linesOf(block, hand string) string {
	var lines []string
	for _, line := range strings.Split(block, "\n") {
		of, rest, ok := strings.Cut(line, " hand: ")
		switch {
		case !ok || of != "Right" && of != "Left":
			lines = append(lines, line)
		case strings.EqualFold(of, hand):
			lines = append(lines, rest)
		}
	}
	return strings.Join(lines, "\n")
}

// OfSize returns what the knitter of one of the sizes, by their names, reads of a text.
func OfSize(text string, names []string, size int) (string, error) {
	var b strings.Builder
	for _, block := range strings.Split(strings.TrimRight(text, "\n"), "\n\n") {
		lines := strings.Split(block, "\n")
		all := make([]int, len(names))
		for i := range all {
			all[i] = i
		}
		title := lines[0]
		if slices.Contains(before, title) {
			continue
		}
		if found := partSizes.FindStringSubmatch(title); found != nil {
			var err error
			if all, err = namedSizes(found[2], names); err != nil {
				return "", err
			}
			title = found[1]
		}
		if !slices.Contains(all, size) {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(title + "\n")
		r := sizeReader{names: names, size: size, all: all}
		for _, line := range lines[1:] {
			if err := r.line(&b, line); err != nil {
				return "", fmt.Errorf("%s, %q: %w", title, line, err)
			}
		}
		if err := r.tabled(&b); err != nil {
			return "", fmt.Errorf("%s: %w", title, err)
		}
		if r.open != "" {
			return "", fmt.Errorf("%s: nothing follows %q", title, r.open)
		}
	}
	return roundOnes.Replace(b.String()), nil
}

// roundOnes puts what is repeated in round brackets, as texts for one size have it.
var roundOnes = strings.NewReplacer("[", "(", "]", ")")

// namedSizes returns which sizes a text names: "7, 8 and 9".
func namedSizes(text string, names []string) (list []int, err error) {
	one := func(name string) bool {
		at := slices.Index(names, name)
		list = append(list, at)
		return at >= 0
	}
	head, last, several := strings.Cut(text, " and ")
	ok := true
	if several {
		for _, name := range strings.Split(head, ", ") {
			ok = ok && one(name)
		}
		ok = ok && one(last)
	} else {
		ok = one(text)
	}
	if !ok || !slices.IsSorted(list) || len(slices.Compact(slices.Clone(list))) < len(list) {
		return nil, fmt.Errorf("%q are no sizes", text)
	}
	return list, nil
}

// sizeReader reads the lines of one part.
type sizeReader struct {
	names []string
	size  int
	all   []int
	open  string // the label and count of a round that is told below, for some sizes each
	count string // after the last round
	rhythm
}

// tabled writes the rounds of a table that was read to its end.
func (r *sizeReader) tabled(b *strings.Builder) error {
	if r.table == nil {
		return nil
	}
	err := r.tell(b, r.names[r.size])
	r.rhythm = rhythm{}
	return err
}

// line writes what a line says for the size.
func (r *sizeReader) line(b *strings.Builder, line string) error {
	if strings.HasPrefix(line, "  ") {
		r.table = append(r.table, line)
		return nil
	}
	if err := r.tabled(b); err != nil {
		return err
	}
	sizes := r.all
	if found := forSizes.FindStringSubmatch(line); found != nil {
		var err error
		if sizes, err = namedSizes(found[1], r.names); err != nil {
			return err
		}
		line = line[len(found[0]):]
	}
	at := slices.Index(sizes, r.size)
	if at < 0 {
		return nil
	}
	if means.MatchString(line) {
		return nil
	}
	line, err := oneOf(line, len(sizes), at)
	if err != nil {
		return err
	}
	line = abbreviated(line)
	if r.open != "" {
		body := strings.TrimSuffix(line, ".")
		fmt.Fprintf(b, "%s: %s (%s).\n", r.open, body, r.count)
		r.open = ""
		return nil
	}
	if ok, err := r.take(line); ok || err != nil {
		return err
	}
	found := roundOf.FindStringSubmatch(line)
	if found == nil {
		b.WriteString(line + "\n")
		return nil
	}
	label := found[1] + " " + found[2]
	if found[3] != "" && found[3] != found[2] {
		label = found[1] + "s " + found[2] + "–" + found[3]
	}
	label += found[4]
	body, told := found[6], found[5]
	if body == "" {
		if r.open = label; told != "" {
			return r.counts(told)
		}
		return nil
	}
	if count := countedAs.FindStringSubmatch(body); count != nil {
		if body = count[1]; told != "" {
			return fmt.Errorf("two counts are told")
		}
		if err := r.counts(count[2]); err != nil {
			return err
		}
	}
	if r.count == "" {
		return fmt.Errorf("no count was told yet")
	}
	fmt.Fprintf(b, "%s: %s (%s).\n", label, strings.TrimSuffix(body, "."), r.count)
	return nil
}

// counts takes the count after a round.
func (r *sizeReader) counts(text string) error {
	found := stitches.FindStringSubmatch(text)
	if found == nil {
		return fmt.Errorf("%q is no count", text)
	}
	if r.count = found[1]; found[2] != "" {
		r.count += ", of which " + found[2] + " in the gusset"
	}
	return nil
}

// oneOf takes of each number with its values for so many sizes the one at a place, and puts
// it as one says it. A list of another length is refused.
func oneOf(line string, sizes, at int) (string, error) {
	if sizes > 1 {
		list := regexp.MustCompile(fmt.Sprintf(`(%s) \((%s(?:, %s){%d})\)`, anyNumber, anyNumber, anyNumber, sizes-2))
		line = list.ReplaceAllStringFunc(line, func(found string) string {
			values := list.FindStringSubmatch(found)
			others := strings.Split(values[2], ", ")
			from, _, span := strings.Cut(values[1], "–")
			if at == 0 {
				return values[1]
			}
			if span && !strings.Contains(values[2], "–") { // "1–8 (9, 10)"
				return from + "–" + others[at-1]
			}
			return others[at-1]
		})
	}
	if left := anyList.FindString(line); left != "" {
		return "", fmt.Errorf("%q is no list for %d sizes", left, sizes)
	}
	line = ofOne.ReplaceAllStringFunc(line, func(found string) string {
		if one, ok := strings.CutSuffix(found, "ches"); ok {
			return one + "ch"
		}
		return strings.TrimSuffix(found, "s")
	})
	line = theOne.ReplaceAllString(line, "$1 stitch")
	line = theNext.ReplaceAllString(line, "the next one")
	line = leaveOne.ReplaceAllString(line, "leave the first for")
	line = onceTimes.ReplaceAllString(line, "${1}once")
	return twiceTime.ReplaceAllString(line, "${1}twice"), nil
}

// anyList finds a list of values of whatever length.
var anyList = regexp.MustCompile(anyNumber + ` \(` + anyNumber + `(?:, ` + anyNumber + `)*\)`)

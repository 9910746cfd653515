package written

import "slices"

// parser reads the tokens of one statement.
type parser struct {
	t      []token
	at     int
	sizes  int // how many the statement is for
	yarns  [][]string
	motifs []told
	every  int     // how many sizes the text has
	of     []int   // the sizes that the statement is for; nil: all
	rest   []token // what a sentence goes on with
	these  int     // rounds that were told together last
	single bool    // rounds were told from a single asterisk on
	deep   int     // brackets that are open
	groups int     // those of asterisks so far
	list   []Item  // items of lists that are not finished, inner ones behind outer ones
	told   []Count // counts of a list that is not finished
	kept   *shelf[Item]
}

// nothing stands where a statement is over.
var nothing = token{kind: mark}

func (p *parser) peek() *token { return p.next(0) }

// next returns the token that is so many further.
func (p *parser) next(by int) *token {
	if at := p.at + by; at >= 0 && at < len(p.t) {
		return &p.t[at]
	}
	return &nothing
}

func (p *parser) done() bool { return p.at >= len(p.t) }

// took steps over words if they stand next.
func (p *parser) took(words ...string) bool {
	for i, w := range words {
		if p.next(i).low != w {
			return false
		}
	}
	p.at += len(words)
	return true
}

// any steps over one of several words if it stands next.
func (p *parser) any(words ...string) bool {
	if p.done() || !slices.Contains(words, p.t[p.at].low) {
		return false
	}
	p.at++
	return true
}

// all steps over as many of the words as stand next.
func (p *parser) all(words ...string) {
	for p.any(words...) {
	}
}

// here returns where the next token stands, or where the last one ends.
func (p *parser) here() Spot {
	if !p.done() {
		return p.peek().at
	}
	return p.reached()
}

// reached returns where the last token ends that was taken.
func (p *parser) reached() Spot {
	if p.at == 0 || len(p.t) == 0 {
		return Spot{1, 1}
	}
	return p.t[min(p.at, len(p.t))-1].end()
}

// stitches steps over "stitches", however it is shortened, and over whose they are; ok tells
// whether it was there.
func (p *parser) stitches() bool {
	from := p.at
	for whose[p.peek().low] && (whose[p.next(1).low] || stitchWords[p.next(1).low]) {
		p.at++
	}
	if stitchWords[p.peek().low] {
		p.at++
		p.any(".")
		return true
	}
	p.at = from
	return false
}

// stitchWords are what stitches are called.
var stitchWords = map[string]bool{"st": true, "sts": true, "stitch": true, "stitches": true, "loops": true, "loop": true}

// rounds steps over "rounds" or "rows".
func (p *parser) rounds() (row, ok bool) {
	t := p.peek()
	if roundWords[t.low] == 0 {
		return false, false
	}
	p.at++
	p.any(".")
	return roundWords[t.low] == 2, true
}

// roundWords are what rounds (1) and rows (2) are called.
var roundWords = map[string]int{
	"round": 1, "rounds": 1, "rnd": 1, "rnds": 1, "rd": 1, "rds": 1, "row": 2, "rows": 2,
}

// times reads how often: "3 times", "twice", "x 3", "once more"; more tells whether that is
// after a first time.
func (p *parser) times() (n Number, more, ok bool) {
	from := p.at
	switch {
	case p.any("once"):
		n = Is(1)
	case p.any("twice"):
		n = Is(2)
	case p.any("thrice"):
		n = Is(3)
	default:
		sign := p.any("x")
		if n, ok = p.number(true); !ok {
			p.at = from
			return n, false, false
		}
		more = p.any("more", "further", "additional")
		if !p.any("times", "time", "x") && !sign {
			p.at = from
			return n, false, false
		}
	}
	if p.any("more", "again") {
		more = true
	}
	if !p.took("in", "all") && !p.took("in", "total") {
		p.any("total", "altogether")
	}
	return n, more, true
}

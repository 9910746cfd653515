package written

// elsewhere reads that something is worked as is told at another place: "Work as for left mitt to
// thumb", "Complete to match the first", "Finish as for first finger". All says that a piece ends
// with it.
func (p *parser) elsewhere(s *Statement) bool {
	first := p.peek().low
	switch first {
	case "work", "complete", "finish", "knit", "make", "continue", "cont", "repeat", "rep", "begin", "as", "follow", "commence", "shape", "proceed", "cast":
	default:
		return false
	}
	as, pair := false, false
	for at := 1; at < len(p.t); at++ {
		low, before := p.t[at].low, p.t[at-1].low
		switch {
		case before == "as" && (low == "for" || low == "given" || low == "on" || low == "the" || low == "first" || low == "left" || low == "right"), before == "to" && (low == "match" || low == "correspond"), before == "same" && low == "as":
			as = as || !p.roundsAfter(at)
		case low == "exactly" && at+1 < len(p.t) && p.t[at+1].low == "as":
			as = true
		case before == "the" && low == "same", low == "another", low == "alike", low == "second" && first == "make":
			pair = true
		}
	}
	switch {
	case first == "make" && (pair || as), as && first == "repeat" && pair:
		s.Kind = Note // a pair of it
	case as && (first == "complete" || first == "finish" || p.until("to") == len(p.t) && first != "continue" && first != "cont" && first != "as" && first != "shape"):
		s.Kind, s.All = Elsewhere, true
	case as:
		s.Kind = Elsewhere
	default:
		return false
	}
	return true
}

// roundsAfter reports whether what is meant is rounds, "as for round 2".
func (p *parser) roundsAfter(at int) bool {
	for _, t := range p.t[at:min(len(p.t), at+4)] {
		if roundWords[t.low] > 0 {
			return true
		}
	}
	return false
}

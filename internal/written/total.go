package written

// total cuts off how many rounds there are in all when some were worked again, "(22 rounds
// worked)", and returns it.
func (p *parser) total() (n Number) {
	end := len(p.t)
	for end > p.at && p.t[end-1].low == "." {
		end--
	}
	open := end - 1
	for open > p.at && open > end-12 && closing[p.t[open].low] == "" {
		open--
	}
	if end-open < 4 || closing[p.t[open].low] != p.t[end-1].low {
		return n
	}
	from := p.at
	defer func() { p.at = from }()
	p.at = open + 1
	n, ok := p.number(false)
	if !ok || !p.anyRound() {
		return Number{}
	}
	p.all("worked", "total", "in", "all", "completed", "complete", "altogether", "have", "been", "now")
	if p.at != end-1 {
		return Number{}
	}
	p.t = p.t[:open]
	return n
}

// totalled reads a sentence that is nothing else: "(20 rnds)" behind "Work rnds 1–4 four times
// more".
func (p *parser) totalled(s *Statement) bool {
	all := p.t
	if n := p.total(); n.Written() && len(p.t) == 0 {
		s.Kind, s.Many = Note, n
		return true
	}
	p.t = all
	return false
}

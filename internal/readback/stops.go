package readback

import (
	"fmt"
	"regexp"
)

// Where a part ends on the hand is told once: before a round that it names, or after the
// last.
var (
	endBegins = regexp.MustCompile(`^(?:Begin|Try it on before) (?:round|row) (\d+)(?:: it should (?:end|reach) |, (?:for )?the ribbing, ).+\.$`)
	endsHere  = regexp.MustCompile(`^(?:Stop when it (?:reaches|ends) |Knit until it is |Closed, it has ).+\.$`)
)

// stops takes what is said of where a part ends; said is false for any other line.
func (p *Part) stops(line string) (said bool, err error) {
	begins := endBegins.FindStringSubmatch(line)
	if begins == nil && !endsHere.MatchString(line) {
		return false, nil
	}
	if p.stop > 0 || len(p.Rounds) == 0 {
		return true, fmt.Errorf("%d rounds are worked, and the end was told %d times", len(p.Rounds), min(p.stop, 1))
	}
	if p.stop = len(p.Rounds); begins != nil {
		if p.named = atoi(begins[1]); p.named != p.stop+1 {
			return true, fmt.Errorf("round %d follows", p.stop+1)
		}
	}
	return true, nil
}

// checkStop compares where the end was told with the rounds that followed.
func (p *Part) checkStop() error {
	switch worked := len(p.Rounds); {
	case p.stop == 0:
	case p.named == 0 && worked != p.stop:
		return fmt.Errorf("round %d was to be the last of %d", p.stop, worked)
	case p.named > worked:
		return fmt.Errorf("round %d was to begin the end, and there are %d", p.named, worked)
	case p.named > 0 && p.texts[p.named-1] == p.texts[p.named-2]:
		return fmt.Errorf("round %d was to begin the end, and is like the one before it", p.named)
	}
	return nil
}

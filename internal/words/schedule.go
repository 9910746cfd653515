package words

import (
	"fmt"
	"strings"

	"thenar/internal/stitch"
)

// Schedule returns a schedule three ways at once: the action, the total, the
// list. from and to are the stitches before and after, step is the number that
// one change adds (negative: removes), and rounds are the rounds with a change,
// out of total.
//
//	An increase round, then 2 plain rounds; 6 times in all, then 2 plain rounds more.
//	6 increase rounds, 3 → 15 stitches. Rounds 1, 4, 7, 10, 13, 16.
//
// A single change needs no total: "One increase round, 3 → 5 stitches."
func Schedule(rounds []int, from, to, step, total int) string {
	return schedule(rounds, from, to, step, total, 0)
}

// scheduleOf returns that of a section. Its edge, which isn't plain, is its first rounds,
// or its last if it is worked down.
func scheduleOf(s *stitch.Section) string {
	by, n, edge := s.About.Shaping, len(s.Rounds), s.About.Edge
	if s.Down {
		return schedule(by.Rounds, by.From, by.To, by.Step, n-edge, 0)
	}
	return schedule(by.Rounds, by.From, by.To, by.Step, n, edge)
}

// schedule returns a schedule whose first rounds are an edge, which isn't plain.
func schedule(rounds []int, from, to, step, total, edge int) string {
	what := "increase"
	if step < 0 {
		what = "decrease"
	}
	if len(rounds) == 0 {
		stay := "stay as they are"
		if from == 1 {
			stay = "stays as it is"
		}
		return fmt.Sprintf("Plain for %s: %s %s.", Plural(total, "round"), Plural(from, "stitch"), stay)
	}
	if len(rounds) == 1 {
		return fmt.Sprintf("%s, %d → %s. Round %d.", action(rounds, what, total, edge), from, Plural(to, "stitch"), rounds[0])
	}
	return fmt.Sprintf("%s. %s, %d → %s. Rounds %s.", action(rounds, what, total, edge),
		Plural(len(rounds), what+" round"), from, Plural(to, "stitch"), List(rounds))
}

func roundWord(n int) string {
	if n == 1 {
		return "Round"
	}
	return "Rounds"
}

// action returns what to do: the plain rounds before, then each rhythm. A
// change and its plain rounds are one step, worked so many times in all, only
// if all fit before the end and no plain rounds come first that could be taken
// for part of the step.
func action(rounds []int, what string, total, edge int) string {
	start := ""
	if edge > 0 {
		start = "after the edge "
	}
	if plain := rounds[0] - 1 - edge; plain > 0 {
		start += Plural(plain, "plain round") + ", then "
	}
	if len(rounds) == 1 {
		return capital(start + "one " + what + " round")
	}
	groups := intervals(rounds)
	switch every := groups[0].every; {
	case len(groups) > 1:
	case every == 1:
		return capital(fmt.Sprintf("%s%s %s round every round; %s in all", start, article(what), what, Times(len(rounds)))) + plainEnd(total-rounds[len(rounds)-1])
	case start == "" && every*len(rounds) <= total:
		return capital(fmt.Sprintf("%s %s round, then %s; %s in all", article(what), what,
			Plural(every-1, "plain round"), Times(len(rounds)))) + plainEnd(total-every*len(rounds))
	}
	parts := make([]string, len(groups))
	for i, g := range groups {
		parts[i] = g.words()
	}
	return capital(fmt.Sprintf("%s%s %s round, then another %s", start, article(what), what, strings.Join(parts, ", then ")))
}

// plainEnd returns the plain rounds that follow the last step.
func plainEnd(n int) string {
	if n == 0 {
		return ""
	}
	return ", then " + Plural(n, "plain round") + " more"
}

func article(what string) string {
	if what == "increase" {
		return "an"
	}
	return "a"
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// group is a number of equal intervals in a row.
type group struct{ every, times int }

func (g group) words() string {
	return everyWords(g.every) + " " + Times(g.times)
}

// everyWords returns an interval in words.
func everyWords(n int) string {
	if n == 1 {
		return "every round"
	}
	return fmt.Sprintf("every %s round", Ordinal(n))
}

func intervals(rounds []int) []group {
	var groups []group
	for i := 1; i < len(rounds); i++ {
		every := rounds[i] - rounds[i-1]
		if n := len(groups); n > 0 && groups[n-1].every == every {
			groups[n-1].times++
			continue
		}
		groups = append(groups, group{every, 1})
	}
	return groups
}

// Evenly returns an even distribution in words: the runs of plain stitches, and
// what is worked between them ("m1", "kfb", "k2tog").
func Evenly(runs []int, with string, flat bool) string {
	abbr := map[string]string{"m1": "M1"}[with]
	if abbr == "" {
		abbr = with
	}
	var tokens []string
	for i, run := range runs {
		if run > 0 {
			tokens = append(tokens, fmt.Sprintf("k%d", run))
		}
		if !flat || i < len(runs)-1 {
			tokens = append(tokens, abbr)
		}
	}
	return joinRepeats(tokens) + "."
}

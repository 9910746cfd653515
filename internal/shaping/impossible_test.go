package shaping

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each message names the bound and what would be right.
func TestImpossible(t *testing.T) {
	ok := Problem{From: 3, To: 15, Step: 2, Rounds: 19, Gap: 2, LeadOut: 1, Lambda: 8000}
	for name, c := range map[string]struct {
		change func(*Problem)
		bound  string
		says   string
	}{
		"too few rounds":          {func(p *Problem) { p.Rounds = 11 }, "rounds", "is 11, with room for 5 changes at least 2 apart from round 1 to 10 (10 at least 1 apart); 6 changes need 12 rounds (1 more), or make 5 changes (1 fewer)"},
		"no gap helps":            {func(p *Problem) { p.Rounds = 5 }, "rounds", "with room for 2 changes at least 2 apart from round 1 to 4; 6 changes need 12 rounds (7 more), or make 2 changes (4 fewer)"},
		"no round helps":          {func(p *Problem) { p.Gap = 500 }, "rounds", "from round 1 to 18 (6 at least 3 apart); make 1 change (5 fewer)"},
		"first too late":          {func(p *Problem) { p.First = 9 }, "first", "write at most 8, or 6 changes need 20 rounds (1 more), or make 5 changes (1 fewer)"},
		"first, and more":         {func(p *Problem) { p.First = 9; p.Rounds = 11 }, "rounds", "6 changes need 20 rounds (9 more), or make 1 change (5 fewer)"},
		"backwards, not even":     {func(p *Problem) { p.Step = -5 }, "step", "leads away from 15; write 5"},
		"decreases fall short":    {func(p *Problem) { p.To = -8; p.Step = -4 }, "step", "-5 or -9 can be reached"},
		"step leads away":         {func(p *Problem) { p.Step = -2 }, "step", "write 2"},
		"step of nothing":         {func(p *Problem) { p.Step = 0 }, "step", "is 0"},
		"step falls short":        {func(p *Problem) { p.To = 16 }, "step", "15 or 17 can be reached"},
		"no rounds":               {func(p *Problem) { p.Rounds = 0 }, "rounds", "from 1 to"},
		"too many rounds":         {func(p *Problem) { p.Rounds = 1 << 40 }, "rounds", "from 1 to"},
		"gap":                     {func(p *Problem) { p.Gap = 0 }, "gap", "from 1"},
		"late first":              {func(p *Problem) { p.First = 19 }, "first", "rounds 1 to 18"},
		"early first":             {func(p *Problem) { p.LeadIn = 2; p.First = 1 }, "first", "rounds 3 to 18"},
		"lead":                    {func(p *Problem) { p.LeadIn = -1 }, "lead-in", "from 0"},
		"leads meet":              {func(p *Problem) { p.LeadOut = 19 }, "lead-out", "is 19, which leaves no round of the 19 for a change; write at most 18"},
		"long lead-in":            {func(p *Problem) { p.LeadIn = 30 }, "lead-in", "write at most 17"},
		"leads meet together":     {func(p *Problem) { p.Rounds = 3; p.LeadIn = 9; p.LeadOut = 9 }, "lead-out", "shorten them by 16 in all"},
		"negative lead-out":       {func(p *Problem) { p.LeadOut = -1 }, "lead-out", "from 0"},
		"wild target":             {func(p *Problem) { p.Target = make([]int64, 19); p.Target[4] = 1e11 }, "target", "within"},
		"short target":            {func(p *Problem) { p.Target = make([]int64, 3) }, "target", "each of the 19"},
		"huge numbers":            {func(p *Problem) { p.From = math.MinInt }, "from", "within"},
		"of no parity":            {func(p *Problem) { p.Only = 3 }, "only", "write odd or even"},
		"first of the other":      {func(p *Problem) { p.First = 4; p.Only = OddRounds }, "first", "is round 4, but changes stand in odd rounds; write 5"},
		"first, the last even":    {func(p *Problem) { p.Rounds = 19; p.First = 18; p.Only = OddRounds; p.To = 5 }, "first", "write 17"},
		"one round, of the other": {func(p *Problem) { p.LeadIn = 17; p.To = 5; p.Only = OddRounds }, "only", "is odd, but round 18 is the only one with room for a change; write even"},
		"too few odd rounds":      {func(p *Problem) { p.Rounds = 11; p.Only = OddRounds; p.Gap = 3 }, "rounds", "is 11, with room for 3 changes at least 4 apart from round 1 to 9; 6 changes need 22 rounds (11 more), or make 3 changes (3 fewer)"},
		"worked of the other":     {func(p *Problem) { p.Only = EvenRounds; p.Gap = 4; p.Worked = 9; p.Changed = []int{1, 5} }, "worked", "leaves rounds 10 to 18 for 4 changes at least 4 apart; that takes up to round 22 (4 more)"},
		"negative price":          {func(p *Problem) { p.Lambda = -1 }, "lambda", "between"},
		"too exact": {func(p *Problem) {
			p.Target = []int64{1e10, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}
			p.Lambda = 1
		}, "from", "too large"},
	} {
		t.Run(name, func(t *testing.T) {
			p := ok
			c.change(&p)
			_, err := Solve(p)
			var impossible *Impossible
			require.ErrorAs(t, err, &impossible)
			assert.Equal(t, c.bound, impossible.Bound)
			assert.Contains(t, impossible.Message, c.says)
		})
	}
}

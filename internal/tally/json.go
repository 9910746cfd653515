package tally

// Format is the name of the report's JSON.
const Format = "thenar/check@1"

// kindNames are the kinds of findings as JSON has them.
var kindNames = [...]string{
	Miscounted: "miscounted", LeftOver: "left_over", Short: "short", Unread: "not_understood",
	Forgotten: "forgotten", Misplaced: "marker", Misnumbered: "round_number", Listed: "list_or_total",
}

// String returns the kind as JSON has it.
func (k Kind) String() string { return kindNames[k] }

// File is a report as JSON: see testdata/check.schema.json.
type File struct {
	Format   string        `json:"format"`
	Sound    bool          `json:"sound"`
	Sizes    []sizeJSON    `json:"sizes"`
	Findings []findingJSON `json:"findings"`
}

type sizeJSON struct {
	Name   string      `json:"name"`
	Hand   string      `json:"hand"`
	Open   bool        `json:"open"`
	Rounds []roundJSON `json:"rounds"`
}

type roundJSON struct {
	Section string `json:"section"`
	Round   int    `json:"round"`
	Before  *int   `json:"before"`
	After   *int   `json:"after"`
	Between *int   `json:"between_markers"`
	Line    int    `json:"line"`
}

type findingJSON struct {
	Kind     string   `json:"kind"`
	Line     int      `json:"line"`
	Column   int      `json:"column"`
	Sizes    []string `json:"sizes"`
	Section  string   `json:"section"`
	Round    string   `json:"round"`
	Found    *int     `json:"found"`
	Expected *int     `json:"expected"`
	SeeLine  *int     `json:"see_line"`
	Message  string   `json:"message"`
	Cure     string   `json:"suggestion"`
}

// JSON returns the report as it is written to a file.
func (r *Report) JSON() File {
	out := File{Format: Format, Sound: r.Sound(), Sizes: []sizeJSON{}, Findings: []findingJSON{}}
	for _, s := range r.Sizes {
		one := sizeJSON{s.Name, s.Hand, s.Open, []roundJSON{}}
		for _, round := range s.Rounds {
			one.Rounds = append(one.Rounds, roundJSON{round.Section, round.Number, known(round.Before), known(round.After), known(round.Inside), round.Line})
		}
		out.Sizes = append(out.Sizes, one)
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		one := findingJSON{
			Kind: f.Kind.String(), Line: f.At.Line, Column: f.At.Column, Sizes: append([]string{}, f.Sizes...),
			Section: f.Section, Round: f.Round, Message: f.Message, Cure: f.Cure,
		}
		if f.Found != f.Expected {
			one.Found, one.Expected = &f.Found, &f.Expected
		}
		if f.Look.Line > 0 {
			one.SeeLine = &f.Look.Line
		}
		out.Findings = append(out.Findings, one)
	}
	return out
}

// known returns a count, or nothing if nobody knows it.
func known(n int) *int {
	if n < 0 {
		return nil
	}
	return &n
}

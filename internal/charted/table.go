package charted

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/stitch"
	"thenar/internal/written"
)

// MostTable is the most bytes of a chart's table that are read, and the others what it may
// hold at most: several times a glove in fine yarn.
const (
	MostTable     = 512 << 10
	mostTableRows = 3000
	mostAcross    = 1000
	mostBlocks    = 60
)

// Table is a chart that was read from a table as chart.CSV writes it, from its lowest round up.
type Table struct {
	rounds []tableRound
	width  int
}

// tableRound is a line of a table.
type tableRound struct {
	line  int // of the file, from 1
	round int
	side  stitch.Side
	none  bool   // it has no number, or nobody knows its stitches
	signs []sign // from the right
	from  []int  // the column of each, from the right edge, from 0
}

// wrong is a fault of a table.
func wrong(format string, args ...any) error { return fault.New(fault.Invalid, format, args...) }

// ReadTable reads the table of a chart, and tells what is no such table, and where.
func ReadTable(raw []byte) (t Table, err error) {
	if len(raw) > MostTable {
		return t, wrong("has over %d kB; send the table of one mitt", MostTable>>10)
	}
	in := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(raw, []byte("\uFEFF"))))
	in.FieldsPerRecord = -1
	for {
		fields, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if at := (*csv.ParseError)(nil); errors.As(err, &at) {
			return t, wrong("row %d: its quotes don’t close; save it as CSV anew", at.Line)
		} else if err != nil {
			return t, wrong("can’t be read as CSV; save it anew")
		}
		line, _ := in.FieldPos(0)
		if err := t.add(line, fields); err != nil {
			return t, err
		}
	}
	if len(t.rounds) == 0 {
		return t, wrong("is empty; send a chart’s table, one row for each round")
	}
	slices.Reverse(t.rounds)
	return t, t.inOrder()
}

// numbered is the last field of a row: its number and its side, and whether anybody knows its
// stitches; or what it is if it has no number.
var numbered = regexp.MustCompile(`^(?:(\d{1,5})(?: (right|wrong) side)?(?: (not read|open|not told))?|(?:between|as told|not read|open|not told)(?: (?:right|wrong) side)?)$`)

// add reads a row of a table.
func (t *Table) add(line int, fields []string) error {
	n := len(fields) - 1
	switch {
	case len(t.rounds) >= mostTableRows:
		return wrong("row %d: over %d rounds; send the table of one mitt", line, mostTableRows)
	case n > mostAcross:
		return wrong("row %d: over %d fields; a round has fewer", line, mostAcross)
	case t.width == 0:
		t.width = n
	case n != t.width:
		return wrong("row %d has %d fields, and the first %d: each row needs as many", line, n+1, t.width+1)
	}
	last := strings.ToLower(strings.TrimSpace(fields[n]))
	found := numbered.FindStringSubmatch(last)
	switch {
	case found == nil && n > 2 && (fields[n-2] == "times" || numbered.MatchString(fields[n-2])):
		return wrong("row %d: this is a boxed chart; download it whole, without boxes", line)
	case found == nil:
		return wrong("row %d: its last field is %q; write the round’s number there, such as 12 or 2 wrong side", line, cut(fields[n]))
	}
	r := tableRound{line: line, none: found[1] == "" || found[3] != ""}
	r.round, _ = strconv.Atoi(found[1])
	r.side = map[string]stitch.Side{"right": stitch.RightSide, "wrong": stitch.WrongSide}[found[2]]
	for x := n - 1; x >= 0; x-- {
		name, _, _ := strings.Cut(fields[x], "/") // its yarn isn't compared
		if name = strings.ToLower(strings.TrimSpace(name)); name == "" {
			continue
		}
		s, ok := known(name)
		if !ok {
			return wrong("row %d, field %d: %s", line, x+1, unknown(name))
		}
		r.signs, r.from = append(r.signs, s), append(r.from, n-1-x)
	}
	if len(r.signs) == 0 && !r.none {
		return wrong("row %d has no stitch; write one in each field, such as k", line)
	}
	t.rounds = append(t.rounds, r)
	return nil
}

// inOrder tells rounds that don't follow on each other, from the lowest.
func (t *Table) inOrder() error {
	last, blocks, alone := 0, 0, false // alone: the round before follows none
	for _, r := range t.rounds {
		switch {
		case r.round == 0:
			continue
		case r.round == last-1 && alone && last > 1:
			return wrong("row %d: round %d stands above round %d; the last round comes first", r.line, r.round, last)
		case r.round <= last, last == 0:
			if blocks++; blocks > mostBlocks {
				return wrong("row %d: over %d sections; send the table of one mitt", r.line, mostBlocks)
			}
		}
		alone, last = r.round <= last || last == 0, r.round
	}
	return nil
}

// cut shortens what is quoted.
func cut(text string) string {
	if letters := []rune(text); len(letters) > 30 {
		return string(letters[:30]) + "…"
	}
	return text
}

// inTables are the stitches of tables by their abbreviations in small letters.
var inTables = func() map[string]sign {
	by := map[string]sign{}
	for abbr, op := range ofAbbr {
		by[strings.ToLower(abbr)] = sign{op: op}
	}
	for _, said := range append(written.Names(), chart.Meanings()...) {
		if _, ok := ofAbbr[said]; ok {
			continue
		}
		by[strings.ToLower(said)] = sign{said: said}
	}
	return by
}()

// crossed are cables, and joined are stitches that are passed over others.
var (
	crossed = regexp.MustCompile(`^[ct]\d{1,2}[fblr]$`)
	joined  = regexp.MustCompile(`^[a-z0-9 ,]{1,60}p2?sso$`)
)

func known(name string) (sign, bool) {
	if s, ok := inTables[name]; ok {
		return s, true
	}
	return sign{said: name}, crossed.MatchString(name) || joined.MatchString(name)
}

// unknown tells that a field has no stitch.
func unknown(name string) string {
	if like := written.Guess(name); like != "" && !strings.Contains(name, " ") {
		return fmt.Sprintf("%q is no stitch; is %s meant?", cut(name), like)
	}
	return fmt.Sprintf("%q is no stitch; write its abbreviation, such as k or ssk", cut(name))
}

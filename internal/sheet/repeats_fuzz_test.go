package sheet

import (
	"reflect"
	"strings"
	"testing"

	"thenar/internal/repeat"
)

// FuzzRepeats reads any text in the fields of a repeat. One that is read can be laid by what
// it says, and is the same after a way through a file; one that isn't is a fault at one of its
// fields.
func FuzzRepeats(f *testing.F) {
	f.Add("..a./.a.a", "", "hand", "3", "-2", "columns", "H3/H18", "begin", "-1", "edge", "true")
	f.Add("b", "p", "whole", "1", "", "round", "", "multiple", "0", "", "")
	f.Add("", "ks/pt", "", "", "0", "gusset", "", "centred_back", "200", "out", "no")
	f.Add("a/bb", "é", "thumb", "½", "-", "palm", "H0/Q1/", "", "1e9", "x", "false")
	f.Fuzz(func(t *testing.T, motif, stitches, section, from, to, over, columns, set, offset, gusset, cut string) {
		s, err := Parse([]byte(measured("[]")))
		if err != nil {
			t.Fatal(err)
		}
		for key, text := range map[string]string{
			"motif": motif, "stitches": stitches, "section": section, "from": from, "to": to, "over": over,
			"columns": columns, "set": set, "offset": offset, "gusset": gusset, "cut": cut,
		} {
			s[RepeatPath(0, key)] = text
		}
		list := s.Repeats()
		_, err = s.Request()
		if len(list) == 0 {
			if err == nil && s.has(row(PathRepeats, 0)) {
				t.Fatal("it is left out, and nobody is told")
			}
			if err != nil && !strings.Contains(err.Error(), row(PathRepeats, 0)) {
				t.Fatalf("the fault is elsewhere: %v", err)
			}
			return
		}
		one := list[0]
		if one.From < 1 || one.To == 0 || one.Motif.Wide < 1 || max(one.Offset, -one.Offset) > repeat.MaxSide {
			t.Fatalf("%+v was let pass", one)
		}
		if between := one.Between != [2]string{}; between != (one.Over == repeat.Columns) || between && !(repeat.Column(one.Between[0]) && repeat.Column(one.Between[1])) {
			t.Fatalf("over %s, between %q", one.Over, one.Between)
		}
		again, err := Parse(s.JSON())
		if err != nil {
			t.Fatalf("what was read can't be read again: %v\n%s", err, s.JSON())
		}
		if back := again.Repeats(); !reflect.DeepEqual(list, back) {
			t.Fatalf("%+v came back as %+v", list, back)
		}
	})
}

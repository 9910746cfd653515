package repeat

import (
	"slices"
	"strings"
	"testing"

	"thenar/internal/stitch"
)

// FuzzDrawn reads any drawing. One that is read is within its bounds, sets something, and is
// the same again when it is drawn; one that isn't says why.
func FuzzDrawn(f *testing.F) {
	f.Add("..a./.a.h", "p.../..t.")
	f.Add("b", "")
	f.Add("", "ks/pt")
	f.Add("é/a", ".")
	f.Add("a/", "./.")
	f.Fuzz(func(t *testing.T, yarns, stitches string) {
		rows := func(text string) []string {
			if text == "" {
				return nil
			}
			return strings.Split(text, "/")
		}
		m, wrong := Drawn(rows(yarns), rows(stitches))
		if wrong.Why != "" {
			if m.Wide != 0 || m.High != 0 {
				t.Fatalf("refused, and yet %d × %d", m.Wide, m.High)
			}
			return
		}
		if m.Wide < 1 || m.High < 1 || m.Wide > MaxSide || m.High > MaxSide {
			t.Fatalf("%d × %d", m.Wide, m.High)
		}
		set := 0
		for up := range m.High {
			for right := range m.Wide {
				if yarn, op := m.At(right, up); yarn != "" || op != stitch.NoStitch {
					set++
				}
			}
		}
		if set == 0 {
			t.Fatal("it sets nothing")
		}
		again, wrong := Drawn(m.Rows())
		if wrong.Why != "" || again.Wide != m.Wide || again.High != m.High || !slices.Equal(again.yarns, m.yarns) || !slices.Equal(again.stitches, m.stitches) {
			t.Fatalf("drawn again it is %+v: %s", again, wrong.Why)
		}
		if given, of := rows(yarns), m.High-1; given != nil { // as it looks: from the top, and from the left
			if yarn, _ := m.At(m.Wide-1, of); (given[0][0] == leave) != (yarn == "") {
				t.Fatalf("%q begins with %q", given[0], yarn)
			}
		}
	})
}

package paper

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
)

// boxedSheet is the first sample with a motif of 4 stitches laid round the whole hand.
func boxedSheet(t *testing.T, side project.Side, fromLeft bool) Sheet {
	t.Helper()
	doc := project.Samples()[0]
	doc.Side, doc.FromLeft = side, fromLeft
	doc.Sheet["repeats[0].motif"], doc.Sheet["repeats[0].name"] = "...b/..bc/.bca/bcad", "steps"
	out, err := project.NewPlanner().Derive(doc, nil)
	require.NoError(t, err)
	return Sheet{Doc: doc, Out: out}
}

// A handout with its motifs boxed says under each part of the hand's chart how often its box
// is worked, and shows the motif in its key once; nothing lies on anything else, on either
// paper, in greys and in large print, for both hands.
func TestBoxedHandout(t *testing.T) {
	for name, set := range map[string]func(o *Options) project.Side{
		"A4":        func(*Options) project.Side { return project.Right },
		"left":      func(*Options) project.Side { return project.Left },
		"Letter":    func(o *Options) project.Side { o.Paper = Letter; return project.Right },
		"grey":      func(o *Options) project.Side { o.Grey = true; return project.Left },
		"large":     func(o *Options) project.Side { o.Large = true; return project.Right },
		"sideways":  func(o *Options) project.Side { o.Sideways = true; return project.Right },
		"from left": func(o *Options) project.Side { o.FromLeft = true; return project.Right },
	} {
		t.Run(name, func(t *testing.T) {
			o := Usual()
			o.Boxed = true
			side := set(&o)
			s := boxedSheet(t, side, o.FromLeft)
			pages := Handout(s, o)
			var texts []string
			for _, p := range pages {
				nothingOverlaps(t, p, o, name)
				texts = append(texts, textsOf(p)...)
				page := strings.Join(textsOf(p), " ")
				assert.Equal(t, strings.Count(page, "× 9"), strings.Count(page, "(steps) 9 times"), "a box is told where it stands: %s", page)
				assert.NotContains(t, page, "rounds 1 to 1.")
			}
			all := strings.Join(texts, " ")
			for _, want := range []string{"× 9", "all round: gusset, rounds 1 to 20", "the box of 4 stitches (steps) 9 times", "steps: 4 stitches, 4 rounds, 10 times"} {
				assert.Contains(t, all, want)
			}
			assert.Equal(t, 1, strings.Count(all, "steps: 4"), "the key shows each motif once")

			o.Boxed = false
			all = ""
			for _, p := range Handout(s, o) {
				all += strings.Join(textsOf(p), " ")
			}
			assert.NotContains(t, all, "× 9")
		})
	}
}

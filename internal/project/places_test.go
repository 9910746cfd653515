package project

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

var (
	lengthOfYarn = regexp.MustCompile(`\d+ cm / \d+ in`)
	afterFirst   = regexp.MustCompile(`second marker after the first (?:(\d+) )?stitch`)
	boundOff     = regexp.MustCompile(`(?m)^(?:Bind|Cast) off .*$`)
)

// The words use as many markers at a time as the materials list, and take every one
// off; the gusset's is on the needles while the words name it by its
// sign. A length of yarn stands in the materials if it stands in the words, and the
// other way round. An edge is bound off in rib if its rounds are ribbed.
func TestWordsAndMaterialsAgree(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 4))
	pl := NewPlanner()
	for range testenv.Cases(60, 1000) {
		d, _ := anyMitt(rng, pl)
		d.FromLeft = rng.IntN(4) == 0
		out, err := pl.Derive(d, nil)
		require.NoError(t, err)
		material := map[string]string{}
		for _, m := range out.Materials("", "") {
			material[m.Name] = m.Text
		}
		text := instructions(t, out)
		require.Equal(t, material["Markers"][:1], strconv.Itoa(markers(t, out, text)), "%v", d.Sheet)
		said := lengthsOf(text[:strings.Index(text, ".")] + strings.Join(boundOff.FindAllString(text, -1), "\n") + allOf(text, "Cut the yarn", "Join the yarn"))
		// Of the fingers the list has the least and the most, the words each.
		require.Subset(t, said, lengthsOf(material["Tails"]), "%v\n%s", d.Sheet, text)
		fingers := lengthsOf(ofFinger.FindString(material["Tails"]))
		said = slices.DeleteFunc(said, func(one string) bool {
			return len(fingers) > 0 && fingers[0] <= one && one <= fingers[len(fingers)-1]
		})
		require.Subset(t, lengthsOf(material["Tails"]), said, "%v\n%s", d.Sheet, text)
		inRib := strings.Count(text, " in rib")
		want := 0
		if out.Plan.Top == nil {
			want = min(out.Plan.Body.EdgingRounds, 1) + min(out.Plan.Thumb.EdgingRounds, 1)
		}
		if f := out.Plan.Fingers; f != nil {
			for i := range f.Each {
				want += min(f.Each[i].EdgingRounds, 1)
			}
		}
		require.Equal(t, want, inRib, "%v\n%s", d.Sheet, text)
	}
}

var ofFinger = regexp.MustCompile(`Binding off a finger takes [^.]*\. `)

// markers follows the markers of a text, line by line, and returns how many are on the
// needles at a time.
func markers(t *testing.T, out *Outputs, text string) (most int) {
	t.Helper()
	on := 0
	for _, line := range strings.Split(text, "\n") {
		switch {
		case strings.Contains(line, "Place a marker and join"), strings.Contains(line, "Place the second marker"), strings.Contains(line, "Put a marker before"):
			on++
			most = max(most, on)
		case strings.Contains(line, "second marker off"), strings.Contains(line, "Marker off."):
			on--
		case strings.Contains(line, " | "):
			require.Equal(t, 2, on, "the gusset's marker is on the needles: %s", line)
		}
		if strings.Contains(line, "round now begins") {
			require.Equal(t, 1, on)
			require.Contains(t, line, "Move the marker there")
		}
		if found := afterFirst.FindStringSubmatch(line); found != nil {
			require.Equal(t, max(out.Plan.Gusset.Base, 1), max(atoi(found[1]), 1))
		}
	}
	require.Zero(t, on, "every marker comes off")
	return most
}

func atoi(digits string) int {
	n, _ := strconv.Atoi(digits)
	return n
}

// lengthsOf returns the lengths of yarn in a text, each once, in order.
func lengthsOf(text string) []string {
	list := lengthOfYarn.FindAllString(text, -1)
	slices.Sort(list)
	return slices.Compact(list)
}

// allOf returns the lines of a text that hold one of some words.
func allOf(text string, some ...string) string {
	var lines []string
	for _, line := range strings.Split(text, "\n") {
		if slices.ContainsFunc(some, func(s string) bool { return strings.Contains(line, s) }) {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, "\n")
}

// Where the thumb is picked up follows from where its stitches lie, which this test
// works out from the rounds alone: fingers up, a stitch lies left of the one that
// was worked before it, right of it if the mitt is knitted from left to right. The
// thumb's round takes the held stitches in that order, so it comes to the bridge at
// the corner beyond the last of them (common practice, no source).
func TestPickingUpBeginsAtItsCorner(t *testing.T) {
	for _, side := range []Side{Right, Left} {
		for _, fromLeft := range []bool{false, true} {
			for _, bridge := range []string{"", "0", "1"} {
				d := Samples()[0]
				d.Side, d.FromLeft = side, fromLeft
				d.Sheet["pins.bridge"] = bridge
				out, err := NewPlanner().Derive(d, nil)
				require.NoError(t, err)
				way := "from right to left"
				if at := heldFrom(out.Mitt, fromLeft); at[0] < at[len(at)-1] {
					way = "from left to right"
				}
				where := "Pick up along the bridge, at both ends"
				if bridge == "0" {
					where = "Pick up at the top of the gap."
				}
				assert.Contains(t, instructions(t, out), where)
				assert.Contains(t, instructions(t, out), "Hold it fingers down, outside towards you. Join the yarn at the "+map[bool]string{true: "gap’s ", false: "bridge’s "}[bridge == "0"]+strings.Fields(way)[1])
			}
		}
	}
	d := Samples()[0]
	d.Sheet["pins.bridge"], d.Sheet["pins.picked_up"] = "0", "0"
	out, err := NewPlanner().Derive(d, nil)
	require.NoError(t, err)
	assert.Contains(t, instructions(t, out), "Join the yarn at the gap’s right corner; a tail of 20 cm / 8 in closes the last hole.\nThe round begins there, with the held stitches. Put a marker before the first of them.")
}

// heldFrom returns where the held stitches lie, in the order in which the thumb
// takes them, counted to the right.
func heldFrom(m stitch.Mitt, fromLeft bool) []int {
	var at []int
	for i, op := range m.Section(stitch.Hand).Rounds[0].Ops {
		if op != stitch.Hold {
			continue
		}
		if !fromLeft {
			i = -i
		}
		at = append(at, i)
	}
	return at
}

// Numbers of one, and a gap with nothing over it, are said as one says them.
func TestSmallNumbersReadRight(t *testing.T) {
	for pins, c := range map[string]struct {
		sheet map[string]string
		says  []string
		not   []string
	}{
		"no bridge": {
			map[string]string{"pins.bridge": "0", "kind": "mitten"},
			[]string{"Nothing is cast on over the gap: knit across it and pull snug.", "bridge: nothing is cast on over the gap.", "Slip it back to the left needle, the yarn slack inside. Move the marker there."},
			[]string{"bridge,", "cast on 0", "along the 0", "0 whole"},
		},
		"one stitch": {
			map[string]string{"pins.bridge": "1"},
			[]string{"cast on a bridge of 1 backward loop,", "along the bridge’s one stitch", "after the first stitch: "},
			[]string{"the 1 of", "0 whole", "first 1"},
		},
		"one round": {
			map[string]string{"length.edging": "0.3", "length.thumb_edging": "0.3"},
			[]string{"the last one in rib over 42 stitches", "Round 12: (k1, p1) 21 times (42).", "Bind off all 42 stitches in rib"},
			[]string{"the last 1 "},
		},
	} {
		d := Samples()[0]
		for path, text := range c.sheet {
			d.Sheet[path] = text
		}
		out, err := NewPlanner().Derive(d, nil)
		require.NoError(t, err)
		text := instructions(t, out)
		for _, r := range out.Reasons {
			text += r.Name + ": " + r.Why + "\n"
		}
		for _, s := range c.says {
			assert.Contains(t, text, s, pins)
		}
		for _, s := range c.not {
			assert.NotContains(t, text, s, pins)
		}
	}
}

package static

import (
	"io/fs"
	"maps"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sheets returns the style sheets by name, without their comments.
func sheets(t *testing.T) map[string]string {
	t.Helper()
	comment := regexp.MustCompile(`(?s)/\*.*?\*/`)
	names, err := fs.Glob(FS, "css/*.css")
	require.NoError(t, err)
	all := map[string]string{}
	for _, name := range names {
		raw, err := fs.ReadFile(FS, name)
		require.NoError(t, err)
		all[name] = comment.ReplaceAllString(string(raw), "")
	}
	return all
}

var token = regexp.MustCompile(`(--[a-z0-9-]+):\s*([^;]+);`)

// palettes returns the colours of the light and of the dark page.
func palettes(t *testing.T) (light, dark map[string]string) {
	t.Helper()
	day, night, both := strings.Cut(sheets(t)["css/base.css"], "prefers-color-scheme: dark")
	require.True(t, both)
	colours := func(css string) map[string]string {
		found := map[string]string{}
		for _, m := range token.FindAllStringSubmatch(css, -1) {
			if strings.HasPrefix(m[2], "#") {
				found[strings.TrimPrefix(m[1], "--")] = m[2]
			}
		}
		return found
	}
	return colours(day), colours(night)
}

// luminance is the relative luminance of a colour written #RRGGBB, between 0
// and 1 (WCAG 2.2, "relative luminance").
func luminance(t *testing.T, colour string) float64 {
	t.Helper()
	require.Regexp(t, `^#[0-9A-F]{6}$`, colour)
	sum := 0.0
	for i, share := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(colour[1+2*i:3+2*i], 16, 8)
		require.NoError(t, err)
		part := float64(n) / 255
		if part <= 0.04045 {
			part /= 12.92
		} else {
			part = math.Pow((part+0.055)/1.055, 2.4)
		}
		sum += share * part
	}
	return sum
}

// contrast is the contrast ratio of two colours, between 1 and 21 (WCAG 2.2,
// "contrast ratio").
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	one, other := luminance(t, a), luminance(t, b)
	return (max(one, other) + 0.05) / (min(one, other) + 0.05)
}

// A browser drops a rule that it can't read and says nothing: what a merge left in a
// sheet is found here.
func TestSheetsAreWhole(t *testing.T) {
	for name, css := range sheets(t) {
		assert.NotRegexp(t, `(?m)^(<{7}|={7}|>{7})`, css, name)
		assert.Equal(t, strings.Count(css, "{"), strings.Count(css, "}"), name)
	}
}

// Text can be read (WCAG 2.2, 1.4.3: 4.5 : 1), borders of what is worked with
// and the focus can be seen (1.4.11: 3 : 1), on every ground, in light and in
// dark. That a grid's lines need 1.5 : 1 is ours: they only help to count.
func TestContrast(t *testing.T) {
	assert.InDelta(t, 21, contrast(t, "#000000", "#FFFFFF"), 1e-9, "the largest there is")
	light, dark := palettes(t)
	require.Equal(t, slices.Sorted(maps.Keys(light)), slices.Sorted(maps.Keys(dark)), "each colour has both values")
	for mode, colours := range map[string]map[string]string{"light": light, "dark": dark} {
		for _, c := range []struct {
			names, grounds string
			least          float64
		}{
			{"ink pencil chalk pin basting fits", "tissue card", 4.5},
			{"card", "chalk ink", 4.5}, // what is pressed first
			{"ink", "grid", 4.5},       // a letter over a hole in the chart
			{"ink chalk", "tape-ground", 4.5},
			{"fifth chalk", "tissue card", 3},
			{"grid", "tissue card", 1.5},
		} {
			for _, name := range strings.Fields(c.names) {
				for _, ground := range strings.Fields(c.grounds) {
					ratio := contrast(t, colours[name], colours[ground])
					assert.GreaterOrEqual(t, ratio, c.least, "%s: %s on %s", mode, name, ground)
					t.Logf("%s: %s on %s %.2f", mode, name, ground, ratio)
				}
			}
		}
	}
}

// A browser drops a rule that it can't read, without a word: every rule's selector
// is made of names, and as many braces are closed as opened.
func TestRulesCanBeRead(t *testing.T) {
	readable := regexp.MustCompile(`^[-\w\s.#:*>+~,@%()\[\]="'^$|/]+$`)
	for name, css := range sheets(t) {
		assert.Equal(t, strings.Count(css, "{"), strings.Count(css, "}"), name)
		for _, m := range selectors.FindAllStringSubmatch(css, -1) {
			assert.Regexp(t, readable, m[1], name)
			assert.NotRegexp(t, `[<=>]{2}`, m[1], "%s: left over from two versions", name)
		}
	}
}

// A colour, a size and a distance are given in one file, by name; what is named
// is there, and is used.
func TestTokens(t *testing.T) {
	defined, used := map[string]bool{}, map[string]bool{}
	use := regexp.MustCompile(`var\((--[a-z0-9-]+)\)`)
	for name, css := range sheets(t) {
		for _, m := range token.FindAllStringSubmatch(css, -1) {
			defined[m[1]] = true
			assert.Equal(t, "css/base.css", name, m[0])
		}
		for _, m := range use.FindAllStringSubmatch(css, -1) {
			used[m[1]] = true
		}
		if name != "css/base.css" {
			for _, colour := range regexp.MustCompile(`#[0-9A-Fa-f]{3,8}\b[^{]*;`).FindAllString(css, -1) {
				assert.Regexp(t, `^#(FFFFFF|000000)\b`, colour, "%s: but for paper, and marks over dark yarn, a colour has a name", name)
			}
		}
	}
	assert.Equal(t, slices.Sorted(maps.Keys(defined)), slices.Sorted(maps.Keys(used)))
}

// Text has one of six sizes and one of the weights that there are faces of; the
// serif has only the heavier. Sizes follow the browser's: rem, not px.
func TestTypeScale(t *testing.T) {
	css := sheets(t)
	px := []float64{}
	for _, m := range regexp.MustCompile(`--type-[a-z]+: ([\d.]+)rem;`).FindAllStringSubmatch(css["css/base.css"], -1) {
		rem, err := strconv.ParseFloat(m[1], 64)
		require.NoError(t, err)
		px = append(px, rem*16)
	}
	assert.Equal(t, []float64{13, 15, 17, 21, 28, 40}, px)
	for name, text := range css {
		for _, m := range regexp.MustCompile(`[{;\s]font(-size|-weight)?:\s*([^;}]+)`).FindAllStringSubmatch(text, -1) {
			want := `^inherit$` // the short form would undo tabular figures
			switch m[1] {
			case "-size":
				want = `^var\(--type-[a-z]+\)$`
			case "-weight":
				want = `^(400|600)$`
			}
			assert.Regexp(t, want, m[2], "%s: %s", name, m[0])
		}
		for _, rule := range strings.Split(text, "}") {
			if strings.Contains(rule, "font-family: var(--serif)") {
				assert.Contains(t, rule, "font-weight: 600", name)
			}
		}
	}
	assert.Contains(t, css["css/base.css"], "font-variant-numeric: tabular-nums")
}

// Every face that a style sheet loads is there.
func TestFaces(t *testing.T) {
	faces := regexp.MustCompile(`url\("\.\./([^"]+)"\)`).FindAllStringSubmatch(sheets(t)["css/base.css"], -1)
	assert.Len(t, faces, 3)
	for _, face := range faces {
		raw, err := fs.ReadFile(FS, face[1])
		require.NoError(t, err)
		assert.Equal(t, "wOF2", string(raw[:4]), "%s: WOFF2, 4.1", face[1])
	}
}

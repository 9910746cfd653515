package static

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// deskSheets are the style sheets of one desk each.
var deskSheets = []string{"css/fit.css", "css/chartdesk.css", "css/pattern.css", "css/needles.css", "css/try.css"}

var (
	selectors = regexp.MustCompile(`([^{};]+)\{`)
	classes   = regexp.MustCompile(`\.[a-z][a-z-]*`)
	bare      = regexp.MustCompile(`^\.[a-z][a-z-]*$`)
)

// All sheets are loaded on every page, so what one desk says of a class alone
// would reach the things of that class on another desk: there a button could no
// longer be pressed. A class that one desk's sheet styles by its name alone
// isn't named in the sheet of another.
func TestDesksKeepToThemselves(t *testing.T) {
	all := sheets(t)
	alone, named := map[string][]string{}, map[string][]string{}
	for _, sheet := range deskSheets {
		text := all[sheet]
		require.NotEmpty(t, text, sheet)
		for _, m := range selectors.FindAllStringSubmatch(text, -1) {
			for selector := range strings.SplitSeq(m[1], ",") {
				selector = strings.TrimSpace(selector)
				if bare.MatchString(selector) && !slices.Contains(alone[selector], sheet) {
					alone[selector] = append(alone[selector], sheet)
				}
				for _, class := range classes.FindAllString(selector, -1) {
					if !slices.Contains(named[class], sheet) {
						named[class] = append(named[class], sheet)
					}
				}
			}
		}
	}
	require.NotEmpty(t, alone)
	for class := range alone {
		assert.Len(t, named[class], 1, "%s is styled by its name alone: set its desk before it", class)
	}
}

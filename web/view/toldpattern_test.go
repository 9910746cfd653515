package view

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/project"
)

// The history tells of a pattern's texts as a knitter speaks of them.
func TestPatternTold(t *testing.T) {
	was := project.PatternTexts{project.PatternTitle: "Ear", "line a/1": "Cast on.", "was line a/1": "x", "after b/1": "Rest.", project.PatternStory: "Long ago."}
	now := project.PatternTexts{project.PatternTitle: "Wheat", "after b/1": "Rest here.", "line c/1": "Knit on.", "was line c/1": "y", "after d/1": "New.", project.PatternWording: "both", "photo 1": "x"}
	assert.Equal(t, []string{
		"pattern: photo 1", "pattern: paragraph of the title page taken out", "pattern: title “Wheat”", "pattern: wording both",
		"pattern: 2 sentences reworded", "pattern: sentence added: “New.”", "pattern: sentence taken back: “Cast on.”",
	}, patternTold(was, now))
	assert.Empty(t, patternTold(was, was))
}

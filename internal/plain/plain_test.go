package plain

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLine(t *testing.T) {
	for text, valid := range map[string]bool{
		"": true, "Ada’s thumb, 7½ cm": true, "e\u0301 🧤 \u202e": true, "ж\ufffd": true,
		"\xff": false, "\xed\xa0\x80": false, "a\x00": false, "two\nlines": false, "tab\t": false, "\u0085": false, "\x7f": false,
	} {
		assert.Equal(t, valid, Line(text, 40) == "", "%q", text)
	}
	assert.Empty(t, Line(strings.Repeat("ж", 40), 40), "characters, not bytes")
	assert.Equal(t, "has 41 characters; 40 are the most", Line(strings.Repeat("ж", 41), 40))
	assert.Empty(t, Lines("two\r\n\tlines", 40))
	assert.NotEmpty(t, Lines("a\x00", 40))
}

func TestKey(t *testing.T) {
	for key, valid := range map[string]bool{
		"abc-XYZ_09": true, strings.Repeat("k", MaxKey): true,
		"": false, strings.Repeat("k", MaxKey+1): false, "a b": false, "%ff": false, "\xff": false, "é": false, "a\n": false,
	} {
		assert.Equal(t, valid, Key(key) == "", "%q", key)
	}
}

// Mended keys are valid and different, and mending them again changes nothing.
func FuzzMendedKeys(f *testing.F) {
	f.Add("a\x00", "a\ufffd", "a\x01")
	f.Fuzz(func(t *testing.T, a, b, c string) {
		if a == b || b == c || a == c {
			return
		}
		kept := []string{a, b, c}
		keys, changed := MendedKeys(kept)
		again, none := MendedKeys(keys)
		assert.Equal(t, keys, again)
		assert.Empty(t, none)
		for i, key := range keys {
			assert.True(t, key != "" && Line(key, MaxKeptKey) == "", "%q", key)
			assert.NotEqual(t, key, keys[(i+1)%3])
			if key == kept[i] {
				assert.NotContains(t, changed, i)
			}
		}
	})
}

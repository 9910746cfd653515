// Package plain checks the texts and keys that the program keeps: those that
// pass can be shown, stored, exported and read back unchanged.
package plain

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// MaxKey is the most characters that a key may have when a page sends it.
const MaxKey = 64

// MaxKeptKey is the most characters of a stored key, which may have a suffix
// that tells it from another one.
const MaxKeptKey = 200

// Line checks a text of one line of at most limit characters. It returns what
// is wrong, or "" for valid UTF-8 without control characters (line breaks and
// tabs are such characters). An empty text is valid.
func Line(text string, limit int) string {
	if n := utf8.RuneCountInString(text); n > limit {
		return fmt.Sprintf("has %d characters; %d are the most", n, limit)
	}
	if !utf8.ValidString(text) || strings.IndexFunc(text, unicode.IsControl) >= 0 {
		return "has characters that can't be shown; write it on one line"
	}
	return ""
}

// Lines is Line for a text that may have line breaks and tabs.
func Lines(text string, limit int) string {
	if n := utf8.RuneCountInString(text); n > limit {
		return fmt.Sprintf("has %d characters; %d are the most", n, limit)
	}
	if !utf8.ValidString(text) || strings.IndexFunc(text, isHidden) >= 0 {
		return "has characters that can't be shown; write it anew"
	}
	return ""
}

func isHidden(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\r' && r != '\t'
}

// Key checks the key by which a page marks what it sends, so that a second
// sending is recognised. It returns what is wrong, or "".
func Key(key string) string {
	if key == "" || len(key) > MaxKey || strings.IndexFunc(key, isNoKeyCharacter) >= 0 {
		return fmt.Sprintf("is %.20q; write 1 to %d letters and digits", key, MaxKey)
	}
	return ""
}

func isNoKeyCharacter(r rune) bool {
	return !('A' <= r && r <= 'Z' || 'a' <= r && r <= 'z' || '0' <= r && r <= '9' || r == '-' || r == '_')
}

// mended returns a key in a form that can be exported, since keys were once
// stored unchecked. A valid key stays as it is; otherwise every character that
// can't be shown becomes U+FFFD, so does an empty key, and a long one is cut to
// leave room for a suffix.
func mended(key string) string {
	if key != "" && Line(key, MaxKeptKey) == "" {
		return key
	}
	runes := []rune(key) // each invalid byte becomes U+FFFD
	for i, r := range runes {
		if unicode.IsControl(r) {
			runes[i] = utf8.RuneError
		}
	}
	if len(runes) == 0 {
		runes = append(runes, utf8.RuneError)
	}
	return string(runes[:min(len(runes), MaxKeptKey-maxSuffix)])
}

// maxSuffix is the most characters of the suffix that tells mended keys apart.
const maxSuffix = 8

// MendedKeys returns stored keys in a form that can be exported, and the
// indexes of those that it changed. Different keys stay different, and the same
// keys always give the same result.
func MendedKeys(kept []string) (keys []string, changed []int) {
	taken := make(map[string]bool, len(kept))
	for _, key := range kept {
		taken[key] = true
	}
	keys = make([]string, len(kept))
	for i, key := range kept {
		if keys[i] = mended(key); keys[i] == key {
			continue
		}
		base := keys[i]
		for n := 2; taken[keys[i]]; n++ {
			keys[i] = fmt.Sprintf("%s %d", base, n)
		}
		taken[keys[i]] = true
		changed = append(changed, i)
	}
	return keys, changed
}

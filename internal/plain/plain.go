// Package plain is the one rule for the texts and keys that the program keeps:
// what passes here can be shown, stored, exported and read back unchanged.
package plain

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// MaxKey is the most characters of a key that a page gives to what it sends.
const MaxKey = 64

// MaxKeptKey is the most characters of a key as it is kept, which may have
// something added to tell it from another.
const MaxKeptKey = 200

// Line returns what is wrong with a text of one line that may have so many
// characters, and "" where nothing is: it is valid UTF-8 without control
// characters, line breaks and tabs among them. An empty text is right.
func Line(text string, most int) string {
	if n := utf8.RuneCountInString(text); n > most {
		return fmt.Sprintf("has %d characters; %d are the most", n, most)
	}
	if !utf8.ValidString(text) || strings.IndexFunc(text, unicode.IsControl) >= 0 {
		return "has characters that can't be shown; write it on one line"
	}
	return ""
}

// Lines is Line for a text of several lines, in which breaks and tabs stand.
func Lines(text string, most int) string {
	if n := utf8.RuneCountInString(text); n > most {
		return fmt.Sprintf("has %d characters; %d are the most", n, most)
	}
	if !utf8.ValidString(text) || strings.IndexFunc(text, unseen) >= 0 {
		return "has characters that can't be shown; write it anew"
	}
	return ""
}

func unseen(r rune) bool {
	return unicode.IsControl(r) && r != '\n' && r != '\r' && r != '\t'
}

// Key returns what is wrong with the key that a page gives to what it sends,
// by which it is known again, and "" where nothing is.
func Key(key string) string {
	if key == "" || len(key) > MaxKey || strings.IndexFunc(key, outsideKey) >= 0 {
		return fmt.Sprintf("is %.20q; write 1 to %d letters and digits", key, MaxKey)
	}
	return ""
}

func outsideKey(r rune) bool {
	return !('A' <= r && r <= 'Z' || 'a' <= r && r <= 'z' || '0' <= r && r <= '9' || r == '-' || r == '_')
}

// mended returns a key that was kept before Key stood at the door as one that
// can be exported: what can't be shown becomes U+FFFD, and it is cut to
// MaxKeptKey. A right one stays as it is; an empty one becomes U+FFFD.
func mended(key string) string {
	if key != "" && Line(key, MaxKeptKey) == "" {
		return key
	}
	runes := []rune(key) // each invalid byte is U+FFFD
	for i, r := range runes {
		if unicode.IsControl(r) {
			runes[i] = utf8.RuneError
		}
	}
	if len(runes) == 0 {
		runes = append(runes, utf8.RuneError)
	}
	return string(runes[:min(len(runes), MaxKeptKey-suffix)])
}

// suffix is room for what tells mended keys from each other.
const suffix = 8

// MendedKeys returns keys as they can be exported, each still different from
// the others, and which of them are not as they were kept. The same keys give
// the same answer.
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

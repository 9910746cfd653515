package web

import (
	"mime"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// maxName is the most letters of a title in a file name.
const maxName = 80

// keepAs tells the browser under which name to save the response
// (https://www.rfc-editor.org/rfc/rfc6266). how is attachment or inline.
func keepAs(w http.ResponseWriter, how, title, ending string) {
	w.Header().Set("Content-Disposition", mime.FormatMediaType(how, map[string]string{"filename": fileName(title) + ending}))
}

// fileName returns a title as the name of a file, without the characters that
// mean something to a file system.
func fileName(title string) string {
	name := strings.Map(func(r rune) rune {
		switch {
		case strings.ContainsRune(`/\:*?"<>|;%`, r), unicode.IsSpace(r):
			return ' '
		case !unicode.IsPrint(r):
			return -1
		}
		return r
	}, title)
	letters := []rune(strings.Join(strings.Fields(name), " "))
	if name = strings.Trim(string(letters[:min(len(letters), maxName)]), " ."); name == "" {
		return "thenar"
	}
	return name
}

// partName tells the browser to save the response under the name of a mitt and of
// a part of it, which stays whole on any system and in any address:
// marits-reading-mitts-gusset.svg. Letters beyond ASCII stand in a second form of
// the name, as RFC 6266 (appendix D) advises, encoded as RFC 8187 has it.
func partName(w http.ResponseWriter, title, part, ending string) {
	name := hyphened(norm.NFC.String(title)) + "-" + part + ending
	plain := hyphened(inASCII(title)) + "-" + part + ending
	value := `attachment; filename="` + plain + `"`
	if name != plain {
		value += "; filename*=UTF-8''" + url.PathEscape(name)
	}
	w.Header().Set("Content-Disposition", value)
}

// hyphened returns the words of a title in small letters, with hyphens between them;
// "mitt" if it has none.
func hyphened(title string) string {
	words := strings.FieldsFunc(strings.ToLower(title), func(r rune) bool {
		return !isOfWord(r) && !isApostrophe(r)
	})
	for i, word := range words {
		words[i] = strings.Join(strings.FieldsFunc(word, isApostrophe), "")
	}
	words = slices.DeleteFunc(words, func(word string) bool { return word == "" })
	letters := []rune(strings.Join(words, "-"))
	name := strings.Trim(string(letters[:min(len(letters), maxName)]), "-")
	if name == "" {
		return "mitt"
	}
	return name
}

func isOfWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) }

func isApostrophe(r rune) bool { return strings.ContainsRune("'’‘ʼ`´", r) }

// undivided are letters that no accent is taken from.
var undivided = strings.NewReplacer(
	"ß", "ss", "æ", "ae", "Æ", "ae", "œ", "oe", "Œ", "oe", "ø", "o", "Ø", "o", "ł", "l", "Ł", "l",
	"đ", "d", "Đ", "d", "ð", "d", "Ð", "d", "þ", "th", "Þ", "th", "ħ", "h", "Ħ", "h", "ı", "i",
)

// inASCII returns a title without accents, and with spaces for the letters that ASCII
// has nothing like.
func inASCII(title string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsMark(r):
			return -1
		case r >= utf8.RuneSelf && !isApostrophe(r):
			return ' '
		}
		return r
	}, norm.NFD.String(undivided.Replace(title)))
}

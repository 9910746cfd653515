package web

import (
	"mime"
	"net/http"
	"strings"
	"unicode"
)

// longestName is how many letters of a title the name of a file takes.
const longestName = 80

// keepAs tells a browser by which name to keep what is sent
// (https://www.rfc-editor.org/rfc/rfc6266); how is attachment or inline.
func keepAs(w http.ResponseWriter, how, title, ending string) {
	w.Header().Set("Content-Disposition", mime.FormatMediaType(how, map[string]string{"filename": fileName(title) + ending}))
}

// fileName is a title as the name of a file, without what a system takes for
// more than a letter.
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
	if name = strings.Trim(string(letters[:min(len(letters), longestName)]), " ."); name == "" {
		return "thenar"
	}
	return name
}

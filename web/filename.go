package web

import (
	"mime"
	"net/http"
	"strings"
	"unicode"
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

package paper

import (
	_ "embed" // the page and how it looks
	"html/template"
)

//go:embed pattern.html
var patternPage string

// patternStyle is the look of the page, on a screen and in print.
//
//go:embed pattern.css
var patternStyle string

// patternTemplate is the page of a pattern.
var patternTemplate = template.Must(template.New("pattern").Funcs(template.FuncMap{"odd": func(i int) bool { return i%2 == 1 }}).Parse(patternPage))

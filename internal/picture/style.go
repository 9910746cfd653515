package picture

// Colours of the drawn hand outside a web page, whose style sheet goes by classes.
// Lines that carry meaning have a contrast of at least 3 to 1 on the ground (WCAG
// 2.2, 1.4.11); folds and ribs are only decoration.
const (
	softColour  = "#59616B"
	tapeColour  = "#2F4B7C"
	skinColour  = "#FFFDF9"
	clothColour = "#F1ECE1"
	foldColour  = "#CFC8BA"
	ribColour   = "#B8B09E"
	mossColour  = "#3E6647"
	ochreColour = "#805A00"
)

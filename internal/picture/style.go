package picture

// The colours of a hand that stands alone, on a light ground; pages go by the
// classes. Lines that must be seen have a contrast of 3 to 1 at the least on
// the ground (WCAG 2.2, 1.4.11); folds and ribs are only for the eye.
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

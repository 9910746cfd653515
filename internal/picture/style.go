package picture

// Colours of drawings outside a web page, whose style sheet goes by classes: those of
// the page in light. Lines that carry meaning have a contrast of at least 3 to 1 on the
// ground (WCAG 2.2, 1.4.11); folds and ribs are only decoration.
const (
	inkColour     = "#26221C"
	pencilColour  = "#655D50"
	gridColour    = "#C4B9A4"
	fifthColour   = "#857A67"
	chalkColour   = "#2B4A78" // what measures, and where one is
	pinColour     = "#97331F" // what is wrong
	bastingColour = "#7A5600" // changed from the plan
	fitsColour    = "#35603F"
	cardColour    = "#FFFCF5" // undyed cloth
	edgeColour    = "#FFF9EA" // the light edge that keeps a mark apart from any yarn
	skinColour    = "#FBF3E6"
	gapColour     = "#E6DCC9" // a place without a stitch
	groundColour  = "#FFFFFF" // paper
)

package pattern

// Front is what a designer gives a text: what stands before it, among it and after it. All
// but the title may be empty.
type Front struct {
	Title, About, Designer string
	Story, Notes           []string // paragraphs; the notes are to the knitter
	Numbers                []Row    // every number of every size
	Caution, Ends          string
}

// numbersTitle is the heading of every number of every size.
const numbersTitle = "Every number, to tick off"

// first returns the paragraphs before all.
func (f Front) first() (list []string) {
	for _, text := range append([]string{f.About, f.Designer}, f.Story...) {
		if text != "" {
			list = append(list, text)
		}
	}
	return list
}

// last returns the paragraphs after all.
func (f Front) last() (list []string) {
	for _, text := range []string{f.Caution, f.Ends} {
		if text != "" {
			list = append(list, text)
		}
	}
	return list
}

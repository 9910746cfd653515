package makeup

// Lines returns lines or rows of such heights, in tenths of a millimetre, of which
// neither the first nor the last stands alone on a page.
func Lines(heights ...int) []Part {
	list := make([]Part, len(heights))
	for i, h := range heights {
		list[i] = Part{Height: h, Keep: len(heights) > 1 && (i == 0 || i == len(heights)-2)}
	}
	return list
}

// Drawing returns the ways of a drawing, from its wished size down to a share of
// it in percent, in steps of 5 %. The part has the wished height; so much of it as
// is fixed does not shrink, such as a caption. A height that is no whole tenth is
// rounded up.
func Drawing(wished Part, fixed, least int) []Way {
	const steps = 20
	shrinking := max(wished.Height-fixed, 0)
	var list []Way
	for s := 0; s <= maxShrunk && (s == 0 || 100-5*s >= least); s++ {
		part := wished
		part.Height = wished.Height - shrinking + (shrinking*(steps-s)+steps-1)/steps
		list = append(list, Way{Shrunk: s, Parts: []Part{part}})
	}
	return list
}

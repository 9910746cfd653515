package mitt

// Default is a decision that was not given, with the rule that made it. MM is
// its length; a default that is no length (Ratio) has its number there
// instead: an ease, or rounds over 10 cm.
type Default struct {
	Field  string
	MM     float64
	Ratio  *float64
	From   string
	Source string
}

const practice = "common practice, no source"

// listDefaults lists what the person did not decide, in the order of a sheet.
func (w *work) listDefaults() {
	p, given := &w.plan, w.req.Lengths
	if p.Gauge.RoundsFilled {
		w.ratio("gauge.swatches[0].rounds", p.Gauge.Rounds*100, "1.36 rounds for every stitch, over 10 cm")
	}
	if w.req.Ease.Hand == nil {
		w.ratio("ease.hand", p.Ease.Hand, handEaseFrom(p.Kind))
	}
	if w.req.Ease.Cuff == nil {
		w.ratio("ease.cuff", p.Ease.Cuff, "none")
	}
	w.length("ease.thumb_girth_added", p.Thumbed() && w.req.Ease.ThumbAdded == 0, p.Ease.ThumbAdded, "0.08 × thumb circumference + the width of 1.6 stitches")
	w.length("length.cuff", given.Cuff == 0, w.len.cuff, ribbingFrom(p.Kind))
	w.length("length.cuff_plain", given.CuffPlain == 0, w.len.cuffPlain, plainCuffFrom(p.Kind))
	if p.Kind == Thumbless {
		w.length("length.above_gusset", given.AboveGusset == 0, w.len.above-float64(p.Top.Rounds)/w.q, "hand length + 5 mm, less the top")
		return
	}
	if p.Kind == Mitten {
		top := float64(p.Top.Rounds) / w.q
		w.length("length.above_gusset", given.AboveGusset == 0, w.len.above-top, "hand length − wrist to crotch + 5 mm, less the top")
		w.length("length.thumb", given.Thumb == 0, w.len.thumb, "thumb length + 4 mm")
		return
	}
	w.length("length.above_gusset", given.AboveGusset == 0, w.len.above, "0.21 × hand length")
	w.length("length.edging", given.Edging == 0, w.len.edging, "0.06 × hand length")
	w.length("length.thumb", given.Thumb == 0, w.len.thumb, "0.53 × thumb length: to the joint, with the edging")
	w.length("length.thumb_edging", given.ThumbEdging == 0, w.len.thumbEdging, "0.06 × hand length")
}

func handEaseFrom(k Kind) string {
	rule := "−0.05 for a fingerless mitt, +0.05 for a mitten"
	if k == Thumbless {
		rule = "1.05 × palm with thumb ÷ hand − 1, so that it goes round both"
	}
	return rule + "; 0.05 more below 16 stitches over 10 cm"
}

func ribbingFrom(k Kind) string {
	if k.Closed() {
		return "0.33 × hand length + 8 mm, so that the cuff grips"
	}
	return "0.165 × hand length"
}

func plainCuffFrom(k Kind) string {
	switch k {
	case Mitten:
		return "0.05 × hand length"
	case Thumbless:
		return "none: the hand follows the ribbing"
	}
	return "0.165 × hand length"
}

func (w *work) ratio(field string, value float64, from string) {
	w.plan.Defaults = append(w.plan.Defaults, Default{Field: field, Ratio: &value, From: from, Source: practice})
}

func (w *work) length(field string, missing bool, mm float64, from string) {
	if missing {
		w.plan.Defaults = append(w.plan.Defaults, Default{Field: field, MM: mm, From: from, Source: practice})
	}
}

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
	p, given, kind := &w.plan, w.req.Lengths, w.plan.Kind.info()
	if p.Gauge.RoundsFilled {
		w.ratio("gauge.swatches[0].rounds", p.Gauge.Rounds*100, "1.36 rounds for every stitch, over 10 cm")
	}
	if w.req.Ease.Hand == nil {
		w.ratio("ease.hand", p.Ease.Hand, kind.easeFrom+"; 0.05 more below 16 stitches over 10 cm")
	}
	if w.req.Ease.Cuff == nil {
		w.ratio("ease.cuff", p.Ease.Cuff, "none")
	}
	w.length("ease.thumb_girth_added", p.Thumbed() && w.req.Ease.ThumbAdded == 0, p.Ease.ThumbAdded, "0.08 × thumb circumference + the width of 1.6 stitches")
	w.length("length.cuff", given.Cuff == 0, w.len.cuff, kind.ribbing.from)
	w.length("length.cuff_plain", given.CuffPlain == 0, w.len.cuffPlain, kind.plainCuff.from)
	if kind.topped {
		w.length("length.above_gusset", given.AboveGusset == 0, w.len.above-float64(p.Top.Rounds)/w.q, kind.aboveFrom)
	} else {
		w.length("length.above_gusset", given.AboveGusset == 0, w.len.above, kind.aboveFrom)
		w.length("length.edging", given.Edging == 0, w.len.edging, "0.06 × hand length")
	}
	switch {
	case kind.thumbClosed:
		w.length("length.thumb", given.Thumb == 0, w.len.thumb, "thumb length + 4 mm")
	case kind.thumbed:
		w.length("length.thumb", given.Thumb == 0, w.len.thumb, "0.53 × thumb length: to the joint, with the edging")
		w.length("length.thumb_edging", given.ThumbEdging == 0, w.len.thumbEdging, "0.06 × hand length")
	}
}

func (w *work) ratio(field string, value float64, from string) {
	w.plan.Defaults = append(w.plan.Defaults, Default{Field: field, Ratio: &value, From: from, Source: practice})
}

func (w *work) length(field string, missing bool, mm float64, from string) {
	if missing {
		w.plan.Defaults = append(w.plan.Defaults, Default{Field: field, MM: mm, From: from, Source: practice})
	}
}

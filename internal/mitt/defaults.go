package mitt

// Default is a decision that the person left open, with the rule that made it.
// A length is in MM; anything else, an ease or the rounds over 10 cm, is in
// Ratio.
type Default struct {
	Field  string
	MM     float64
	Ratio  *float64
	From   string
	Source string
}

const practice = "common practice, no source"

// listDefaults lists what the person left open, in the order of a sheet.
func (d *draft) listDefaults() {
	p, given, kind := &d.plan, d.req.Lengths, d.plan.Kind.info()
	if p.Gauge.RoundsFilled {
		d.ratio("gauge.swatches[0].rounds", p.Gauge.Rounds*100, "1.36 rounds for every stitch, over 10 cm")
	}
	if d.req.Ease.Hand == nil {
		from := kind.easeFrom
		if p.Parted() && !p.Gusseted() {
			from = "+0.05 at least, since no gusset makes room for the thumb’s base"
		}
		d.ratio("ease.hand", p.Ease.Hand, from+"; 0.05 more below 16 stitches over 10 cm")
	}
	if d.req.Ease.Cuff == nil {
		d.ratio("ease.cuff", p.Ease.Cuff, "none")
	}
	added := "0.08 × thumb circumference + the width of 1.6 stitches"
	if kind.fingered {
		added = "0.02 × thumb circumference + the width of 1.6 stitches, as round a finger"
	}
	d.length("ease.thumb_girth_added", p.Thumbed() && d.req.Ease.ThumbAdded == 0, p.Ease.ThumbAdded, added)
	d.listCuff()
	if kind.fingered {
		d.listFingers()
		return
	}
	if kind.topped {
		d.length("length.above_gusset", given.AboveGusset == 0, d.len.above-float64(p.Top.Rounds)/d.q, kind.aboveFrom)
	} else {
		d.length("length.above_gusset", given.AboveGusset == 0, d.len.above, kind.aboveFrom)
		d.length("length.edging", given.Edging == 0, d.len.edging, "0.06 × hand length")
	}
	switch {
	case !p.Thumbed():
	case kind.thumbClosed:
		d.length("length.thumb", given.Thumb == 0, d.len.thumb, "thumb length + 4 mm")
	default:
		d.length("length.thumb", given.Thumb == 0, d.len.thumb, "0.53 × thumb length: to the joint, with the edging")
		d.length("length.thumb_edging", given.ThumbEdging == 0, d.len.thumbEdging, "0.06 × hand length")
	}
}

func (d *draft) ratio(field string, value float64, from string) {
	d.plan.Defaults = append(d.plan.Defaults, Default{Field: field, Ratio: &value, From: from, Source: practice})
}

func (d *draft) length(field string, missing bool, mm float64, from string) {
	if missing {
		d.plan.Defaults = append(d.plan.Defaults, Default{Field: field, MM: mm, From: from, Source: practice})
	}
}

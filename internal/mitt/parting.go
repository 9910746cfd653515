package mitt

import "thenar/internal/stitch"

// What a mitt has for the thumb follows from its kind and its construction, and only
// here. The rest of the program asks these questions, or the sections:
//
//	Parted    the thumb leaves the hand: through a thumb of its own or an opening
//	Gusseted  a gusset grows below it
//	Thumbed   a thumb is knitted
//	Tucked    the thumb lies inside, beside the fingers

// construction returns how a kind is made round the thumb if c is asked for, with the
// usual way written out.
func (k Kind) construction(c Construction) Construction {
	if !k.info().parts {
		return NoThumb
	}
	return or(c, ByGusset)
}

// gussets reports whether a gusset grows in what is made so.
func (c Construction) gussets() bool { return c == ByGusset }

// thumbs reports whether what is made so has a knitted thumb.
func (c Construction) thumbs() bool { return c == ByGusset || c == Straight }

// Construction returns how the mitt is made round the thumb.
func (p *Plan) Construction() Construction { return p.Kind.construction(p.Make.Construction) }

// Parted reports whether the thumb leaves the hand, through a thumb of its own or
// an opening. Only then do the right and the left mitt differ.
func (p *Plan) Parted() bool { return p.Kind.info().parts }

// Gusseted reports whether the mitt has a gusset.
func (p *Plan) Gusseted() bool { return p.Construction().gussets() }

// Thumbed reports whether the mitt has a thumb of its own.
func (p *Plan) Thumbed() bool { return p.Construction().thumbs() }

// Mound returns the part of the mitt that lies beside the base of the thumb.
func (p *Plan) Mound() stitch.Part {
	switch p.Construction() {
	case ByGusset:
		return stitch.Gusset
	case Slit:
		return stitch.Opening
	}
	return stitch.BelowThumb
}

// UnderThumb returns how many stitches at the beginning of the round the thumb stands
// on: the gusset's base, or all of a straight thumb.
func (p *Plan) UnderThumb() int { return p.Gusset.Base + p.Thumb.OnWaste }

// Tucked reports whether the thumb lies inside the mitt, beside the fingers.
func (p *Plan) Tucked() bool { return p.Kind.info().both }

// Construction returns how the mitt that is asked for is made round the thumb.
func (r *Request) Construction() Construction { return r.Kind.construction(r.Make.Construction) }

// Gusseted reports whether the mitt that is asked for has a gusset.
func (r *Request) Gusseted() bool { return r.Construction().gussets() }

// Thumbed reports whether the mitt that is asked for has a thumb of its own.
func (r *Request) Thumbed() bool { return r.Construction().thumbs() }

// Planned reports whether any kind of mitt is planned with this construction.
func (c Construction) Planned() bool {
	for _, k := range kinds {
		if k.builders[c] != nil {
			return true
		}
	}
	return false
}

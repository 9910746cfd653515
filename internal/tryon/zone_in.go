package tryon

import (
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// In reports whether a mitt has the zone.
func (z Zone) In(p *mitt.Plan) bool {
	switch {
	case z.Fingered(): // the zone is named like its part
		return p.Mitt().Section(stitch.Part(z)) != nil
	case z == Gusset:
		return p.Gusseted()
	case z == Parting:
		return p.Parted()
	case z == Thumb:
		return p.Thumbed()
	}
	return true
}

// Told returns the zones of which a try says something: how they feel, or where they end.
func (t Try) Told() []Zone {
	var list []Zone
	for _, z := range Zones() {
		if t.Feel[z] != "" || t.Ends[z] != "" {
			list = append(list, z)
		}
	}
	return list
}

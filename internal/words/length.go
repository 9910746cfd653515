package words

import (
	"fmt"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Length is how long a section is knitted: in rounds, in mm by the gauge, and
// by the hand, which is surer than either.
type Length struct {
	Part   stitch.Part
	Rounds int
	MM     float64
	Until  string // what it then reaches on the hand
}

// Words is "19 rounds, about 6 cm / 2⅜ in; stop when it reaches where the
// thumb parts".
func (l Length) Words() string {
	text := Plural(l.Rounds, "round") + ", about " + Both(l.MM)
	if l.Until != "" {
		text += "; stop when it " + l.Until
	}
	return text
}

// Both is a length in mm in centimetres and inches: "6 cm / 2⅜ in".
func Both(mm float64) string {
	l := units.FromMM(mm)
	return l.With(units.CM) + " / " + l.With(units.IN)
}

// Lengths lists the sections of a plan that have rounds, in the order knitted.
func Lengths(p *mitt.Plan) []Length {
	var list []Length
	add := func(part stitch.Part, rounds int, until string) {
		if rounds > 0 {
			list = append(list, Length{part, rounds, float64(rounds) / p.Gauge.Rounds, until})
		}
	}
	add(stitch.Cuff, p.Cuff.Rounds, "")
	base := "reaches the bone at the wrist"
	if !p.Thumbed() {
		base = "reaches the wrist"
	}
	add(stitch.CuffPlain, p.Cuff.PlainRounds, base)
	add(stitch.Gusset, p.Gusset.Rounds.N, "reaches where the thumb parts from the hand")
	if p.Top == nil {
		add(stitch.Hand, p.Body.RoundsAbove, "reaches where the fingers are to be free")
		add(stitch.Thumb, p.Thumb.Rounds, "reaches where the tip of the thumb is to be free")
		return list
	}
	add(stitch.Hand, p.Body.RoundsAbove, below(p))
	add(stitch.Top, p.Top.Rounds, "covers the tip of the longest finger")
	add(stitch.Thumb, p.Thumb.Rounds, "covers the tip of the thumb")
	return list
}

// below is where the top of a closed mitten begins.
func below(p *mitt.Plan) string {
	rest := float64(p.Top.Rounds)/p.Gauge.Rounds - mitt.TipRoom
	if rest <= 0 {
		return "reaches the tip of the longest finger"
	}
	return fmt.Sprintf("ends %s below the tip of the longest finger", Both(rest))
}

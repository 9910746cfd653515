package view

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/mitt"
)

// Every choice of how a mitt is made that the form offers is planned, for an open
// mitt and for a mitten (which has no opening), and says that it was taken where it has a use; what can't
// be planned is not offered.
func TestTheFormOffersWhatIsPlanned(t *testing.T) {
	offered := map[string]int{}
	for _, f := range slices.Concat(makeFields, coveredFields()) {
		for _, c := range f.Choices {
			offered[f.Path]++
			for _, kind := range []string{"fingerless", "mitten", "glove"} {
				_, a := fitAnswer(t, map[string]string{"kind": kind, f.Path: c.Value})
				if kind == "mitten" && c.Value == string(mitt.Slit) { // a mitten covers the thumb
					assert.Equal(t, "is an opening, in rows, but a mitten covers the thumb; choose on waste yarn, without a gusset", a.Faults[f.Path])
					continue
				}
				if kind == "glove" && (c.Value == string(mitt.Down) || c.Value == string(mitt.Slit) || c.Value == string(mitt.NoThumb) || (f.Path == mitt.PathFlat || f.Path == mitt.PathCap) && c.Value != "") {
					assert.NotEmpty(t, a.Works, "%s=%s has a way out", f.Path, c.Value)
					continue
				}
				assert.NotNil(t, a.Out, "%s %s=%s: %v", kind, f.Path, c.Value, a.Faults)
			}
		}
	}
	assert.Equal(t, map[string]int{mitt.PathDirection: 2, mitt.PathConstruction: 4, mitt.PathPlace: 2, mitt.PathIncrease: 5, "stitch.both_edges": 2, mitt.PathFlat: 2, mitt.PathCuff: 5, mitt.PathTop: 5, "fingers.index": 3, "fingers.middle": 3, "fingers.ring": 3, "fingers.little": 3, "fingers.thumb": 3, mitt.PathLower: 2, mitt.PathCap: 2}, offered)
}

// What is refused is said in the words of the form, with a button that takes the
// nearest that works, also where the form has no field for it.
func TestARefusedChoiceHasAWayOut(t *testing.T) {
	for _, c := range []struct{ path, value, says, way, sets string }{
		{mitt.PathIncrease, "centre", "is make ones in its middle, which grows to both sides; choose make ones for increases at one edge", "Take make ones", "thumb.increase=m1"},
		{mitt.PathInset, "3", "has no use at the side; leave it out, or write palm for the place", "Leave it out", "thumb.inset="},
	} {
		d, a := fitAnswer(t, map[string]string{c.path: c.value, "stitch.both_edges": "false"})
		if c.says != "" {
			assert.Equal(t, c.says, a.Faults[c.path])
		}
		doc := parsed(t, planFragment(a))
		assert.Equal(t, c.way, doc.Find(`button[value="`+c.sets+`"]`).Text(), "%s", c.path)
		form := parsed(t, FitPage(Mitt{Doc: d, Desk: FitDesk, Answer: a}))
		assert.Equal(t, 1, form.Find(`#measure-form [name="`+c.path+`"]`).Length(), "the button writes into %s", c.path)
	}
}

// The usual choice that a sheet writes out stays as it is, and is not offered twice.
func TestAUsualChoiceMayBeWrittenOut(t *testing.T) {
	for _, text := range []string{"", "m1"} {
		d, a := fitAnswer(t, map[string]string{mitt.PathIncrease: text})
		options := parsed(t, FitPage(Mitt{Doc: d, Desk: FitDesk, Answer: a})).Find(`select[name="thumb.increase"] option`)
		assert.Equal(t, 5, options.Length())
		chosen, _ := options.Filter("[selected]").Attr("value")
		assert.Equal(t, text, chosen)
	}
}

// Each cuff has its own name on the ladder, and its reasons say nothing of ribbing
// but where the edges of hand and thumb are ribbed.
func TestACuffIsCalledWhatItIs(t *testing.T) {
	for kind, rung := range map[string]string{"rib": "rib rounds", "garter": "garter rounds", "rolled": "rolled rounds", "hem": "hem rounds", "gauntlet": "gauntlet rounds"} {
		_, a := fitAnswer(t, map[string]string{mitt.PathCuff: kind, "pins.cuff_plain_rounds": "0", "pins.cast_on": "40"})
		doc := parsed(t, benchFragment(a))
		assert.Contains(t, doc.Find(`.number[data-key="cuff.rounds"] > details > summary`).Text(), rung)
		for _, r := range a.Out.Reasons {
			if r.Part == "cuff" || r.Part == "cuff_plain" {
				assert.Equal(t, kind == "rib", strings.Contains(r.Name+r.Why, "ribbing") || kind == "rib", "%s: %s %s", kind, r.Name, r.Why)
			}
		}
		if kind != "rib" {
			assert.NotContains(t, a.cost(mitt.CastOn), "whole ribs")
		}
	}
}

package roster

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// Headings as teachers write them. The words are common practice, no source.
func TestColumnOf(t *testing.T) {
	for heading, want := range map[string]Column{
		"Name": {Field: fieldName}, "NAME (or initials)": {Field: fieldName}, "Student’s name": {Field: fieldName}, "knitter": {Field: fieldName}, "Initials:": {Field: fieldName},
		"Name of the student": {Field: fieldName}, "First": {Field: fieldFirst}, "Last": {Field: fieldLast},
		"hand (cm)": {Field: hand.FieldCircumference, Unit: units.CM}, "Hand circumference in": {Field: hand.FieldCircumference, Unit: units.IN},
		"round the hand/mm": {Field: hand.FieldCircumference, Unit: units.MM}, "Knuckles": {Field: hand.FieldCircumference},
		"Hand in inches": {Field: hand.FieldCircumference, Unit: units.IN}, "Girth of the hand, in cm, round the knuckles": {Field: hand.FieldCircumference, Unit: units.CM},
		"HAND (in cm, without thumb)": {Field: hand.FieldCircumference, Unit: units.CM}, "Hand\n(optional)": {Field: hand.FieldCircumference},
		"wrist [cm]": {Field: hand.FieldWrist, Unit: units.CM}, `Wrist "`: {Field: hand.FieldWrist, Unit: units.IN}, "around your wrist in mm": {Field: hand.FieldWrist, Unit: units.MM},
		"Thumb circ.": {Field: hand.FieldThumb}, "Thumb (inches)": {Field: hand.FieldThumb, Unit: units.IN},
		"Length of hand": {Field: hand.FieldLength}, "length": {Field: hand.FieldLength}, "gusset length": {Field: hand.FieldGussetLength}, "thumb length": {Field: hand.FieldThumbLength},
		"Wrist to thumb": {Field: hand.FieldWristToCrotch}, "wrist to crotch": {Field: hand.FieldWristToCrotch}, "wrist to thumb / crotch": {Field: hand.FieldWristToCrotch},
		"Palm and thumb": {Field: hand.FieldPalm}, "palm + thumb": {Field: hand.FieldPalm}, "hand with thumb, cm": {Field: hand.FieldPalm, Unit: units.CM},
		"Breadth of hand": {Field: hand.FieldBreadth}, "width of the hand": {Field: hand.FieldBreadth},
		"Size": {Field: hand.FieldSize}, "glove size": {Field: hand.FieldSize}, "Glove size (EN420)": {Field: hand.FieldSize},
		"stitches (10 cm)": {Field: stitchesPath, Unit: units.CM, Over: "10"}, "sts / 4 in": {Field: stitchesPath, Unit: units.IN, Over: "4"},
		"stitches per inch": {Field: stitchesPath, Unit: units.IN, Over: "1"}, "sts/cm": {Field: stitchesPath, Unit: units.CM, Over: "1"}, "Stitches to the inch": {Field: stitchesPath, Unit: units.IN, Over: "1"},
		"gauge 10cm": {Field: stitchesPath, Unit: units.CM, Over: "10"}, `Gauge over 4"`: {Field: stitchesPath, Unit: units.IN, Over: "4"},
		"gauge (10 x 10 cm)": {Field: stitchesPath, Unit: units.CM, Over: "10"}, "Gauge 10cm×10cm": {Field: stitchesPath, Unit: units.CM, Over: "10"},
		"Gauge, 2,5 cm": {Field: stitchesPath, Unit: units.CM, Over: "2.5"}, "Tension": {Field: stitchesPath}, "sts x rows": {Field: stitchesPath}, "stitch gauge": {Field: stitchesPath},
		"Rounds": {Field: roundsPath}, "rows per 100 mm": {Field: roundsPath, Unit: units.MM, Over: "100"}, "round gauge": {Field: roundsPath}, "rnds.": {Field: roundsPath},
		"Gauge from": {Field: fieldFrom}, "cast on": {Field: "pins.cast_on"}, "Cast-on stitches": {Field: "pins.cast_on"}, "cuff stitches": {Field: "pins.cast_on"},
		"Stitches on the needles": {Field: "pins.cast_on"}, "Cuff already on the needles": {Field: "pins.cast_on"}, "cuff rounds": {Field: "pins.cuff_rounds"},
		"base": {Field: "pins.gusset_base"}, "Bridge": {Field: "pins.bridge"},
		"knits": {Field: fieldKnits}, "Direction": {Field: fieldKnits}, "left to right": {Field: fieldKnits}, "Knits from left to right?": {Field: fieldKnits},
		"note": {Field: fieldNote}, "Remarks": {Field: fieldNote},
		// Headings that could mean something else are ignored.
		"palm": {}, "cuff": {}, "cuff (cm)": {Unit: units.CM}, "size (cm)": {Unit: units.CM}, "base, mm": {Unit: units.MM}, "hand 10 cm": {Unit: units.CM, Over: "10"},
		"hand (in/cm)": {Unit: units.CM}, "hand (cm or in)": {Unit: units.IN}, "shoe size": {}, "e-mail": {}, "": {}, "cm": {}, "stitches and rounds of the cuff": {},
		"gauge 10 x 15 cm": {Unit: units.CM, Over: "15"}, "in": {}, "hand no thumb": {},
	} {
		got := columnOf(heading)
		want.Heading = got.Heading
		assert.Equal(t, want, got, heading)
	}
	assert.Equal(t, "Hand (optional)", columnOf(" Hand\n(optional) ").Heading)
}

// No synonym means two fields, and every field has one.
func TestSynonymsAreUnambiguous(t *testing.T) {
	field := map[string]string{}
	for f, names := range synonyms {
		for _, name := range names {
			key := fieldKey(wordsOf(name))
			require.NotEmpty(t, key, name)
			other, twice := field[key]
			require.True(t, !twice || other == f, "%q means %s and %s", name, f, other)
			field[key] = f
			assert.Equal(t, f, columnOf(name).Field, name)
		}
	}
	for _, path := range append(Paths(), fieldName, fieldNote, fieldKnits, fieldFrom) {
		if path != widthPath && path != heightPath { // these come with the counts
			assert.NotEmpty(t, synonyms[path], path)
		}
	}
}

// "Gauge (in)" could be per inch or per 4 inches, so it is refused.
func TestVagueGaugeIsRefused(t *testing.T) {
	for _, heading := range []string{"gauge (in)", "stitches [cm]", "rounds, mm"} {
		_, err := Read([]byte("name;"+heading+"\nAda;22\n"), units.CM)
		require.Error(t, err, heading)
		assert.Contains(t, fault.Message(err), "doesn’t say over how many", heading)
	}
}

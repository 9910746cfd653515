package roster

import (
	"errors"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/plain"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// Student is one student of a class.
type Student struct {
	ID       int         `json:"id"`                  // within the class, from 1; 0 before Class.Add
	Name     string      `json:"name"`                // or initials
	FromLeft bool        `json:"from_left,omitempty"` // knits from left to right
	Gauge    GaugeFrom   `json:"gauge_from,omitempty"`
	Note     string      `json:"note,omitempty"`
	Sheet    sheet.Sheet `json:"sheet,omitempty"` // own values as typed, in the class's unit; only paths of Paths

	// Sure holds unusual values that somebody confirmed, by their path. A
	// different value is asked about again.
	Sure map[string]string `json:"sure,omitempty"`
}

// GaugeFrom is what a student's gauge was counted on.
type GaugeFrom string

// What a gauge can be counted on; a swatch unless something else is said.
const (
	FromSwatch GaugeFrom = ""
	FromCuff   GaugeFrom = "cuff" // the cuff on the needles
	FromBand   GaugeFrom = "band" // read off the ball band, which is doubtful
)

// GaugeSources returns all values of GaugeFrom.
func GaugeSources() []GaugeFrom { return []GaugeFrom{FromSwatch, FromCuff, FromBand} }

// Words returns what the gauge was counted on, as it is shown to people.
func (g GaugeFrom) Words() string {
	switch g {
	case FromCuff:
		return "the cuff on the needles"
	case FromBand:
		return "the ball band (a guess)"
	}
	return "a swatch"
}

// Paths of a student's gauge. Width and height default to GaugeOver.
const (
	swatchesPath = "gauge.swatches"
	stitchesPath = "gauge.swatches[0].stitches"
	widthPath    = "gauge.swatches[0].width"
	roundsPath   = "gauge.swatches[0].rounds"
	heightPath   = "gauge.swatches[0].height"
)

// paths backs Paths.
var paths = slices.Concat([]string{
	hand.FieldSize, hand.FieldCircumference, hand.FieldWrist, hand.FieldThumb, hand.FieldLength, hand.FieldGussetLength,
	hand.FieldThumbLength, hand.FieldWristToCrotch, hand.FieldPalm, hand.FieldBreadth,
}, hand.FieldsOfFingers(), []string{stitchesPath, widthPath, roundsPath, heightPath}, fixable())

// fixable are the numbers that a student may have otherwise than the class.
func fixable() []string {
	var list []string
	for _, n := range mitt.OfStudent() {
		list = append(list, n.Path())
	}
	return list
}

// Paths returns the paths of a measure sheet that a student may have values of,
// in the order in which they are shown.
func Paths() []string { return slices.Clone(paths) }

// GaugeOver returns the usual length over which gauge is counted, in unit u.
func GaugeOver(u units.Unit) string { return sheet.GaugeOver(u) }

// OverGauge gives each count without a length the usual one, and deletes lengths
// without a count.
func (s *Student) OverGauge(u units.Unit) {
	for _, p := range [][2]string{{stitchesPath, widthPath}, {roundsPath, heightPath}} {
		switch {
		case s.Sheet.Given(p[0]) == "":
			delete(s.Sheet, p[1])
		case s.Sheet.Given(p[1]) == "":
			s.Sheet[p[1]] = GaugeOver(u)
		}
	}
}

// MaxStudents is the most students that a class may have.
const MaxStudents = 1000

// The most characters of a name, and of any other text of a student.
const (
	maxName = 60
	maxText = 200
)

// Check returns the faults of a student. Values are read as those of a measure
// sheet, so messages and ranges are the same. A missing hand or gauge is no
// fault.
func (s *Student) Check(u units.Unit) fault.Fields {
	var faults fault.Fields
	if strings.TrimSpace(s.Name) == "" {
		faults.Add("name", "is empty; write a name or initials")
	} else if why := plain.Line(s.Name, maxName); why != "" {
		faults.Add("name", "%s", why)
	}
	if why := plain.Line(s.Note, maxText); why != "" {
		faults.Add("note", "%s", why)
	}
	if s.Gauge != FromSwatch && s.Gauge != FromCuff && s.Gauge != FromBand {
		faults.Add("gauge_from", "is %.20q; choose a swatch, the cuff or the band", s.Gauge)
	}
	for path, text := range s.Sure {
		if !slices.Contains(paths, path) || plain.Line(text, maxText) != "" {
			faults.Add("sure", "has %.40q, which can't be kept", path)
		}
	}
	return append(faults, s.checkValues(u)...)
}

// checkValues reads the values, section by section, as a measure sheet does.
func (s *Student) checkValues(u units.Unit) fault.Fields {
	faults, own := s.texts()
	if len(own) == 0 && u.Size() > 0 {
		return faults // nothing is measured yet
	}
	own[sheet.PathUnit] = string(u)
	faults = append(faults, fieldsOf(own.Choices())...)
	faults = append(faults, checkGauge(own)...)
	faults = append(faults, checkHand(own)...)
	_, err := own.Pins()
	return append(faults, fieldsOf(err)...)
}

// fieldsOf are the faults of an error.
func fieldsOf(err error) fault.Fields {
	var fields fault.Fields
	errors.As(err, &fields)
	return fields
}

// checkHand reads what is given of the hand. What is wrong is told and taken
// away, for the faults of the hand as a whole only show then.
func checkHand(own sheet.Sheet) fault.Fields {
	h, err := own.Measured()
	faults := fieldsOf(err)
	if len(faults) > 0 {
		for _, f := range faults {
			delete(own, f.Path)
		}
		h, _ = own.Measured()
	}
	return append(faults, h.CheckGiven()...)
}

// checkGauge reads what is given of the gauge. A count and its length go
// together: where one is wrong, or the stitches are missing, the other count is
// looked at by itself.
func checkGauge(own sheet.Sheet) fault.Fields {
	var faults fault.Fields
	counted := own.Given(stitchesPath) != ""
	switch {
	case counted:
	case own.Given(roundsPath) != "":
		faults.Add(stitchesPath, "is missing beside the rounds; count the stitches, too, or leave both empty")
	case own.Given(widthPath)+own.Given(heightPath) != "":
		faults.Add(stitchesPath, "is missing beside the length over which it was counted; count the stitches, or leave both empty")
	default:
		return nil
	}
	swatches, err := own.Swatches()
	for _, f := range fieldsOf(err) {
		if counted || f.Path != stitchesPath && f.Path != widthPath {
			faults = append(faults, f)
		}
	}
	if !counted || faults.Has(stitchesPath) || faults.Has(widthPath) {
		swatches[0].Stitches, swatches[0].Width = 20, 10*units.Centimetre // any that can be knitted
	}
	if faults.Has(roundsPath) || faults.Has(heightPath) {
		swatches[0].Rounds, swatches[0].Height = 0, 0
	}
	_, err = gauge.Of(swatches, gauge.HandVariation, swatchesPath)
	return append(faults, fieldsOf(err)...)
}

// texts returns the values that are valid texts, and the faults of the others.
func (s *Student) texts() (faults fault.Fields, whole sheet.Sheet) {
	whole = make(sheet.Sheet, len(s.Sheet)+4)
	var strange []string
	for path := range s.Sheet {
		if !slices.Contains(paths, path) {
			strange = append(strange, path)
		}
	}
	slices.Sort(strange)
	for _, path := range strange {
		faults.Add("student", "can't hold %.60q", path)
	}
	for _, path := range paths {
		text, given := s.Sheet[path]
		switch why := plain.Line(text, maxText); {
		case !given:
		case why != "":
			faults.Add(path, "%s", why)
		default:
			whole[path] = text
		}
	}
	return faults, whole
}

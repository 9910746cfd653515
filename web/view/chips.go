package view

import (
	"fmt"
	"strings"

	"thenar/internal/hand"
	"thenar/internal/mitt"
)

// chip is one thing that was measured, in the line that stands for the folded
// form.
type chip struct {
	Name, Value string
	To          string // the ID of its field, or of the list that tells more
	Filled      bool   // it tells what was not measured
	First       bool   // shown where there is room for few
}

// chips returns what was measured, then the swatch, then how much was filled
// in and left open.
func (m Mitt) chips() []chip {
	var list []chip
	given, bone := m.Doc.Sheet.Given, "gusset"
	if !m.Answer.Names.Has(mitt.Increases) {
		bone = "bone to thumb"
	}
	for _, c := range []struct{ path, name string }{
		{hand.FieldCircumference, "hand"},
		{hand.FieldWrist, "wrist"},
		{hand.FieldThumb, "thumb"},
		{hand.FieldPalm, "palm"},
		{hand.FieldGussetLength, bone},
		{hand.FieldWristToCrotch, "wrist to thumb"},
		{hand.FieldThumbLength, "thumb length"},
		{hand.FieldLength, "hand length"},
	} {
		if text := given(c.path); text != "" {
			list = append(list, chip{c.name, text, fieldID(c.path), false, c.path == hand.FieldCircumference})
		}
	}
	if text := m.swatchWords(); text != "" {
		list = append(list, chip{"swatch", text, fieldID("gauge.swatches[0].stitches"), false, true})
	}
	if m.Answer.Out == nil {
		return list
	}
	p := m.Answer.Out.Plan
	for _, c := range []struct {
		name string
		n    int
		to   string
	}{{"filled in:", len(p.Filled), filledID}, {"as usual:", len(p.Defaults), usualID}} {
		if c.n > 0 {
			list = append(list, chip{c.name, fmt.Sprint(c.n), c.to, true, c.to == filledID})
		}
	}
	return list
}

// IDs of the lists of what was not measured.
const (
	filledID = "filled-in"
	usualID  = "as-usual"
)

// swatchWords returns the first swatch as it was counted, "24 × 32", or "" if
// there is none.
func (m Mitt) swatchWords() string {
	at := func(key string) string { return m.Doc.Sheet.Given("gauge.swatches[0]." + key) }
	var parts []string
	for _, key := range []string{"stitches", "rounds"} {
		if text := at(key); text != "" {
			parts = append(parts, text)
		}
	}
	text := strings.Join(parts, " × ")
	if n := m.Doc.Sheet.Rows("gauge.swatches"); n > 1 {
		text += fmt.Sprintf(" and %d more", n-1)
	}
	return text
}

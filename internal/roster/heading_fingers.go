package roster

import (
	"fmt"

	"thenar/internal/hand"
)

// fingerNames are what headings call the fingers, from the index on, in canonical words.
var fingerNames = [...]string{"index", "middle", "ring", "little"}

// The headings that mean a measurement of a finger, in canonical words (common
// practice, no source). A finger alone is not among them: it could be its girth or its
// length.
var (
	fingerGirths   = []string{"%s girth", "girth %s", "round %s", "%s round"}
	fingerLengths  = []string{"%s length", "length %s"}
	fingerPartings = []string{
		"wrist to %s and %s", "wrist to %s %s", "wrist to crotch %s and %s", "wrist to crotch %s %s", "wrist to %s %s crotch", "wrist to %s and %s crotch",
		"crotch %s and %s", "crotch %s %s", "%s %s crotch", "%s and %s crotch", "%s %s parting", "%s and %s parting",
	}
)

// withFingers adds the headings of the fingers to the others.
func withFingers(all map[string][]string) map[string][]string {
	for i, name := range fingerNames {
		f := hand.Finger(i)
		for _, form := range fingerGirths {
			all[f.FieldGirth()] = append(all[f.FieldGirth()], fmt.Sprintf(form, name))
		}
		for _, form := range fingerLengths {
			all[f.FieldLength()] = append(all[f.FieldLength()], fmt.Sprintf(form, name))
		}
		if f == hand.Little {
			continue
		}
		for _, form := range fingerPartings {
			all[f.FieldCrotch()] = append(all[f.FieldCrotch()], fmt.Sprintf(form, name, fingerNames[i+1]))
		}
	}
	return all
}

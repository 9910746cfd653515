package words

import (
	"fmt"
	"regexp"
	"strings"
)

// swatchAt matches the path of a swatch.
var swatchAt = regexp.MustCompile(`^gauge\.swatches\[(\d+)\]`)

// fieldAt matches the path of a measurement.
var fieldAt = regexp.MustCompile(`^[a-z]+\.([a-z_]+)$`)

// Caution replaces the path that a caution may begin with by the name of its
// field: "wrist circumference: …", "swatch 2: …".
func Caution(message string) string {
	path, rest, found := strings.Cut(message, ": ")
	if !found {
		return message
	}
	if m := swatchAt.FindStringSubmatch(path); m != nil {
		n := 0
		_, _ = fmt.Sscan(m[1], &n) // digits, as matched
		return fmt.Sprintf("Swatch %d: %s", n+1, rest)
	}
	if m := fieldAt.FindStringSubmatch(path); m != nil {
		return capital(strings.ReplaceAll(m[1], "_", " ")) + ": " + rest
	}
	return message
}

package view

import (
	"fmt"

	"thenar/internal/app"
)

// bringsWords says how many yarns of another mitt find a place.
func bringsWords(o app.OtherPalette) string {
	switch {
	case o.Brings == len(o.Yarns):
		return ""
	case o.Brings == 0:
		return "Nothing to bring: they are here already, or no place is empty."
	}
	return fmt.Sprintf("%d of %d come along: the others are here already, or find no place.", o.Brings, len(o.Yarns))
}

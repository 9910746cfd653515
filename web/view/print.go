package view

import (
	"errors"
	"maps"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/sheet"
)

// typed is what a field shows: at a fault, what was typed.
func (p *Print) typed(name, value string) string {
	if p.Faults[name] != "" && p.Typed != nil {
		return p.Typed(name)
	}
	return value
}

// piecesFault tells whether a message stands among the pieces.
func (p *Print) piecesFault() bool {
	for name := range p.Faults {
		if name == "pieces" || strings.HasPrefix(name, "place-") {
			return true
		}
	}
	return false
}

// Ask asks about measurements before anything is printed; the answers go to an
// address.
func (p *Print) Ask(address string, asks []sheet.Question) {
	p.Asks, p.Answers = asks, address
	for _, q := range asks {
		p.Trouble = append(p.Trouble, q.Words)
	}
}

// Blame puts each fault of the options at its field.
func (p *Print) Blame(err error) { maps.Copy(p.Faults, Faults(err)) }

// Faults are the messages of an error by their fields.
func Faults(err error) map[string]string {
	list := map[string]string{}
	var fields fault.Fields
	if errors.As(err, &fields) {
		for _, f := range fields {
			list[f.Path] = f.Message
		}
	}
	return list
}

package view

import (
	"errors"

	"thenar/internal/fault"
)

// Blame puts each fault of the options at its field.
func (p *Print) Blame(err error) {
	var fields fault.Fields
	if !errors.As(err, &fields) {
		return
	}
	for _, f := range fields {
		p.Faults[f.Path] = f.Message
	}
}

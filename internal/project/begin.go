package project

import "thenar/internal/sheet"

// Begin returns the document of a mitt that begins from this one: with its hand,
// swatches, stitch patterns, eases, lengths and yarns, and with its fixed numbers
// if pins is set. What is knitted, tried on, compared or laid out for print
// stays behind.
func (d Document) Begin(name string, pins bool) Document {
	begun := Document{Name: name, Side: d.Side, Sheet: d.Sheet.Clone(), Sure: d.Sure}
	begun.Sheet.ForgetProgress()
	delete(begun.Sheet, sheet.PathSecond)
	if !pins {
		begun.Sheet.ForgetPins()
	}
	return begun
}

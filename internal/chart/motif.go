package chart

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/stitch"
)

// Motif is a group of cells to paint on a chart, as they look on it.
type Motif struct {
	Name  string      `json:"name"`
	Cells []MotifCell `json:"cells"`
}

// MotifCell is one cell of a motif, at a number of cells left of and rounds
// above its lower right corner. An empty stitch is as planned.
type MotifCell struct {
	Left   int    `json:"left"`
	Up     int    `json:"up"`
	Stitch string `json:"stitch"`
	Colour string `json:"colour"`
}

// ParseMotif reads a motif from JSON. Unknown and duplicate keys, and anything
// after the document, are faults.
func ParseMotif(r io.Reader) (Motif, error) {
	var m Motif
	dec := jsontext.NewDecoder(r)
	if err := json.UnmarshalDecode(dec, &m, json.RejectUnknownMembers(true)); err != nil {
		return Motif{}, fault.Fields{{Path: "motif", Message: fmt.Sprintf(`can't be read: %s; write {"name": "…", "cells": […]}`, short(err))}}
	}
	if _, err := dec.ReadToken(); !errors.Is(err, io.EOF) {
		return Motif{}, fault.Fields{{Path: "motif", Message: "goes on after the document; one JSON object is all"}}
	}
	m.Name = strings.TrimSpace(m.Name)
	return m, m.Check()
}

// The bounds of a motif.
const (
	maxMotif     = 10_000 // cells
	maxMotifSide = 1_000
	maxMotifName = 60
)

// Check refuses a motif that can't be stored.
func (m Motif) Check() error {
	var faults fault.Fields
	if name := strings.TrimSpace(m.Name); name == "" {
		faults.Add("name", "is empty; give the motif a name")
	} else if why := plain.Line(name, maxMotifName); why != "" {
		faults.Add("name", "%s", why)
	}
	if len(m.Cells) == 0 || len(m.Cells) > maxMotif {
		faults.Add("cells", "are %d; a motif has 1 to %d", len(m.Cells), maxMotif)
	}
	for i, c := range m.Cells {
		c.check(fmt.Sprintf("cells[%d]", i), &faults)
		if len(faults) > 20 {
			break
		}
	}
	return faults.Err()
}

func (c MotifCell) check(path string, faults *fault.Fields) {
	if c.Left < 0 || c.Up < 0 || c.Left > maxMotifSide || c.Up > maxMotifSide {
		faults.Add(path, "lies %d to the left and %d up; write 0 to %d", c.Left, c.Up, maxMotifSide)
	}
	if op, ok := stitch.ByCode(c.Stitch); c.Stitch != "" && (!ok || !op.Paintable()) {
		faults.Add(path+".stitch", "is %.20q, which can't be painted", c.Stitch)
	}
	if c.Colour != "" && !yarnID(c.Colour) {
		faults.Add(path+".colour", "is %.20q, which is no yarn", c.Colour)
	}
}

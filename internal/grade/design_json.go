package grade

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/go-json-experiment/json/jsontext"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// DesignFormat names the version of a design's JSON.
const DesignFormat = "thenar/design@1"

// Largest is the greatest number of bytes that a design may have.
const Largest = 4 << 20

// ParseDesign reads a design from JSON. It refuses what a sheet refuses: an unknown
// or repeated key, a value of the wrong type, anything after the document, with
// faults that name the field.
func ParseDesign(data []byte) (*Design, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if len(data) > Largest {
		return nil, fault.Fields{{Path: "design", Message: fmt.Sprintf("has %d bytes; a design has at most %d", len(data), Largest)}}
	}
	p := designParser{dec: jsontext.NewDecoder(bytes.NewReader(data)), design: &Design{Sheet: sheet.Sheet{}}}
	err := p.object("", p.member)
	if err == nil {
		if _, err = p.dec.ReadToken(); errors.Is(err, io.EOF) {
			err = nil
		} else {
			err = errors.New("it goes on after the document; one JSON object is all")
		}
	}
	if err != nil {
		p.faults.Add("design", "is not JSON as expected: %s", strings.TrimPrefix(err.Error(), "jsontext: "))
		return nil, p.faults
	}
	if p.format == "" {
		p.faults.Add("format", "is missing; write %q", DesignFormat)
	}
	if err := p.faults.Err(); err != nil {
		return nil, err
	}
	return p.design, p.design.check()
}

// designParser reads a design from its tokens.
type designParser struct {
	dec    *jsontext.Decoder
	design *Design
	format string
	faults fault.Fields
}

// object reads an object and hands each of its members to read.
func (p *designParser) object(path string, read func(path, key string) error) error {
	if p.dec.PeekKind() != '{' {
		return p.wrong(path, "an object in braces")
	}
	if _, err := p.dec.ReadToken(); err != nil {
		return err
	}
	for p.dec.PeekKind() != '}' {
		key, err := p.dec.ReadToken()
		if err != nil {
			return err
		}
		at := key.String()
		if path != "" {
			at = path + "." + at
		}
		if err := read(at, key.String()); err != nil {
			return err
		}
	}
	_, err := p.dec.ReadToken()
	return err
}

// wrong passes over a value of the wrong type, which is told.
func (p *designParser) wrong(path, right string) error {
	got, err := p.dec.ReadValue()
	if err == nil {
		p.faults.Add(cmp.Or(path, "design"), "is %s; write %s", clip(string(got)), right)
	}
	return err
}

// strange passes over the value of a key that isn't known.
func (p *designParser) strange(path string, known ...string) error {
	p.faults.Add(clip(path), "is not known here; known keys are %s", strings.Join(known, ", "))
	return p.dec.SkipValue()
}

func (p *designParser) member(path, key string) error {
	switch key {
	case "format":
		return p.text(path, func(text string) {
			if p.format = text; text != DesignFormat {
				p.faults.Add(path, "is %.40q; write %q", text, DesignFormat)
			}
		})
	case "sheet":
		s, err := p.part(path, "")
		p.design.Sheet = s
		return err
	case "sizes":
		return p.sizes(path)
	case "rules":
		return p.object(path, p.rule)
	case "pins":
		return p.object(path, p.pinsOf)
	case "pattern":
		p.design.Pattern = map[string]string{}
		return p.object(path, func(path, key string) error {
			return p.text(path, func(text string) { p.design.Pattern[key] = text })
		})
	}
	return p.strange(path, "format", "sheet", "sizes", "rules", "pins", "pattern")
}

// part reads a value as the part of a sheet under a key: all of it under "".
func (p *designParser) part(path, under string) (sheet.Sheet, error) {
	raw, err := p.dec.ReadValue()
	if err != nil {
		return nil, err
	}
	from, to := "", "sheet."
	if under != "" {
		raw = slices.Concat([]byte(`{"`+under+`":`), raw, []byte("}"))
		from, to = under, path
	}
	s, err := sheet.Parse(raw)
	var fields fault.Fields
	if errors.As(err, &fields) {
		for _, f := range fields {
			f.Path = to + strings.TrimPrefix(f.Path, from)
			p.faults = append(p.faults, f)
		}
		return sheet.Sheet{}, nil
	}
	return s, err
}

func (p *designParser) sizes(path string) error {
	if p.dec.PeekKind() != '[' {
		return p.wrong(path, `a list of sizes such as {"name": "7", "hand": {"hand_circumference": 19}}`)
	}
	if _, err := p.dec.ReadToken(); err != nil {
		return err
	}
	for i := 0; p.dec.PeekKind() != ']'; i++ {
		size := Size{Hand: sheet.Sheet{}}
		err := p.object(fmt.Sprintf("%s[%d]", path, i), func(path, key string) error {
			switch key {
			case "name":
				return p.text(path, func(text string) { size.Name = strings.TrimSpace(text) })
			case "hand", "gauge":
				s, err := p.part(path, key)
				for path, text := range s {
					size.Hand[path] = text
				}
				return err
			}
			return p.strange(path, "name", "hand", "gauge")
		})
		if err != nil {
			return err
		}
		if len(p.design.Sizes) <= MaxSizes { // one too many is told; a million are not kept
			p.design.Sizes = append(p.design.Sizes, size)
		}
	}
	_, err := p.dec.ReadToken()
	return err
}

func (p *designParser) rule(path, key string) error {
	r := &p.design.Rules
	switch key {
	case "length":
		return p.text(path, func(text string) {
			if r.Length = Lengthening(text); text == "" {
				p.faults.Add(path, "is empty; write %s or %s", InProportion, FixedLengths)
			}
		})
	case "price_mm2":
		return p.number(path, func(x float64) { r.Price = &x })
	case "multiples":
		r.Multiples = map[mitt.Number]Multiple{}
		return p.object(path, p.multiple)
	}
	return p.strange(path, "length", "price_mm2", "multiples")
}

// multiple reads which numbers the hand or a section may have: 4, or [4, 1] for 1, 5, 9.
func (p *designParser) multiple(path, key string) error {
	n, ok := mitt.NumberOf(key)
	if !ok || !keepTo(n) {
		return p.strange(path, multiplesOf()...)
	}
	raw, err := p.dec.ReadValue()
	if err != nil {
		return err
	}
	m := Multiple{}
	list := []*int{&m.Of, &m.Offset}
	if json.Unmarshal(raw, &m.Of) != nil && (json.Unmarshal(raw, &list) != nil || len(list) != 2) {
		p.faults.Add(path, "is %s; write a whole number such as 4, or [4, 1] for 1, 5, 9 and so on", clip(string(raw)))
		return nil
	}
	p.design.Rules.Multiples[n] = m
	return nil
}

// multiplesOf lists the numbers that can keep to a multiple.
func multiplesOf() (keys []string) {
	for _, n := range mitt.InSheet() {
		if keepTo(n) {
			keys = append(keys, n.Key())
		}
	}
	return keys
}

func (p *designParser) pinsOf(path, key string) error {
	s, err := p.part(path, mitt.PathPins)
	if key == forAll {
		p.design.All = s
		return err
	}
	if p.design.Pins == nil {
		p.design.Pins = map[string]sheet.Sheet{}
	}
	p.design.Pins[key] = s
	return err
}

func (p *designParser) text(path string, take func(string)) error {
	if p.dec.PeekKind() != '"' {
		return p.wrong(path, "text in quotes")
	}
	token, err := p.dec.ReadToken()
	if err == nil {
		take(token.String())
	}
	return err
}

func (p *designParser) number(path string, take func(float64)) error {
	if p.dec.PeekKind() != '0' {
		return p.wrong(path, "a number")
	}
	token, err := p.dec.ReadToken()
	if err != nil {
		return err
	}
	x, err := token.Float()
	if err == nil {
		take(x)
	}
	return err
}

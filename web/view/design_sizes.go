package view

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/words"
)

// sizesForm is the form of the sizes; its fields stand all over the page.
const sizesForm = "sizes-form"

// asked returns what stood in a field of the form that is kept with no mitt.
func (d Design) asked(name, usual string) string {
	if d.Asked.Has(name) {
		return d.Asked.Get(name)
	}
	return usual
}

// calls returns what a size is called.
func (d Design) calls(i int) string {
	return "size " + cmp.Or(d.Texts.Given(grade.SizePath(i, "name")), strconv.Itoa(i+1))
}

// sizeField is a field of one size.
type sizeField struct{ path, label, unit, hint string }

// sizeFields are the fields of a size, as far as they stand in its row.
func (d Design) fields() []sizeField {
	u := string(d.UnitOf())
	return []sizeField{
		{"name", "called", "", ""},
		{hand.FieldSize, "glove size", "", ""},
		{hand.FieldCircumference, "or hand", u, ""},
		{hand.FieldLength, "hand length", u, ""},
		{hand.FieldWrist, "wrist", u, ""},
		{hand.FieldThumb, "thumb", u, ""},
	}
}

// gaugeFields are those of a size's own gauge.
func (d Design) gaugeFields() []sizeField {
	u, swatch := d.UnitOf(), "gauge.swatches[0]."
	over := sheet.GaugeOver(u)
	return []sizeField{
		{swatch + "stitches", "stitches", "", ""},
		{swatch + "width", "over", string(u), over},
		{swatch + "rounds", "rounds", "", ""},
		{swatch + "height", "over", string(u), over},
	}
}

// hasGauges reports whether a size has a gauge of its own.
func (d Design) hasGauges() bool {
	return slices.ContainsFunc(d.Texts.Paths(), func(path string) bool { return strings.Contains(path, "].gauge.") && d.Texts.Given(path) != "" })
}

// multiple is a number that may keep to a multiple.
type multiple struct{ of, offset, label, hint string }

// multiples lists the numbers of this mitt that may, and those that were typed for it as it
// was before.
func (d Design) multiples() (list []multiple) {
	names := d.Doc.Sheet.Names()
	has := grade.Multiplied(names)
	for _, n := range mitt.Ladder() {
		m := multiple{label: names.Label(n)}
		m.of, m.offset = grade.MultiplePaths(n)
		if !slices.Contains(has, n) && d.Texts.Given(m.of)+d.Texts.Given(m.offset) == "" {
			continue
		}
		if n == mitt.HandStitches {
			m.hint = cmp.Or(d.Doc.Sheet.Given("stitch.repeat"), strconv.Itoa(sheet.DefaultRepeat))
		}
		list = append(list, m)
	}
	return list
}

// hasMultiples reports whether any is typed.
func (d Design) hasMultiples() bool {
	return slices.ContainsFunc(d.multiples(), func(m multiple) bool { return d.Texts.Given(m.of)+d.Texts.Given(m.offset) != "" })
}

// fixedNumber is a number that is fixed.
type fixedNumber struct{ path, label string }

// fixed lists the numbers that are fixed, in the order of the plan: for every size, then
// for one.
func (d Design) fixed() (list []fixedNumber) {
	names := d.Doc.Sheet.Names()
	for _, n := range mitt.Ladder() {
		if _, ok := d.Texts[n.Path()]; ok {
			list = append(list, fixedNumber{n.Path(), names.Label(n) + ", every size"})
		}
		for i := range d.Texts.Sizes() {
			if path := grade.SizePath(i, n.Path()); d.Texts[path] != "" {
				list = append(list, fixedNumber{path, names.Label(n) + ", " + d.calls(i)})
			}
		}
	}
	return list
}

// toFix lists the numbers that can be fixed.
func (d Design) toFix() (list []Choice) {
	names := d.Doc.Sheet.Names()
	for _, n := range mitt.Ladder() {
		if names.Has(n) {
			list = append(list, Choice{n.Key(), names.Label(n)})
		}
	}
	return list
}

// rows returns the numbers of the sizes that the form shows, one empty one at its end.
func (d Design) rows() []int {
	rows := make([]int, min(d.Texts.Sizes()+1, grade.MaxSizes))
	for i := range rows {
		rows[i] = i
	}
	return rows
}

// more says what else is known of the hand of a size, beside the fields of its row.
func (d Design) more(i int) string {
	var list []string
	for _, path := range d.Texts.Paths() {
		field, ok := strings.CutPrefix(path, grade.SizePath(i, ""))
		if !ok || !strings.HasPrefix(field, "hand.") || slices.ContainsFunc(d.fields(), func(f sizeField) bool { return f.path == field }) {
			continue
		}
		name := field[strings.LastIndexByte(field, '.')+1:]
		list = append(list, strings.ReplaceAll(name, "_", " ")+" "+d.Texts[path])
	}
	return strings.Join(list, ", ")
}

// sizeNumber is one line of the table of numbers.
type sizeNumber struct {
	name  string
	cells []sizeCell
}

type sizeCell struct {
	value, off string
	worst      bool
}

// numbers returns the table of every number for every size, each with what rounding
// leaves where that is known. The worst of a line is marked.
func (d Design) numbers() []sizeNumber {
	names := d.Graded.Design.Sheet.Names()
	var lines []sizeNumber
	for _, n := range mitt.Ladder() {
		if n.List() || !names.Has(n) {
			continue
		}
		line, worst, at := sizeNumber{name: names.Label(n)}, 0.0, -1
		some := false
		for i, s := range d.Graded.Sizes {
			c := sizeCell{value: "–"}
			if s.Plan != nil {
				if v := s.Plan.Number(n); v != "" {
					c.value, some = v, true
				}
				if off, ok := offOf(s.Plan, n); ok {
					c.off = signedMM(off)
					if math.Abs(off) > worst {
						worst, at = math.Abs(off), i
					}
				}
			}
			line.cells = append(line.cells, c)
		}
		if at >= 0 && worst >= 1 {
			line.cells[at].worst = true
		}
		if some {
			lines = append(lines, line)
		}
	}
	return lines
}

// offOf returns how far a number of a plan is off the wish, in mm.
func offOf(p *mitt.Plan, n mitt.Number) (float64, bool) {
	places := map[mitt.Number]mitt.Place{
		mitt.CastOn: mitt.PlaceCuff, mitt.HandStitches: mitt.PlaceHand, mitt.GussetRounds: mitt.PlaceGussetLength,
		mitt.Increases: mitt.PlaceCrotch, mitt.ThumbStitches: mitt.PlaceThumb, mitt.ThumbRounds: mitt.PlaceThumbLength,
		mitt.RoundsAboveGusset: mitt.PlaceHandLength, mitt.TopRounds: mitt.PlaceTop,
	}
	at, ok := places[n]
	return p.Off[at], ok
}

// toLookAt is what the designer should see of one sort.
type toLookAt struct {
	name string
	said []string
	well bool // there is nothing
}

// lookAt is what the designer should see: what can't be made, what falls and what holding it
// costs, what is spare, and where each size is furthest off, the worst first.
func (d Design) lookAt() []toLookAt {
	var cannot, falls, alike, worst []string
	names := d.Graded.Design.Sheet.Names()
	for _, s := range d.Graded.Sizes {
		switch {
		case s.Err != nil:
			for _, text := range d.why(s.Err) {
				cannot = append(cannot, fmt.Sprintf("Size %s: %s", s.Name, text))
			}
		case s.Same:
			alike = append(alike, fmt.Sprintf("Size %s is knitted as the size before: one of the two is spare.", s.Name))
		}
		for _, f := range s.Falls {
			if f.Held {
				falls = append(falls, fmt.Sprintf("Size %s: %s would fall to %d; it stays %d, which is %s.", s.Name, names.Words(f.Number), f.To, f.From, held(f.MM)))
			} else {
				falls = append(falls, fmt.Sprintf("Size %s: %s falls from %d to %d.", s.Name, names.Words(f.Number), f.From, f.To))
			}
		}
	}
	if !d.Graded.Barred {
		falls = append(falls, "Every way to make these sizes has a gusset with fewer stitches than the size before.")
	}
	far := slices.Clone(d.Graded.Sizes)
	slices.SortStableFunc(far, func(a, b grade.Planned) int { return cmp.Compare(math.Abs(b.Off), math.Abs(a.Off)) })
	for _, s := range far {
		if s.Plan != nil && math.Abs(s.Off) >= 1 {
			worst = append(worst, fmt.Sprintf("Size %s, %s: %s mm", s.Name, s.Worst.Words(s.Plan), signedMM(s.Off)))
		}
	}
	var list []toLookAt
	if cannot != nil {
		list = append(list, toLookAt{name: "can’t be", said: cannot})
	}
	for _, g := range []struct {
		name, none string
		said       []string
	}{{"falls", "Nothing, from one size to the next.", falls}, {"alike", "No two sizes; none is spare.", alike}, {"furthest off", "No size by 1 mm.", worst}} {
		if g.said == nil {
			list = append(list, toLookAt{g.name, []string{g.none}, true})
			continue
		}
		list = append(list, toLookAt{name: g.name, said: g.said})
	}
	return list
}

// why says what stands in the way, in words: a number by its name, what is wrong with the mitt
// itself as such.
func (d Design) why(err error) (list []string) {
	var fields fault.Fields
	if !errors.As(err, &fields) {
		return []string{fault.Message(err)}
	}
	names := d.Doc.Sheet.Names()
	for _, f := range fields {
		path, ofMitt := strings.CutPrefix(f.Path, "sheet.")
		name := strings.ReplaceAll(path[strings.LastIndexByte(path, '.')+1:], "_", " ")
		for _, n := range mitt.Ladder() {
			if strings.HasPrefix(path, mitt.PathPins+".") && strings.HasSuffix(path, "."+n.Key()) {
				name = names.Label(n)
			}
		}
		if ofMitt {
			name = "In the mitt itself, " + name
		}
		list = append(list, name+": "+f.Message)
	}
	return list
}

// mm is a length in mm, as the strips tell it.
func mm(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }

// signedMM is what rounding leaves, in mm.
func signedMM(v float64) string {
	switch text := mm(math.Abs(v)); {
	case text == "0":
		return "0"
	case v < 0:
		return "−" + text
	default:
		return "+" + text
	}
}

// paid is where the bar of a size begins that pays for the common text, from the top of 16.
func (d Design) paid(s grade.Planned) string {
	most := 0.1
	for _, size := range d.Graded.Sizes {
		most = max(most, size.Pays)
	}
	return fmt.Sprintf("%.1f", 16-16*s.Pays/most)
}

// handAt is the address of a size, from 0, on its hand.
func (d Design) handAt(i int) string {
	return MittAt(d.ID, fmt.Sprintf("%s/hand/%d", DesignBelow, i+1))
}

// HasSize reports whether there is a size, from 0, that can be made.
func (d Design) HasSize(i int) bool {
	return d.Graded != nil && i >= 0 && i < len(d.Graded.Sizes) && d.Graded.Sizes[i].Plan != nil
}

// onHand draws one of the sizes on its hand.
func (d Design) onHand(i int) string {
	o := picture.HandOptions{Left: d.Doc.Side == project.Left, Unit: d.UnitOf(), Named: true}
	return SVG(picture.Hand(d.Graded.Sizes[i].Plan, o), false)
}

// held says what it costs to hold a number.
func held(mm float64) string {
	if mm < 0 {
		return fmt.Sprintf("%.1f mm nearer", -mm)
	}
	return fmt.Sprintf("%.1f mm further off", mm)
}

// strips returns the numbers of the common text, each as runs over the sizes.
func (d Design) strips() []grade.Split {
	return slices.DeleteFunc(slices.Clone(d.Graded.Splits), func(s grade.Split) bool { return len(s.Groups) == 0 })
}

// groupValue says the value of a run.
func groupValue(n mitt.Number, g grade.Group) string {
	switch {
	case n == mitt.Rhythm && g.Value == 0:
		return "its own"
	case n == mitt.Rhythm:
		return words.Ordinal(g.Value)
	case g.Value == 0:
		return "none"
	}
	return strconv.Itoa(g.Value)
}

// shows reports whether the form has a place for what is wrong with a field.
func (d Design) shows(path string) bool {
	if strings.HasPrefix(path, app.FillField("")) || slices.Contains(written, path) ||
		slices.Contains([]string{"fill", "list", app.FixField, grade.PathLength, grade.PathPrice}, path) {
		return true
	}
	for i := range d.rows() {
		if path == grade.SizePath(i, "hand") {
			return true
		}
		for _, f := range slices.Concat(d.fields(), d.gaugeFields()) {
			if path == grade.SizePath(i, f.path) {
				return true
			}
		}
	}
	return slices.ContainsFunc(d.multiples(), func(m multiple) bool { return path == m.of || path == m.offset }) ||
		slices.ContainsFunc(d.fixed(), func(n fixedNumber) bool { return path == n.path })
}

package makeup

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// handout is like the pieces of one student's handout on A4: 261 mm of height,
// lines of 5.8 mm, drawings from their wished size down to 60 % of it.
func handout(student int) ([]Piece, Area) {
	lines := func(n, height int) (list []int) {
		for range n {
			list = append(list, height)
		}
		return list
	}
	columned := func(name string, rows []Part, n int) Piece {
		_, height := Columns(rows, n)
		beside := Part{Height: height, Chart: rows[0].Chart, Words: rows[0].Words}
		return Piece{Name: name, Above: 30, Ways: []Way{{Parts: rows}, {Parts: []Part{beside}}}}
	}
	head := func(name string) Piece {
		return Piece{Name: name, Above: 40, WithNext: true, Ways: []Way{{Parts: []Part{{Height: 86}}}}}
	}
	list := []Piece{
		one("name", Part{Height: 101}, Part{Height: 58}),
		columned("materials", Lines(lines(9+student%3, 58)...), 2),
		{Name: "hand", Above: 30, Ways: Drawing(Part{Height: 1290 + 7*student}, 90, 60)},
		head("how long"), columned("lengths", Lines(lines(6, 58)...), 2),
		head("how it is worked"),
		{Name: "make one", Ways: Drawing(Part{Height: 660}, 170, 60)},
		{Name: "thumb", Above: 30, Ways: Drawing(Part{Height: 640}, 190, 60)},
		head("chart"),
		{Name: "gusset", Ways: Drawing(Part{Height: 1010 + 11*student, Chart: 1}, 80, 60)},
		columned("glossary", Lines(lines(11, 50)...), 2),
		head("words"),
	}
	for section, n := range []int{4, 6, 19 + student%5, 6, 9} {
		rows := Lines(lines(n, 60)...)
		for k := range rows {
			rows[k].Again = 78
			if section == 2 {
				rows[k].Words = 1
			}
		}
		list = append(list, head("section"), columned("rounds", rows, 2))
	}
	list = append(list, head("my own numbers"), columned("own", Lines(lines(12, 100)...), 3), head("cautions"), one("cautions", Lines(lines(5, 49)...)...))
	return list, Area{Page: 2610, BothSides: true}
}

// A handout takes no more pages than its heights need, and the work for it stays
// within what the package promises.
func TestWorkIsBounded(t *testing.T) {
	for student := range 30 {
		pieces, area := handout(student)
		p := newPlaces(pieces)
		m := newMaker(p, area)
		m.run()
		for at, labels := range m.labels {
			assert.LessOrEqual(t, len(labels), 2+2*maxPairs, "labels of place %d", at)
		}
		for _, list := range m.filler.row.lists {
			assert.LessOrEqual(t, len(list), area.Page+1)
		}
		l := m.layout()
		checkLayout(t, pieces, area, l)
		assert.LessOrEqual(t, l.Cost.Pages, 4)
		assert.Zero(t, l.Cost.Apart, "the chart faces its words")
	}
}

// BenchmarkPage lays one page of pieces: a heading, words and two drawings.
func BenchmarkPage(b *testing.B) {
	all, area := handout(0)
	pieces := all[:3]
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Lay(pieces, area); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkHandout lays the handout of one student.
func BenchmarkHandout(b *testing.B) {
	pieces, area := handout(0)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Lay(pieces, area); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSet lays the handouts of a class of 30, each by itself.
func BenchmarkSet(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		for student := range 30 {
			pieces, area := handout(student)
			if _, err := Lay(pieces, area); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// BenchmarkTallTable lays a table of as many rows as are laid at a time.
func BenchmarkTallTable(b *testing.B) {
	rows := make([]Part, MaxParts)
	for i := range rows {
		rows[i] = Part{Height: 40 + i%30, Again: 60}
	}
	pieces := []Piece{one("table", rows...)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Lay(pieces, Area{Page: 2610}); err != nil {
			b.Fatal(err)
		}
	}
}

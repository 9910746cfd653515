package makeup

// Facing returns the page that lies open beside a page, both counted from 1; 0 if
// none does. Every handout begins on the front of a fresh sheet, so that its odd
// pages are fronts and its even ones backs: turning a sheet over lays its back on
// the left of the next front (common practice of bookbinding, no source). Page 1
// lies alone, and so does a last page that is even.
func (a Area) Facing(page, pages int) int {
	other := page + 1
	if page%2 == 1 {
		other = page - 1
	}
	if !a.BothSides || other > pages {
		return 0
	}
	return other
}

// Sheets returns the number of sheets that a handout of so many pages takes. The
// back of its last one may be empty.
func (a Area) Sheets(pages int) int {
	if a.BothSides {
		return (pages + 1) / 2
	}
	return pages
}

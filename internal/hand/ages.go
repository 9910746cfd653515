package hand

import "thenar/internal/units"

// Age is the average hand of children of one age.
type Age struct {
	Years                               int
	Length, Breadth, Wrist, ThumbLength units.Length
}

// ageRows are the averages of both sexes in mm, from half a year below each age to
// half a year above it; the first row is from 2 to 3½. The circumference was not
// measured: Fill works it out from the breadth, by the factor of adults, which is an
// estimate (Snyder, Schneider, Owings and others, UM-HSRI-77-17, 1977, worked out from
// the records of single children).
var ageRows = [...][5]float64{
	{3, 105.5, 51.0, 113.2, 36.0},
	{4, 114.3, 54.1, 115.0, 38.4},
	{5, 120.1, 56.2, 118.0, 41.4},
	{6, 127.2, 59.2, 121.8, 43.7},
	{7, 132.6, 61.6, 124.2, 47.0},
	{8, 138.1, 64.0, 128.2, 47.6},
	{9, 144.4, 66.0, 132.1, 50.0},
	{10, 150.1, 68.3, 134.8, 53.2},
	{11, 156.1, 70.9, 134.9, 55.5},
	{12, 162.6, 73.3, 142.0, 57.1},
	{13, 168.7, 76.2, 146.4, 59.0},
}

// Ages returns the average hands of children of 3 to 13 years. From about 13 on
// girls' and boys' hands part.
func Ages() []Age {
	list := make([]Age, len(ageRows))
	for i, r := range ageRows {
		list[i] = Age{int(r[0]), units.FromMM(r[1]), units.FromMM(r[2]), units.FromMM(r[3]), units.FromMM(r[4])}
	}
	return list
}

// Package paper lays out everything that is printed, as pages in millimetres:
// the handout of a mitt, a class's set, tables and blank sheets. The page in
// the browser and the PDF show the very same pages.
//
// A handout is composed of pieces in the order that the person chose
// (Options.Pieces). A new piece is a constant, its words and a case in
// handout.piece, which measures it: blocks of parts, each with its height in
// tenths of a millimetre and what draws it, in all the ways in which the block
// may be set: drawings and cells in steps of 5 %, words in columns. Makeup then
// chooses ways and breaks for the whole handout at once, and only what is chosen
// is drawn (makeUp). Tables and blank sheets are filled from top to bottom by
// flow; a gusset's chart stands over the whole width with its key below or beside it
// (chart, key), and divide and join bring larger ones on several pages. What
// belongs to a screen is stripped at the end, so the pages need no style sheet. How something is
// printed is kept as the query of its address (Options.Query and Read).
//
// A class set is laid out student by student, as its pages are asked for, since
// a set of three hundred would not fit into memory at once.
package paper

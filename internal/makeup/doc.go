// Package makeup makes up pages: it says which part of a text or drawing comes
// on which page, and where. It knows only heights, all in whole tenths of a
// millimetre; whoever calls it measures before and draws after.
//
// # What is laid
//
// Pieces come in a fixed order. A piece has one or more ways in which it may be
// set: a drawing in several sizes, words in one or two columns. A way is a list
// of parts, each of which stays in one place. A page may end after any part that
// is not kept with the next.
//
// # What is best
//
// Of all choices of ways and breaks, Lay returns one of the least Cost, compared
// in this order: parts that stick out of their page and kept parts that are
// parted (both nothing wherever that is possible), pages, pages less than 40 %
// full, charts that don't lie open beside their words, the sum of the squares of
// empty heights, the sum of the squares of shrinkings. The last page may be empty
// at its foot for nothing. So a drawing gives way before a page does. Of equal
// costs the one counts whose first page ends earliest, then its second, and so
// on; where ways of a piece differ, the one listed first is earlier. (The order
// is common practice, no source.)
//
// # How it is found
//
// A place is where a page can begin: before a piece, or before a part of one of
// its ways. With B(t) the least cost of all pages that end at the place t,
//
//	B(t) = min over places s before t of B(s) + page(s, t)
//
// where page(s, t) is the cost of one page that begins at s and ends at t. Every
// figure of a cost is a sum over pages, so that the order of two costs does not
// change when the same page is added to both, and the minimum is exact. Printed
// on both sides, pages 2 and 3 lie face to face, then 4 and 5, while page 1 lies
// alone: the least costs are then kept apart by what the left page of an open
// pair shows.
//
// One page is a choice of a size for every drawing on it. Among the sums of
// heights that its choices reach, only the least shrinking for each sum counts,
// and of these the highest that fits: it leaves the smallest empty height, which
// comes before shrinkings. On the last page it is the least shrinking.
//
// # What it takes
//
// With P places, E places on one page, C pieces of several ways with W ways each
// and H tenths of height: the sums take C² · W · H steps, each of C rows at most
// C · H of memory, one at a time; the pages P · E · (log H + L) steps, where L is
// the number of different left pages, at most 2 · maxPairs + 1 for each way of
// the piece that is parted. Memory is P · L labels. All of these are bounded by
// the limits in check.go, and E by H, since no part is lower than a tenth.
package makeup

// Package written takes knitting instructions apart that anybody wrote: it reads lines,
// sentences and words, and makes statements of them that can be worked stitch by stitch. It
// knows the abbreviations in common use in US and UK terms and their full words, several
// sizes, markers, held stitches, and rounds that are worked again. It guesses nothing: what it
// doesn't understand is a statement or an item that says so, and where it stands.
//
// # Grammar
//
// In the manner of ISO/IEC 14977, with words in any mixture of capitals, a full stop after a
// shortened word, and dashes, quotes and signs of multiplication in any form:
//
//	text      = { line } ;
//	line      = [ bullet | digits, ( ")" | "." ) | "#" ], ( heading | panel | table | meaning
//	          | { sentence } ) ;                         a line may go on in the next
//	heading   = name ;                                   short, with a capital, works nothing
//	panel     = name, "(", "over", number, "sts" | "multiple of", … , ")" ;
//	table     = { [ "|" ], cell, { ( "|" | two spaces ), cell } } ;
//	meaning   = abbreviation, ( ":" | "=" | "–" ), … ;   what a word means changes no count
//	sentence  = [ sizes ], [ hand ], [ title ], [ label ], ( rounds | again | begin | finish | back | onward
//	          | markers | plan | pace | listed | grows | elsewhere | count | note ), [ "." ] ;
//	title     = name, ( ":" | ".—" ) ;                   "Thumb:", "FIRST FINGER.—"
//	sizes     = ( "size" | "sizes" ), name, { ( "," | "and" ), name }, [ "only" ], ":"
//	          | nth, { "and", nth }, "sizes", [ "only" ], ":" ;
//	hand      = ( "right" | "left" ), ( "hand" | "mitten" | "glove" ), [ "only" ], ":" ;
//	label     = ( "round" | "row" ), spans, [ "and all even rounds" ] | nth, { "and", nth }, "round"
//	          | "next", [ number ], "round" | name, "round" | "short row", digits
//	          | "every other round" | ( "RS" | "WS" ), "rows",
//	            [ side ], [ remark ], ( ":" | "." | "-" | "—" ) ;
//	rounds    = item, { ( "," | ";" | "then" | "and" ), item }, [ remark ], [ count ] ;
//	item      = stitch, [ number ], [ yarn ], [ times | reach ] | group | starred | marker
//	          | hold | caston | pickup | bindoff | turn | even | charted | inc ;
//	group     = ( "(" | "[" | "{" ), rounds, ( ")" | "]" | "}" ), [ times | reach ] ;
//	starred   = "*", rounds, ( "rep from *" | "*" ), ( times, [ "more" ] | reach ) | rounds, reach ;
//	reach     = "to end" | "to last", number, [ "of needle" ] | "to", [ number, "before" ], ( "marker"
//	          | "gap" | "wrapped stitch" | "double stitch" ) | "around" ;
//	even      = ( "even" | "in", manner ), [ "over", number, "sts" ] ;
//	charted   = "work", … ( "chart" | "panel" ), [ "over", number, "sts" | reach ] ;
//	inc       = "inc in", [ "each of" ], "next", [ number ], "st" ;
//	again     = ( "rep" | "work" ), ( "rounds", span, [ "of", name ] | "the last", number, "rounds"
//	          | name, "round" | "from ** to **" | "from * to *" | "this", "four times" ), [ "every", nth, "round" ],
//	            [ times ], [ "until", count ], [ "(", number, "rounds", ")" ] ;
//	finish    = "bind off", [ number ] | "draw through", [ number ] | "fasten off"
//	          | ( "graft" | "three-needle bind-off" ), [ number, ( "to", number | "on each needle" ) ] ;
//	listed    = "work", name, "round on rounds", spans, [ "(", number, "increase rounds", ")" ] ;
//	grows     = ( "inc" | "dec" ), ( number, "sts" | "in this way" ), [ where ], { step }, [ until ] ;
//	where     = ( "each" | "both" ), ( "end" | "side" ), [ "of", ( "gusset" | "marker" ) ]
//	          | ( "before" | "after" ), marker, "and", ( "before" | "after" ), marker
//	          | "between markers" | "at beg" | "at end of" ;
//	step      = "next", [ number ], "row" | "every", nth, "row", [ times ] ;
//	elsewhere = ( "work" | "complete" ), ( "as for" | "to match" ), name ;
//	count     = [ "(" | "—" ], number, [ "sts" ], [ "between markers" ], [ ")" ], { ";", count } ;
//	number    = digits, [ [ "," ], "(", digits, { ",", digits }, ")" | { ( "-" | "/" | "|" ), digits } ] ;
//	            one for each size; digits may be words: "twenty-four"
//	times     = number, "times" | "once" | "twice" | "x", number ;
//
// A number of "repeat from *" counts what comes after the first time; where it says neither
// "more" nor that, both ways are tried, and the one is taken that comes out. A round that is told
// by length only, or by how often shaping comes, has no number; a chart keeps the count unless
// the next one that is stated is another.
package written

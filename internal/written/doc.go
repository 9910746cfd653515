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
//	line      = heading | table | { sentence } ;        a line may go on in the next
//	sentence  = [ sizes ], [ label ], ( rounds | again | begin | finish | back | onward
//	          | markers | plan | pace | grows | count | note ), [ "." ] ;
//	sizes     = ( "size" | "sizes" ), name, { ( "," | "and" ), name }, [ "only" ], ":" ;
//	label     = ( "round" | "row" ), spans | nth, "round" | "next", [ number ], "round"
//	          | name, "round" | "every other round", [ side ], [ remark ], ( ":" | "." | "-" ) ;
//	rounds    = item, { ( "," | ";" | "then" | "and" ), item }, [ count ] ;
//	item      = stitch, [ number ], [ yarn ], [ times | reach ] | group | starred | marker
//	          | hold | caston | pickup | bindoff | even ;
//	group     = ( "(" | "[" | "{" ), rounds, ( ")" | "]" | "}" ), [ times | reach ] ;
//	starred   = "*", rounds, ( "rep from *" | "*" ), ( times, [ "more" ] | reach ) ;
//	reach     = "to end" | "to last", number | "to", [ number, "before" ], "marker" | "around" ;
//	again     = ( "rep" | "work" ), ( "rounds", span | "the last", number, "rounds" | name, "round"
//	          | "from ** to **" ), [ "every", nth, "round" ], [ times ], [ "until", count ] ;
//	count     = [ "(" | "—" ], number, [ "sts" ], [ "between markers" ], [ ")" ] ;
//	number    = digits, [ "(", digits, { ",", digits }, ")" ] ;         one for each size
//	times     = number, "times" | "once" | "twice" | "x", number ;
//
// A number of "repeat from *" counts what comes after the first time; where it says neither
// "more" nor that, both ways are tried, and the one is taken that comes out.
package written

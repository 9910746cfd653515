// Package roster is a class: the pattern it knits, its students, and the tables
// of students that a teacher pastes.
//
// ReadAs finds a table's encoding, delimiter and headings and returns students
// and the rows that are wrong. Headings are read in English; other languages
// are first put into English word by word, and what the teacher chose for a
// column goes before both. Class.Merge adds new students, fills what is empty
// and lists what differs; only Class.Take overwrites.
//
// A class keeps its pattern as the mitt stood when it was chosen.
// Class.Document lays a student's values over that pattern and the numbers
// fixed for everybody; from there it is a mitt like any other. A measurement
// that nobody is likely to have becomes a question, and until it is answered
// nothing is planned or printed for that student.
package roster
